"""Reading a page as a program would: its elements with their attributes, and what is wrong with how they nest."""

from dataclasses import dataclass, field
from html.parser import HTMLParser

EMPTY = {"meta", "link", "input", "br", "hr", "img"}


@dataclass
class Element:
    """One element; `text` is all the text in it."""

    tag: str
    attributes: dict[str, str | None]
    text: str = ""


@dataclass
class Page(HTMLParser):
    """A page that has been read; `faults` says what does not nest."""

    html: str
    elements: list[Element] = field(default_factory=list)
    faults: list[str] = field(default_factory=list)

    def __post_init__(self) -> None:
        """Read all of it."""
        super().__init__(convert_charrefs=True)
        self.open: list[Element] = []
        self.feed(self.html)
        self.close()
        self.faults += [f"<{one.tag}> is not closed" for one in self.open]

    def handle_starttag(self, tag, attrs):
        """Take in an element."""
        element = Element(tag, dict(attrs))
        self.elements.append(element)
        if len(dict(attrs)) < len(attrs):
            self.faults.append(f"<{tag}> has an attribute twice")
        if tag not in EMPTY:
            self.open.append(element)

    def handle_startendtag(self, tag, attrs):
        """Take in an element without an end."""
        self.elements.append(Element(tag, dict(attrs)))

    def handle_endtag(self, tag):
        """Close the element that was opened last."""
        if not self.open or self.open[-1].tag != tag:
            self.faults.append(f"</{tag}> closes {self.open[-1].tag if self.open else 'nothing'}")
            return
        self.open.pop()

    def handle_data(self, data):
        """Give a text to every element that it stands in."""
        for element in self.open:
            element.text += data

    def all(self, tag: str) -> list[Element]:
        """Return the elements of a kind."""
        return [element for element in self.elements if element.tag == tag]

    def marked(self, word: str) -> list[Element]:
        """Return the elements of a class."""
        return [element for element in self.elements if word in (element.attributes.get("class") or "").split()]
