"""Junctions counted by hand, each with the counting written out, against the folding.

How to count. Close to a junction a patch's cloth, as cut, reaches all round it: one layer in every direction. Folding it
back along a line takes what lies beyond the line to the other side. So each patch covers whole sectors, and the layers
in a direction are the sum. As no cloth is lost, the sum over all directions is the number of patches times 360 degrees.

Patches are letters, counterclockwise from the headings given; "A B" is the seam between two.
"""

from dataclasses import dataclass

import pytest

from tests.support import blocks
from tests.thickness.wedges import MIDDLE, OPEN, Counted, order_of, wedges

FOUR, FOUR_HEADINGS = "ABCD", (0.0, 90.0, 180.0, 270.0)  # A upper right, B upper left, C lower left, D lower right
TEE, TEE_HEADINGS = "ABC", (0.0, 90.0, 180.0)  # A upper right, B upper left, C the whole lower half
Y, Y_HEADINGS = "ABC", (0.0, 120.0, 240.0)  # B and C are joined first, then A is set in: first along C, then along B
SIX, SIX_HEADINGS = "ABCDEF", tuple(60.0 * k for k in range(6))
EIGHT, EIGHT_HEADINGS = "ABCDEFGH", tuple(45.0 * k for k in range(8))
ROUND_SIX = {"A B": "B", "B C": "C", "C D": "D", "D E": "E", "E F": "F", "F A": "A"}
ROUND_EIGHT = {
    "A B": "B", "B C": "C", "C D": "D", "D E": "E", "E F": "F", "F G": "G", "G H": "H", "H A": "A",
}  # fmt: skip


@dataclass(frozen=True)
class Count:
    """A junction and the layers counted in the middle of each sector; `sectors` are their borders in degrees."""

    name: str
    patches: str
    headings: tuple[float, ...]
    order: list[str]
    presses: dict[str, str]
    sectors: tuple[float, ...]
    layers: list[int]
    spun: bool = False


