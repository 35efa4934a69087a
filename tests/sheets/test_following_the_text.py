"""The sheet as text, followed word by word: what is cut is used, what is made is used, and every measure is right."""

import copy
import math
import re
from collections import Counter
from collections.abc import Iterator
from fractions import Fraction
from functools import cache

import pytest
from blocklang_sewing_sheet import blocklang_outputs
from blocklang_sewing_sheet.as_text import WIDTH
from shapely.geometry import LineString, Point
from shapely.geometry.base import BaseGeometry

from blocklang.hooks import OutputOptions
from tests.library.plans import json_of as plan_json_of
from tests.library.plans import plan_of
from tests.sheets.finished_pieces import (
    Plan,
    corner_angles,
    eighths_up,
    finished,
    fits,
    measures_of,
    most_crossed,
    shapes_of_units,
)
from tests.sheets.following import NUMBER, CutLine, SheetText, StepText, count_of, inches, read_sheet, shelf, total

(OUTPUT,) = blocklang_outputs()
NAMES = (
    "eight-pointed-star", "nine-patch", "ohio-star", "log-cabin", "bears-paw", "whirl", "drunkards-path",
    "churn-dash", "flying-geese", "six-pointed-star", "harbour-sampler",
)  # fmt: skip
every_block = pytest.mark.parametrize("name", NAMES)
STEPS = r"steps? (\d+(?:(?:, | and )\d+)*)"
UNIT = r"unit [A-Z]+"


@cache
def sheet_of(name: str) -> SheetText:
    (file,) = OUTPUT.make(plan_of(name), OutputOptions(format="text"))
    return read_sheet(file.data.decode())


@cache
def json_of(name: str) -> Plan:
    """Return the plan with every fabric called by its title, as the sheet calls it."""
    values: Plan = copy.deepcopy(plan_json_of(name))
    titles = {fabric["id"]: fabric["title"] for fabric in values["fabrics"]}
    for patch in values["patches"]:
        patch.update(fabric=titles[patch["fabric"]], stripes=[titles[stripe] for stripe in patch["stripes"]])
    return values


def lines_of_patches(name: str) -> dict[str, CutLine]:
    """Return the one line of the cutting list that each patch is cut by, found by its outline alone."""
    sheet, plan = sheet_of(name), json_of(name)
    found = {
        patch["id"]: [line for line in sheet.cuts if fits(line, patch, plan["seam_allowance"])]
        for patch in plan["patches"]
    }
    # What is cut with a template has no measure in words: there lines and shapes are told apart by their numbers.
    areas = Counter((patch["fabric"], round(finished(patch).area, 3)) for patch in plan["patches"])
    chosen = {}
    for patch in plan["patches"]:
        lines = found[patch["id"]]
        if len(lines) > 1:
            alike = areas[patch["fabric"], round(finished(patch).area, 3)]
            lines = [line for line in lines if line.kind == "template" and line.count == alike]
        (chosen[patch["id"]],) = lines
    return chosen


def numbers(said: str) -> list[int]:
    return [int(number) for number in re.findall(r"\d+", said)]


# --- How it is written


@every_block
def test_every_line_fits_and_is_clean(name: str) -> None:
    lines = sheet_of(name).lines
    assert max(map(len, lines)) <= WIDTH
    for line in lines:
        assert line == line.rstrip()
        assert "  " not in line.lstrip()
        assert not re.search(r"\bNone\b|\bnan\b|\bTrue\b|\bFalse\b|[{}<>%\\]|TODO|\?\?", line)


@every_block
def test_every_sentence_ends_with_a_full_stop(name: str) -> None:
    sheet = sheet_of(name)
    sentences = [item for items in sheet.sections.values() for item in items]
    sentences += [sentence for step in sheet.steps for sentence in step.sentences]
    assert len(sentences) > 20
    for sentence in sentences:
        assert re.fullmatch(r"[A-Z0-9“].*\.", sentence), sentence
        assert not re.search(r"\.\.|,\.| [.,;:]", sentence), sentence


