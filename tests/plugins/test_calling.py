"""What plugins offered is called; whatever happens in there becomes a diagnostic."""

import pytest

from blocklang.calling import make_files, run_checks
from blocklang.diagnostics import Diagnostic, Severity
from blocklang.hooks import CannotMakeError, Check, OutputFile, OutputOptions
from tests.plugins.strangers import an_output

OPTIONS = OutputOptions("txt")
NOTE = Diagnostic("shallow", Severity.NOTE, "Shallow water", "The block is small.")


def raising(fault: Exception):
    def fail(*_: object):
        raise fault

    return fail


def test_files_of_an_output_are_handed_on() -> None:
    made = make_files(an_output("hello"), None, OPTIONS)
    assert (made.files, made.diagnostics) == ((OutputFile("", b"hello"),), ())


def test_output_that_cannot_be_made_says_its_own_sentence() -> None:
    output = an_output("hello", make=raising(CannotMakeError("Install the anchor first.")))
    (diagnostic,) = make_files(output, None, OPTIONS).diagnostics
    assert (diagnostic.severity, diagnostic.found) == (Severity.ERROR, "Install the anchor first.")


def test_output_that_fails_is_named() -> None:
    (diagnostic,) = make_files(an_output("hello", make=raising(ZeroDivisionError("0"))), None, OPTIONS).diagnostics
    assert diagnostic.title == "The output `hello` cannot be made"
    assert diagnostic.found == "It fails with ZeroDivisionError: 0."


@pytest.mark.parametrize(
    ("files", "found"),
    [
        (b"hello", "It gives something other than a tuple of files."),
        ((b"hello",), "It gives something other than a tuple of files."),
        ((), "It should give exactly one file without a name of its own."),
        ((OutputFile("", b""), OutputFile("", b"")), "It should give exactly one file without a name of its own."),
        ((OutputFile("", b""), OutputFile("a", b""), OutputFile("a", b"")), "It gives two files of one name."),
        (
            (OutputFile("", b""), OutputFile("../a", b"")),
            "It gives a file the name '../a', which is not a plain file name.",
        ),
    ],
)
def test_output_that_gives_something_else_is_refused(files, found) -> None:
    made = make_files(an_output("hello", make=lambda plan, options: files), None, OPTIONS)
    assert made.files == ()
    assert [one.found for one in made.diagnostics] == [found]


def test_checks_run_in_order_and_a_broken_one_does_not_stop_the_next() -> None:
    checks = (
        Check("aground", "Fails.", raising(RuntimeError("aground"))),
        Check("chatty", "Gives a list.", lambda plan: [NOTE]),
        Check("depth", "Sound.", lambda plan: (NOTE,)),
    )
    said = run_checks(checks, None)
    assert [(one.code, one.severity) for one in said] == [
        ("broken-check", Severity.WARNING),
        ("broken-check", Severity.WARNING),
        ("shallow", Severity.NOTE),
    ]
    assert said[0].title == "The check `aground` is broken"
