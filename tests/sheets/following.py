"""Reads the sewing sheet as text, as somebody would who has nothing else to sew from."""

import re
from collections import Counter
from dataclasses import dataclass
from fractions import Fraction
from itertools import takewhile

NUMBER = r"(?:\d+ \d+/\d+|\d+/\d+|\d+)"
_COUNTS = {"one": 1, "two": 2, "it": 1}


def inches(said: str) -> Fraction:
    """Return what a measure says: "3 1/2", "7/8"."""
    return sum((Fraction(part) for part in said.split()), Fraction(0))


def count_of(said: str) -> int:
    """Return a count, in figures or as a word."""
    return _COUNTS[said] if said in _COUNTS else int(said)


@dataclass(frozen=True, slots=True)
class CutLine:
    """A line of the cutting list; `shapes` is how many shapes are cut from strips before any are cut across."""

    fabric: str
    name: str
    kind: str
    measures: tuple[Fraction, ...]
    shapes: int
    count: int
    left_over: int


@dataclass(frozen=True, slots=True)
class StripLine:
    """Strips of one width, and how many of which piece each of them holds."""

    fabric: str
    strips: int
    width: Fraction
    holds: tuple[tuple[int, str], ...]


@dataclass(frozen=True, slots=True)
class StepText:
    """A step as it stands there; `lots` says how often what is taken, `parts` what the first lot takes."""

    number: int
    title: str
    make: int
    lots: tuple[tuple[int, tuple[tuple[str, int], ...]], ...]
    sentences: tuple[str, ...]

    def saying(self, pattern: str) -> tuple[re.Match[str], ...]:
        """Return every place in the step's sentences that says something of the kind."""
        return tuple(found for sentence in self.sentences for found in re.finditer(pattern, sentence))

    @property
    def parts(self) -> tuple[tuple[str, int], ...]:
        """Return what is taken to make the step for the first time."""
        return self.lots[0][1]

    def makes(self) -> str:
        """Return what comes out, without an article."""
        (name,) = {
            found[1].removeprefix("the ")
            for found in self.saying(r"^(?:Check: |This makes )(the block|unit [A-Z]+)(?: measures .*)?\.$")
        }
        return name


@dataclass(frozen=True, slots=True)
class SheetText:
    """The whole sheet, read."""

    lines: tuple[str, ...]
    head: tuple[str, ...]
    sections: dict[str, tuple[str, ...]]
    fabrics: tuple[str, ...]
    cuts: tuple[CutLine, ...]
    strips: tuple[StripLine, ...]
    steps: tuple[StepText, ...]

    def fact(self, pattern: str) -> re.Match[str]:
        """Return the one sentence outside the steps that says this."""
        said = " ".join((*self.head, *(item for items in self.sections.values() for item in items)))
        (found,) = re.finditer(pattern, said)
        return found

    def cut_line(self, said: str) -> CutLine:
        """Return the one line of the cutting list that a piece named in a step can mean."""
        said = said.removeprefix("the ")
        (line,) = (line for line in self.cuts if said in (line.name, f"{line.fabric} {line.name}"))
        assert said != line.name or sum(line.name == other.name for other in self.cuts) == 1, said
        return line


def read_sheet(text: str) -> SheetText:
    """Return what a sheet says."""
    lines = tuple(text.splitlines())
    rules = [index for index, line in enumerate(lines) if index and set(line) in ({"-"}, {"="})]
    titles = [index - 1 for index in rules]
    blocks = {
        lines[title]: lines[title + 2 : end] for title, end in zip(titles, [*titles[1:], len(lines)], strict=True)
    }
    name, *sections = blocks
    cutting = blocks["Cutting"]
    fabrics, cuts, strips = _read_cutting(tuple(takewhile(lambda line: not line.startswith("- "), cutting)))
    return SheetText(
        lines,
        (name, *_unwrap([blocks[name]])),
        {title: _items(blocks[title]) for title in sections if title != "Sewing"},
        fabrics,
        cuts,
        strips,
        _read_steps(blocks["Sewing"]),
    )


def _unwrap(paragraphs: list[tuple[str, ...]]) -> tuple[str, ...]:
    """Join lines that were wrapped; a line that was broken after a hyphen goes on without a space."""
    return tuple(
        "".join(line.strip() + ("" if line.endswith("-") else " ") for line in lines).strip() for lines in paragraphs
    )


def _items(lines: tuple[str, ...], bullet: str = "- ") -> tuple[str, ...]:
    """Return the items of a list, each on one line again."""
    items: list[list[str]] = []
    for line in lines:
        if line.startswith(bullet):
            items.append([line.removeprefix(bullet)])
        elif items and line.startswith(" " * len(bullet)):
            items[-1].append(line.strip())
    return _unwrap([tuple(item) for item in items])