# --- Counting pieces and units


@pytest.mark.parametrize("name", [*NAMES, "broken-dishes", "harbour-runner"])
def test_whatever_is_cut_or_made_is_used_and_the_block_is_left(name: str) -> None:
    sheet = sheet_of(name)
    ready = shelf(sheet)
    for step in sheet.steps:
        assert sum(times for times, _ in step.lots) == step.make
        for part, number in ((part, count * times) for times, parts in step.lots for part, count in parts):
            assert ready[part] >= number, f"step {step.number} takes {part}, which is not there"
            ready[part] -= number
        assert step.makes() not in ready, f"step {step.number} makes {step.makes()} again"
        ready[step.makes()] = step.make
    assert {what: count for what, count in ready.items() if count} == {"block": 1}


@every_block
def test_steps_are_numbered_and_counted_at_a_glance(name: str) -> None:
    sheet = sheet_of(name)
    assert [step.number for step in sheet.steps] == list(range(1, len(sheet.steps) + 1))
    said = sheet.fact(r"(\d+) patch(?:es)?, (\d+) steps?\.")
    assert (int(said[1]), int(said[2])) == (sum(line.count for line in sheet.cuts), len(sheet.steps))
    assert int(said[1]) == len(json_of(name)["patches"])


@every_block
def test_awkward_seams_are_counted_at_a_glance(name: str) -> None:
    sheet = sheet_of(name)
    counts: Counter[str] = Counter()
    for step in sheet.steps:
        if step.title.startswith("Set in"):
            assert not step.saying(r"Do the same at every pivot")  # then the words alone would not say how many
            counts["pivots"] += step.make * total(step.parts[1:])
        counts["curves"] += step.make * step.title.startswith("Sew the curve")
        counts["partials"] += step.make * step.title.endswith("with a partial seam")
        counts["finished"] += step.make * (step.title == "Finish the partial seam")
    assert counts["partials"] == counts["finished"]
    for what, pattern in (
        ("pivots", r"(\d+) set-in pivots?\b|No set-in seams\."),
        ("partials", r"(\d+) partial seams?\b|No partial seams\."),
        ("curves", r"(\d+) curved seams?\b|No curved seams\."),
    ):
        assert int(sheet.fact(pattern)[1] or 0) == counts[what], what


@every_block
def test_titles_count_what_is_joined(name: str) -> None:
    sheet = sheet_of(name)
    for step in sheet.steps:
        if row := re.fullmatch(r"Sew a row of (\d+)", step.title):
            assert total(step.parts) == int(row[1])
        elif several := re.fullmatch(rf"Sew (two|\d+) of ({UNIT}) together", step.title):
            assert step.parts == ((several[2], count_of(several[1])),)
        elif set_in := re.fullmatch(r"Set in (?:the .*|(\d+) .*)", step.title):
            assert total(step.parts) - 1 == int(set_in[1] or 1)
        if step.title.startswith("Sew "):
            assert set(re.findall(UNIT, step.title)) <= {part for part, _ in step.parts}
        if pair := re.fullmatch(r"Sew (?:the curve: )?the (\w+) patch to the (\w+) patch", step.title):
            assert list(pair.groups()) == [sheet.cut_line(part).fabric for part, _ in step.parts]
        elif pair := re.fullmatch(rf"Sew ({UNIT}) to ({UNIT})", step.title):
            assert list(pair.groups()) == [part for part, _ in step.parts]


# --- What a sentence names


@every_block
def test_a_step_joins_what_stands_in_its_list(name: str) -> None:
    for step in sheet_of(name).steps:
        for placed in step.saying(r"^Place (.*) right sides together\.$"):
            two = re.fullmatch(r"two (?:of )?(.*?)(?: patches)?", placed[1])
            if two:
                assert step.parts == ((two[1], 2),)
            else:
                first, second = (said.removeprefix("the ") for said in placed[1].split(" and "))
                assert [first, second] == [part for part, _ in step.parts]
                assert total(step.parts) == 2 or step.title.startswith("Set in")
        if not step.saying(r"^Place ") and len(step.parts) > 1:
            assert step.saying(r"^Lay the pieces out")
        for curved in step.saying(r"^The edge of (.*) curves outward, the edge of (.*) inward\."):
            assert {curved[1], curved[2]} == {f"the {part}" for part, _ in step.parts}


