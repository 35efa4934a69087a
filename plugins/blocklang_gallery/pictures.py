"""Pictures whose fabrics the script of a page can give other colours.

All that is painted with fabric number 2 stands in groups marked `cloth-2`, the lines round its patches in a group
marked `edge-2`: light lines where the fabric is dark. Light lines come first, so that they only show where dark meets
dark.
"""

from collections.abc import Iterator

from blocklang_drawing import (
    Drawing,
    Frame,
    Group,
    Paint,
    Path,
    Shape,
    Theme,
    Trail,
    draw_block,
    draw_swatch,
    polygon,
    stripe_rings,
    theme_for,
    to_svg,
)

from blocklang.block import Block, Fabric
from blocklang.hooks import OutputOptions
from blocklang_gallery import words

MARGIN = 2.0
#: Patches with less room than this (square points) on average get thin lines.
_SMALL = 150.0


def draw_for_page(block: Block, options: OutputOptions, side: float) -> str:
    """Return the block as SVG for a page, as large as fits in a square of that side (points)."""
    theme = theme_for(block.fabrics, options.black_and_white, options.language)
    if options.black_and_white:
        return to_svg(draw_block(block, theme, width=side, height=side), declaration=False)
    frame = Frame.fit(block.outline.bounds(), side - 2 * MARGIN, side - 2 * MARGIN, left=MARGIN, top=MARGIN)
    shapes = (*_cloth(block, frame, theme), *_edges(block, frame, theme), _border(block, frame, theme))
    title = theme.language.say(words.picture_of(block.name))
    return to_svg(
        Drawing(frame.width + 2 * MARGIN, frame.height + 2 * MARGIN, shapes, title, theme.font), declaration=False
    )


def draw_cloth(block: Block, fabric: Fabric, options: OutputOptions) -> str:
    """Return a swatch of one fabric as SVG."""
    theme = theme_for(block.fabrics, options.black_and_white, options.language)
    drawing = draw_swatch(fabric, theme)
    if options.black_and_white:
        return to_svg(drawing, declaration=False)
    fill, *others = drawing.shapes
    number = block.fabrics.index(fabric)
    shapes = (Group((fill,), mark=f"cloth-{number}"), *others)
    return to_svg(Drawing(drawing.width, drawing.height, shapes, drawing.title, drawing.font), declaration=False)


def _cloth(block: Block, frame: Frame, theme: Theme) -> Iterator[Shape]:
    """Give one group a fabric, and the lines between stripes."""
    trails: dict[str, list[Trail]] = {fabric.id: [] for fabric in block.fabrics}
    stripes: list[Trail] = []
    for patch in block.patches:
        if patch.stripes is None:
            trails[patch.fabric].append(frame.outline(patch.outline))
            continue
        for cloth, ring in stripe_rings(patch, patch.outline.chords()):
            stripe = polygon(frame.ring(ring))
            trails[cloth].append(stripe)
            stripes.append(stripe)
    for number, fabric in enumerate(block.fabrics):
        paint = Paint(fill=theme.fill(fabric.id).colour)
        yield Group((Path(tuple(trails[fabric.id]), paint),), mark=f"cloth-{number}")
    yield Path(tuple(stripes), Paint(stroke=theme.ink, width=theme.line / 3))


def _edges(block: Block, frame: Frame, theme: Theme) -> Iterator[Shape]:
    """Give one group of lines a fabric, light lines first, and one for the striped patches last."""
    width = theme.line / 2 if _are_small(block, frame) else theme.line
    trails: dict[str, list[Trail]] = {cloth: [] for cloth in ("", *(fabric.id for fabric in block.fabrics))}
    for patch in block.patches:
        trails["" if patch.stripes is not None else patch.fabric].append(frame.outline(patch.outline))
    groups = [(f"edge-{number}", _ink(theme, fabric), fabric.id) for number, fabric in enumerate(block.fabrics)]
    for mark, ink, cloth in sorted([*groups, ("edge", theme.ink, "")], key=lambda group: group[1] != theme.paper):
        yield Group((Path(tuple(trails[cloth]), Paint(stroke=ink, width=width)),), mark=mark)


def _ink(theme: Theme, fabric: Fabric) -> str:
    return theme.paper if theme.fill(fabric.id).ink == theme.paper else theme.ink


def _are_small(block: Block, frame: Frame) -> bool:
    area = sum(patch.outline.area() for patch in block.patches) * frame.scale**2
    return area < _SMALL * len(block.patches)


def _border(block: Block, frame: Frame, theme: Theme) -> Path:
    return Path((frame.outline(block.outline),), Paint(stroke=theme.ink, width=theme.line * 2))