COUNTS = (
    # Four patches. Rows first: the upper seam lies under A, the lower one under C: A and C have 3 layers, B and D 1.
    # Then the long seam, pressed down. Over C: its 3, its own 3 folded back, B's 1 beneath: 7. Over D: 1, 1 and A's 3: 5.
    Count("four-patch nested", FOUR, FOUR_HEADINGS, ["B+A", "C+D", "AB+CD"],
          {"A B": "A", "C D": "C", "B C": "C", "A D": "D"}, FOUR_HEADINGS, [3, 1, 7, 5]),
    # Both row seams to the right: A and D have 3. Over D: 3, its own 3 folded back, A's 3: 9. Over C: 1, 1, B's 1: 3.
    Count("four-patch not nested", FOUR, FOUR_HEADINGS, ["B+A", "C+D", "AB+CD"],
          {"A B": "A", "C D": "D", "B C": "C", "A D": "D"}, FOUR_HEADINGS, [3, 1, 3, 9]),
    # Row seams open: 2 everywhere. Long seam open: each quarter has its 2 and its own 2 folded back.
    Count("four-patch all open", FOUR, FOUR_HEADINGS, ["B+A", "C+D", "AB+CD"],
          dict.fromkeys(("A B", "C D", "B C", "A D"), OPEN), FOUR_HEADINGS, [4, 4, 4, 4]),
    # Spun: each patch is folded along its clockwise side only, so it lies double on a half turn from there.
    # In each direction two of the four lie: 2 x 2.
    Count("four-patch spun", FOUR, FOUR_HEADINGS, ["B+A", "C+D", "AB+CD"],
          {"A B": "B", "B C": "C", "C D": "D", "D A": "A"}, FOUR_HEADINGS, [4, 4, 4, 4], spun=True),
    # The other way round comes to the same.
    Count("four-patch spun clockwise", FOUR, FOUR_HEADINGS, ["B+A", "C+D", "AB+CD"],
          {"A B": "A", "B C": "B", "C D": "C", "D A": "D"}, FOUR_HEADINGS, [4, 4, 4, 4], spun=True),
    # Row seams open: 2 everywhere. Long seam down: the lower row has 2, its own 2 back, the upper row's 2: 6.
    Count("rows open, long seam down", FOUR, FOUR_HEADINGS, ["B+A", "C+D", "AB+CD"],
          {"A B": OPEN, "C D": OPEN, "B C": "C", "A D": "D"}, FOUR_HEADINGS, [2, 2, 6, 6]),
    # Nested rows (A 3, B 1, C 3, D 1), long seam open: each has its own once more.
    Count("rows nested, long seam open", FOUR, FOUR_HEADINGS, ["B+A", "C+D", "AB+CD"],
          {"A B": "A", "C D": "C", "B C": OPEN, "A D": OPEN}, FOUR_HEADINGS, [6, 2, 6, 2]),
    # Nested rows, the long seam clipped in the middle: its left half down, its right half up.
    # Over C: 3, own 3, B's 1: 7. Over A: 3, own 3, D's 1: 7. B and D keep 1.
    Count("four-patch clipped", FOUR, FOUR_HEADINGS, ["B+A", "C+D", "AB+CD"],
          {"A B": "A", "C D": "C", "B C": "C", "A D": "A"}, FOUR_HEADINGS, [7, 1, 7, 1]),
    # Tee: the stem lies under A: A 3, B 1. Bar pressed down, toward C. Below A: C's 1, its own 1 back, A's 3: 5;
    # below B: 1, 1, 1.
    Count("tee toward the bar", TEE, TEE_HEADINGS, ["B+A", "AB+C"],
          {"A B": "A", "B C": "C", "A C": "C"}, (0, 90, 180, 270), [3, 1, 3, 5]),
    # Bar pressed up: over A its 3, its own 3 back, C's 1: 7; over B 1, 1, 1; C alone.
    Count("tee away from the bar", TEE, TEE_HEADINGS, ["B+A", "AB+C"],
          {"A B": "A", "B C": "B", "A C": "A"}, (0, 90, 180, 270), [7, 3, 1, 1]),
    # Bar open: A 3 and 3, B 1 and 1, C 1 and 1.
    Count("tee, bar open", TEE, TEE_HEADINGS, ["B+A", "AB+C"],
          {"A B": "A", "B C": OPEN, "A C": OPEN}, (0, 90, 180, 270), [6, 2, 2, 2]),
    # Stem open (2 and 2), bar down: C's 1, own 1, the stem's 2: 4.
    Count("tee, stem open", TEE, TEE_HEADINGS, ["B+A", "AB+C"],
          {"A B": OPEN, "B C": "C", "A C": "C"}, (0, 90, 180, 270), [2, 2, 4, 4]),
    # A slanted stem at 45 degrees, pressed toward the sharp patch A. A is folded at the line 45/225: double on 225-45.
    # Bar up: A's part below (225-360) comes up to 0-135: A 4 on 0-45, 2 on 45-135. B is folded up: 2 on 0-180. C 1.
    Count("slanted stem toward the sharp patch", TEE, (0.0, 45.0, 180.0), ["B+A", "AB+C"],
          {"A B": "A", "B C": "B", "A C": "A"}, (0, 45, 135, 180), [7, 5, 3, 1]),
    # Toward B: B double on 45-225; bar up brings 180-225 to 135-180: B 2 on 45-135, 4 on 135-180. A 2 on 0-180, C 1.
    Count("slanted stem toward the wide patch", TEE, (0.0, 45.0, 180.0), ["B+A", "AB+C"],
          {"A B": "B", "B C": "B", "A C": "A"}, (0, 45, 135, 180), [3, 5, 7, 1]),
    # Two stems, at 90 and 135, both pressed clockwise. B at 135/315: double on 315-135. A at 90/270: double on 270-90.
    # Bar up: A's 270-360 comes to 0-90: A 4 on 0-90. B's 315-360 comes to 0-45: B 4 on 0-45, 2 on 45-135.
    # C 2 on 0-180, D 1. So 4+4+2+1, 4+2+2+1, 2+2+1, 2+1 and 1 below.
    Count("two stems one way", "ABCD", (0.0, 90.0, 135.0, 180.0), ["C+B", "BC+A", "ABC+D"],
          {"A B": "A", "B C": "B", "A D": "A", "B D": "B", "C D": "C"}, (0, 45, 90, 135, 180), [11, 9, 5, 3, 1]),
    # The stem at 135 the other way: C double on 135-315, up: 180-315 to 45-180: C 2 on 45-135, 4 on 135-180.
    # B 2 on 0-180, A 4 on 0-90, D 1.
    Count("two stems apart", "ABCD", (0.0, 90.0, 135.0, 180.0), ["C+B", "BC+A", "ABC+D"],
          {"A B": "A", "B C": "C", "A D": "A", "B D": "B", "C D": "C"}, (0, 45, 90, 135, 180), [7, 9, 5, 7, 1]),
    # Y, all the same way round: each patch double on a half turn from its clockwise side; 120 degrees apart, two of
    # them lie over each other in the first half of each patch, one in the second half.
    Count("Y the same way round", Y, Y_HEADINGS, ["B+C", "BC+A"],
          {"C A": "A", "A B": "B", "B C": "C"}, (0, 60, 120, 180, 240, 300), [4, 2, 4, 2, 4, 2]),
    # Two toward A. A is folded at C's side (double on 0-180), then at B's: 120-180 comes to 60-120: A 2, then 4.
    # B lies unfolded, 1 all round. C is folded at B's side, the line 240/60: double on 240-60.
    Count("Y, two toward one, the third away", Y, Y_HEADINGS, ["B+C", "BC+A"],
          {"C A": "A", "A B": "A", "B C": "C"}, (0, 60, 120, 180, 240, 300), [5, 5, 1, 1, 3, 3]),
    # The same, but the seam between B and C toward B: B double on 60-240, C 1 all round.
    Count("Y, two toward one, the third beside it", Y, Y_HEADINGS, ["B+C", "BC+A"],
          {"C A": "A", "A B": "A", "B C": "B"}, (0, 60, 120, 180, 240, 300), [3, 7, 3, 3, 1, 1]),
    # All open: every patch is folded along both sides and keeps its 6 sixths to itself: 2 where the second fold
    # starts from, 4 where it goes. B and C are folded at their common seam first, A at C's side first.
    Count("Y all open", Y, Y_HEADINGS, ["B+C", "BC+A"],
          dict.fromkeys(("C A", "A B", "B C"), OPEN), (0, 60, 120, 180, 240, 300), [2, 4, 4, 2, 2, 4]),
    # The inner corner of an eight-pointed star: square A (90 degrees), diamonds B and C (135 each).
    # The diamonds' seam toward B: B double on 45-225. A is set in, its seams toward the diamonds: A 1 all round;
    # C folded at 0/180: double on 180-360; B folded at 90/270: 45-90 comes to 90-135: B 4 on 90-135, 2 on 135-225.
    Count("star, a corner set in", Y, (0.0, 90.0, 225.0), ["B+C", "BC+A"],
          {"C A": "C", "A B": "B", "B C": "B"}, (0, 90, 135, 180, 225), [1, 5, 3, 5, 3]),
    # A square in the notch of an L, pressed toward the square: folded twice at its corner, 4 on its own quarter,
    # and the L's allowance beneath.
    Count("square in a notch, toward the square", "AB", (0.0, 90.0), ["B+A"], {"A B": "A"}, (0, 90), [5, 1]),
    # Toward the L: its allowance is clipped at the corner and folded back to both sides, on 90-135 and on 315-360;
    # the square's allowance lies under the L all round.
    Count("square in a notch, toward the L", "AB", (0.0, 90.0), ["B+A"], {"A B": "B"}, (0, 90, 135, 315), [1, 3, 2, 3]),
    # Six-way centre spun: in each direction three of six half turns lie, double.
    Count("six-way spun", SIX, SIX_HEADINGS, ["B+A", "E+D", "C+AB", "F+DE", "ABC+DEF"],
          ROUND_SIX, SIX_HEADINGS, [6] * 6, spun=True),
    # Not spun. The upper half: A 1 all round, B double on 60-240, C double on 120-300: 1 3 5 5 3 1 in sixths from 0.
    # The lower half is the same half a turn on: 5 3 1 1 3 5. Long seam down: the lower half's upper part comes down,
    # mirrored: 1 3 5. Below lie 5+1+1, 3+3+3, 1+5+5; above 1, 3, 5.
    Count("six-way, long seam to one side", SIX, SIX_HEADINGS, ["B+A", "E+D", "C+AB", "F+DE", "ABC+DEF"],
          {**ROUND_SIX, "F A": "F"}, SIX_HEADINGS, [1, 3, 5, 7, 9, 11]),
    # Eight-way centre spun: four of eight half turns, double.
    Count("eight-way spun", EIGHT, EIGHT_HEADINGS,
          ["D+C", "B+A", "H+G", "E+F", "CD+AB", "EF+GH", "ABCD+EFGH"], ROUND_EIGHT, EIGHT_HEADINGS, [8] * 8, spun=True),
    # Not spun. A 1 all round. B double on 45-225. D double on 135-315. C is folded at 90/270: double on 90-270, and D
    # with it: its 270-315 comes to 225-270, so D 2 on 135-225, 4 on 225-270. The upper half in eighths:
    # 1 3 5 7 7 7 1 1. The lower half is the same half a turn on: 7 7 1 1 1 3 5 7. Long seam down: its upper part comes
    # down, mirrored: 1 1 7 7. Below lie 7+1+1, 7+3+1, 1+5+7, 1+7+7; above 1 3 5 7.
    Count("eight-way, long seam to one side", EIGHT, EIGHT_HEADINGS,
          ["D+C", "B+A", "H+G", "E+F", "CD+AB", "EF+GH", "ABCD+EFGH"], {**ROUND_EIGHT, "H A": "H"},
          EIGHT_HEADINGS, [1, 3, 5, 7, 9, 11, 13, 15]),
    # The same with the long seam open: each half keeps what is its own. Upper: 1+1, 3+1, 5+7, 7+7; lower alike.
    Count("eight-way, long seam open", EIGHT, EIGHT_HEADINGS,
          ["D+C", "B+A", "H+G", "E+F", "CD+AB", "EF+GH", "ABCD+EFGH"],
          {**ROUND_EIGHT, "H A": OPEN, "D E": OPEN}, EIGHT_HEADINGS, [2, 4, 12, 14, 2, 4, 12, 14]),
)  # fmt: skip


