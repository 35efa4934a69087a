"""Checks the documents: links lead somewhere, commands exist, every hook is told as it is, pictures are up to date."""

import inspect
import re
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
SKIPPED = {".venv", ".git", "node_modules", ".pytest_cache"}
LINK = re.compile(r"(?<!`)!?\[[^\]\n]*\]\(([^)\s]+)\)")
FENCE = re.compile(r"^```.*?^```", re.MULTILINE | re.DOTALL)
CODE = re.compile(r"^```[a-z]*\n(.*?)^```|`([^`]+)`", re.MULTILINE | re.DOTALL)
DEV_COMMAND = re.compile(r"python3 dev\.py ([a-z]+)")
COMMAND = re.compile(r"^(?:\$ )?blocklang ([a-z]+)\b([^\n#|>]*)", re.MULTILINE)
MOST_DECISION_LINES = 40
MOST_SCREEN_LINES = 50


def documents() -> list[Path]:
    """Return every Markdown file of the source tree, in one order."""
    return sorted(path for path in ROOT.rglob("*.md") if not SKIPPED.intersection(path.relative_to(ROOT).parts))


def broken_links() -> Iterator[str]:
    """Say which links inside the tree lead nowhere, headings included."""
    for path in documents():
        for target in LINK.findall(FENCE.sub("", path.read_text(encoding="utf-8"))):
            if re.match(r"[a-z]+:", target):
                continue
            file, _, heading = target.partition("#")
            led = (path.parent / file).resolve() if file else path
            if not led.exists():
                yield f"{path.relative_to(ROOT)}: {target} leads nowhere"
            elif heading and led.suffix == ".md" and heading not in headings(led):
                yield f"{path.relative_to(ROOT)}: {target} names a heading that is not there"


def headings(path: Path) -> set[str]:
    """Return the anchors of a document's headings."""
    titles = re.findall(r"^#+ (.+)$", path.read_text(encoding="utf-8"), re.MULTILINE)
    return {re.sub(r"[^\w\- ]", "", title.lower()).strip().replace(" ", "-") for title in titles}


def unknown_commands() -> Iterator[str]:
    """Say which documented commands and options do not exist."""
    sys.path.insert(0, str(ROOT))
    from blocklang.cli.program import COMMANDS
    from dev import COMMANDS as DEV_COMMANDS

    for path in documents():
        text, name = path.read_text(encoding="utf-8"), path.relative_to(ROOT)
        yield from (f"{name}: no `dev.py {word}`" for word in DEV_COMMAND.findall(text) if word not in DEV_COMMANDS)
        for word, rest in (found for code in code_in(text) for found in COMMAND.findall(code)):
            if word not in COMMANDS:
                yield f"{name}: no `blocklang {word}`"
            else:
                yield from (f"{name}: `blocklang {word}` has no {o}" for o in unknown_options(word, rest))


def code_in(text: str) -> Iterator[str]:
    """Give what a document shows as code: whole blocks, and short pieces with their line ends taken out."""
    for fenced, inline in CODE.findall(text):
        yield fenced or " ".join(inline.split())


def unknown_options(command: str, rest: str) -> Iterator[str]:
    """Name the options in a command line that the command does not have."""
    from blocklang.cli.program import program

    loaded = program.get_command(None, command)  # type: ignore[arg-type]
    assert loaded is not None
    known = {option for parameter in loaded.params for option in parameter.opts} | {"--help"}
    yield from (option for option in re.findall(r"(?<!\S)--?[a-z][a-z-]*", rest) if option not in known)


def untold_hooks() -> Iterator[str]:
    """Say which hooks docs/plugins.md does not tell with their exact signature."""
    from blocklang import hooks

    text = (ROOT / "docs" / "plugins.md").read_text(encoding="utf-8")
    for name, function in inspect.getmembers(hooks, inspect.isfunction):
        if name.startswith("blocklang_"):
            signature = signature_line(function)
            if signature not in text:
                yield f"docs/plugins.md: should have the line `{signature}`"


def signature_line(function: object) -> str:
    """Return a hook's first line as it stands in its source, without quotes round names that are imported late."""
    source = inspect.getsource(function)  # type: ignore[arg-type]
    return next(line for line in source.splitlines() if line.startswith("def ")).rstrip(":").replace('"', "")


def long_pages() -> Iterator[str]:
    """Say which pages are longer than a reader should have to read."""
    for path in sorted((ROOT / "docs" / "decisions").glob("*.md")):
        if len(path.read_text(encoding="utf-8").splitlines()) > MOST_DECISION_LINES:
            yield f"{path.relative_to(ROOT)}: more than {MOST_DECISION_LINES} lines"
    if len((ROOT / "DEVELOPERS.md").read_text(encoding="utf-8").splitlines()) > MOST_SCREEN_LINES:
        yield f"DEVELOPERS.md: more than {MOST_SCREEN_LINES} lines"


def main() -> int:
    """Run every check of the documents."""
    faults = [*broken_links(), *unknown_commands(), *untold_hooks(), *long_pages()]
    print("\n".join(faults) or f"{len(documents())} documents are sound.")
    pictures = subprocess.run([sys.executable, str(ROOT / ".ci" / "pictures.py")], check=False).returncode
    return 1 if faults or pictures else 0


if __name__ == "__main__":
    sys.exit(main())
