"""Options that several commands share, and what they mean for the route."""

from collections.abc import Callable
from typing import TYPE_CHECKING, Any, TypeVar

import click
from click.shell_completion import CompletionItem

from blocklang.cli.cutting_choices import chosen, cutting_options
from blocklang.cli.technique_choices import technique_option
from blocklang.limits import MOST_COPIES

if TYPE_CHECKING:
    from blocklang.block import LengthUnit
    from blocklang.hooks import Output
    from blocklang.language import Overrides
    from blocklang.plan import PlanOptions

Command = TypeVar("Command", bound=Callable[..., Any])


def complete_blocks(_: click.Context, __: click.Parameter, incomplete: str) -> list[CompletionItem]:
    """Offer the library's names or those in a pack and, through the shell, files."""
    from blocklang.cli.plugged import Plugged
    from blocklang.library import PACK_SUFFIX, Library

    if f"{PACK_SUFFIX}/" in incomplete and (inside := _names_in(incomplete.rpartition("/")[0])):
        return [CompletionItem(name) for name in inside if name.startswith(incomplete)]
    names = Library(more_folders=Plugged().library_folders).everything()
    items = [CompletionItem(name) for name in sorted(names) if name.startswith(incomplete)]
    return [*items, CompletionItem(incomplete, type="file")]


def _names_in(path: str) -> list[str]:
    """Return what the blocks of a pack are called on the command line; nothing when there is no such pack."""
    from pathlib import Path

    from blocklang.library import Library
    from blocklang.packs.values import Pack

    pack = Library().pack(Path(path))
    return [f"{path}/{name}" for name in sorted(pack.by_name)] if isinstance(pack, Pack) else []


def complete_outputs(_: click.Context, __: click.Parameter, incomplete: str) -> list[CompletionItem]:
    """Offer the names of the outputs, also after a comma, and behind a dot the formats of one."""
    from blocklang.cli.plugged import Plugged

    before, comma, last = incomplete.rpartition(",")
    words = [(one.name, one.summary) for one in Plugged().outputs()]
    if "." in last:
        words = [(f"{one.name}.{form}", one.summary) for one in Plugged().outputs() for form in one.formats]
    return [CompletionItem(f"{before}{comma}{name}", help=told) for name, told in words if name.startswith(last)]


def file_argument(command: Command) -> Command:
    """Add the argument FILE."""
    return click.argument("file", shell_complete=complete_blocks)(command)


def block_options(command: Command) -> Command:
    """Add what may be changed about a block without changing its file."""
    size = click.option("--size", metavar="LENGTH", help="Make the block this size when finished, such as 6in or 15cm.")
    fabric = click.option(
        "--fabric",
        "fabrics",
        metavar="NAME=COLOUR",
        multiple=True,
        help="Give a fabric, or all fabrics of a role, another colour, such as background=#ffffff. Can be repeated.",
    )
    return size(fabric(command))


def overrides_from(size: str | None, fabrics: tuple[str, ...], units: str | None = None) -> "Overrides":
    """Return the changes to a block that were typed."""
    from blocklang.language import Overrides

    colours = tuple(split_pair(text, "--fabric", "background=#ffffff") for text in fabrics)
    return Overrides(size, colours, unit_named(units) if units else None)


def unit_named(units: str) -> "LengthUnit":
    """Return the unit that was typed."""
    from blocklang.block import LengthUnit

    return LengthUnit(units)


def plan_options(command: Command) -> Command:
    """Add what may be chosen about a plan."""
    most = click.IntRange(1, MOST_COPIES)
    copies = click.option("--copies", type=most, default=1, show_default=True, help="How many blocks are made.")
    units = click.option(
        "--units",
        type=click.Choice(["in", "cm", "mm"]),
        help="Show lengths in inches, cm or mm; else in the unit of --size, or of the file.",
    )
    return copies(units(cutting_options(technique_option(command))))


def options_for(unit: "LengthUnit", copies: int) -> "PlanOptions":
    """Return the options of a plan whose lengths are shown in a unit."""
    from blocklang.block import LengthUnit
    from blocklang.cutting.values import CuttingOptions, Rounding
    from blocklang.plan import PlanOptions

    rounding = Rounding.EIGHTHS if unit is LengthUnit.INCH else Rounding.MILLIMETRES
    return PlanOptions(chosen(CuttingOptions(copies=copies, rounding=rounding)))


def split_pair(text: str, option: str, example: str) -> tuple[str, str]:
    """Split NAME=VALUE."""
    name, equals, value = text.partition("=")
    if not equals or not name.strip() or not value.strip():
        raise click.UsageError(f"`{option} {text}` should look like `{option} {example}`.")
    return name.strip(), value.strip()


def output_named(name: str, outputs: "tuple[Output, ...]") -> "Output":
    """Return the output of that name, or suggest one."""
    from difflib import get_close_matches

    by_name = {output.name: output for output in outputs}
    if name in by_name:
        return by_name[name]
    near = get_close_matches(name, by_name, n=1)
    advice = f"Did you mean `{near[0]}`?" if near else "`blocklang outputs` lists what can be made."
    raise click.UsageError(f"There is no output `{name}`. {advice}")
