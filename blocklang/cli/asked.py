"""What was typed for `make`; the part about blocks and looks is one value that another process can be given."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

import click

from blocklang.cli.choices import overrides_from, unit_named

if TYPE_CHECKING:
    from blocklang.block import LengthUnit
    from blocklang.hooks import OutputOptions
    from blocklang.language import Overrides
    from blocklang.wording import Language

Settings = tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True)
class Asked:
    """What was typed, one field for each option."""

    size: str | None = None
    fabrics: tuple[str, ...] = ()
    copies: int = 1
    units: str | None = None
    paper: str = "letter"
    black_and_white: bool = False
    large_print: bool = False
    language: str = "en"

    def overrides(self, size: str = "") -> "Overrides":
        """Return the changes to a block; a size that is given comes before the one typed."""
        return overrides_from(size or self.size, self.fabrics, self.units)

    def options(self, form: str, settings: Settings, unit: "LengthUnit") -> "OutputOptions":
        """Return what an output is told; the unit is the block's where none was typed."""
        from blocklang.hooks import OutputOptions, Paper

        unit = unit_named(self.units) if self.units else unit
        looks = (self.black_and_white, self.large_print, settings, language_for(self.language))
        return OutputOptions(form, Paper(self.paper), unit, self.copies, *looks)


def language_for(code: str) -> "Language":
    """Return the language of a code as typed."""
    from blocklang.wording import find_language, languages

    found = find_language(code.lower())
    if found is None:
        raise click.UsageError(f"There are no words in `{code}`; there are words in {', '.join(languages())}.")
    return found


@dataclass(frozen=True, slots=True)
class Errand:
    """What `make` was asked to do; no number of processes means as many as are worth it."""

    asked: Asked
    outputs: str
    files: tuple[str, ...]
    place: str
    form: str | None = None
    settings: tuple[str, ...] = ()
    force: bool = False
    processes: int | None = None
    watch: bool = False


def kept_choices() -> dict[str, Any]:
    """Return the choices that options keep beside the command, such as those about cutting."""
    return {key: value for key, value in click.get_current_context().meta.items() if key.startswith("blocklang.")}


def keep_choices(choices: Mapping[str, Any]) -> None:
    """Make the choices of a command hold in this process too, for as long as it lives."""
    context = click.Context(click.Command("make"))
    context.meta.update(choices)
    click.globals.push_context(context)
