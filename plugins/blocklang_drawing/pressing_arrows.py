"""Arrows that say which way allowances are pressed: across the seam, toward the patch that they come to lie under."""

import math
from dataclasses import dataclass
from itertools import product
from typing import Final

from blocklang.geometry import Edge
from blocklang.graph import PatchGraph
from blocklang.pressing import Pressed
from blocklang_drawing.frame import Frame
from blocklang_drawing.shapes import Arrow, Place
from blocklang_drawing.theme import Theme

#: A run goes on through a junction when it turns by less than this many radians.
STRAIGHT: Final = 0.05


@dataclass(frozen=True, slots=True)
class PressedRun:
    """Seam segments that run on into each other and are pressed to one side; `to_left` is None when pressed open."""

    edges: tuple[Edge, ...]
    to_left: bool | None

    def middle(self) -> tuple[tuple[float, float], float]:
        """Return the middle of the longest seam segment (ticks) and the heading there: clear of every junction."""
        longest = max(edge.length() for edge in self.edges)
        among = [edge for edge in self.edges if edge.length() > longest * 0.9]
        edge = among[len(among) // 2]
        before, after = edge.at(0.49), edge.at(0.51)
        return edge.at(0.5), math.atan2(after[1] - before[1], after[0] - before[0])


def pressed_runs(graph: PatchGraph, pressed: tuple[Pressed, ...]) -> tuple[PressedRun, ...]:
    """Join up pressed segments, given in order along their seam, into runs as long as they keep line and side."""
    runs: list[PressedRun] = []
    for item in pressed:
        segment = graph.segments[item.segment]
        run = PressedRun((segment.edge,), None if item.toward is None else item.toward == segment.left)
        longer = _joined(runs[-1], run) if runs else None
        if longer is None:
            runs.append(run)
        else:
            runs[-1] = longer
    return tuple(runs)


def _joined(run: PressedRun, following: PressedRun) -> PressedRun | None:
    firsts = (run, _turned(run)) if len(run.edges) == 1 else (run,)
    for first, second in product(firsts, (following, _turned(following))):
        last, edge = first.edges[-1], second.edges[0]
        turn = math.remainder(edge.departs() - last.arrives(), 2 * math.pi)
        if last.end == edge.start and abs(turn) < STRAIGHT and first.to_left == second.to_left:
            return PressedRun(first.edges + second.edges, first.to_left)
    return None


def _turned(run: PressedRun) -> PressedRun:
    edges = tuple(edge.reversed() for edge in reversed(run.edges))
    return PressedRun(edges, None if run.to_left is None else not run.to_left)


def pressing_arrow(frame: Frame, run: PressedRun, length: float, theme: Theme, move: Place = (0.0, 0.0)) -> Arrow:
    """Return the arrow of a run, so many points long; two heads when it is pressed open."""
    (x, y), heading = run.middle()
    turn = heading + (math.pi / 2 if run.to_left is not False else -math.pi / 2)
    middle = frame.at((x + move[0], y + move[1]))
    turn += frame.turn
    along = (math.cos(turn) * (-1 if frame.mirrored else 1), -math.sin(turn))
    back, ahead = (0.5, 0.5) if run.to_left is None else (0.35, 0.65)
    start = (middle[0] - along[0] * length * back, middle[1] - along[1] * length * back)
    end = (middle[0] + along[0] * length * ahead, middle[1] + along[1] * length * ahead)
    shaft, head = min(1.3, length / 9), min(5.5, length * 0.42)
    return Arrow(start, end, theme.ink, shaft, head, theme.paper, both=run.to_left is None)
