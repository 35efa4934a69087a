"""The target that types command lines: every option that takes a text, with any text; nothing is written."""

import io
import os
from contextlib import redirect_stderr, redirect_stdout
from functools import cache

from blocklang import extensions
from blocklang.cli import plugged
from blocklang.cli.program import run
from tests.fuzz.choices import Choices
from tests.fuzz.routes import QUICK, SETTINGS, outputs
from tests.fuzz.watching import promise

BLOCKS = [
    "nine-patch",
    "pinwheel",
    "flying-geese",
    "nosuch",
    "tides.pack/x",
    "",
    "-",
    "../nine-patch",
    "nine-patch.block",
    "\x00",
]
LENGTHS = ["6in", "6 1/2 in", "15cm", "0", "-1", "1/0 in", "1" * 30, "9" * 17, "½", "6 in by 4", "size", "width * 2", "sqrt 2", "1e3", "(", "6\n7",
           "1001 in", "0.1 in", "250mm", "tan 90 deg", "1 / 0", "", " ", "６in", "1 in # x", "3/8in", "42 in", "4in", "200in", "12 0/0 in", "1/00 in"]  # fmt: skip
FABRICS = [
    "fog=#ffffff",
    "background=#abc",
    "=",
    "fog=",
    "=#fff",
    "fog",
    "fog=red",
    "nosuch=#000",
    "fog=#12345",
    "fog=#gggggg",
    "fog==#fff",
    "fog=#١٢٣",
]
RANGES = [
    "9",
    "..40",
    "20..",
    "9..16",
    "no",
    "some",
    "..",
    "a",
    "-1",
    "9..1",
    "9" * 40,
    "1..2..3",
    "½",
    "",
    "6in..9in",
    "..9in",
    "1/0in..",
]


def command_line(data: bytes) -> None:
    """Run one command line; it ends with 0, 1 or 2."""
    choices = Choices(data)
    arguments = choices.one_of([_check, _plan, _make, _library, _anything])(choices)
    out, err = (io.TextIOWrapper(io.BytesIO(), encoding="utf-8") for _ in range(2))
    os.environ.pop("BLOCKLANG_LIBRARY", None)
    plugged_once()
    with redirect_stdout(out), redirect_stderr(err):
        code = run(arguments)
        out.flush()
        err.flush()
    promise(code in (0, 1, 2), f"exit code {code}")
    said = err.buffer.getvalue()  # type: ignore[attr-defined]
    promise(code == 0 or bool((out.buffer.getvalue() + said).strip()), f"exit code {code} without a word")  # type: ignore[attr-defined]
    promise(b"Traceback" not in said and b"broken-" not in said, f"said {said[-200:]!r}")
    promise(b"It fails with" not in said, f"said {said[-300:]!r}")


@cache
def plugged_once() -> None:
    """Load the plugins once for all command lines, and make the index of the library, which takes its time."""
    loaded = extensions.load_plugins()
    plugged.Plugged._loaded = lambda self: loaded  # type: ignore[method-assign]
    with redirect_stdout(io.TextIOWrapper(io.BytesIO())):
        run(["library"])


def _text(choices: Choices, offered: list[str]) -> str:
    """Return one of the texts offered, now and then with changes, or any text."""
    text = choices.one_of(offered)
    if choices.yes(3):
        at = choices.below(len(text) + 1)
        text = text[:at] + choices.take(choices.below(4)).decode("utf-8", "replace") + text[at + choices.below(3) :]
    if choices.yes(1):
        text = choices.take(choices.below(20)).decode("utf-8", "surrogateescape")
    return text


def _block_options(choices: Choices) -> list[str]:
    said = []
    if choices.yes(8):
        said += ["--size", _text(choices, LENGTHS)]
    for _ in range(choices.below(3)):
        said += ["--fabric", _text(choices, FABRICS)]
    return said


def _plan_options(choices: Choices) -> list[str]:
    said = []
    for option, offered in (
        ("--copies", ["1", "20", "0", "10000", "10001", "x", "١"]),
        ("--units", ["in", "cm", "mm", "ft"]),
        ("--rounding", ["eighths", "sixteenths", "millimetres", "x"]),
        ("--oversize", LENGTHS),
        ("--fabric-width", LENGTHS),
        ("--shrinkage", ["3", "0", "20", "nan", "inf", "1e-300", "2.5", "-0", "x"]),
        ("--technique", ["hand-piecing", "x"]),
    ):
        if choices.yes(4):
            said += [option, _text(choices, offered)]
    return said + (["--nearest"] if choices.yes(3) else [])


def _check(choices: Choices) -> list[str]:
    form = choices.one_of(["text", "short", "json"])
    return ["check", _text(choices, BLOCKS), *_block_options(choices), "--format", form]


def _plan(choices: Choices) -> list[str]:
    form = choices.one_of([[], ["--why"], ["--format", "json"]])
    return ["plan", _text(choices, BLOCKS[:3]), *_block_options(choices), *_plan_options(choices), *form]


def _make(choices: Choices) -> list[str]:
    output = choices.one_of(outputs())
    form = choices.one_of([one for one in output.formats if one in QUICK])
    said = ["make", output.name, choices.one_of(BLOCKS[:3]), "-o", "-", "-f", form]
    for one in output.settings:
        if choices.yes(6):
            said += ["--set", f"{one.name}={_text(choices, list(one.choices) or SETTINGS)}"]
    if choices.yes(2):
        said += ["--set", _text(choices, ["x=1", "=", "x"])]
    return said + _block_options(choices) + _plan_options(choices)


def _library(choices: Choices) -> list[str]:
    said = ["library"]
    for option in ("--size", "--patches", "--set-in", "--partial", "--curved"):
        if choices.yes(5):
            said += [option, _text(choices, RANGES)]
    return (
        said + choices.some_of(["star", "\x00", "é", "--picture"], 2) + (["--format", "json"] if choices.yes(4) else [])
    )


def _anything(choices: Choices) -> list[str]:
    """Return words in any order; none of these commands writes a file."""
    words = [
        "check",
        "plan",
        "library",
        "outputs",
        "verify",
        "completion",
        "--help",
        "--version",
        "--",
        "-",
        "--size",
        "x.pack",
        "bash",
        *BLOCKS,
        *LENGTHS,
    ]
    return [choices.one_of(words[:6]), *(_text(choices, words) for _ in range(choices.below(5)))]
