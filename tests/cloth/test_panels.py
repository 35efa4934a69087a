"""Panels filled with what is worth most, against published optima and against every way to fill small ones."""

import csv
import random
from pathlib import Path

import pytest

from blocklang.cloth import Panel, fill_panel, in_order, straight_way

#: Two-stage instances of the literature with proven optimal values, where they lie beside the project.
PUBLISHED = Path(__file__).resolve().parents[2].parent / "shared" / "data" / "two-stage"


def rows_of(path: Path) -> list[dict[str, str]]:
    """Return the rows of a table."""
    with path.open(encoding="utf-8") as file:
        return list(csv.DictReader(file))


OPTIMA = rows_of(PUBLISHED / "optima.csv") if PUBLISHED.is_dir() else []


def panel_of(width: int, height: int, items: list[tuple[int, int, int, int]]) -> Panel:
    """Return a panel for items of width, height, worth and copies."""
    ways = [straight_way(kind, high, wide, width) for kind, (wide, high, _, _) in enumerate(items) if high <= height]
    return Panel(width, height, in_order(ways), tuple(i[2] for i in items), tuple(i[3] for i in items))


def published(name: str) -> Panel:
    """Return a published instance; an item without a profit is worth its area."""
    cloth = rows_of(PUBLISHED / f"{name}_bins.csv")[0]
    items = []
    for row in rows_of(PUBLISHED / f"{name}_items.csv"):
        wide, high = int(row["WIDTH"]), int(row["HEIGHT"])
        items.append((wide, high, int(row.get("PROFIT") or wide * high), int(row["COPIES"])))
    return panel_of(int(cloth["WIDTH"]), int(cloth["HEIGHT"]), items)


def check_sound(panel: Panel) -> int:
    """Fill a panel, hold the filling against it, and return what it is worth, counted anew."""
    filled = fill_panel(panel)
    assert sum(strip.height for strip in filled.strips) <= panel.height
    counts = [0] * len(panel.copies)
    for strip in filled.strips:
        assert sum(panel.ways[place].takes[count] for place, count in strip.runs) <= panel.width
        for place, count in strip.runs:
            assert panel.ways[place].height <= strip.height
            counts[panel.ways[place].kind] += count
    worth = sum(w * min(n, c) for w, n, c in zip(panel.worth, counts, panel.copies, strict=True))
    assert worth == filled.worth
    return worth


@pytest.mark.skipif(not OPTIMA, reason="the published instances do not lie beside the project")
@pytest.mark.parametrize("row", OPTIMA, ids=lambda row: row["Path"])
def test_published_optimum(row: dict[str, str]) -> None:
    assert check_sound(published(row["Path"])) == int(row["Best known solution value"])


def most_worth(panel: Panel, items: list[tuple[int, int, int, int]]) -> int:
    """Return the most that can be had, by trying every strip after every other."""

    def fill(height: int, below: int, copies: tuple[int, ...]) -> int:
        best = 0
        for high in {item[1] for item in items if item[1] <= min(height, below)}:
            for worth, left in strips(high, len(items) - 1, panel.width, copies):
                best = max(best, worth + (fill(height - high, high, left) if worth else 0))
        return best

    def strips(high: int, kind: int, room: int, copies: tuple[int, ...]) -> list[tuple[int, tuple[int, ...]]]:
        if kind < 0:
            return [(0, copies)]
        wide, tall, worth, _ = items[kind]
        found = []
        for count in range(min(copies[kind], room // wide) + 1 if tall <= high else 1):
            left = (*copies[:kind], copies[kind] - count, *copies[kind + 1 :])
            found += [(worth * count + more, rest) for more, rest in strips(high, kind - 1, room - count * wide, left)]
        return found

    return fill(panel.height, panel.height, panel.copies)


@pytest.mark.parametrize("seed", range(40))
def test_small_panels_against_every_way_to_fill_them(seed: int) -> None:
    rng = random.Random(seed)
    width, height = rng.randint(6, 12), rng.randint(6, 12)
    items = [
        (rng.randint(2, width), rng.randint(2, height), rng.randint(1, 40), rng.randint(1, 2))
        for _ in range(rng.randint(1, 4))
    ]
    panel = panel_of(width, height, items)
    assert check_sound(panel) == most_worth(panel, items)


def test_a_panel_that_nothing_fits_is_empty() -> None:
    assert fill_panel(Panel(5, 5, (), (), ())).worth == 0
