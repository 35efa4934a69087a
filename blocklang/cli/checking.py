"""Checking files, for the command `check` with options and for its short way without."""

from collections.abc import Sequence
from typing import TYPE_CHECKING

from blocklang.cli.showing import exit_code, show
from blocklang.cli.walking import Walk
from blocklang.cli.writing import print_text
from blocklang.diagnostics import Diagnostic

if TYPE_CHECKING:
    from blocklang.language import Overrides


def check_files(files: Sequence[str], overrides: "Overrides", form: str = "text") -> int:
    """Check files in order, show what is wrong (as text, short or json), and return the exit code."""
    walk = Walk()
    found: list[Diagnostic] = []
    for file in files:
        diagnostics = walk.check(file, overrides).diagnostics
        found += diagnostics
        if form != "json" and not exit_code(diagnostics):
            print_text(f"{file}: fine")
    told = walk.all_of(tuple(found))
    if form != "json":
        return show(told, form == "short")
    from blocklang.diagnostics import render_json

    print_text(render_json(told))
    return exit_code(told)


def check_plainly(files: Sequence[str]) -> int:
    """Check files as they are: `blocklang check FILE...` without options, which runs on every save."""
    from blocklang.language import Overrides

    return check_files(files, Overrides())
