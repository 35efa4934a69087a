"""The key: each mark of the map on a scrap of cloth, drawn as it is there."""

from collections.abc import Iterator

from blocklang_drawing import Arrow, Dot, Drawing, KeyEntry, Paint, Path, Shape, Theme, lies_of, stops_of
from blocklang_drawing.folded_cloth import GREYS
from blocklang_drawing.shapes import Place, polygon, polyline

from blocklang.plan import SewingPlan
from blocklang_pressing_map import words

WIDTH, HEIGHT = 44.0, 26.0
BAND = 9.0
_MIDDLE, _LEVEL = WIDTH / 2, HEIGHT / 2


def key_of(plan: SewingPlan, theme: Theme) -> tuple[KeyEntry, ...]:
    """Return the marks that the map of a plan has."""
    return tuple(
        KeyEntry(
            Drawing(WIDTH, HEIGHT, (_cloth(theme), *shapes), theme.language.say(words.key_title(sentence)), theme.font),
            sentence,
        )
        for sentence, shapes in _entries(plan, theme)
    )


def _entries(plan: SewingPlan, theme: Theme) -> Iterator[tuple[str, tuple[Shape, ...]]]:
    toward = {each.toward is None for each in plan.pressing.directions}
    if False in toward:
        yield words.PRESS, (_band(theme, _MIDDLE, _MIDDLE + BAND), _arrow(theme, False))
    if True in toward:
        yield (
            words.OPEN,
            (_band(theme, _MIDDLE - BAND, _MIDDLE), _band(theme, _MIDDLE, _MIDDLE + BAND), _arrow(theme, True)),
        )
    if lies_of(plan).spun:
        yield words.SPUN, _spun(theme)
    if stops_of(plan):
        band = _band(theme, _MIDDLE - BAND, _MIDDLE)
        yield words.STOP, (band, Dot((_MIDDLE, _LEVEL), 2.6, Paint(theme.ink, theme.paper, 0.8)))
    if lies_of(plan).spun or stops_of(plan):
        yield words.RIGHT_SIDE, (_rectangle((_MIDDLE - 6, _LEVEL - 6), (_MIDDLE + 6, _LEVEL + 6), theme, GREYS[2]),)
    dashed = Path(
        (polyline(((0.5, _LEVEL), (WIDTH - 0.5, _LEVEL))),), Paint(stroke=theme.ink, width=theme.line, dash=(4.0, 3.0))
    )
    yield words.OUTSIDE, (dashed,)


def _cloth(theme: Theme) -> Path:
    return _rectangle((0.5, 0.5), (WIDTH - 0.5, HEIGHT - 0.5), theme, theme.paper)


def _band(theme: Theme, left: float, right: float) -> Path:
    return _rectangle((left, 0.5), (right, HEIGHT - 0.5), theme, GREYS[1])


def _rectangle(first: Place, last: Place, theme: Theme, fill: str) -> Path:
    (left, top), (right, low) = first, last
    ring = polygon(((left, top), (right, top), (right, low), (left, low)))
    return Path((ring,), Paint(fill, theme.ink, 0.6))


def _arrow(theme: Theme, both: bool) -> Arrow:
    start, end = (_MIDDLE - 8, _MIDDLE + 8) if both else (_MIDDLE - 6, _MIDDLE + 9)
    return Arrow((start, _LEVEL), (end, _LEVEL), theme.ink, 1.3, 5.5, theme.paper, both)


def _spun(theme: Theme) -> tuple[Shape, ...]:
    side = 5.0
    corners = ((_MIDDLE - side, _LEVEL - side), (_MIDDLE, _LEVEL - side), (_MIDDLE - side, _LEVEL), (_MIDDLE, _LEVEL))
    little = tuple(
        _rectangle((x, y), (x + side, y + side), theme, GREYS[2 if place in (0, 3) else 1])
        for place, (x, y) in enumerate(corners)
    )
    return (*little, Dot((_MIDDLE, _LEVEL), side * 1.55, Paint(stroke=theme.ink, width=1.2)))