def _read_cutting(lines: tuple[str, ...]) -> tuple[tuple[str, ...], tuple[CutLine, ...], tuple[StripLine, ...]]:
    told: dict[str, list[str]] = {}
    fabric = ""
    for line in lines:
        if line and not line.startswith(" "):
            fabric = line.split(" (")[0]
            told[fabric] = []
        elif line.startswith("  ") and fabric:
            told[fabric].append(line)
    cuts, strips = [], []
    for fabric, said in told.items():
        for sentence in re.split(r"(?<=\.) ", _unwrap([tuple(said)])[0]):
            if sentence.startswith("Cut "):
                strips.append(_strip_line(fabric, sentence))
            else:
                name, _, how = sentence.partition(": ")
                cuts.append(_cut_line(fabric, name, how))
    return tuple(told), tuple(cuts), tuple(strips)


def _strip_line(fabric: str, sentence: str) -> StripLine:
    found = re.fullmatch(rf"Cut (\d+) strips? ({NUMBER}) in wide(?: for the strip set|: (.*?)( each)?)\.", sentence)
    assert found is not None, sentence
    holds = re.findall(r"(\d+) for (.+?)(?=, \d| and \d|$)", found[3] or "")
    return StripLine(fabric, int(found[1]), inches(found[2]), tuple((int(n), name) for n, name in holds))


_HOW = {
    "set": r"Cut (?P<count>\d+) from the strip set\.",
    "template": r"Cut (?P<count>\d+) with the template, .*\.",
    "square": rf"Cut (?P<count>\d+) squares? (?P<a>{NUMBER}) in\.",
    "rectangle": rf"Cut (?P<count>\d+) rectangles? (?P<a>{NUMBER}) x (?P<b>{NUMBER}) in\.",
    "once": rf"Cut (?P<shapes>\d+) squares? (?P<a>{NUMBER}) in; cut (?:it|each) once across, corner to corner, "
    r"for (?P<count>\d+) triangles?(?: \((?P<over>\d+) left over\))?\.",
    "twice": rf"Cut (?P<shapes>\d+) squares? (?P<a>{NUMBER}) in; cut (?:it|each) twice across, corner to corner, "
    r"for (?P<count>\d+) triangles?(?: \((?P<over>\d+) left over\))?\.",
    "slanted": rf"From strips (?P<a>{NUMBER}) in wide cut (?P<count>\d+) at (?P<angle>\d+) degrees, "
    rf"(?P<b>{NUMBER}) in apart\.",
    "pointed": rf"From strips (?P<a>{NUMBER}) in wide cut (?P<count>\d+) triangles? at (?P<angle>\d+) degrees, "
    rf"to and fro, each (?P<b>{NUMBER}) in along its base\.",
}


def _cut_line(fabric: str, name: str, sentence: str) -> CutLine:
    ((kind, found),) = ((kind, m) for kind, how in _HOW.items() if (m := re.fullmatch(how, sentence)))
    said = found.groupdict()
    measures = tuple(inches(said[key]) for key in ("a", "b", "angle") if said.get(key))
    count = int(said["count"])
    return CutLine(fabric, name, kind, measures, int(said.get("shapes") or count), count, int(said.get("over") or 0))


def _read_steps(lines: tuple[str, ...]) -> tuple[StepText, ...]:
    first, *steps = "\n".join(lines).strip("\n").split("\n\n")
    assert _unwrap([tuple(first.splitlines())])[0].startswith("Left, right, up and down are told as the pieces lie")
    return tuple(_step(tuple(step.splitlines())) for step in steps)


def _step(lines: tuple[str, ...]) -> StepText:
    head = tuple(line for line in lines if not line.startswith(" "))
    parts = tuple(line for line in lines if re.match(r"   [^ -]", line))
    found = re.fullmatch(r"(\d+)\. (.*)\. Make (\d+)\.", _unwrap([head])[0])
    assert found is not None, head
    return StepText(
        int(found[1]),
        found[2],
        int(found[3]),
        _lots(_unwrap([parts])[0], int(found[3])),
        _items(lines, "   - "),
    )


def _lots(said: str, times: int) -> tuple[tuple[int, tuple[tuple[str, int], ...]], ...]:
    """Return how often what is taken: "unit A + side", or "2 from side + corner; 4 from rim + corner"."""
    lots = re.findall(r"(?:^|; )(\d+) from ([^;]+)", said) or [(str(times), said)]
    return tuple((int(number), tuple(_part(part) for part in parts.split(" + "))) for number, parts in lots)


def _part(said: str) -> tuple[str, int]:
    name, _, count = said.partition(" × ")
    return name, int(count or 1)


def total(parts: tuple[tuple[str, int], ...]) -> int:
    """Return how many pieces and units lie ready to make a step once."""
    return sum(count for _, count in parts)


def shelf(sheet: SheetText) -> Counter[str]:
    """Return the pieces that are cut, as a step names them."""
    names = Counter(line.name for line in sheet.cuts)
    return Counter(
        {line.name if names[line.name] == 1 else f"{line.fabric} {line.name}": line.count for line in sheet.cuts}
    )
