"""Random blocks of all angles: a square cut by chords, then some seams taken out, so that patches may be bent."""

import random

from shapely.geometry import LineString, Polygon, box
from shapely.ops import polygonize, unary_union

from blocklang.block import Block
from blocklang.graph import build_graph
from tests.support import blocks

SIDE = 8.0
#: Nobody sews a corner as sharp as this (radians, about 9 degrees), and shapely sees its two sides as one.
SHARPEST = 0.15


def chords(seed: int, cuts: int = 3, erased: int = 2) -> Block | None:
    """Return the block of a seed; None when corners lie nearer or are sharper than any that is sewn."""
    rng = random.Random(seed)
    lines = [LineString([_on_border(rng), _on_border(rng)]) for _ in range(cuts)]
    faces = list(polygonize(unary_union([box(0, 0, SIDE, SIDE).exterior, *lines])))
    faces.sort(key=lambda face: (round(face.representative_point().y, 6), round(face.representative_point().x, 6)))
    for _ in range(rng.randint(0, erased)):
        faces = _with_one_seam_less(rng, faces)
    patches = [
        blocks.patch(f"p.{number}", ("fog", "deep", "coral")[number % 3], list(face.exterior.coords)[:-1])
        for number, face in enumerate(faces, 1)
    ]
    made = blocks.block(patches, blocks.square(SIDE))
    sharp = any(min(patch.outline.angles()) < SHARPEST for patch in patches)
    return None if sharp or build_graph(made).graph is None else made


def _on_border(rng: random.Random) -> tuple[float, float]:
    at = rng.randint(0, 8)
    return ((at, 0.0), (SIDE, at), (at, SIDE), (0.0, at))[rng.randrange(4)]


def _with_one_seam_less(rng: random.Random, faces: list[Polygon]) -> list[Polygon]:
    pairs = [
        (a, b)
        for a in range(len(faces))
        for b in range(a + 1, len(faces))
        if faces[a].intersection(faces[b]).length > 0.2
    ]
    if not pairs:
        return faces
    a, b = rng.choice(pairs)
    union = unary_union([faces[a], faces[b]])
    if union.geom_type != "Polygon" or union.interiors:
        return faces
    return [face for place, face in enumerate(faces) if place not in (a, b)] + [union]
