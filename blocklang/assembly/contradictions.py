"""Lines of the author that cannot all be followed, and lines that cost something."""

from collections.abc import Callable
from itertools import combinations

from blocklang.assembly.demands import has_demand
from blocklang.block import FirstWish, Wish
from blocklang.diagnostics import Diagnostic, Related, Severity

#: Pivots and partial seams of the best order that follows some lines; None when there is no such order.
Counting = Callable[[tuple[Wish, ...]], tuple[int, int] | None]

#: With more lines than this, which of them costs what is not worked out one by one.
_MOST_LINES = 24


def clashing_units(wishes: tuple[Wish, ...]) -> tuple[Diagnostic, ...]:
    """Return an error for each pair of named units that share patches without one holding the other."""
    firsts = [wish for wish in wishes if isinstance(wish, FirstWish)]
    found = []
    for one, other in combinations(firsts, 2):
        shared = set(one.patches) & set(other.patches)
        if shared and not (set(one.patches) <= set(other.patches) or set(other.patches) <= set(one.patches)):
            found.append(_clash(one, other, shared))
    return tuple(found)


def _clash(one: FirstWish, other: FirstWish, shared: set[str]) -> Diagnostic:
    names = ", ".join(sorted(shared)[:4])
    return Diagnostic(
        "units-clash",
        Severity.ERROR,
        "These two units cannot both be sewn first",
        f"`{other.name}` and `{one.name}` both want {names}, and neither holds all of the other.",
        "Leave the shared patches out of one of them, or name the smaller unit in the line of the larger one.",
        other.span,
        (Related(one.span, f"`{one.name}` is sewn first here"),),
    )


def impossible_lines(wishes: tuple[Wish, ...], count: Counting) -> tuple[Diagnostic, ...]:
    """Return one error that names lines which together leave no order; none when the lines are not to blame."""
    asked = tuple(wish for wish in wishes if has_demand(wish))
    if not asked or count(()) is None:
        return ()
    needed = asked
    for wish in asked:
        fewer = tuple(other for other in needed if other is not wish)
        if count(fewer) is None:
            needed = fewer
    return (_impossible(needed, count),)


def _impossible(needed: tuple[Wish, ...], count: Counting) -> Diagnostic:
    alone = len(needed) == 1
    left = count(needed[:-1])
    without = "" if left is None else f" Without this line the block needs {_told(left)}."
    said = "No order of joins was found that does what " + ("this line asks." if alone else "these lines ask together.")
    return Diagnostic(
        "no-such-order",
        Severity.ERROR,
        "This line cannot be followed" if alone else "These lines contradict each other",
        said + without,
        "Leave it out." if alone else "Leave one of them out.",
        needed[-1].span,
        tuple(Related(wish.span, "This is the other line") for wish in needed[:-1]),
    )


def costly_lines(wishes: tuple[Wish, ...], reached: tuple[int, int], count: Counting) -> tuple[Diagnostic, ...]:
    """Return a warning for each line without which the block needs fewer pivots or partial seams."""
    asked = tuple(wish for wish in wishes if has_demand(wish))
    if len(asked) > _MOST_LINES or count(()) == reached:
        return ()
    found = []
    for wish in asked:
        without = count(tuple(other for other in asked if other is not wish))
        if without is not None and without < reached:
            found.append(_costs(wish, reached, without))
    return tuple(found)


def _costs(wish: Wish, reached: tuple[int, int], without: tuple[int, int]) -> Diagnostic:
    said = f"It is followed: the block now needs {_told(reached)}. Without it the block needs {_told(without)}."
    return Diagnostic("costly-line", Severity.WARNING, "This line makes the block harder to sew", said, "", wish.span)


def _told(count: tuple[int, int]) -> str:
    pivots, partials = count
    parts = [_number(pivots, "pivot")] * bool(pivots) + [_number(partials, "partial seam")] * bool(partials)
    return " and ".join(parts) or "neither pivots nor partial seams"


def _number(count: int, word: str) -> str:
    return f"{count} {word}" if count == 1 else f"{count} {word}s"
