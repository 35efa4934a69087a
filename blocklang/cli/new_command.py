"""`blocklang new`: a small block file to start from."""

import re
from pathlib import Path

import click

from blocklang.cli.failing import CommandFault, say
from blocklang.cli.writing import write_files
from blocklang.library import SUFFIX

STARTER = """\
block "{title}"
language 1
size 9 in

# Each fabric: a name, its role, how light it is, its colour.
fabric fog  background light #e8eef2
fabric deep accent     dark  #1f3a5f

# Three rows of three squares; change a name, or write fog/deep for two triangles.
rows
  deep fog  deep
  fog  deep fog
  deep fog  deep
end
"""


@click.command("new")
@click.argument("name")
def command(name: str) -> int:
    """Start a new block file NAME.block, a nine patch to change into your own."""
    path = Path(name if name.endswith(SUFFIX) else f"{name}{SUFFIX}")
    if path.exists() or path.is_symlink():
        raise CommandFault(f"`{path}` is there already, and is left as it is.")
    write_files({path: STARTER.format(title=title_of(path)).encode()})
    say(f"Wrote {path}. `blocklang check {path}` says whether it is right.")
    return 0


def title_of(path: Path) -> str:
    """Return a title made of the file's name; only what can stand between quotes on a line."""
    words = re.sub(r"[\W_]+", " ", path.name.removesuffix(SUFFIX)).strip()
    return words[:60].title() or "New Block"
