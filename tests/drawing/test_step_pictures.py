"""Step pictures: marks stand where the plan says, units lie clear of each other, nothing leaves the paper."""

import math
from itertools import combinations

import pytest
from blocklang_drawing import (
    Frame,
    Mark,
    draw_mark,
    draw_pressing_map,
    draw_step,
    draw_unit,
    text_width,
    theme_for,
    to_svg,
)
from blocklang_drawing.arrows import arrow_paths
from blocklang_drawing.laying_apart import lay_apart
from blocklang_drawing.placing import bounds_of
from blocklang_drawing.pressing_arrows import pressed_runs, pressing_arrow
from blocklang_drawing.pressing_map import map_runs
from blocklang_drawing.seam_marks import draw_seam_marks
from blocklang_drawing.shapes import Arrow, Dot, Drawing, Group, Path, Text
from shapely.geometry import Point as ShapelyPoint
from shapely.geometry import Polygon
from shapely.ops import unary_union

from blocklang.assembly import JoinKind
from blocklang.block import LengthUnit
from blocklang.pressing import Pressed
from tests.library.plans import plan_of as library_plan
from tests.sheets.plans import NAMES, named_plan

STEPS = [(name, step.number) for name in NAMES for step in named_plan(name).steps]
steps = pytest.mark.parametrize(("name", "number"), STEPS)


def step_of(name, number):
    plan = named_plan(name)
    return plan, plan.steps[number - 1], theme_for(plan.block.fabrics)


def marks_of(name, number):
    plan, step, theme = step_of(name, number)
    laid = lay_apart(plan, step)
    frame = Frame.fit(bounds_of(laid.units), 400, 400)
    return laid, frame, theme, draw_seam_marks(frame, plan.graph, laid, theme)


def lozenges(shapes, theme):
    return [s for s in shapes if isinstance(s, Path) and s.paint.fill == theme.paper and len(s.trails) == 1]


def middle(path):
    trail = path.trails[0]
    places = [trail.start, *(stretch.end for stretch in trail.stretches)]
    return sum(x for x, _ in places) / len(places), sum(y for _, y in places) / len(places)


def places_of(shape):
    if isinstance(shape, Group):
        return [place for inner in shape.shapes for place in places_of(inner)]
    if isinstance(shape, Arrow):
        return [place for path in arrow_paths(shape) for place in places_of(path)]
    if isinstance(shape, Dot):
        (x, y), r = shape.at, shape.radius
        return [(x - r, y - r), (x + r, y + r)]
    if isinstance(shape, Text):
        width = text_width(shape.text, shape.size)
        left = shape.at[0] - {"start": 0, "middle": width / 2, "end": width}[shape.anchor]
        return [(left, shape.at[1] - shape.size * 0.8), (left + width, shape.at[1] + shape.size * 0.25)]
    return [place for trail in shape.trails for place in (trail.start, *(s.end for s in trail.stretches))]


def assert_on_paper(drawing: Drawing):
    for shape in drawing.shapes:
        for x, y in places_of(shape):
            assert -0.01 <= x <= drawing.width + 0.01
            assert -0.01 <= y <= drawing.height + 0.01


@steps
def test_a_dot_stands_on_both_units_wherever_a_seam_stops(name, number):
    laid, frame, theme, shapes = marks_of(name, number)
    wanted = []
    for join in laid.joins:
        touching = [contact for contact in laid.contacts if contact.join == join.index]
        for place, stops, contact in (
            (join.path[0], join.start_stops, touching[0]),
            (join.path[-1], join.end_stops, touching[-1]),
        ):
            if stops:
                wanted += [frame.at(laid.units[unit].moved(place)) for unit in (contact.left, contact.right)]
    dots = [shape.at for shape in shapes if isinstance(shape, Dot)]
    assert len(dots) == len(wanted)
    assert all(min(math.dist(dot, place) for place in wanted) < 1e-6 for dot in dots)
    assert all(min(math.dist(dot, place) for dot in dots) < 1e-6 for place in wanted)
    assert all(shape.paint.fill == theme.ink for shape in shapes if isinstance(shape, Dot))


@steps
def test_a_lozenge_stands_on_both_units_at_every_pivot(name, number):
    laid, frame, theme, shapes = marks_of(name, number)
    allowed = {
        tuple(round(v, 3) for v in frame.at(unit.moved(pivot)))
        for join in laid.joins
        for pivot in join.pivots
        for unit in laid.units
    }
    found = [tuple(round(v, 3) for v in middle(path)) for path in lozenges(shapes, theme)]
    pivots = sum(len(join.pivots) for join in laid.joins)
    assert set(found) <= allowed
    assert len(found) >= 2 * pivots
    assert bool(found) == bool(pivots)


@pytest.mark.parametrize("name", ["eight-pointed-star", "hexagon-flower-37", "star-of-bethlehem"])
@pytest.mark.parametrize(("width", "height"), [(460, 172), (222, 300)])
def test_dots_and_lozenges_do_not_touch_each_other(name, width, height):
    plan = library_plan(name)
    theme = theme_for(plan.block.fabrics)
    for step in plan.steps:
        shapes = draw_step(plan, step, theme, width=width, height=height).shapes
        marks = {(round(dot.at[0], 1), round(dot.at[1], 1)): dot.radius for dot in shapes if isinstance(dot, Dot)}
        for path in lozenges(shapes, theme):
            x, y = middle(path)
            marks[round(x, 1), round(y, 1)] = y - path.trails[0].start[1]
        for (a, one), (b, other) in combinations(marks.items(), 2):
            assert math.dist(a, b) > one + other, step.number


