"""Options about cutting: marks on the ruler, larger outsides, and the fabric at hand."""

import math
import re
from collections.abc import Callable
from dataclasses import replace
from fractions import Fraction
from typing import TYPE_CHECKING, Any, TypeVar

import click

if TYPE_CHECKING:
    from blocklang.cutting.values import CuttingOptions

Command = TypeVar("Command", bound=Callable[..., Any])

_CHOSEN = "blocklang.cutting"
_PER_INCH = {"in": Fraction(1), "cm": Fraction(100, 254), "mm": Fraction(10, 254)}
_LENGTH = re.compile(r"(?:(\d{1,4})[ -]+)?(\d{1,4}/\d{1,4}|\d{1,4}(?:\.\d{1,4})?) ?(in|cm|mm)", re.ASCII)
#: Cloth is between these wide, and nothing is cut more than the last of them larger; anything else is a slip.
_NARROWEST, _WIDEST, _LARGEST = 4, 200, 4


class PerCent(click.FloatRange):
    """A number between two others; "nan" lies beside every number, so that no bound keeps it out."""

    def convert(self, value: Any, param: click.Parameter | None, ctx: click.Context | None) -> Any:
        """Return the number that was typed."""
        number = super().convert(value, param, ctx)
        return self.fail(f"{value} is not a number.", param, ctx) if math.isnan(number) else number


def cutting_options(command: Command) -> Command:
    """Add what may be chosen about cutting; `chosen` finds it again, so that no command need hand it on."""
    marks = click.Choice(["eighths", "sixteenths", "millimetres"])
    add = (
        _option("--rounding", type=marks, help="The marks on the ruler; the unit decides when this is not said."),
        _option("--nearest", is_flag=True, help="Round to the nearest mark, not up."),
        _length("--oversize", 0, _LARGEST, help="Cut this much larger on the outside, to square up later."),
        _length("--fabric-width", _NARROWEST, _WIDEST, help="What is usable between the selvages."),
        _option("--shrinkage", type=PerCent(0, 20), help="How many per cent of its length cloth loses in the wash."),
    )
    for option in reversed(add):
        command = option(command)
    return command


def chosen(options: "CuttingOptions") -> "CuttingOptions":
    """Return the options with whatever was typed for the command that is running."""
    from blocklang.cutting.values import Rounding

    context = click.get_current_context(silent=True)
    asked = dict(context.meta.get(_CHOSEN, {})) if context is not None else {}
    if "rounding" in asked:
        options = replace(options, rounding=Rounding(asked["rounding"]))
    return replace(
        options,
        round_up=not asked.get("nearest", False),
        oversize=asked.get("oversize", options.oversize),
        usable_width=asked.get("fabric_width", options.usable_width),
        shrinkage=Fraction(str(asked["shrinkage"])) / 100 if "shrinkage" in asked else options.shrinkage,
    )


def _option(name: str, **said: Any) -> Callable[[Command], Command]:
    return click.option(name, expose_value=False, callback=_keep, **said)


def _length(name: str, least: int, most: int, **said: Any) -> Callable[[Command], Command]:
    """Return an option that is a length with its unit, kept in inches."""

    def keep(context: click.Context, parameter: click.Parameter, value: str | None) -> Fraction | None:
        if value is None:
            return None
        inches = _inches(value)
        if inches is None:
            raise click.BadParameter(f"`{value}` is not a length. Write it like `3/8in`, `42 in` or `110cm`.")
        if not least <= inches <= most:
            raise click.BadParameter(f"`{value}` is not between {least} and {most} inches.")
        kept: Fraction = _keep(context, parameter, inches)
        return kept

    return click.option(name, metavar="LENGTH", expose_value=False, callback=keep, **said)


def _keep(context: click.Context, parameter: click.Parameter, value: Any) -> Any:
    if value is not None and value is not False:
        context.meta.setdefault(_CHOSEN, {})[parameter.name] = value
    return value


def _inches(text: str) -> Fraction | None:
    read = _LENGTH.fullmatch(text.strip().lower())
    if read is None or re.search("/0+$", read[2]):
        return None
    return (int(read[1] or 0) + Fraction(read[2])) * _PER_INCH[read[3]]
