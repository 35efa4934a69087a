"""Every faulty file in tests/cases, held against the messages that it must get.

A case is NAME.block beside NAME.txt: the source, a line of dashes, and the messages as people see them. To renew the
texts after a change of wording, run `BLOCKLANG_RENEW=1 pytest tests/test_cases.py` and read the difference.
Files in tests/cases/placed are there to be placed by cases.
"""

import os
from pathlib import Path

import pytest

from blocklang.diagnostics import Diagnostic, Severity, SourceText, render_long
from blocklang.language import decode_source, evaluate, parse

CASES = Path(__file__).with_name("cases")
RULE = "-" * 80
RENEW = bool(os.environ.get("BLOCKLANG_RENEW"))


class PlacedCases:
    """Finds blocks in tests/cases/placed."""

    def find(self, name: str, placing: SourceText) -> SourceText | Diagnostic | None:
        """Return the text of tests/cases/placed/NAME.block."""
        path = CASES / "placed" / f"{name}.block"
        if not path.is_file():
            return None
        read = decode_source(path.name, path.read_bytes())
        return read if isinstance(read, SourceText) else read[0]

    def names(self) -> tuple[str, ...]:
        """Return the names of those files."""
        return tuple(sorted(path.stem for path in (CASES / "placed").glob("*.block")))


def check_source(name: str, content: bytes) -> tuple[Diagnostic, ...]:
    """Take a file as far along the route as it gets, and return all that is found wrong with it."""
    source = decode_source(name, content)
    if not isinstance(source, SourceText):
        return source
    parsed = parse(source)
    if parsed.tree is None:
        return parsed.diagnostics
    evaluated = evaluate(parsed.tree, finder=PlacedCases())
    found = parsed.diagnostics + evaluated.diagnostics
    if evaluated.block is None or any(one.severity is Severity.ERROR for one in found):
        return found
    from blocklang.assembly import assemble
    from blocklang.graph import build_graph
    from blocklang.pressing import press

    graphed = build_graph(evaluated.block)
    if graphed.graph is None:
        return found + graphed.diagnostics
    assembled = assemble(graphed.graph)
    pressed = press(assembled.assembly).diagnostics if assembled.assembly is not None else ()
    return found + graphed.diagnostics + assembled.diagnostics + pressed


def shown(path: Path) -> str:
    """Return a case with its messages, as its text file must say it."""
    content = path.read_bytes()
    source = content.decode("utf-8", "backslashreplace").replace("\0", "\\0").replace("\r", "\\r")
    return f"{source.rstrip()}\n{RULE}\n{render_long(check_source(path.name, content))}"


NAMES = sorted(path.stem for path in CASES.glob("*.block"))


@pytest.mark.parametrize("name", NAMES)
def test_a_faulty_file_is_told_what_is_wrong(name: str) -> None:
    said = shown(CASES / f"{name}.block")
    expected = CASES / f"{name}.txt"
    if RENEW:
        expected.write_text(said, encoding="utf-8")
    assert said == expected.read_text(encoding="utf-8")
    assert said.partition(f"{RULE}\n")[2], "a case without a message is no case"


def test_no_expected_text_is_left_without_its_file() -> None:
    assert sorted(path.stem for path in CASES.glob("*.txt")) == NAMES
