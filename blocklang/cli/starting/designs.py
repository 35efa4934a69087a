"""The designs that a new block can start from, each drawn with two to four fabrics."""

from collections.abc import Callable
from dataclasses import dataclass

#: What a design is drawn with: the names of its fabrics, the first one the background.
Names = tuple[str, ...]
FEWEST_FABRICS, MOST_FABRICS = 2, 4


@dataclass(frozen=True, slots=True)
class Design:
    """A start: what it is called, what it looks like, what its four fabrics are for, and how it is written.

    `usual` is how many fabrics it has and `size` how large it is when nothing is said; `draw` is given two to four
    names and uses them all.
    """

    name: str
    summary: str
    roles: tuple[str, str, str, str]
    usual: int
    size: str
    draw: Callable[[Names], str]


def _nine_patch(names: Names) -> str:
    ground, accent = names[:2]
    centre = names[2] if len(names) > 2 else accent
    other = names[3] if len(names) > 3 else accent
    remark = "Three rows of three squares; change a name, or write fog/deep for two triangles."
    rows = ((accent, ground, other), (ground, centre, ground), (other, ground, accent))
    return _rows(remark.replace("fog/deep", f"{ground}/{accent}"), rows)


def _four_patch(names: Names) -> str:
    ground, accent = names[:2]
    lower = names[2] if len(names) > 2 else accent
    right = names[3] if len(names) > 3 else ground
    return _rows("Two rows of two squares.", ((ground, accent), (lower, right)))


def _star(names: Names) -> str:
    ground, star = names[:2]
    one = names[2] if len(names) > 2 else star
    other = names[3] if len(names) > 3 else one
    remark = f"{ground}/{star} is a square of two triangles; the line between them runs as the character is drawn."
    rows = (
        (ground, f"{star}\\{ground}", f"{ground}/{star}", ground),
        (f"{ground}\\{star}", one, other, f"{star}/{ground}"),
        (f"{ground}/{star}", other, one, f"{star}\\{ground}"),
        (ground, f"{star}/{ground}", f"{ground}\\{star}", ground),
    )
    return _rows(remark, rows)


def _pinwheel(names: Names) -> str:
    ground, blade = names[:2]
    second = names[2] if len(names) > 2 else blade
    third = names[3] if len(names) > 3 else blade
    rows = ((f"{blade}\\{ground}", f"{second}/{ground}"), (f"{ground}/{second}", f"{ground}\\{third}"))
    return _rows("Four squares of two triangles, turned about the middle.", rows)


def _log_cabin(names: Names) -> str:
    day, night = names[:2]
    hearth = names[2] if len(names) > 2 else night
    outer = names[3] if len(names) > 3 else night
    rounds = [day, day, night, night, day, day, outer, outer, day, day, night, night]
    return (
        "let strip = size / 7\n\n"
        "# A square in the middle, then strips sewn round it: each is as long as its side is by then.\n"
        f"patch hearth of {hearth} at 3 * strip, 3 * strip size strip\n"
        f"add log of {' '.join(rounds)} to {' '.join('nesw' * 3)} by strip\n"
    )


def _bars(names: Names) -> str:
    cells = tuple(names[index % len(names)] for index in range(len(names) if len(names) > 2 else 3))
    return _rows("One row of upright bars; give more rows, or other shares, such as rows 1 2 1 by 1.", (cells,))


def _cut_square(names: Names) -> str:
    ground, accent = names[:2]
    if len(names) == 2:
        lines = ["along sw ne", f"piece upper of {ground} at nw", f"piece lower of {accent} at se"]
        return _cuts("", lines)
    low, right = "point low between centre s\n", "point right between centre e\n"
    first = ["along sw ne", "along nw se" if len(names) > 3 else "from centre to se"]
    parts = [f"piece bottom of {accent} at low", f"piece side of {names[2]} at right"]
    if len(names) == 3:
        return _cuts(low + right, [*first, f"piece upper of {ground} at nw", *parts])
    more = "point high between centre n\npoint left between centre w\n"
    others = [f"piece top of {ground} at high", f"piece edge of {names[3]} at left"]
    return _cuts(low + right + more, [*first, *others, *parts])


def _cuts(points: str, lines: list[str]) -> str:
    remark = "# One square, cut as a folded paper is: add lines, and name every piece that they leave.\n"
    return f"{points}{remark}cut block\n" + "".join(f"  {line}\n" for line in lines) + "end\n"


def _rows(remark: str, rows: tuple[tuple[str, ...], ...]) -> str:
    lines = "".join(f"  {' '.join(row)}\n" for row in rows)
    return f"# {remark}\nrows\n{lines}end\n"


_ACCENTS = ("background", "accent", "accent", "accent")
_CENTRED = ("background", "accent", "centre", "corner")
_STARRED = ("background", "star", "centre", "centre")
_BLADED = ("background", "blade", "blade", "blade")
_BARRED = ("background", "bar", "bar", "bar")
_HEARTH = ("day", "night", "hearth", "night")

DESIGNS = (
    Design("nine-patch", "three rows of three squares", _CENTRED, 2, "9 in", _nine_patch),
    Design("four-patch", "two rows of two squares", _ACCENTS, 2, "6 in", _four_patch),
    Design("star", "a star of half-square triangles", _STARRED, 2, "8 in", _star),
    Design("pinwheel", "four squares of two triangles each", _BLADED, 2, "6 in", _pinwheel),
    Design("log-cabin", "strips round a square", _HEARTH, 3, "7 in", _log_cabin),
    Design("bars", "upright bars side by side", _BARRED, 2, "6 in", _bars),
    Design("cut-square", "one square, cut like a folded paper", _ACCENTS, 2, "6 in", _cut_square),
)


def design_named(name: str) -> Design | None:
    """Return the design of that name, or of that number in the list; None when there is none."""
    if name.isascii() and name.isdigit():
        return DESIGNS[int(name) - 1] if len(name) < 3 and 0 < int(name) <= len(DESIGNS) else None
    return next((design for design in DESIGNS if design.name == name.strip().lower().replace(" ", "-")), None)
