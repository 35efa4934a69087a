"""What `blocklang check` answers, as the corpus states it: `1: no-area 9:1, gap 9:1`; and what every answer owes."""

import io
import json
import shutil
import time
from contextlib import redirect_stderr, redirect_stdout
from pathlib import Path
from typing import Any

from blocklang.cli.program import run
from blocklang.cli.showing import exit_code
from blocklang.cli.walking import Walk
from blocklang.diagnostics import Diagnostic, render_json
from blocklang.diagnostics.snippets import printable
from blocklang.language import Overrides
from blocklang.limits import MOST_MESSAGES
from blocklang.packs.reading import read_pack
from blocklang.packs.verifying import verify

MOST_SECONDS = 2.0  # of processor time
SHOWN = 4  # messages that an answer lists
MOST_SAID = 1_000  # characters of a message: a name in it is never longer than the bounds allow


def typed(*arguments: str) -> tuple[int, str, str]:
    """Run one command line in this process; return the exit code and what it wrote to both ends, within the time."""
    out, err = (io.TextIOWrapper(io.BytesIO(), encoding="utf-8") for _ in range(2))
    begun = time.process_time()
    with redirect_stdout(out), redirect_stderr(err):
        code = run(list(arguments))
        out.flush()
        err.flush()
    assert time.process_time() - begun < MOST_SECONDS
    said, complained = (end.buffer.getvalue().decode() for end in (out, err))  # type: ignore[attr-defined]
    assert "Traceback" not in said + complained
    return code, said, complained


def answer(path: Path, plan: bool = True) -> str:
    """Return the exit code for a block file, and what is told about it and where; a sound one is planned as well."""
    code, said, complained = typed("check", str(path), "--format", "json")
    assert complained == ""
    if code == 0 and plan:
        code, said = _planned(path)
    found = json.loads(said)["diagnostics"]
    assert len(found) <= MOST_MESSAGES + 1
    assert all(one["found"] and len(one["found"]) < MOST_SAID and one["title"] for one in found)
    more = f" and {len(found) - SHOWN} more" if len(found) > SHOWN else ""
    return f"{code}: {', '.join(map(_told, found[:SHOWN])) or 'fine'}{more}"


def _planned(path: Path) -> tuple[int, str]:
    begun = time.process_time()
    diagnostics = Walk().plan(str(path), Overrides(), 1).diagnostics
    assert time.process_time() - begun < MOST_SECONDS
    return exit_code(diagnostics), render_json(diagnostics)


def _told(one: dict[str, Any]) -> str:
    place = one["place"]
    return f"{one['code']} {place['line']}:{place['column']}" if place else f"{one['code']} nowhere"


def pack_answer(path: Path) -> str:
    """Return the exit codes for a pack, which `verify` and `unpack` must agree on, and what is told about it."""
    code, _, complained = typed("verify", str(path))
    pack = read_pack(path)
    told = (pack,) if isinstance(pack, Diagnostic) else verify(pack, Walk().plugged.cells).diagnostics
    assert all(one.code and one.found for one in told)
    assert code == 0 or printable(told[0].found) in complained
    assert typed("verify", str(path), "--format", "json")[0] == code
    unpacked, _, _ = typed("unpack", str(path), "-o", "out")
    assert unpacked == code
    assert Path("out").exists() == (code == 0), "nothing is written unless all of it is sound"
    shutil.rmtree("out", ignore_errors=True)
    return f"{code}: {', '.join(one.code for one in told[:SHOWN]) or 'fine'}"
