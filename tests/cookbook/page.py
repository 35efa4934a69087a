"""docs/cookbook.md, taken apart into drafts: the steps of each file, its slips, and what the page shows about it."""

import re
from pathlib import Path
from typing import NamedTuple

DOCS = Path(__file__).parents[2] / "docs"
TEXT = (DOCS / "cookbook.md").read_text(encoding="utf-8")
KINDS = ("step", "console", "block")
EVENT = re.compile(r"^```(\w+)\n(.*?)^```$|((?:^(?!```)[^\n]*\n)+)", re.MULTILINE | re.DOTALL)
COMMAND = re.compile(r"^\$ (.*)\n((?:(?!\$ ).*\n)*)", re.MULTILINE)
FROM = re.compile(r"From the line `([^`]+)` on, the file now reads:$")
INSTEAD = re.compile(r"`([^`]+)` instead of `([^`]+)`")
WITHOUT = re.compile(r"leave out the (first )?line `([^`]+)`")


class Shown(NamedTuple):
    """A command with what the page shows of its answer, and the file as it stands at that place of the page."""

    file: str
    command: str
    said: str
    wrong: bool


class Draft(NamedTuple):
    """One draft: `growing` has the file as it is after each step, `before` says of which steps the block laid apart is."""

    title: str
    name: str
    growing: tuple[str, ...]
    final: str
    shown: tuple[Shown, ...]
    picture: str
    described: str
    apart: str
    before: str


def fences() -> list[tuple[str, str]]:
    """Return every fenced part of the page with its kind."""
    return re.findall(r"^```([^\n]*)\n(.*?)^```$", TEXT, re.DOTALL | re.MULTILINE)


def drafts() -> tuple[Draft, ...]:
    """Return every section that leads to a file."""
    sections = re.split(r"^## ", TEXT, flags=re.MULTILINE)[1:]
    return tuple(_draft(*section.split("\n", 1)) for section in sections if "**The file**" in section)


def _draft(title: str, body: str) -> Draft:
    (name,) = re.findall(r"\*\*The file\*\*, `([\w-]+\.block)`", body)
    pictures = re.findall(r'<img src="([^"]+)" width="\d+" alt="([^"]+)">', body)
    ((picture, described), (apart, before)) = pictures
    ((_, final),) = (found for found in re.findall(r"^```(block)\n(.*?)^```$", body, re.DOTALL | re.MULTILINE))
    text, prose, wrong = "", "", None
    growing: list[str] = []
    shown: list[Shown] = []
    for kind, fenced, between in EVENT.findall(body):
        if between:
            prose = " ".join(between.strip().split("\n\n")[-1].split("\n"))
            wrong = _slip(prose, final) if "slip.**" in prose else None
        elif kind == "step":
            text = _grown(text, fenced, prose)
            growing.append(text)
        elif kind == "block":
            text = fenced
        else:
            shown += [Shown(wrong or text, command, said, bool(wrong)) for command, said in COMMAND.findall(fenced)]
    return Draft(title, name, tuple(growing), final, tuple(shown), picture, described, apart, before)


def _grown(text: str, fenced: str, prose: str) -> str:
    """Return the file with what a step adds, or writes anew from a line on."""
    begun = FROM.search(prose)
    if not begun:
        return text + fenced
    kept, line, _ = text.partition(f"{begun[1]}\n")
    assert line, f"the file has no line {begun[1]}"
    return kept + fenced


def _slip(prose: str, final: str) -> str:
    """Return the finished file with the slip that a paragraph tells."""
    without = WITHOUT.search(prose)
    if without:
        lines = final.splitlines(keepends=True)
        places = [place for place, line in enumerate(lines) if line.strip() == without[2]]
        assert places and (without[1] or len(places) == 1), prose
        return "".join(lines[: places[0]] + lines[places[0] + 1 :])
    ((new, old),) = INSTEAD.findall(prose)
    assert final.count(old) == 1, f"`{old}` should stand in the file once"
    return final.replace(old, new)
