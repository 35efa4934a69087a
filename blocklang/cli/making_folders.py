"""Making an output that is a whole folder: every block's share in any process, then what belongs to all of them."""

from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from blocklang.block import LengthUnit
from blocklang.cli.asked import Errand
from blocklang.cli.failing import FILE_FAULT, CommandFault, say
from blocklang.cli.folders import FolderDraft, whole_folder
from blocklang.cli.items import Item, items_of
from blocklang.cli.making import Bench
from blocklang.cli.processes import Workshop, processes_for, workshop
from blocklang.cli.results import Results
from blocklang.cli.waiting import going_through
from blocklang.cli.wanted import Named, Wanted, wanted
from blocklang.cli.writing import STDOUT

if TYPE_CHECKING:
    from blocklang.cli.walking import Walk


def make_folder(errand: Errand, walk: "Walk", names: tuple[Named, ...]) -> int:
    """Make the one output, put its folder in place, and return the exit code."""
    one, *others = wanted(names, None, errand.form, errand.settings)
    folder = Path(errand.place)
    if others:
        folders = next(each.output.name for each in names if each.output.make_folder is not None)
        raise click.UsageError(f"`{folders}` is a whole folder: make it alone.")
    if errand.watch:
        raise click.UsageError(f"`{one.name}` is a whole folder, which is not made again on every save.")
    if folder == STDOUT:
        raise click.UsageError(f"`{one.name}` is a whole folder: give it a name with -o.")
    items = items_of(errand.files, walk.library)
    _refuse_twins(items)
    count = processes_for(len(items), errand.processes)
    with going_through(len(items) + 1) as going:
        results = Results(folder, errand.force, going, set(walk.plugged.diagnostics))
        with whole_folder(folder, errand.force) as draft, workshop(Bench(walk, errand.asked), count) as shop:
            left_out = _fill(draft, shop, items, one, results)
    lost = f"; left out: {', '.join(item.stem for item in left_out)}" if left_out else ""
    blocks = len(items) - len(left_out)
    say(f"Wrote {folder}: {len(draft.names)} files of {blocks} {'block' if blocks == 1 else 'blocks'}{lost}.")
    return results.code


def _fill(draft: FolderDraft, shop: Workshop, items: tuple[Item, ...], one: Wanted, results: Results) -> list[Item]:
    """Put every block's files into the draft as soon as they are made, then those of the whole; return who is left out."""
    from blocklang.calling import make_rest
    from blocklang.packs.file_names import fault_of_twins

    about: list[Any] = []
    left_out: list[Item] = []
    for item, made in zip(items, shop.share(items, one, results.going.on), strict=True):
        results.show(made.diagnostics)
        if made.share is None:
            left_out.append(item)
        else:
            about.append(made.share.about)
            for file in made.share.files:
                draft.add(file.name, file.data)
        results.going.done()
    if not about:
        raise CommandFault(f"Nothing can be made of these blocks, so `{results.folder}` is not written.", FILE_FAULT)
    results.going.on(f"Making the {one.name}")
    options = shop.bench.asked.options(one.form, one.settings, LengthUnit.INCH)
    rest = make_rest(one.output, tuple(about), options)
    results.show(rest.diagnostics)
    for file in rest.files:
        draft.add(file.name, file.data)
    fault = "Nothing can be made of the whole." if rest.diagnostics else fault_of_twins(draft.names)
    if fault:
        raise CommandFault(f"`{results.folder}` is not written. {fault}", FILE_FAULT)
    return left_out


def _refuse_twins(items: tuple[Item, ...]) -> None:
    """Refuse two blocks of one name, on some systems also in other capitals: their files would be the same."""
    seen: dict[str, Item] = {}
    for item in items:
        if not item.stem:
            raise CommandFault("A block from standard input has no name: give its file.")
        other = seen.setdefault(item.stem.casefold(), item)
        if other is not item:
            raise CommandFault(f"`{other.file}` and `{item.file}` have one name: make two folders of them.")
