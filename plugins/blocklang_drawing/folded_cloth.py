"""Folded cloth as it is seen from the back: the wrong side of patches, and their allowances as they lie."""

from dataclasses import dataclass

from blocklang.block import Patch
from blocklang.plan import SewingPlan
from blocklang.thickness import Folded, Layer
from blocklang_drawing.frame import Bounds, Frame
from blocklang_drawing.shapes import Paint, Path, Shape, Trail, polygon
from blocklang_drawing.stripes import stripe_rings
from blocklang_drawing.theme import Theme

#: How much paler a fabric is on its wrong side, in an allowance and where it lies single: shares of white.
WRONG_SIDE, SINGLE = 0.55, 0.78
#: What is left of that in an allowance, so that those of light fabrics show too.
SHADED = 0.9
#: Without colour: a single layer, an allowance seen from its wrong side, and from its right side.
GREYS = ("#ffffff", "#dedede", "#979797")
#: Lines are no thicker than this share of an allowance, so that small ones stay open.
LINE = 0.05


@dataclass(frozen=True, slots=True)
class Tints:
    """What cloth looks like from the back."""

    theme: Theme

    @property
    def is_grey(self) -> bool:
        """Whether the picture is to be read without colour."""
        return self.theme.ink == "#000000"

    def single(self, fabric: str) -> str:
        """Return the wrong side of a patch."""
        return GREYS[0] if self.is_grey else paler(self.theme.fill(fabric).colour, SINGLE)

    def allowance(self, fabric: str, turned: bool) -> str:
        """Return an allowance, its right side when it is turned over."""
        if self.is_grey:
            return GREYS[2 if turned else 1]
        colour = self.theme.fill(fabric).colour
        return colour if turned else shaded(paler(colour, WRONG_SIDE))


def paint_folded(plan: SewingPlan, folded: Folded, frame: Frame, theme: Theme) -> tuple[Shape, ...]:
    """Return all layers, the front first, so that what is painted last lies uppermost on the back."""
    tints = Tints(theme)
    line = Paint(stroke=theme.ink, width=max(0.3, min(theme.line, plan.block.seam_allowance * frame.scale * LINE)))
    allowances = [_allowance(plan, layer, frame, tints, line) for layer in folded.layers if not layer.is_body]
    return (*_bodies(plan, frame, tints, line), *_together(allowances))


def _together(paths: list[Path]) -> tuple[Path, ...]:
    """Return paths drawn as few: what lies under nothing that comes before it is drawn with others of its paint."""
    heights = _heights([_bounds(path) for path in paths])
    found: dict[tuple[int, Paint], list[Trail]] = {}
    for height, path in sorted(zip(heights, paths, strict=True), key=lambda each: each[0]):
        found.setdefault((height, path.paint), []).extend(path.trails)
    return tuple(Path(tuple(trails), paint) for (_, paint), trails in found.items())


def _heights(boxes: list[Bounds]) -> list[int]:
    """Return how many others each box lies upon: those before it that it touches, and what they lie upon."""
    import numpy
    from shapely import STRtree, box

    if not boxes:
        return []
    shapes = box(*numpy.array(boxes).T)
    heights = [0] * len(boxes)
    upper, lower = STRtree(shapes).query(shapes, predicate="intersects")
    before = lower < upper
    pairs = numpy.stack((upper[before], lower[before]), axis=1)
    for above, below in sorted(pairs.tolist()):
        heights[above] = max(heights[above], heights[below] + 1)
    return heights


def _bounds(path: Path) -> Bounds:
    places = [place for trail in path.trails for place in (trail.start, *(s.end for s in trail.stretches))]
    xs, ys, half = [x for x, _ in places], [y for _, y in places], path.paint.width / 2
    return min(xs) - half, min(ys) - half, max(xs) + half, max(ys) + half


def _bodies(plan: SewingPlan, frame: Frame, tints: Tints, line: Paint) -> tuple[Path, ...]:
    of_fabric: dict[str, list[Trail]] = {}
    striped: list[Path] = []
    for patch in plan.block.patches:
        if patch.stripes is None:
            of_fabric.setdefault(patch.fabric, []).append(frame.outline(patch.outline))
        else:
            striped.extend(_stripes(patch, frame, tints, line))
    plain = (Path(tuple(t), Paint(tints.single(f), line.stroke, line.width)) for f, t in of_fabric.items())
    return (*plain, *striped)


def _stripes(patch: Patch, frame: Frame, tints: Tints, line: Paint) -> tuple[Path, ...]:
    rings = stripe_rings(patch, patch.outline.chords())
    return tuple(
        Path((polygon(frame.ring(ring)),), Paint(tints.single(fabric), line.stroke, line.width))
        for fabric, ring in rings
    )


def _allowance(plan: SewingPlan, layer: Layer, frame: Frame, tints: Tints, line: Paint) -> Path:
    trails = tuple(polygon(frame.ring(ring)) for ring in layer.rings)
    fabric = plan.block.patches[layer.patch].fabric
    fill = tints.single(fabric) if layer.is_loose else tints.allowance(fabric, layer.turned)
    return Path(trails, Paint(fill, line.stroke, line.width))


def paler(colour: str, share: float) -> str:
    """Return a #rrggbb colour mixed with a share of white."""
    channels = (int(colour[index : index + 2], 16) for index in (1, 3, 5))
    return "#" + "".join(f"{round(channel + (255 - channel) * share):02x}" for channel in channels)


def shaded(colour: str) -> str:
    """Return a #rrggbb colour as dark as an allowance over a single layer."""
    channels = (int(colour[index : index + 2], 16) for index in (1, 3, 5))
    return "#" + "".join(f"{round(channel * SHADED):02x}" for channel in channels)
