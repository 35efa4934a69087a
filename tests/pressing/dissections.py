"""Small random blocks for holding the pressing against every other choice."""

import random

from blocklang.block import PressWish, SpinSense, SpinWish, Wish
from blocklang.diagnostics import SourceText, Span
from blocklang.graph import PatchGraph
from tests.support import blocks

TEXT = SourceText("test.block", "\n" * 60)


def span(line: int) -> Span:
    return Span(TEXT, min(line, 60) - 1, min(line, 60) - 1)


def rectangles(seed: int, cuts: int, size: int = 3):
    """A square cut by straight lines into rectangles, so that crosses are common."""
    chance = random.Random(seed)
    boxes = [(0, 0, size, size)]
    while len(boxes) <= cuts:
        x0, y0, x1, y1 = box = chance.choice([b for b in boxes if b[2] - b[0] > 1 or b[3] - b[1] > 1])
        boxes.remove(box)
        if y1 - y0 < 2 or (x1 - x0 > 1 and chance.random() < 0.5):
            x = chance.randrange(x0 + 1, x1)
            boxes += [(x0, y0, x, y1), (x, y0, x1, y1)]
        else:
            y = chance.randrange(y0 + 1, y1)
            boxes += [(x0, y0, x1, y), (x0, y, x1, y1)]
    return blocks.rectangles(sorted(boxes), size, size)


def wishes(graph: PatchGraph, seed: int, presses: int, spins: int = 0) -> tuple[Wish, ...]:
    """Random lines of an author's, each for another seam or junction."""
    chance = random.Random(seed)
    said: list[Wish] = []
    for line, seam in enumerate(chance.sample(graph.seams, min(presses, len(graph.seams))), 1):
        a, b = (graph.block.patches[p].id for p in seam.patches)
        said.append(PressWish((a, b), chance.choice((a, b)), span(line)))
    inner = [j for j in graph.junctions if j.is_inner]
    for line, junction in enumerate(chance.sample(inner, min(spins, len(inner))), 50):
        said.append(SpinWish(junction.at, chance.choice(tuple(SpinSense)), span(line)))
    return tuple(said)
