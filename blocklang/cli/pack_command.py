"""`blocklang pack`: blocks, and all that they place, in one file to pass on."""

import os
from pathlib import Path

import click

from blocklang.cli.choices import complete_blocks
from blocklang.cli.failing import CommandFault, say
from blocklang.cli.opening import STDIN, open_block
from blocklang.cli.plugged import Plugged
from blocklang.cli.showing import show
from blocklang.cli.walking import Walk
from blocklang.cli.writing import guard, write_files
from blocklang.diagnostics import Diagnostic, SourceText
from blocklang.language import Finder
from blocklang.library import PACK_SUFFIX, Library
from blocklang.packs.folding import fold
from blocklang.packs.gathering import gather
from blocklang.packs.values import Pack


@click.command("pack")
@click.argument("files", nargs=-1, metavar="FILE...", shell_complete=complete_blocks)
@click.option("-o", "name", metavar="NAME", help="Where to write the pack; .pack is added when it is missing.")
@click.option("--sign", "key", metavar="KEY", type=click.Path(path_type=Path), help="Sign it with this private key.")
@click.option("--new-key", "pair", metavar="NAME", help="Only make a pair of keys: NAME.key, NAME.public.")
@click.option("--force", is_flag=True, help="Write over a file that is there already.")
def command(files: tuple[str, ...], name: str | None, key: Path | None, pair: str | None, force: bool) -> int:
    """Put block files, and all blocks that they place, into one file to pass on.

    The pack says who is credited for each block and holds a checksum of each. The same blocks make the same file.
    """
    if pair is not None:
        return _make_keys(pair, force)
    if not files or name is None:
        raise click.UsageError("Name the block files to pack, and with -o the pack to write.")
    path = Path(name if name.endswith(PACK_SUFFIX) else f"{name}{PACK_SUFFIX}")
    guard([path], force)
    walk = Walk()
    read = [_read(file, walk) for file in files]
    refused = [item for item in read if not isinstance(item, _Opened)]
    if refused:
        return show(one for item in refused for one in item)
    opened = {item.source.name: item for item in read if isinstance(item, _Opened)}
    sources = [item.source for item in opened.values()]
    gathered = gather(path.name, sources, lambda source: opened[source.name].finder, walk.plugged.cells)
    code = show(walk.all_of(gathered.diagnostics))
    return code if gathered.pack is None else max(code, _write(gathered.pack, path, key, walk.plugged))


class _Opened:
    """A file as it was read, and where it finds what it places."""

    def __init__(self, source: SourceText, finder: Finder) -> None:
        self.source = source
        self.finder = finder


def _read(file: str, walk: Walk) -> "_Opened | tuple[Diagnostic, ...]":
    if file == STDIN:
        raise CommandFault("A pack is made of files, so that each block has a name.")
    library = Library(more_folders=walk.plugged.library_folders)
    source = open_block(file, library)
    return _Opened(source, library) if isinstance(source, SourceText) else source


def _write(pack: Pack, path: Path, key: Path | None, plugged: Plugged) -> int:
    """Verify a pack as whoever gets it would, and write it."""
    from blocklang.packs.signing import signed
    from blocklang.packs.verifying import verify

    verified = verify(pack, plugged.cells)
    code = show(verified.diagnostics)
    if code:
        return code
    if key is not None:
        result = signed(pack, key)
        if not isinstance(result, Pack):
            return show([result])
        pack = result
    write_files({path: fold(pack)})
    count = len(pack.blocks)
    say(f"Wrote {path}: {count} {'block' if count == 1 else 'blocks'}{', signed' if pack.signature else ''}.")
    return 0


def _make_keys(name: str, force: bool) -> int:
    from blocklang.packs.signing import KeyPair, make_keys

    private, public = Path(f"{name}.key"), Path(f"{name}.public")
    guard([private, public], force)
    pair = make_keys()
    if not isinstance(pair, KeyPair):
        return show([pair])
    mask = os.umask(0o077)  # nobody else may read the private half, not even while it is being written
    try:
        write_files({private: pair.private})
    finally:
        os.umask(mask)
    write_files({public: pair.public})
    say(f"Wrote {private}, which you keep to yourself, and {public}, which you give to those who get your packs.")
    return 0