@pytest.mark.parametrize("count", COUNTS, ids=lambda count: count.name)
def test_a_count_by_hand(count: Count) -> None:
    counted = Counted(wedges(count.patches, count.headings), count.presses, [MIDDLE] if count.spun else [])
    assert order_of(counted.assembly) == count.order
    sizes = [(b - a) % 360 or 360 for a, b in zip(count.sectors, (*count.sectors[1:], count.sectors[0]), strict=True)]
    assert sum(size * layers for size, layers in zip(sizes, count.layers, strict=True)) == 360 * len(count.patches)
    middles = [start + size / 2 for start, size in zip(count.sectors, sizes, strict=True)]
    assert counted.round(middles) == count.layers
    assert counted.pile() == max(count.layers)


ROWS = [(0, 0, 6, 4), (6, 0, 12, 4), (0, 4, 6, 8), (6, 4, 12, 8), (0, 8, 6, 12), (6, 8, 12, 12)]
ROW_SEAMS = {"p1 p2": "p1", "p3 p4": "p4", "p5 p6": "p5"}


def test_three_rows_pressed_toward_the_middle_one() -> None:
    # Row seams left, right, left: the lower row has 3 and 1, the middle one 1 and 3, the upper one 3 and 1.
    # Both long seams toward the middle row. At either end of its seam it has on the left its 1, its own 1 folded back
    # and the neighbour's 3; on the right its 3, its own 3 and the neighbour's 1.
    presses = {**ROW_SEAMS, "p1 p3": "p3", "p2 p4": "p4", "p3 p5": "p3", "p4 p6": "p4"}
    counted = Counted(blocks.rectangles(ROWS, 12, 12), presses)
    assert counted.round((45, 135, 225, 315), (6, 4)) == [7, 5, 3, 1]
    assert counted.round((45, 135, 225, 315), (6, 8)) == [1, 3, 5, 7]
    assert counted.pile((6, 4)) == counted.pile((6, 8)) == 7


