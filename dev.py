#!/usr/bin/env python3
"""One command for each thing a person does with this source tree; needs nothing but Python 3.11 or newer.

Every command first sees to it that the folder .venv holds blocklang and what it needs; later on that takes no time.
"""

from __future__ import annotations

import hashlib
import os
import shutil
import subprocess
import sys
import time
from pathlib import Path

ROOT = Path(__file__).resolve().parent
VENV = ROOT / ".venv"
STAMP = VENV / "blocklang-stamp"
BIN = VENV / ("Scripts" if os.name == "nt" else "bin")
PYTHON = BIN / ("python.exe" if os.name == "nt" else "python")
CONSTRAINTS = ROOT / ".ci" / "constraints.txt"
OLDEST = (3, 11)

NO_CAIRO = (
    "Note: the system's cairo library is missing, so single drawings cannot be made as PNG or PDF (all else can); "
    "to have them too, install it: on Debian or Ubuntu `apt-get install libcairo2`, on macOS `brew install cairo`."
)
NO_BROWSER = (
    "Note: no Chromium is here, and the tests of pages need one: on Debian or Ubuntu `apt-get install chromium`."
)
NO_VENV = (
    "Python cannot make virtual environments here: on Debian or Ubuntu run `apt-get install python3-venv`, "
    "then run this again."
)


def main(arguments: list[str]) -> int:
    """Run the command that the first argument names."""
    if sys.version_info < OLDEST:
        return complain("blocklang needs Python 3.11 or newer; this is Python {}.{}.".format(*sys.version_info[:2]))
    command = COMMANDS.get(arguments[0]) if arguments else None
    if command is None:
        print("python3 dev.py COMMAND, where COMMAND is one of:")
        for name, function in COMMANDS.items():
            print(f"  {name:<10} {(function.__doc__ or '').rstrip('.')}")
        return 0 if arguments in ([], ["--help"], ["-h"]) else 2
    return command(arguments[1:])


def sheet(arguments: list[str]) -> int:
    """Make the sewing sheet of the eight-pointed star (or of BLOCK) and say where it is."""
    block = arguments[0] if arguments else "eight-pointed-star"
    made = ROOT / "sheet.pdf"
    if not set_up(""):
        return 1
    code = run([str(BIN / "blocklang"), "make", "sewing-sheet", block, "-o", str(made)])
    if code == 0:
        print(f"The sewing sheet is in {made}")
    return code


def test(arguments: list[str]) -> int:
    """Run the tests; further arguments go to pytest."""
    return in_venv("-m", "pytest", *(arguments or ["-n", "2", "-q"]))


def sweep(arguments: list[str]) -> int:
    """Run the tests that take too long for every change; the other tests first."""
    return test([]) or in_venv("-m", "pytest", "-n", "2", "-q", "-m", "sweep", *arguments)


def lint(_: list[str]) -> int:
    """Say what ruff finds."""
    return in_venv("-m", "ruff", "check", ".") or in_venv("-m", "ruff", "format", "--check", ".")


def fix(_: list[str]) -> int:
    """Let ruff put right what it can, and lay out the code."""
    return in_venv("-m", "ruff", "check", "--fix", ".") or in_venv("-m", "ruff", "format", ".")


def types(_: list[str]) -> int:
    """Check the types."""
    return in_venv("-m", "mypy")


def imports(_: list[str]) -> int:
    """Check that imports run one way, and that plugins use public names only."""
    if not set_up("dev"):
        return 1
    return run([str(BIN / "lint-imports"), "--no-cache"]) or in_venv(".ci/check_plugin_imports.py")


def docs(_: list[str]) -> int:
    """Check the documents: links, commands, hooks and pictures."""
    return in_venv(".ci/check_docs.py")


def pictures(_: list[str]) -> int:
    """Make the pictures of the documents again."""
    return in_venv(".ci/pictures.py", "--write")


def table(_: list[str]) -> int:
    """Make the parser's table from the grammar again."""
    return in_venv("-m", "blocklang.language.table_making")


def words(arguments: list[str]) -> int:
    """Gather every sentence that can be translated, and bring the catalogues up to date."""
    return in_venv(".ci/words.py", *arguments)


def snapshots(arguments: list[str]) -> int:
    """Write the snapshots of the tests again; look at the difference before you commit it."""
    return in_venv("-m", "pytest", "-q", "--snapshot-update", *arguments)


def bench(arguments: list[str]) -> int:
    """Time the route, stage by stage, on the library's blocks."""
    return in_venv(".ci/bench.py", *arguments)


def fuzz(arguments: list[str]) -> int:
    """Try input made at random on one target or on all; --help says more."""
    return run([str(PYTHON), "-m", "tests.fuzz", *arguments]) if set_up("fuzz") else 1


def wheel(_: list[str]) -> int:
    """Build the wheel and try it away from this source tree."""
    return in_venv(".ci/try_wheel.py")


