"""The real command line on hostile files: one plain answer, soon, in little memory, and nothing live comes out."""

import os
import resource
import subprocess
import sys
from collections.abc import Callable
from dataclasses import dataclass
from html.parser import HTMLParser
from pathlib import Path
from xml.etree import ElementTree

import pytest

from blocklang.limits import DEEPEST_GROUPS, MOST_BYTES, MOST_PATCHES

MOST_SECONDS = 4.0  # of processor time, for one command
MOST_MEMORY = 500_000_000  # bytes of address space, for `check`
TITLE = "a title"
HEADING = f"""block "Harbour Light"
language 1
size 6 in
fabric fog as F background light #e8eef2 "{TITLE}"
fabric deep as D accent dark #1f3a5f
"""
SOUND = f"{HEADING}rows\n  F D\n  D F\nend\n"
HUGE = "1" + "0" * 400
MISCHIEF = {
    "section-end": "]]>",
    "script": "</svg><script>alert(1)</script>",
    "title-end": "</title><script>alert(1)</script>",
    "attribute": "' onload='alert(1)",
    "image": "<img src=x onerror=alert(1)>",
    "remark": "<!-- <script>alert(1)</script>",
    "entities": "&lt;script&gt; &nbsp; &#60;",
    "template": "{{ 7 * 7 }} {% raw %}",
}
HIDDEN = {"bell": "\a", "escape": "\x1b[31m", "delete": "\x7f", "next-line": "\x85", "right-to-left": "\u202e"}


@dataclass(frozen=True)
class Ran:
    """What a command did, and the processor time that it took."""

    code: int
    said: str
    seconds: float


def limit_memory() -> None:
    resource.setrlimit(resource.RLIMIT_AS, (MOST_MEMORY, MOST_MEMORY))


def child_seconds() -> float:
    used = resource.getrusage(resource.RUSAGE_CHILDREN)
    return used.ru_utime + used.ru_stime


def run(folder: Path, *arguments: str, given: bytes | None = None) -> Ran:
    """Run one command in a folder and hold it to what every command owes: no traceback, and little time."""
    before = child_seconds()
    ran = subprocess.run(
        [sys.executable, "-m", "blocklang", *arguments],
        cwd=folder,
        input=given,
        stdin=subprocess.DEVNULL if given is None else None,
        capture_output=True,
        timeout=20,
        check=False,
        env={name: value for name, value in os.environ.items() if name != "BLOCKLANG_LIBRARY"},
        preexec_fn=limit_memory if arguments[0] == "check" else None,
    )
    done = Ran(ran.returncode, (ran.stdout + ran.stderr).decode(), child_seconds() - before)
    assert "Traceback" not in done.said
    assert "MemoryError" not in done.said
    assert done.seconds < MOST_SECONDS
    return done


def written(folder: Path, text: str) -> str:
    (folder / "hostile.block").write_text(text, encoding="utf-8", newline="\n")
    return "hostile.block"


def commands(file: str) -> tuple[tuple[str, ...], ...]:
    return (("check", file), ("plan", file), ("make", "diagram", file, "-o", "made.svg"))


def nested(count: int) -> str:
    return HEADING + "turn 2 about centre\n" * count + "patch p of fog through centre se ne\n" + "end\n" * count


def in_turns(*counts: int) -> str:
    opened = "".join(f"turn {count} about centre\n" for count in counts)
    return f"{HEADING}{opened}patch p of fog through centre se ne\n" + "end\n" * len(counts)