def test_three_rows_pressed_away_from_the_middle_one() -> None:
    # Now the outer rows have their own twice: on the left 3, 3 and the middle row's 1; on the right 1, 1 and its 3.
    presses = {**ROW_SEAMS, "p1 p3": "p1", "p2 p4": "p2", "p3 p5": "p5", "p4 p6": "p6"}
    counted = Counted(blocks.rectangles(ROWS, 12, 12), presses)
    assert counted.round((45, 135, 225, 315), (6, 4)) == [3, 1, 7, 5]
    assert counted.round((45, 135, 225, 315), (6, 8)) == [5, 7, 1, 3]


@pytest.mark.parametrize(("toward", "layers"), [("bar", 5), ("inside", 7)])
def test_a_whirl_is_as_thick_at_its_partial_seam_as_at_the_others(toward: str, layers: int) -> None:
    # Each corner of the middle square is a tee: the long side of a bar is its bar, the next bar and the middle square
    # stand on it. All seams toward the bars: the stem is 3 on the next bar's side; 1, 1 and 3 under this bar: 5.
    # All seams toward the middle square and the bar that stands beside it: 3, 3 and this bar's 1: 7.
    presses = {}
    for k in range(1, 5):
        bar, before = f"bar.{k}", f"bar.{(k - 2) % 4 + 1}"
        presses |= {f"middle {bar}": bar, f"{before} {bar}": bar}
        if toward == "inside":
            presses |= {f"middle {bar}": "middle", f"{before} {bar}": before}
    counted = Counted(blocks.whirl(), presses)
    assert [counted.pile(corner) for corner in ((1, 1), (2, 1), (2, 2), (1, 2))] == [layers] * 4


@pytest.mark.parametrize(("said", "layers"), [("A", 3), ("B", 3), (OPEN, 2)])
def test_a_seam_that_ends_at_the_edge_of_the_block(said: str, layers: int) -> None:
    # To one side: the patch, its own allowance folded back, the neighbour's. Open: each its own.
    counted = Counted(wedges("AB", (90.0, 270.0)), {"A B": said})
    assert counted.pile((6, 12)) == counted.pile((6, 0)) == layers
    assert counted.pile((0, 0)) == 1


@pytest.mark.parametrize(("said", "inside", "outside"), [("pie", 3, 1), ("ground", 1, 3), (OPEN, 2, 2)])
def test_a_curved_seam_is_as_thick_as_a_straight_one(said: str, inside: int, outside: int) -> None:
    name = f"r1c1.{said}" if said != OPEN else OPEN
    counted = Counted(blocks.drunkards_path(1), {"r1c1.pie r1c1.ground": name})
    # The arc has a radius of 2 in about the lower left corner; places an eighth inside and outside of it, half-way.
    assert counted.round([45], (0, 0), 1.875) == [inside]
    assert counted.round([45], (0, 0), 2.125) == [outside]