def ci(_: list[str]) -> int:
    """Run everything that a change must pass."""
    steps = {"lint": lint, "types": types, "imports": imports, "docs": docs, "wheel": wheel, "test": test}
    results: list[tuple[str, int]] = []
    provide_browser()
    os.environ["BLOCKLANG_BROWSER"] = "required"  # so that the tests of pages fail rather than be skipped
    for name, step in steps.items():
        print(f"== {name}", flush=True)
        started = time.monotonic()
        code = step([])
        results.append((name, code))
        print(f"== {name}: {'FAILED' if code else 'fine'}, {time.monotonic() - started:.0f} s", flush=True)
    failed = [name for name, code in results if code]
    print("Everything is fine." if not failed else f"Failed: {', '.join(failed)}.", flush=True)
    return 1 if failed else 0


def in_venv(*arguments: str) -> int:
    """Set up for development, then run Python in the virtual environment."""
    return run([str(PYTHON), *arguments]) if set_up("dev") else 1


def set_up(extra: str) -> bool:
    """Make the virtual environment and install into it, unless that is done already for this pyproject.toml."""
    wanted = fingerprint()
    done = STAMP.read_text(encoding="utf-8").split() if STAMP.exists() else []
    if done[:1] == [wanted] and (not extra or extra in done):
        return True
    print("Setting up (the first time takes a minute or two) ...", flush=True)
    if not make_venv() or not install(extra):
        return False
    provide_cairo()
    extras = {extra, *(done[1:] if done[:1] == [wanted] else [])}
    STAMP.write_text(f"{wanted} {' '.join(sorted(extras))}\n", encoding="utf-8")
    return True


def fingerprint() -> str:
    """Return what the set-up depends on, as one word."""
    parts = [(ROOT / "pyproject.toml").read_bytes(), sys.version.encode(), str(ROOT).encode()]
    if "CI" in os.environ and CONSTRAINTS.exists():
        parts.append(CONSTRAINTS.read_bytes())
    return hashlib.sha256(b"\0".join(parts)).hexdigest()[:16]


def make_venv() -> bool:
    """Make the virtual environment; say what to install where Python cannot."""
    if PYTHON.exists() and run([str(PYTHON), "-m", "pip", "--version"], quiet=True) == 0:
        return True
    shutil.rmtree(VENV, ignore_errors=True)
    if run([sys.executable, "-m", "venv", str(VENV)], quiet=True) == 0:
        return True
    shutil.rmtree(VENV, ignore_errors=True)
    complain(NO_VENV)
    return False


def install(extra: str) -> bool:
    """Install this source tree so that changes to it are seen at once."""
    exact = ["--constraint", str(CONSTRAINTS)] if "CI" in os.environ and CONSTRAINTS.exists() else []
    target = f"{ROOT}[{extra}]" if extra else str(ROOT)
    pip = [str(PYTHON), "-m", "pip", "install", "--quiet", "--disable-pip-version-check", *exact, "--editable", target]
    if run(pip) == 0:
        return True
    complain("The packages could not be installed; the lines above say why (is the network there?).")
    return False


def provide_cairo() -> None:
    """Install the system's cairo where that is allowed; otherwise say in one sentence what is missing."""
    if not has_cairo():
        install_on_system("libcairo2")
        if not has_cairo():
            print(NO_CAIRO, file=sys.stderr)


def provide_browser() -> None:
    """Install Chromium where that is allowed; otherwise say in one sentence what is missing."""
    programs = ("chromium", "chromium-browser", "google-chrome-stable", "google-chrome")
    if not any(map(shutil.which, programs)):
        install_on_system("chromium")
        if not any(map(shutil.which, programs)):
            print(NO_BROWSER, file=sys.stderr)


def install_on_system(package: str) -> None:
    """Install one of Debian's packages, if this is Debian and we may."""
    apt = shutil.which("apt-get")
    if apt and getattr(os, "geteuid", lambda: 1)() == 0:
        wanted = [apt, "install", "-y", "--no-install-recommends", package]
        if run(wanted, quiet=True) != 0 and run([apt, "update"], quiet=True) == 0:
            run(wanted, quiet=True)


def has_cairo() -> bool:
    """Say whether cairo can be loaded; a missing one raises OSError, so a process of its own finds out."""
    return run([str(PYTHON), "-c", "import cairosvg"], quiet=True) == 0


def run(command: list[str], quiet: bool = False) -> int:
    """Run a command in the source tree and return its exit code; a quiet one shows nothing."""
    silence = subprocess.DEVNULL if quiet else None
    try:
        return subprocess.run(command, cwd=ROOT, stdout=silence, stderr=silence, check=False).returncode
    except KeyboardInterrupt:
        return 130


def complain(sentence: str) -> int:
    """Say what is wrong and return the exit code for it."""
    print(sentence, file=sys.stderr)
    return 1


COMMANDS = {
    "sheet": sheet,
    "test": test,
    "ci": ci,
    "lint": lint,
    "fix": fix,
    "types": types,
    "imports": imports,
    "docs": docs,
    "pictures": pictures,
    "table": table,
    "words": words,
    "snapshots": snapshots,
    "sweep": sweep,
    "bench": bench,
    "fuzz": fuzz,
    "wheel": wheel,
}

if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
