"""Patches painted with their fabrics: one path a fabric, so that drawings of many patches stay small."""

from collections.abc import Iterable
from dataclasses import dataclass
from statistics import median

from blocklang.block import Patch
from blocklang_drawing.frame import Frame
from blocklang_drawing.hatching import hatch
from blocklang_drawing.shapes import Paint, Path, Place, Trail, polygon
from blocklang_drawing.stripes import stripe_rings
from blocklang_drawing.theme import Fill, Theme

Ring = tuple[Place, ...]


@dataclass(frozen=True, slots=True)
class Painted:
    """A patch to paint, and how far it is moved.

    `ring` is in ticks where the patch lies in the block (arcs as chords), `trail` is exact and on the drawing.
    """

    patch: Patch
    ring: Ring
    trail: Trail
    move: Place = (0.0, 0.0)

    def moved(self, ring: Ring) -> Ring:
        """Return a ring of the patch where it has been moved to."""
        return tuple((x + self.move[0], y + self.move[1]) for x, y in ring)


#: Patches with less room than this (square points) get flat tones and thin lines.
SMALL = 150.0


def paint_patches(frame: Frame, painted: Iterable[Painted], theme: Theme) -> tuple[Path, ...]:
    """Return the paths that fill patches with their fabrics, and the lines between them last."""
    items = tuple(painted)
    small = _small_fabrics(frame, items)
    cloth: dict[str, list[Trail]] = {}
    stripes: list[Trail] = []
    lines: dict[str, list[Trail]] = {}
    fills = dict(theme.fills)
    for patch, fabric, trail, ring in ((each.patch, *part) for each in items for part in _parts(frame, each)):
        cloth.setdefault(fabric, []).append(trail)
        stripes.extend([trail] if patch.stripes is not None else [])
        texture = fills[fabric].texture
        if texture is not None and fabric not in small:
            lines.setdefault(fabric, []).extend(hatch(ring, texture))
    return (
        *(Path(tuple(trails), Paint(fill=_colour(fills[f], f in small))) for f, trails in cloth.items()),
        *(_texture(fills[fabric], trails) for fabric, trails in lines.items()),
        Path(tuple(stripes), Paint(stroke=theme.ink, width=theme.line / 3)),
        *_outlines(items, theme, _most_are_small(frame, items)),
    )


def _colour(fill: Fill, small: bool) -> str:
    return fill.tone if small else fill.colour


def _small_fabrics(frame: Frame, items: tuple[Painted, ...]) -> frozenset[str]:
    """Return the fabrics most of whose pieces are small: what is left of their lines would be flecks."""
    areas: dict[str, list[float]] = {}
    for item in items:
        fabrics = item.patch.stripes.fabrics if item.patch.stripes is not None else (item.patch.fabric,)
        for fabric in fabrics:
            areas.setdefault(fabric, []).append(item.patch.outline.area() * frame.scale**2 / len(fabrics))
    return frozenset(fabric for fabric, found in areas.items() if median(found) < SMALL)


def _most_are_small(frame: Frame, items: tuple[Painted, ...]) -> bool:
    return median([item.patch.outline.area() for item in items] or [0]) * frame.scale**2 < SMALL


def _outlines(items: tuple[Painted, ...], theme: Theme, small: bool) -> tuple[Path, ...]:
    # Light lines round the dark patches come first, so that they only show where dark meets dark.
    inks = (theme.between if small else theme.paper, theme.ink)
    fills = dict(theme.fills)
    dark = [item.patch.stripes is None and fills[item.patch.fabric].ink == theme.paper for item in items]
    drawn = (tuple(item.trail for item, d in zip(items, dark, strict=True) if d == want) for want in (True, False))
    width = theme.line / 2 if small else theme.line
    return tuple(Path(trails, Paint(stroke=ink, width=width)) for ink, trails in zip(inks, drawn, strict=True))


def _parts(frame: Frame, item: Painted) -> Iterable[tuple[str, Trail, Ring]]:
    if item.patch.stripes is None:
        yield item.patch.fabric, item.trail, frame.ring(item.moved(item.ring))
        return
    for fabric, ring in stripe_rings(item.patch, item.ring):
        places = frame.ring(item.moved(ring))
        yield fabric, polygon(places), places


def _texture(fill: Fill, trails: list[Trail]) -> Path:
    assert fill.texture is not None
    return Path(tuple(trails), Paint(stroke=fill.texture_ink, width=fill.texture.width))
