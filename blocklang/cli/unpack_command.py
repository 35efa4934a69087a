"""`blocklang unpack`: the blocks of a pack as files in a folder."""

from pathlib import Path

import click

from blocklang.cli.failing import say
from blocklang.cli.folders import whole_folder
from blocklang.cli.showing import show
from blocklang.cli.verify_command import open_pack
from blocklang.cli.walking import Walk
from blocklang.diagnostics import Diagnostic, Severity, SourceText
from blocklang.library import PACK_SUFFIX
from blocklang.packs.values import Pack
from blocklang.packs.verifying import verify


@click.command("unpack")
@click.argument("file", metavar="PACK", type=click.Path())
@click.option("-o", "folder", metavar="FOLDER", type=click.Path(path_type=Path), help="Where to; else named as PACK.")
@click.option("--key", metavar="PUBLIC", type=click.Path(path_type=Path), help="Only if it is signed with this key.")
@click.option("--force", is_flag=True, help="Write into a folder that is there already, and over files of these names.")
def command(file: str, folder: Path | None, key: Path | None, force: bool) -> int:
    """Write the blocks of PACK as files into a new folder.

    Everything in the pack is verified first, and nothing is written unless all of it is sound.
    """
    path = Path(file)
    target = folder or Path(path.name.removesuffix(PACK_SUFFIX))
    if target == path:
        raise click.UsageError("Name the folder to write with -o.")
    pack = open_pack(path, key)
    if isinstance(pack, Diagnostic):
        return show([pack])
    walk = Walk()
    verified = verify(pack, walk.plugged.cells)
    code = show(walk.all_of((*verified.diagnostics, *_hidden_names(pack, walk))))
    if code:
        return code
    _write_all(pack, target, force)
    count = len(pack.blocks)
    say(f"Wrote {count} {'block' if count == 1 else 'blocks'} to {target}.")
    return 0


def _hidden_names(pack: Pack, walk: Walk) -> list[Diagnostic]:
    """Warn of blocks that are placed under a name that means another block outside the pack."""
    placed = {file for block in pack.blocks for file in block.places}
    found = []
    for block in pack.blocks:
        entry = walk.library.entry(block.name) if block.file in placed else None
        text = None if entry is None else walk.library.read(entry.path)
        if entry is not None and isinstance(text, SourceText) and text.text.encode() != block.data:
            title = f"The library has another block called `{block.name}`"
            told = f"Outside the pack, what places `{block.name}` gets the one from {entry.shelf.origin}."
            advice = f"Read it in place (`{pack.name}/...`), or give the file another name."
            found.append(Diagnostic("hidden-name", Severity.WARNING, title, told, advice))
    return found


def _write_all(pack: Pack, folder: Path, force: bool) -> None:
    with whole_folder(folder, force) as draft:
        for block in pack.blocks:
            draft.add(block.file, block.data)