@every_block
def test_a_row_is_told_in_order(name: str) -> None:
    """The order has just what stands in the list of parts, and is the order in which the pieces lie in the block."""
    plan, cut_by = json_of(name), lines_of_patches(name)
    units = {made: text.makes() for text, step in each_step(name) for made in step["makes"]}
    places = {unit: shape.centroid for unit, shape in shapes_of_units(plan).items()}
    for text, step in each_step(name):
        said = text.saying(r"^Lay the pieces out (?:in this order: (.*)|in the order in which they are listed)\.$")
        for found in said:
            parts = [part for part, count in text.parts for _ in range(count)]
            order = list(_laid(found[1])) if found[1] else parts
            assert sorted(order) == sorted(parts)
            joins = step["joins"][: len(step["joins"]) // text.make]
            lying = sorted(
                {unit for join in joins for unit in join["units"]} - {join["makes"] for join in joins},
                key=lambda unit: (round(places[unit].x, 3), round(places[unit].y, 3)),
            )
            called = [units.get(unit) or piece_name(name, cut_by[unit]) for unit in lying]
            if text.title.startswith("Sew a row"):
                assert order in (called, called[::-1])


def _laid(order: str) -> Iterator[str]:
    """Yield what is laid out one after the other: "unit A, fog square × 2"."""
    for said in order.split(", "):
        part, _, count = said.partition(" × ")
        yield from [part] * int(count or 1)


SIDES = {"to the right": (1, 0), "to the left": (-1, 0), "up": (0, 1), "down": (0, -1)} | {
    f"to the {up} {across}": (x / math.sqrt(2), y / math.sqrt(2))
    for up, y in (("upper", 1), ("lower", -1))
    for across, x in (("right", 1), ("left", -1))
}
LIES = {"above": SIDES["up"], "below": SIDES["down"]} | {f"{way} of": at for way, at in SIDES.items()}
WAY = "|".join(SIDES)


def beside(shape: BaseGeometry, seam: BaseGeometry, way: tuple[float, float]) -> bool:
    """Say whether a shape lies on that side of a seam, by a point a little away from the middle of the seam."""
    middle = seam.interpolate(0.5, normalized=True)
    return bool(shape.contains(Point(middle.x + 0.02 * way[0], middle.y + 0.02 * way[1])))


@every_block
def test_a_sheet_without_pictures_speaks_of_none(name: str) -> None:
    text = " ".join(line.strip() for line in sheet_of(name).lines)
    assert not re.search(r"\b(arrows?|pictures?|drawn|shown|shows|marked\.)", text)


@every_block
def test_pieces_lie_where_the_text_says(name: str) -> None:
    """By shapely: a point just across the seam on that side lies in the second unit, and not in the first."""
    plan, told = json_of(name), 0
    shapes = shapes_of_units(plan)
    for text, step in each_step(name):
        for found in text.saying(rf"^In the block, .* lies ({'|'.join(LIES)}) (?:the|unit)\b.*\.$"):
            join, told = step["joins"][0], told + 1
            first, second = (shapes[unit] for unit in join["units"])
            from_first, to_second = first.centroid, second.centroid
            way = LIES[found[1]]
            across = (to_second.x - from_first.x) * way[0] + (to_second.y - from_first.y) * way[1]
            assert across > 0, (step["number"], found[0])
    assert told or all(len(step["joins"]) > 1 for _, step in each_step(name))


@every_block
def test_seams_are_pressed_the_way_the_text_says(name: str) -> None:
    """By shapely: just across the middle of a straight pressed seam lies the patch that it is pressed toward."""
    shapes = shapes_of_units(json_of(name))
    for text, step in each_step(name):
        joins = step["joins"][: len(step["joins"]) // text.make]
        for found in text.saying(rf"^Press the (?:\d+ )?seams? ({WAY})\.$"):
            for pressed in (item for join in joins for item in join["press"]):
                assert beside(shapes[pressed["toward"]], LineString(pressed["path"]), SIDES[found[1]])
        for found in text.saying(r"^Press the seams in their order (.*)\.$"):
            by_turns = found[1].startswith("by turns ")
            said = re.split(", | and ", found[1].removeprefix("by turns "))
            assert len(joins) == len(said) or by_turns
            for place, join in enumerate(joins):
                (pressed, *_) = join["press"]
                way = SIDES[said[place % len(said)]]
                assert beside(shapes[pressed["toward"]], LineString(pressed["path"]), way), (step["number"], found[0])


@every_block
def test_a_partial_seam_is_sewn_where_the_text_says(name: str) -> None:
    for text, step in each_step(name):
        for found in text.saying(rf"^Sew only the part of the seam at its (\w+) end, ({NUMBER}) in long\.$"):
            sewn = LineString(step["joins"][0]["path"])
            assert sewn.length == pytest.approx(inches(found[2]), abs=1 / 32)
            raw = Point(sewn.coords[0 if step["joins"][0]["start"] == "raw-edge" else -1])
            way = SIDES[{"upper": "up", "lower": "down", "left": "to the left", "right": "to the right"}[found[1]]]
            assert (raw.x - sewn.centroid.x) * way[0] + (raw.y - sewn.centroid.y) * way[1] > 0
        assert ("partial seam." in text.title + ".") == bool(text.saying("^Sew only ")) or "Finish" in text.title


def each_step(name: str) -> list[tuple[StepText, Plan]]:
    """Return the steps as they are told, each with its step of the plan."""
    return list(zip(sheet_of(name).steps, json_of(name)["steps"], strict=True))


def piece_name(name: str, line: CutLine) -> str:
    """Return what steps call the pieces of a line."""
    (piece,) = (piece for piece in shelf(sheet_of(name)) if sheet_of(name).cut_line(piece) == line)
    return piece


@every_block
def test_pressing_goes_toward_something_in_the_seam(name: str) -> None:
    sheet = sheet_of(name)
    inside: dict[str, set[str]] = {piece: {piece} for piece in shelf(sheet)}
    for step in sheet.steps:
        held = {piece for part, _ in step.parts for piece in inside[part]}
        inside[step.makes()] = held
        for pressed in step.saying(r"^Press the seams? toward the (.*?)(?: (fabric))?\.$"):
            lines = [sheet.cut_line(piece) for piece in held]
            if pressed[2]:
                assert pressed[1] in {line.fabric for line in lines}
            else:
                assert sheet.cut_line(pressed[1]) in lines


@every_block
def test_allowances_lie_where_the_words_say(name: str) -> None:
    sheet, plan, cut_by = sheet_of(name), json_of(name), lines_of_patches(name)
    for step, planned in zip(sheet.steps, plan["steps"], strict=True):
        first = planned["joins"][: len(planned["joins"]) // step.make]
        under = [cut_by[press["toward"]] for join in first for press in join["press"]]
        for said in step.saying(r"^Press the seams? toward the (.*?)(?: (fabric))?\.$"):
            assert said[0].startswith("Press the seams") == (len(first) > 1 or step.title.startswith("Set in"))
            if said[2]:
                assert {line.fabric for line in under} == {said[1]}
            else:
                assert set(under) == {sheet.cut_line(said[1])}


@every_block
def test_bias_edges_are_told_once_for_as_many_pieces_as_are_cut(name: str) -> None:
    sheet = sheet_of(name)
    told: list[str] = []
    for step in sheet.steps:
        for said in step.saying(r" of (?:each of )?the (?:(\d+) )?(.*?)(?: patches)? (?:are|is) on the bias\."):
            letter = re.fullmatch(r"patches ([A-Z])", said[2])
            one = f"patch {letter[1]}" if letter else re.sub(r"triangles$", "triangle", said[2])
            cut = [line for line in sheet.cuts if one in (line.name, f"{line.fabric} {line.name}")]
            assert sum(line.count for line in cut) == int(said[1] or 1), said[0]
            told.append(one)
    assert len(told) == len(set(told))


# --- Other steps that a step names


@every_block
def test_steps_that_are_named_come_later_or_came_earlier(name: str) -> None:
    sheet = sheet_of(name)
    for step in sheet.steps:
        later = step.saying(rf"(?:goes in at|locks at|this seam at|is finished at) {STEPS}")
        earlier = step.saying(rf"undo the few stitches of {STEPS}")
        assert len(later) + len(earlier) == len(step.saying(r"\bsteps? \d"))
        assert all(step.number < number <= len(sheet.steps) for said in later for number in numbers(said[1]))
        assert all(1 <= number < step.number for said in earlier for number in numbers(said[1]))
        assert all(numbers(said[1]) == sorted(set(numbers(said[1]))) for said in (*later, *earlier))


@every_block
def test_what_goes_in_later_does(name: str) -> None:
    sheet = sheet_of(name)
    steps = {step.number: step for step in sheet.steps}
    for step in sheet.steps:
        for said in step.saying(r"^Leave it open there: (?:the )?(.*) goes in at step (\d+)\."):
            assert said[1] in dict(steps[int(said[2])].parts)
            assert steps[int(said[2])].title.startswith("Set in")
        for said in step.saying(r"(?:You finish this seam|the partial seam is finished) at step (\d+)\."):
            assert steps[int(said[1])].title == "Finish the partial seam"
        stops = len(step.saying(r"^Stop at the dot|^Stop \(or start\) here|^Leave the rest of the seam open"))
        assert not stops or step.saying(r"^Leave it open there|^You finish this seam")


@every_block
def test_what_locks_finds_something_to_lock_with(name: str) -> None:
    sheet = sheet_of(name)
    locking = {n for step in sheet.steps for said in step.saying(rf"locks at {STEPS}") for n in numbers(said[1])}
    matching = {step.number for step in sheet.steps if step.saying(r"so that their allowances lock")}
    assert matching == {number for number in locking if not _is_curve_or_set_in(sheet.steps[number - 1])}


@every_block
def test_every_step_where_a_seam_locks_is_named(name: str) -> None:
    """A seam locks where it ends on the line of a later one, at a junction that the plan says is locked."""
    plan = json_of(name)
    locked = [junction["at"] for junction in plan["junctions"] if junction["locked"]]
    passed = [(step["number"], at) for step in plan["steps"] for join in step["joins"] for at in join["path"][1:-1]]
    for step, planned in zip(sheet_of(name).steps, plan["steps"], strict=True):
        ends = [at for join in planned["joins"] for at in _ends(join) if at in locked]
        expected = {number for number, at in passed if at in ends and number > step.number}
        said = step.saying(rf"locks at {STEPS}")
        assert {number for found in said for number in numbers(found[1])} == expected


@every_block
def test_the_stitches_to_undo_are_those_that_end_at_the_junction(name: str) -> None:
    plan = json_of(name)
    ended = [(step["number"], at) for step in plan["steps"] for join in step["joins"] for at in _ends(join)]
    for step, planned in zip(sheet_of(name).steps, plan["steps"], strict=True):
        spun = [spin["at"] for join in planned["joins"] for spin in join["spins"]]
        expected = {number for number, at in ended if at in spun and number < step.number}
        said = step.saying(rf"undo the few stitches of {STEPS}")
        assert {number for found in said for number in numbers(found[1])} == expected
        several = any("every place" in found.string for found in said)
        assert several == (len(spun) > step.make)


def _ends(join: Plan) -> list[list[float]]:
    return [join["path"][0], join["path"][-1]]


def _is_curve_or_set_in(step: StepText) -> bool:
    return step.title.startswith(("Sew the curve", "Set in"))


# --- Units that are marked


@pytest.mark.parametrize("name", [*NAMES, "seven-sisters"])
def test_marked_units_add_up(name: str) -> None:
    sheet = sheet_of(name)
    marked: dict[str, Counter[str]] = {}
    for step in sheet.steps:
        used = marks_used(step, set(marked))
        for part, count in step.parts:
            assert part not in marked or used[part].total() == count * step.make, f"step {step.number}, {part}"
        for part, letters in used.items():
            marked[part].subtract(letters)
            assert min(marked[part].values()) >= 0, f"step {step.number}, {part}"
        if given := marks_given(step):
            assert given.total() == step.make
            marked[step.makes()] = given
    assert all(left == 0 for letters in marked.values() for left in letters.values())


def marks_given(step: StepText) -> Counter[str]:
    """Return how many units a step marks with which letter."""
    said = step.saying(r"^(?:Press|Make) (\d+|one) of them .*\bmark (?:them|it) ([A-Z])\.$")
    given: Counter[str] = Counter()
    for found in said:
        given[found[2]] += count_of(found[1])
    return given


def marks_used(step: StepText, marked: set[str]) -> dict[str, Counter[str]]:
    """Return how many of which letter a step takes from each of its marked parts."""
    used: dict[str, Counter[str]] = {part: Counter() for part, _ in step.parts if part in marked}
    lots = step.saying(
        r"^Make (?:(\d+|one) of (?:them|the (\d+))|(?:them|it)) (?:from what is marked ([A-Z])|in the order (.*?))"
        r"(?:, press .*)?\.$"
    )
    for lot in lots:
        times = count_of(lot[1]) if lot[1] else step.make
        assert int(lot[2] or step.make) == step.make
        for part, count in ((part, count) for part, count in step.parts if part in used):
            if lot[3]:
                used[part][lot[3]] += times * count
            else:
                _add_order(used[part], part, len(step.parts) == 1, lot[4].split(", "), times)
        if lot[4]:
            order = [re.sub(r" marked [A-Z]$|^the ", "", said) for said in lot[4].split(", ")]
            alone = [step.parts[0][0] if re.fullmatch("[A-Z]", said) else said for said in order]
            assert Counter(alone) == Counter(dict(step.parts))
    return used


def _add_order(used: Counter[str], part: str, alone: bool, order: list[str], times: int) -> None:
    """Count the letters of one part in an order; letters that stand alone are only clear where there is one part."""
    for said in order:
        if found := re.fullmatch(rf"{part} marked ([A-Z])", said):
            used[found[1]] += times
        elif re.fullmatch("[A-Z]", said):
            assert alone, said
            used[said] += times


# --- Measures


@every_block
def test_sizes_of_the_block(name: str) -> None:
    sheet, plan = sheet_of(name), json_of(name)
    allowance = inches(sheet.fact(rf"The seam allowance is ({NUMBER}) in everywhere\.")[1])
    assert allowance == Fraction(plan["seam_allowance"])
    size = rf"((?:about )?{NUMBER}) in (?:square|by ((?:about )?{NUMBER}) in)"
    said = sheet.fact(rf"Finished {size}; unfinished {size}\.")
    for given, exact in zip(said.group(1, 2), plan["block"]["finished"], strict=True):
        check_measure(given or said[1], exact)
    for given, exact in zip(said.group(3, 4), plan["block"]["finished"], strict=True):
        check_measure(given or said[3], exact + 2 * plan["seam_allowance"])
    assert sheet.fact(rf"The block measures {size}, raw edge to raw edge\.").groups() == said.group(3, 4)
    assert sheet.fact(rf"Sewn to its neighbours, the block measures {size}\.").groups() == said.group(1, 2)


def check_measure(said: str, exact: float) -> None:
    """Hold a measure against the exact one; "about" is right to half of what a ruler shows, an eighth."""
    about = said.startswith("about ")
    assert abs(float(inches(said.removeprefix("about "))) - exact) <= (1 / 16 if about else 1e-6), said


@every_block
def test_every_patch_is_cut_once_at_its_size_and_seam_allowances(name: str) -> None:
    sheet = sheet_of(name)
    counts = Counter(lines_of_patches(name).values())
    for line in sheet.cuts:
        assert counts[line] == line.count, line
        yields = {"once": 2, "twice": 4}.get(line.kind, 1)
        assert line.shapes * yields == line.count + line.left_over
        assert line.left_over < yields


@every_block
def test_strips_add_up(name: str) -> None:
    sheet = sheet_of(name)
    held: Counter[tuple[str, str]] = Counter()
    narrowest = {(line.fabric, line.name): width_of_strip(name, line) for line in sheet.cuts}
    for strip in sheet.strips:
        for number, piece in strip.holds:
            held[strip.fabric, piece] += number * strip.strips
        across = [narrowest[strip.fabric, piece] for _, piece in strip.holds]
        assert not across or max(across) == strip.width
    assert held == {(line.fabric, line.name): line.shapes for line in sheet.cuts if line.kind != "set"}


def width_of_strip(name: str, line: CutLine) -> Fraction:
    """Return how wide a strip must be that a line is cut from: its words say so, or the patch as it lies in the block."""
    if line.kind != "template":
        return line.measures[0] if line.kind in ("slanted", "pointed") else min(line.measures, default=Fraction(0))
    patch = next(patch for patch in json_of(name)["patches"] if lines_of_patches(name)[patch["id"]] == line)
    # Both ends of these curves run square into a straight side, so nothing sticks out beyond the allowance.
    return eighths_up(min(measures_of(finished(patch), json_of(name)["seam_allowance"])))


@every_block
def test_a_strip_set_adds_up(name: str) -> None:
    sheet, plan = sheet_of(name), json_of(name)
    sets = [line for line in sheet.cuts if line.kind == "set"]
    if not sets:
        assert "strip set" not in " ".join(sheet.lines)
        return
    said = sheet.fact(
        rf"Sew a strip set: strips ({NUMBER}) in wide, side by side, (.*?)\. Pressed, it measures ({NUMBER}) in; "
        rf"trim ({NUMBER}) in off each long side, to ({NUMBER}) in\. "
        rf"Cut it at (\d+) degrees, ({NUMBER}) in apart; a set holds (\d+)\."
    )
    fabrics = re.split(", | and ", said[2])
    strip, sewn, trim, trimmed, apart = (inches(said[place]) for place in (1, 3, 4, 5, 7))
    assert sewn == len(fabrics) * strip - 2 * (len(fabrics) - 1) * Fraction(plan["seam_allowance"])
    assert trimmed == sewn - 2 * trim
    assert int(said[8]) >= sum(line.count for line in sets)
    of_the_set = [(line.fabric, line.width, line.strips) for line in sheet.strips if not line.holds]
    assert of_the_set == [(fabric, strip, 1) for fabric in fabrics]
    for patch in (patch for patch in plan["patches"] if patch["stripes"]):
        assert patch["stripes"] == fabrics
        corners = patch["outline"]
        side = math.dist(corners[0], corners[1])
        across = eighths_up(finished(patch).area / side + 2 * plan["seam_allowance"])
        assert (trimmed, apart) == (across, across)
        assert {int(said[6]), 180 - int(said[6])} == {round(angle) for angle in corner_angles(patch)}


@every_block
def test_test_strips_add_up(name: str) -> None:
    said = sheet_of(name).fact(
        rf"sew three strips ({NUMBER}) in wide side by side and press\. "
        rf"They must measure ({NUMBER}) in across, and the middle one ({NUMBER}) in\."
    )
    strip, across, middle = map(inches, said.groups())
    allowance = Fraction(json_of(name)["seam_allowance"])
    assert (across, middle) == (3 * strip - 4 * allowance, strip - 2 * allowance)


@every_block
def test_every_unit_measures_what_its_pieces_come_to(name: str) -> None:
    """By the words alone: what goes into a unit has the area of the unit."""
    sheet, plan = sheet_of(name), json_of(name)
    areas = piece_areas(name)
    checked = 0
    for step in sheet.steps:
        areas[step.makes()] = sum(areas[part] * count for part, count in step.parts)
        for said in step.saying(rf"^Check: .* measures ({NUMBER}) in (?:square|by ({NUMBER}) in)\.$"):
            width, height = (float(inches(one)) - 2 * plan["seam_allowance"] for one in (said[1], said[2] or said[1]))
            assert areas[step.makes()] == pytest.approx(width * height, abs=0.01), f"step {step.number}"
            checked += 1
        assert len(step.saying(r"^Check: ")) == len(step.saying(rf"^Check: .* measures {NUMBER} in"))
    assert areas["block"] == pytest.approx(sum(finished(patch).area for patch in plan["patches"]), abs=0.01)
    assert checked or name == "six-pointed-star"


def piece_areas(name: str) -> dict[str, float]:
    """Return the finished area of each piece, as a step names it."""
    sheet, plan = sheet_of(name), json_of(name)
    cut_by = lines_of_patches(name)
    areas = {cut_by[patch["id"]]: finished(patch).area for patch in plan["patches"]}
    return {piece: areas[sheet.cut_line(piece)] for piece in shelf(sheet)}


@every_block
def test_every_unit_measures_what_its_outline_does(name: str) -> None:
    sheet, plan = sheet_of(name), json_of(name)
    shapes = shapes_of_units(plan)
    for step, planned in zip(sheet.steps, plan["steps"], strict=True):
        said = step.saying(rf"^Check: .* measures ({NUMBER}) in (?:square|by ({NUMBER}) in)\.$")
        measured = {tuple(sorted(measures_of(shapes[made], plan["seam_allowance"]))) for made in planned["makes"]}
        rectangles = all(
            shapes[made].area == pytest.approx(shapes[made].envelope.area, abs=0.01) for made in planned["makes"]
        )
        assert bool(said) <= rectangles
        for found in said:
            given = sorted(float(inches(one)) for one in (found[1], found[2] or found[1]))
            assert all(given == pytest.approx(exact, abs=1e-4) for exact in measured)


@every_block
def test_the_largest_piece_under_the_needle_is_among_what_is_sewn(name: str) -> None:
    sheet, plan = sheet_of(name), json_of(name)
    shapes = shapes_of_units(plan)
    for step, planned in zip(sheet.steps, plan["steps"], strict=True):
        size = rf"(?:about )?({NUMBER}) in (?:square|by (?:about )?({NUMBER}) in)\.$"
        for said in step.saying(rf"^The largest piece under the needle is (?:the )?(.*), about {size}"):
            assert said[1] in {part for part, _ in step.parts} | {"work so far"}
            joined = [unit for join in planned["joins"] for unit in join["units"]]
            largest = max((shapes[unit] for unit in joined), key=lambda shape: shape.envelope.area)
            given = sorted(float(inches(one)) for one in (said[2], said[3] or said[2]))
            assert given == pytest.approx(sorted(measures_of(largest, plan["seam_allowance"])), abs=1 / 16)


@every_block
def test_seams_too_wide_do_what_is_said(name: str) -> None:
    """Every seam that is crossed takes twice the slip off, as much of it as lies along the line of measuring."""
    plan = json_of(name)
    shapes = shapes_of_units(plan)
    sewn: dict[str, list[Plan]] = {}
    for step, planned in zip(sheet_of(name).steps, plan["steps"], strict=True):
        for join in planned["joins"]:
            sewn[join["makes"]] = [join, *(seam for unit in join["units"] for seam in sewn.get(unit, []))]
        made = planned["makes"][0]
        for said in step.saying(rf"^Seams ({NUMBER}) in too wide leave this unit ({NUMBER}) in small\.$"):
            small = 2 * float(inches(said[1])) * most_crossed(shapes[made], sewn[made])
            assert inches(said[1]) == Fraction(1, 32)
            assert float(inches(said[2])) == pytest.approx(small, abs=1 / 64 + 0.002), f"step {step.number}"
