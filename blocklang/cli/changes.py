"""What changed between two packs, and pictures of it."""

from pathlib import Path

from blocklang.assembly import assemble
from blocklang.calling import make_files
from blocklang.catalogue.working_out import facts_of
from blocklang.cli.failing import CommandFault, reason, say
from blocklang.cli.showing import show
from blocklang.cli.waiting import working
from blocklang.cli.walking import Walk
from blocklang.cli.writing import guard, write_files
from blocklang.diagnostics import Diagnostic, SourceText
from blocklang.graph import build_graph
from blocklang.hooks import OutputOptions
from blocklang.packs.comparing import Change, Version, compare
from blocklang.packs.finding import PackFinder, text_of
from blocklang.packs.values import Pack
from blocklang.packs.verifying import Verified

#: The output that draws the pictures.
DRAWN_AS = "diagram"


def changed(old: Verified, new: Verified) -> tuple[Change, ...]:
    """Return what changed from one pack to the other."""
    with working("Comparing the blocks"):
        return compare(_versions(old), _versions(new))


def _versions(verified: Verified) -> dict[str, Version]:
    versions = {}
    for packed, block in verified.blocks:
        graph = None if block is None else build_graph(block).graph
        assembly = None if graph is None else assemble(graph).assembly
        if block is not None and assembly is not None:
            versions[packed.name] = Version(packed.data, block, facts_of(assembly))
    return versions


def draw_changes(
    old: Pack, new: Pack, changes: tuple[Change, ...], folder: Path, walk: Walk, force: bool
) -> int:  # fmt: skip
    """Write a picture of every changed block before and after."""
    files: dict[Path, bytes] = {}
    found: list[Diagnostic] = []
    for change in changes:
        for pack, when in ((old, "before"), (new, "after")):
            if change.name in pack.by_name:
                with working(f"Drawing {change.name}"):
                    drawn = _draw(pack, change.name, walk, found)
                if drawn:
                    files[folder / f"{change.name}-{when}.svg"] = drawn
    guard(list(files), force)
    try:
        folder.mkdir(exist_ok=True)
    except OSError as fault:
        raise CommandFault(f"`{folder}` cannot be written: {reason(fault)}.") from fault
    write_files(files)
    say(f"Wrote {len(files)} {'picture' if len(files) == 1 else 'pictures'} to {folder}.")
    return show(found)


def _draw(pack: Pack, name: str, walk: Walk, found: list[Diagnostic]) -> bytes:
    from blocklang import route
    from blocklang.cli.choices import options_for
    from blocklang.language import Overrides

    output = next((one for one in walk.outputs() if one.name == DRAWN_AS), None)
    if output is None:
        raise CommandFault(f"The pictures are made by the output `{DRAWN_AS}`, which is not installed.")
    source = text_of(pack, pack.by_name[name])
    if not isinstance(source, SourceText):
        found.append(source)
        return b""
    checked = route.check(route.draft(source, Overrides(), PackFinder(pack), walk.plugged.cells))
    unit = checked.graph.block.unit if checked.graph is not None else None
    if unit is None:
        found.extend(checked.diagnostics)
        return b""
    planned = route.plan(checked, options_for(unit, 1), walk.plugged.techniques())
    if planned.plan is None:
        found.extend(planned.diagnostics)
        return b""
    made = make_files(output, planned.plan, OutputOptions("svg", unit=unit))
    found.extend(made.diagnostics)
    return next((file.data for file in made.files if not file.name), b"")