def test_raw_edge_ticks_stand_an_allowance_beyond_the_match_point():
    laid, frame, _, shapes = marks_of("star", 1)
    (join,) = laid.joins
    raw = join.path[0] if not join.start_stops else join.path[-1]
    allowance = named_plan("star").block.seam_allowance * frame.scale
    ends = [frame.at(unit.moved(raw)) for unit in laid.units]
    ticks = [
        s
        for s in shapes
        if isinstance(s, Path) and s.paint.stroke == "#17303f" and len(s.trails) == 2 and not s.paint.dash
    ]
    assert len(ticks) == 2
    for tick in ticks:
        on, across = tick.trails
        assert min(math.dist(on.start, end) for end in ends) < 1e-6
        assert math.dist(on.start, on.stretches[0].end) == pytest.approx(allowance)
        a, b = across.start, across.stretches[0].end
        assert math.dist(on.stretches[0].end, ((a[0] + b[0]) / 2, (a[1] + b[1]) / 2)) < 1e-6


@steps
def test_units_lie_clear_of_each_other(name, number):
    plan, step, _ = step_of(name, number)
    shapes = [unary_union([Polygon(ring).buffer(1) for ring in unit.rings]) for unit in lay_apart(plan, step).units]
    for index, first in enumerate(shapes):
        for second in shapes[index + 1 :]:
            assert first.intersection(second).area < 1e-3 * min(first.area, second.area)


@steps
@pytest.mark.parametrize("width", [460, 300])
def test_nothing_leaves_the_paper(name, number, width):
    plan, step, theme = step_of(name, number)
    drawing = draw_step(plan, step, theme, width=width, height=172)
    assert_on_paper(drawing)
    assert drawing.width <= width + 40
    assert drawing.height <= 172.01


@steps
def test_arrows_point_to_the_patch_that_the_allowance_lies_under(name, number):
    plan, step, theme = step_of(name, number)
    frame = Frame.fit(plan.block.outline.bounds(), 400, 400)
    checked = 0
    for pressed in (item for join in step.joins for item in join.press):
        (run,) = pressed_runs(plan.graph, (pressed,))
        arrow = pressing_arrow(frame, run, 2.0, theme)
        assert arrow.both == (pressed.toward is None)
        if pressed.toward is not None:
            patch = Polygon(frame.ring(plan.block.patches[pressed.toward].outline.chords())).buffer(0.5)
            assert patch.contains(ShapelyPoint(arrow.end))
            assert not patch.buffer(-0.6).contains(ShapelyPoint(arrow.start))
            checked += 1
    assert checked


@pytest.mark.parametrize("name", NAMES)
def test_the_map_shows_every_seam_once(name):
    plan = named_plan(name)
    edges = [edge for run in map_runs(plan) for edge in run.edges]
    assert len(edges) == len(plan.graph.seams)
    assert {frozenset((edge.start, edge.end)) for edge in edges} == {
        frozenset((seam.edge.start, seam.edge.end)) for seam in plan.graph.seams
    }
    assert_on_paper(draw_pressing_map(plan, theme_for(plan.block.fabrics)))


def test_a_run_goes_on_whichever_way_its_segments_are_written():
    plan = named_plan("row-of-nine")
    join = max(plan.assembly.joins, key=lambda join: len(join.path))
    assert len(join.path) >= 3
    sides = []
    for step in join.path:
        segment = plan.graph.segments[step.segment]
        sides.append((segment.left, segment.right) if step.forward else (segment.right, segment.left))
    one_way = tuple(Pressed(step.segment, left) for step, (left, _) in zip(join.path, sides, strict=True))
    assert [len(run.edges) for run in pressed_runs(plan.graph, one_way)] == [len(join.path)]
    last = Pressed(join.path[-1].segment, sides[-1][1])
    assert [len(run.edges) for run in pressed_runs(plan.graph, (*one_way[:-1], last))] == [len(join.path) - 1, 1]


def test_measures_are_written_beside_what_comes_out():
    plan, step, theme = step_of("four-patch", 1)
    texts = [shape.text for shape in draw_step(plan, step, theme).shapes if isinstance(shape, Text)]
    assert sorted(texts) == ["3 1/2 in", "6 1/2 in"]
    centimetres = [
        s.text for s in draw_step(plan, step, theme, shown_in=LengthUnit.CENTIMETRE).shapes if isinstance(s, Text)
    ]
    assert all(text.endswith("cm") for text in centimetres)


def test_a_partial_seam_is_finished_on_one_unit():
    plan = named_plan("whirl")
    step = next(step for step in plan.steps if step.kind is JoinKind.PARTIAL_FINISH)
    laid = lay_apart(plan, step)
    assert len(laid.units) == 1
    assert_on_paper(draw_step(plan, step, theme_for(plan.block.fabrics)))


@pytest.mark.parametrize("mark", list(Mark))
def test_every_mark_has_a_key(mark):
    drawing = draw_mark(mark, theme_for(named_plan("star").block.fabrics))
    assert_on_paper(drawing)
    assert len(drawing.shapes) > 1


@pytest.mark.parametrize("name", NAMES)
def test_a_unit_is_drawn_whole(name):
    plan = named_plan(name)
    assert_on_paper(draw_unit(plan, plan.units[-1], theme_for(plan.block.fabrics)))


def test_pictures_of_a_pinwheel(snapshot):
    plan = named_plan("pinwheel")
    assert to_svg(draw_step(plan, plan.steps[0], theme_for(plan.block.fabrics))) == snapshot
