"""From a drawing to the block: scaled, snapped, and moved so that its lower left bounds are at (0, 0)."""

from blocklang.block import (
    Block,
    FirstWish,
    NamedPoint,
    PartialWish,
    Patch,
    PressFabricWish,
    PressWish,
    RowsWish,
    SetInWish,
    SpinSense,
    SpinWish,
    StopWish,
    Stripes,
    Wish,
)
from blocklang.diagnostics import Span
from blocklang.geometry import TICKS_PER_INCH, Outline, Point
from blocklang.language.drawing import Drawing, DrawnPatch, DrawnWish, Place, Shape
from blocklang.language.headings import Headings
from blocklang.language.quantities import Exact
from blocklang.language.scope import Draft
from blocklang.language.snapping import Snapper


def finish(
    draft: Draft, headings: Headings, drawing: Drawing, outline: Shape | None, corner: Place, scale: Exact
) -> Block | None:
    """Return the block; None when its outline cannot be found.

    `outline` is None for whatever the patches cover; `corner` is the lower left of the drafted bounds, in inches.
    """
    snapper = Snapper(scale, corner)
    patches = tuple(_patch(snapper, patch) for patch in drawing.patches)
    border = _outline(draft, headings, patches) if outline is None else snapper.outline(outline)
    if border is None:
        return None
    wishes = tuple(_wish(snapper, wish) for wish in drawing.wishes)
    points = tuple(NamedPoint(name, snapper.point(place)) for name, place in drawing.points.items())
    credit = headings.credit
    return Block(
        name=credit.name,
        unit=draft.unit,
        outline=border,
        seam_allowance=round(headings.allowance * TICKS_PER_INCH),
        fabrics=tuple(draft.fabrics.values()),
        patches=patches,
        points=points,
        wishes=wishes,
        credits=(credit, *(placed for placed in draft.placed_credits if placed != credit)),
        family=headings.said.get("family", ""),
        notes=tuple(headings.notes),
        span=headings.places.get("block"),
        counts=headings.counts,
    )


def _outline(draft: Draft, headings: Headings, patches: tuple[Patch, ...]) -> Outline | None:
    from blocklang.language.covering import covered_outline

    border = covered_outline(tuple(patch.outline for patch in patches))
    if border is None and headings.outline is not None:
        found = "The patches leave a hole, lie apart, or touch only at a corner."
        advice = "Close the gaps between the patches, or name the corners: `outline a b c d`."
        draft.error("no-outline", "The patches do not make one shape", found, advice, headings.outline[-2:])
    return border


def _patch(snapper: Snapper, patch: DrawnPatch) -> Patch:
    stripes = Stripes(patch.stripes, *map(snapper.point, patch.along)) if patch.stripes else None
    outline = snapper.outline(patch.shape)
    return Patch(patch.id, patch.name, patch.fabric, outline, stripes, patch.group, patch.span)


def _wish(snapper: Snapper, wish: DrawnWish) -> Wish:
    at = Point(0, 0) if wish.at is None else snapper.point(wish.at)
    return WISHES[wish.verb](wish, at, wish.span)


def _pair(wish: DrawnWish) -> tuple[str, str]:
    return wish.patches[0], wish.patches[1]


def _stop(wish: DrawnWish, at: Point, span: Span) -> Wish:
    return StopWish(_pair(wish), at, span)


def _set_in(wish: DrawnWish, _at: Point, span: Span) -> Wish:
    return SetInWish(wish.patches[0], wish.patches[1:], span)


def _first(wish: DrawnWish, _at: Point, span: Span) -> Wish:
    return FirstWish(wish.word, wish.patches, span)


def _rows(wish: DrawnWish, _at: Point, span: Span) -> Wish:
    return RowsWish(wish.word == "columns", span)


def _partial(wish: DrawnWish, _at: Point, span: Span) -> Wish:
    return PartialWish(_pair(wish), span)


def _press(wish: DrawnWish, _at: Point, span: Span) -> Wish:
    return PressWish(_pair(wish), wish.patches[2] if wish.verb == "press" else None, span)


def _press_fabric(wish: DrawnWish, _at: Point, span: Span) -> Wish:
    return PressFabricWish(wish.word, wish.verb == "press away", span)


def _spin(wish: DrawnWish, at: Point, span: Span) -> Wish:
    return SpinWish(at, SpinSense("none" if wish.word == "not" else wish.word), span)


WISHES = {
    "stop": _stop,
    "set in": _set_in,
    "first": _first,
    "sew in": _rows,
    "partial": _partial,
    "press": _press,
    "press open": _press,
    "press away": _press_fabric,
    "press toward": _press_fabric,
    "spin": _spin,
}
