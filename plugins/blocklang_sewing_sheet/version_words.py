"""What to say where equal units are pressed in several versions, and where those meet."""

from collections.abc import Iterable

from blocklang.plan import PlanJoin, PlanStep, SewingPlan
from blocklang.wording import joined
from blocklang_sewing_sheet import where_words, words
from blocklang_sewing_sheet.naming import spoken
from blocklang_sewing_sheet.unpictured import presses


def version_sentences(plan: SewingPlan, step: PlanStep, pictured: bool = True) -> tuple[str, ...]:
    """Return how many units are pressed as which version, and how versions are laid beside each other."""
    letters = {made: version.letter for one in plan.steps for version in one.versions for made in version.makes}
    orders = _orders(plan, step, letters)
    if not step.versions:
        return tuple(words.lay_versions(order, made, step.times) for order, made in _counted(orders.values()))
    said: list[str] = []
    for version in step.versions:
        if not (pictured or version.as_first or version.opposite):
            said.append(where_words.press_version(version.letter, len(version.makes)))
            said.extend(presses(plan, _joins_that_make(step, version.makes[0])))
            continue
        said.extend(
            words.press_version(version.letter, count, version.as_first, version.opposite, order)
            for order, count in _counted(orders.get(made, "") for made in version.makes)
        )
    return tuple(said)


def _joins_that_make(step: PlanStep, made: str) -> tuple[PlanJoin, ...]:
    size = len(step.joins) // step.times
    groups = (step.joins[start : start + size] for start in range(0, len(step.joins), size))
    return next(joins for joins in groups if joins[-1].makes == made)


def _orders(plan: SewingPlan, step: PlanStep, letters: dict[str, str]) -> dict[str, str]:
    """Return, for each unit that the step makes of versions, what it is made of, in order, with the letters."""
    size = len(step.joins) // step.times
    found: dict[str, str] = {}
    for start in range(0, len(step.joins), size):
        joins = step.joins[start : start + size]
        units = (joins[0].units[0], *(join.units[-1] for join in joins))
        marked = [letters[unit] for unit in units if unit in letters]
        if len(units) > 1 and marked:
            alike = len(set(marked)) == 1
            order = _order(plan, units, letters)
            found[joins[-1].makes] = words.only_marked(marked[0]) if alike else words.in_order(order)
    return found


def _order(plan: SewingPlan, units: tuple[str, ...], letters: dict[str, str]) -> str:
    """Return units in order; letters stand alone only where all are one kind, else "B" could be taken for unit B."""
    said = [spoken(plan, unit) for unit in units]
    if len(set(said)) == 1 and all(unit in letters for unit in units):
        return joined((letters[unit] for unit in units), ", ")
    marked = (
        words.marked(name, letters[unit]) if unit in letters else name for name, unit in zip(said, units, strict=True)
    )
    return joined(marked, ", ")


def _counted(orders: Iterable[str]) -> list[tuple[str, int]]:
    counts: dict[str, int] = {}
    for order in orders:
        counts[order] = counts.get(order, 0) + 1
    return sorted(counts.items())
