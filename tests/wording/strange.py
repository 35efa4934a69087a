"""A made-up language of one strange letter, in which every English letter that is left over shows."""

import re
from collections.abc import Iterator, Sequence
from html.parser import HTMLParser

from blocklang.plan import SewingPlan
from blocklang.wording import Language, Message

LETTER = "ж"
_KEPT = re.compile(r"(\{\w+\})")
_WORD = re.compile(r"[A-Za-z]{2,}")


def _look_up(message: Message, count: int | None) -> str:
    text = message.plural if message.plural and count != 1 else message.text
    return "".join(part if part.startswith("{") else re.sub("[A-Za-z]", LETTER, part) for part in _KEPT.split(text))


STRANGE = Language("xx", _look_up)


def english_in(text: str, *plans: SewingPlan, known: Sequence[str] = ()) -> list[str]:
    """Return the words of a text that neither an author wrote, nor are known, nor are in the strange language."""
    texts = (own for plan in plans for own in _authors_texts(plan))
    known = {word.lower() for own in (*texts, *known) for word in _WORD.findall(own)}
    return [word for word in _WORD.findall(_KEPT.sub("", text)) if word.lower() not in known]


def _authors_texts(plan: SewingPlan) -> Iterator[str]:
    block = plan.block
    yield from (block.name, block.family)
    yield from block.notes
    for credit in block.credits:
        yield from (credit.name, credit.author, credit.licence, credit.source)
    for fabric in block.fabrics:
        yield from (fabric.id, fabric.title, fabric.role, fabric.colour)
    for patch in block.patches:
        yield from (patch.id, patch.name, *patch.group)
    yield from (placed.block for placed in plan.pressing.versions)
    yield from plan.junction_names


class SeenOrHeard(HTMLParser):
    """What a page or a drawing shows or has read aloud: its text, and the attributes that hold words."""

    WORDS = ("aria-label", "alt", "title", "placeholder", "data-says")

    def __init__(self) -> None:
        super().__init__()
        self.texts: list[str] = []
        self._unseen = ""

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """Note the attributes; what stands in a style or a script is not seen."""
        self._unseen = tag if tag in ("style", "script") else self._unseen
        self.texts += [value for name, value in attrs if name in self.WORDS and value]

    def handle_endtag(self, tag: str) -> None:
        """Look again after a style or a script."""
        self._unseen = "" if tag == self._unseen else self._unseen

    def handle_data(self, data: str) -> None:
        """Note a text."""
        if not self._unseen:
            self.texts.append(data)


def seen_or_heard(page: str) -> str:
    """Return the words of a page or a drawing."""
    reader = SeenOrHeard()
    reader.feed(page)
    reader.close()
    return "\n".join(reader.texts)
