"""Library blocks come out in the order in which they are taught (common practice), with as few kinds of step."""

import pytest

from blocklang.assembly import Assembly, JoinKind
from tests.library.plans import plan_of

STRAIGHT, SET_IN = JoinKind.STRAIGHT, JoinKind.SET_IN


def _told(assembly: Assembly) -> list[tuple[JoinKind, int, int]]:
    """Return the kind of each step, how many it makes, and the patches in what it makes."""
    return [(step.kind, step.times, len(assembly.unit_patches[step.makes[0]])) for step in assembly.steps]


@pytest.mark.parametrize(
    ("name", "steps"),
    [
        pytest.param(
            "eight-pointed-star",
            [(STRAIGHT, 4, 2), (SET_IN, 4, 3), (STRAIGHT, 2, 6), (STRAIGHT, 1, 12), (SET_IN, 1, 16)],
            id="star: pairs, a corner into each, halves, the centre, the sides last: five kinds of step",
        ),
        pytest.param(
            "six-pointed-star",
            [(STRAIGHT, 2, 2), (STRAIGHT, 1, 3), (STRAIGHT, 1, 3), (STRAIGHT, 1, 6), (SET_IN, 1, 12)],
            id="six points in two fabrics by turns: a pair for each half, the third diamond, the centre, the ground",
        ),
        pytest.param(
            "sawtooth-star",
            [(STRAIGHT, 4, 2), (STRAIGHT, 4, 3), (STRAIGHT, 2, 5), (STRAIGHT, 1, 7), (STRAIGHT, 1, 17)],
            id="four geese in two steps, the outer rows, the middle row, three rows together",
        ),
        pytest.param(
            "ohio-star",
            [(STRAIGHT, 4, 2), (STRAIGHT, 4, 2), (STRAIGHT, 4, 4), (STRAIGHT, 2, 6), (STRAIGHT, 1, 9), (STRAIGHT, 1, 21)],
            id="four quarter-square units from two kinds of half, two outer rows, the middle row, three rows together",
        ),
        pytest.param(
            "log-cabin",
            [(STRAIGHT, 1, count) for count in range(2, 18)],
            id="round by round, one log at a time: sixteen logs, sixteen steps",
        ),
        pytest.param(
            "bears-paw",
            [
                *[(STRAIGHT, 16, 2), (STRAIGHT, 1, 3), (STRAIGHT, 4, 4), (STRAIGHT, 4, 5)],
                *[(STRAIGHT, 4, 5), (STRAIGHT, 4, 10), (STRAIGHT, 2, 21), (STRAIGHT, 1, 45)],
            ],
            id="claws, the bars, a row of claws, the pad, the other row, four paws, two rows of paws, three rows",
        ),
    ],
)  # fmt: skip
def test_a_block_is_sewn_as_it_is_taught(name: str, steps: list[tuple[JoinKind, int, int]]) -> None:
    assembly = plan_of(name).assembly
    assert _told(assembly) == steps
    assert assembly.pivots.proven and assembly.partials.proven


def test_the_star_of_648_diamonds_is_sewn_in_rows_then_like_the_small_one() -> None:
    """Nine rows of at most nine kinds, the eight points, then the small star's five steps, the pairs among them."""
    told = _told(plan_of("large-star").assembly)
    rows = [step for step in told if step[2] == 9]
    assert sum(times for _, times, _ in rows) == 72 and len(rows) <= 9
    assert told[len(rows) :] == [
        (STRAIGHT, 8, 81), (STRAIGHT, 4, 162), (SET_IN, 4, 163), (STRAIGHT, 2, 326), (STRAIGHT, 1, 652), (SET_IN, 1, 656),
    ]  # fmt: skip
