"""Take what the person asks for on the command line: another size, other colours."""

import re
from dataclasses import replace
from fractions import Fraction

from blocklang.block import LengthUnit
from blocklang.diagnostics import Diagnostic, Severity, SourceText
from blocklang.language.arithmetic import length
from blocklang.language.headings import read_colour
from blocklang.language.parsing import parse
from blocklang.language.quantities import INCHES, Exact
from blocklang.language.scope import Draft, Scope
from blocklang.language.suggesting import did_you_mean
from blocklang.language.syntax import LetLine
from blocklang.limits import LONGEST_TEXT, SMALLEST_LENGTH


def override_fabrics(draft: Draft, swaps: tuple[tuple[str, str], ...]) -> None:
    """Recolour the fabric of a name, or else every fabric of a role."""
    for who, text in swaps:
        colour = read_colour(text)
        if colour is None:
            found = f"`{text}` is not a colour: a colour is # and six (or three) of 0-9 and a-f."
            _refuse(draft, "option-colour", "The colour asked for is not one", found, "Write it like `#1f3a5f`.")
            continue
        meant = draft.short_names.get(who, who)
        chosen = [meant] if meant in draft.fabrics else [f.id for f in draft.fabrics.values() if f.role == who]
        if not chosen:
            known = {*draft.fabrics, *draft.short_names, *(fabric.role for fabric in draft.fabrics.values())}
            advice = did_you_mean(who, known, f"It has: {', '.join(sorted(known))}.")
            found = f"The block has no fabric and no role called `{who}`."
            _refuse(draft, "option-fabric", "The fabric asked for is not in the block", found, advice)
        for name in chosen:
            draft.fabrics[name] = replace(draft.fabrics[name], colour=colour)


def override_size(draft: Draft, size: str | None, unit: LengthUnit | None) -> Exact:
    """Return how many times larger than drafted the block becomes."""
    if size is None:
        return Fraction(1)
    width = read_length(draft, size, unit)
    if width is None or not width >= SMALLEST_LENGTH:
        found = f"`{size[:LONGEST_TEXT]}` is not a width that a block can have."
        _refuse(draft, "option-size", "The size asked for cannot be used", found, "Write it like `6 1/2 in`.")
        return Fraction(1)
    return width / draft.width.value


def unit_written(size: str) -> LengthUnit | None:
    """Return the unit that a size is written in, which its lengths are then shown in; None where none is written."""
    written = re.search(r"(?<![a-z])(in|cm|mm)\s*$", size)
    return LengthUnit(written[1]) if written else None


def read_length(draft: Draft, text: str, unit: LengthUnit | None) -> Exact | None:
    """Return a length written by a person, in inches; None when it is not one."""
    parsed = parse(SourceText("size", f"let asked = {text}"))
    items = parsed.tree.items if parsed.tree is not None else ()
    if len(items) != 1 or not isinstance(items[0], LetLine):
        return None
    apart = Draft(SourceText("size", text), draft.placements)
    apart.inches = INCHES[unit.value] if unit is not None else draft.inches
    apart.width, apart.height = draft.width, draft.height
    return length(Scope(apart), items[0].value)


def _refuse(draft: Draft, code: str, title: str, found: str, advice: str) -> None:
    draft.report(Diagnostic(code, Severity.ERROR, title, found, advice))