def rows_of(columns: int, rows: int) -> str:
    return f"{HEADING}rows\n" + ("F D " * (columns // 2) + "\n") * rows + "end\n"


def turns_of_rows() -> str:
    return rows_of(100, 100).replace("rows\n", "turn 100 about centre\nrows\n") + "end\n"


TOO_LARGE = f"holds at most {MOST_BYTES:,} bytes"
TOO_DEEP = f"at most {DEEPEST_GROUPS} deep"
TOO_LONG = "A number has at most 18 characters; this one has 401."
TOO_MANY = f"A block has at most {MOST_PATCHES:,} patches"
EXCESSES: dict[str, tuple[Callable[[], str], str]] = {
    "groups-200000-deep": (lambda: nested(200_000), TOO_LARGE),
    "groups-25000-deep": (lambda: nested(25_000), TOO_DEEP),
    "groups-never-closed": (lambda: HEADING + "turn 2 about centre\n" * 35_000, TOO_DEEP),
    "fifty-megabytes": (lambda: HEADING + f"# {'x' * 97}\n" * 500_000, TOO_LARGE),
    "one-line-of-fifty-megabytes": (lambda: "x" * 50_000_000, TOO_LARGE),
    "one-name-of-a-megabyte": (lambda: f"{HEADING}let {'x' * 1_000_000} = 1\n", "at most 60 characters"),
    "one-text-of-a-megabyte": (lambda: f'{HEADING}note "{"x" * 1_000_000}"\n', "at most 500 characters"),
    "a-million-turns": (lambda: in_turns(1_000_000), "from 2 to 360; this says 1000000."),
    "huge-size": (lambda: SOUND.replace("size 6 in", f"size {HUGE} in"), TOO_LONG),
    "huge-length": (lambda: f"{HEADING}point p at {HUGE} in, 1 in\n", TOO_LONG),
    "huge-fraction": (lambda: f"{HEADING}let a = 1/{HUGE}\n", "A number has at most 18 characters; this one has 403."),
    "huge-turn": (lambda: f"{HEADING}turn {HUGE} about centre\nend\n", TOO_LONG),
    "squares-of-squares": (
        lambda: f"{HEADING}let a0 = 99999999\n" + "".join(f"let a{n + 1} = a{n} * a{n}\n" for n in range(40)),
        "larger than 1,000,000,000",
    ),
    "a-million-patches-in-turns": (lambda: in_turns(100, 100, 100), TOO_MANY),
    "the-most-patches-in-turns": (lambda: in_turns(360, 360, 360, 360, 360, 360), TOO_MANY),
    "a-million-patches-in-turned-rows": (turns_of_rows, TOO_MANY),
    "a-million-cells": (lambda: rows_of(1000, 1000), TOO_LARGE),
    "as-many-cells-as-a-file-holds-words": (lambda: rows_of(85, 1000), TOO_MANY),
    "too-many-cells": (lambda: rows_of(200, 200), TOO_MANY),
    "fabric-named-script": (
        lambda: SOUND.replace("fabric fog", "fabric <script>"),
        "`<` (U+003C) has no meaning in a block file.",
    ),
}


@pytest.mark.parametrize("excess", EXCESSES)
def test_excess_is_refused_by_every_command(excess, tmp_path) -> None:
    make, found = EXCESSES[excess]
    file = written(tmp_path, make())
    for arguments in commands(file):
        ran = run(tmp_path, *arguments)
        assert (ran.code, found in ran.said) == (1, True), (arguments, ran.said[:2000])
        assert len(ran.said) < 20_000
    assert not (tmp_path / "made.svg").exists()


@pytest.mark.parametrize(("opening", "closing"), [("(", ")"), ("sqrt ", ""), ("- ", ""), ("(", "")])
def test_arithmetic_nested_by_the_ten_thousand_ends_with_an_answer(opening, closing, tmp_path) -> None:
    file = written(tmp_path, SOUND.replace("rows", f"let a = {opening * 40_000}1{closing * 40_000}\nrows"))
    ran = run(tmp_path, "check", file)
    assert ran.code == 0 if closing else ran.code == 1
    assert ("hostile.block: fine" in ran.said) == bool(closing)


@pytest.mark.parametrize(
    "content",
    [
        b"\xff\xfe" + SOUND.encode("utf-16-le"),
        SOUND.replace(TITLE, "caf\xe9").encode("latin-1"),
        bytes(range(128, 256)) * 400,
    ],
    ids=["utf-16", "latin-1", "noise"],
)
def test_file_that_is_not_utf_8_is_refused(content, tmp_path) -> None:
    (tmp_path / "hostile.block").write_bytes(content)
    for arguments in commands("hostile.block"):
        ran = run(tmp_path, *arguments)
        assert ran.code == 1
        assert "`hostile.block` is not a text file" in ran.said
        assert "is not UTF-8 text" in ran.said


def test_folder_is_refused(tmp_path) -> None:
    (tmp_path / "hostile.block").mkdir()
    for arguments in commands("hostile.block"):
        ran = run(tmp_path, *arguments)
        assert (ran.code, "`hostile.block` is a folder" in ran.said) == (1, True)


def test_missing_file_is_refused_as_mistyped(tmp_path) -> None:
    for arguments in commands("hostile.block"):
        ran = run(tmp_path, *arguments)
        assert (ran.code, "There is no file `hostile.block`." in ran.said) == (2, True)


def test_endless_input_is_refused(tmp_path) -> None:
    (tmp_path / "hostile.block").symlink_to("/dev/zero")
    ran = run(tmp_path, "check", "hostile.block")
    assert (ran.code, TOO_LARGE in ran.said) == (1, True)


def test_standard_input_is_refused_whole_rather_than_read_in_part(tmp_path) -> None:
    ran = run(tmp_path, "check", "-", given=SOUND.encode() + (b"#" * 100 + b"\n") * 500_000)
    assert (ran.code, TOO_LARGE in ran.said) == (1, True), ran.said


def mischievous(text: str) -> str:
    """Return a sound block that says a text wherever people may say one."""
    named = SOUND.replace("Harbour Light", text).replace(TITLE, text)
    return named.replace("fabric fog", f'by "{text}"\nsource "{text}"\nnote "{text}"\nfabric fog')


@pytest.mark.parametrize("hidden", HIDDEN)
def test_control_character_in_a_text_is_refused_and_never_printed(hidden, tmp_path) -> None:
    file = written(tmp_path, mischievous(f"red{HIDDEN[hidden]}tide"))
    for arguments in commands(file):
        ran = run(tmp_path, *arguments)
        assert (ran.code, ran.said.count("error: This text holds a hidden character")) == (1, 5), ran.said
        assert HIDDEN[hidden][0] not in ran.said
    assert not (tmp_path / "made.svg").exists()


class Elements(HTMLParser):
    """The elements, attributes and words of a page, as a browser would take them."""

    def __init__(self, page: str) -> None:
        super().__init__()
        self.names: set[str] = set()
        self.attributes: set[str] = set()
        self.words = ""
        self.scripts: list[str] = []
        self.in_script = False
        self.feed(page)
        self.close()

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.names.add(tag)
        self.attributes |= {name for name, _ in attrs}
        self.in_script = tag == "script"

    def handle_endtag(self, tag: str) -> None:
        self.in_script = False

    def handle_data(self, data: str) -> None:
        if self.in_script:
            self.scripts.append(data)
        self.words += data


@pytest.mark.parametrize("mischief", MISCHIEF)
def test_text_is_only_text_in_drawings(mischief, tmp_path) -> None:
    text = MISCHIEF[mischief]
    file = written(tmp_path, mischievous(text))
    assert run(tmp_path, "check", file).code == 0
    assert run(tmp_path, "make", "diagram", file, "-o", "made.svg").code == 0
    elements = list(ElementTree.parse(tmp_path / "made.svg").iter())
    assert {element.tag.partition("}")[2] for element in elements} <= {"svg", "title", "g", "path", "text", "defs"}
    assert not [name for element in elements for name in element.attrib if name.lower().startswith("on")]
    assert any((element.text or "").startswith(text) for element in elements)


def page_of(folder: Path, output: str, words: str) -> Elements:
    """Return the page that an output makes of a block with these words in it."""
    assert run(folder, "make", output, written(folder, mischievous(words)), "-o", "page.html").code == 0
    return Elements((folder / "page.html").read_text("utf-8"))


@pytest.fixture(scope="module", params=["sewing-sheet", "cutting-list"])
def plain_page(request, tmp_path_factory) -> tuple[str, Elements]:
    """Make an output of a block with harmless words, once."""
    return request.param, page_of(tmp_path_factory.mktemp("plain"), request.param, TITLE)


@pytest.mark.parametrize("mischief", MISCHIEF)
def test_text_is_only_text_in_pages(mischief, plain_page, tmp_path) -> None:
    text = MISCHIEF[mischief]
    output, plain = plain_page
    hostile = page_of(tmp_path, output, text)
    assert text in hostile.words
    assert hostile.names == plain.names
    assert hostile.attributes == plain.attributes
    assert hostile.scripts == plain.scripts and len(plain.scripts) <= 1, "only the page's own script, word for word"
    assert not [name for name in hostile.attributes if name.startswith("on")]


@pytest.mark.parametrize("mischief", MISCHIEF)
def test_text_is_printed_as_it_stands_in_the_plan(mischief, tmp_path) -> None:
    ran = run(tmp_path, "plan", written(tmp_path, mischievous(MISCHIEF[mischief])))
    assert ran.code == 0
    assert MISCHIEF[mischief] in ran.said
