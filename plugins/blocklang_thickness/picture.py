"""The map: the more layers, the darker, with a number at every junction that has room for it."""

import math
from collections.abc import Iterator

from blocklang_drawing import Dot, Drawing, Frame, KeyEntry, Paint, Path, Place, Shape, Text, Theme
from blocklang_drawing.shapes import Trail, polygon

from blocklang.plan import SewingPlan
from blocklang.thickness import Pile, Thickness
from blocklang_thickness import words

MARGIN = 9.0
#: The scale runs from paper to this grey, in as many steps as there are layers, but no fewer than these.
DARKEST, FEWEST_STEPS = 0x50, 7
NUMBER, SLIM, WIDE = 8.5, 6.6, 9.2
#: Seams are no thicker than this share of an allowance. Where an allowance is narrower than this (points), the edges
#: of regions are left out, and numbers stand further apart.
FINE, NARROW = 0.05, 4.0
_SWATCH = (30.0, 16.0)


def draw_thickness(
    plan: SewingPlan, thickness: Thickness, theme: Theme, *, width: float = 400.0, height: float = 400.0
) -> Drawing:
    """Return the map of the block from the front, as large as fits in the box (points)."""
    places = [place for region in thickness.regions for ring in region.rings[:1] for place in ring]
    xs, ys = [x for x, _ in places], [y for _, y in places]
    bounds = (min(xs), min(ys), max(xs), max(ys))
    frame = Frame.fit(bounds, width - 2 * MARGIN, height - 2 * MARGIN, left=MARGIN, top=MARGIN)
    allowance = plan.block.seam_allowance * frame.scale
    shapes = (
        *_regions(thickness, frame, None if allowance < NARROW else Paint(stroke=theme.ink, width=0.35)),
        _seams(plan, frame, theme, allowance),
        *_numbers(plan, thickness, frame, theme, 1.7 if allowance < NARROW else 1.0),
    )
    title = theme.language.say(words.title(plan.block.name))
    return Drawing(frame.width + 2 * MARGIN, frame.height + 2 * MARGIN, shapes, title, theme.font)


def scale_of(thickness: Thickness, levels: tuple[tuple[int, float], ...], theme: Theme) -> tuple[KeyEntry, ...]:
    """Return the scale: a swatch for each number of layers that occurs."""
    (wide, high), most = _SWATCH, thickness.highest.layers
    ring = polygon(((0.5, 0.5), (wide - 0.5, 0.5), (wide - 0.5, high - 0.5), (0.5, high - 0.5)))
    return tuple(
        KeyEntry(
            Drawing(
                wide,
                high,
                (Path((ring,), Paint(_tint(level, most), theme.ink, 0.6)),),
                theme.language.say(words.layers(level)),
            ),
            words.level(level, share),
        )
        for level, share in levels
    )


def _regions(thickness: Thickness, frame: Frame, line: Paint | None) -> Iterator[Shape]:
    trails: dict[int, list[Trail]] = {}
    for region in thickness.regions:
        trails.setdefault(region.layers, []).extend(polygon(frame.ring(ring)) for ring in region.rings)
    for level, found in trails.items():
        colour = _tint(level, thickness.highest.layers)
        yield Path(tuple(found), Paint(colour, line.stroke, line.width) if line else Paint(colour, colour, 0.1))


def _tint(level: int, most: int) -> str:
    share = (level - 1) / max(most - 1, FEWEST_STEPS - 1)
    grey = round(255 - (255 - DARKEST) * share**0.8)
    return f"#{grey:02x}{grey:02x}{grey:02x}"


def _seams(plan: SewingPlan, frame: Frame, theme: Theme, allowance: float) -> Path:
    lines = tuple(frame.outline(patch.outline) for patch in plan.block.patches)
    return Path(lines, Paint(stroke=theme.ink, width=min(theme.line, allowance * FINE)))


def _numbers(plan: SewingPlan, thickness: Thickness, frame: Frame, theme: Theme, apart: float) -> Iterator[Shape]:
    """Yield numbers, the highest first, each where it covers none before it."""
    most = thickness.highest.layers
    taken: dict[tuple[int, int], list[tuple[Place, float]]] = {}
    for pile in sorted(thickness.piles, key=lambda pile: (-pile.layers, pile.junction)):
        at, radius = frame.at(plan.graph.junctions[pile.junction].at), SLIM if pile.layers < 10 else WIDE
        if _has_room(at, radius * apart, taken):
            yield from _number(pile, at, radius, theme, pile.layers == most)


def numbers_left_out(drawing: Drawing, thickness: Thickness) -> bool:
    """Tell whether a map has no number at some junction."""
    return sum(isinstance(shape, Dot) for shape in drawing.shapes) < len(thickness.piles)


def _has_room(at: Place, radius: float, taken: dict[tuple[int, int], list[tuple[Place, float]]]) -> bool:
    column, row = (math.floor(each / (4 * WIDE)) for each in at)
    near = (found for x in (-1, 0, 1) for y in (-1, 0, 1) for found in taken.get((column + x, row + y), ()))
    if any(math.dist(at, place) < radius + other for place, other in near):
        return False
    taken.setdefault((column, row), []).append((at, radius))
    return True


def _number(pile: Pile, at: Place, radius: float, theme: Theme, highest: bool) -> tuple[Shape, ...]:
    ground, ink = (theme.ink, theme.paper) if highest else (theme.paper, theme.ink)
    return (
        Dot(at, radius, Paint(ground, theme.ink, 0.6)),
        Text((at[0], at[1] + NUMBER * 0.36), str(pile.layers), NUMBER, ink, anchor="middle", bold=True),
    )
