"""Equal copies beside each other: in how many ways they are pressed, and which could be turned instead."""

from collections import Counter
from dataclasses import replace

import pytest

from blocklang.block import PressWish, SpinSense
from blocklang.pressing import press
from tests.pressing.checker import check
from tests.pressing.dissections import span
from tests.pressing.fields import block_of, field_text
from tests.support.route import assembly_of


def pressed(text):
    assembly = assembly_of(block_of(text))
    pressing = press(assembly)
    return assembly, pressing, check(assembly, pressing)


def looks(assembly, pressing):
    """What each copy shows, found by the names of its patches: which of the two each inner seam goes to."""
    patches = assembly.graph.block.patches
    toward = {p.segment: p.toward for p in pressing.directions}
    shown = {}
    for seam in assembly.graph.seams:
        a, b = (patches[p] for p in seam.patches)
        if a.group and a.group == b.group:
            own = [p.id.removeprefix(p.group[0]) for p in (a, b)]
            to = toward[seam.index]
            shown.setdefault(a.group, []).append(
                (*sorted(own), None if to is None else patches[to].id.removeprefix(a.group[0]))
            )
    return {group: tuple(sorted(look)) for group, look in shown.items()}


def test_a_hundred_nine_patches_are_pressed_half_and_half():
    assembly, pressing, _ = pressed(field_text("nine-patch", 10))
    assert pressing.proven
    assert len(pressing.lockable) == 29 * 29
    assert pressing.locked == pressing.lockable
    (placed,) = pressing.versions
    assert placed.block == "Nine Patch"
    assert [(v.letter, len(v.copies)) for v in placed.versions] == [("A", 50), ("B", 50)]
    assert placed.fewest
    assert placed.text.startswith("Press 50 as A and 50 as B of the 100 copies of Nine Patch")
    assert set(placed.turned) == set(placed.versions[1].copies)
    assert Counter(pressing.version_of(patch.group) for patch in assembly.graph.block.patches) == {"A": 450, "B": 450}


def test_spins_of_a_field_alternate_over_all_copies():
    assembly, pressing, _ = pressed(field_text("nine-patch", 3))
    spins = {assembly.graph.junctions[s.junction].at: s.sense for s in pressing.spins}
    inch = 720_720
    assert len(spins) == 64
    assert all(
        (s is SpinSense.CLOCKWISE) == ((x // inch + y // inch) % 2 == (spins[inch, inch] is SpinSense.COUNTERCLOCKWISE))
        for (x, y), s in spins.items()
    )


@pytest.mark.parametrize(
    ("name", "side", "most"),
    [
        ("four-patch", 4, 1),
        ("nine-patch", 4, 2),
        ("sawtooth-star", 3, 2),
        ("whirl", 3, 1),
        ("churn-dash", 3, 2),
        ("friendship-star", 3, 2),
    ],
)
def test_versions_are_what_the_directions_show(name, side, most):
    assembly, pressing, _ = pressed(field_text(name, side))
    (placed,) = pressing.versions
    shown = looks(assembly, pressing)
    assert len(set(shown.values())) == len(placed.versions) == most
    for version in placed.versions:
        assert len({shown[group] for group in version.copies}) == 1
    assert sum(len(version.copies) for version in placed.versions) == side * side
    assert pressing.locked == pressing.lockable


@pytest.mark.parametrize(("name", "side"), [("nine-patch", 4), ("sawtooth-star", 3)])
def test_turned_as_advised_one_version_is_enough(name, side):
    """The field is drawn again with every second copy turned: it locks as well, with all copies pressed alike."""
    _, unturned, _ = pressed(field_text(name, side))
    assert unturned.versions[0].turned
    assembly, pressing, _ = pressed(field_text(name, side, turns=True))
    assert pressing.locked == pressing.lockable
    (placed,) = pressing.versions
    assert placed.text == f"Press all {side * side} copies of {placed.block} alike."
    assert len(set(looks(assembly, pressing).values())) == 1


def test_one_version_would_lock_less():
    """However the seams inside a copy are pressed, the same in all copies: some junction of such seams does not lock."""
    block = block_of(field_text("nine-patch", 2))
    assembly = assembly_of(block)
    pressing = press(assembly)
    assert pressing.locked == pressing.lockable
    drawing = check(assembly, pressing)
    toward = {p.segment: p.toward for p in pressing.directions}
    patches = assembly.graph.block.patches
    of = {group: {} for group in looks(assembly, pressing)}
    for seam in assembly.graph.seams:
        a, b = (patches[p] for p in seam.patches)
        if a.group == b.group:
            key = tuple(sorted(p.id.removeprefix(p.group[0]) for p in (a, b)))
            of[a.group][key] = (
                seam.index,
                {p.id.removeprefix(p.group[0]): i for i, p in zip(seam.patches, (a, b), strict=True)},
            )
    keys = sorted(next(iter(of.values())))
    own = {index for seams in of.values() for index, _ in seams.values()}
    inner = [p for p in drawing.passes if p.lockable and own.issuperset(p.arriving)]
    for choice in range(1 << len(keys)):
        for bit, key in enumerate(keys):
            for seams in of.values():
                index, sides = seams[key]
                toward[index] = sides[key[choice >> bit & 1]]
        assert not all(drawing.one_way(p.junction, p.arriving, toward) for p in inner)


def test_a_copy_that_the_author_presses_stays_so_and_turning_it_is_the_way_out():
    block = block_of(field_text("nine-patch", 2))
    alike = press(assembly_of(block_of(field_text("nine-patch", 1))))
    first = assembly_of(block_of(field_text("nine-patch", 1))).graph
    names = [p.id.removeprefix("r1c1") for p in first.block.patches]
    wishes = tuple(
        PressWish(
            (f"{group}{names[s.left]}", f"{group}{names[s.right]}"),
            f"{group}{names[alike.directions[i].toward]}",
            span(5),
        )
        for group in ("r1c1", "r1c2", "r2c1", "r2c2")
        for i, s in enumerate(first.seams)
    )
    assembly = assembly_of(replace(block, wishes=wishes))
    pressing = press(assembly)
    check(assembly, pressing)
    assert len(pressing.versions[0].versions) == 1
    assert len(pressing.locked) < len(pressing.lockable)
    said = [reason.text for reason in pressing.reasons if "do not lock" in reason.text]
    assert said
    assert all("a quarter, which does not change the picture, and they lock." in text for text in said)


def test_an_author_line_on_one_copy_makes_it_a_version_of_its_own():
    block = block_of(field_text("four-patch", 3))
    corner = next(p.id for p in block.patches if p.group == ("r1c1",))
    assert corner
    wish = PressWish(("r2c2.r1c1", "r2c2.r1c2"), None, span(9))
    pressing = press(assembly_of(replace(block, wishes=(*block.wishes, wish))))
    letters = {pressing.version_of(("r2c2",)), pressing.version_of(("r1c1",))}
    assert len(letters) == 2


def test_blocks_placed_once_have_no_versions():
    assembly, pressing, _ = pressed('block "One"\nlanguage 1\nsize 3 in\nrows\n"nine-patch"\nend\n')
    assert pressing.versions == ()
    assert pressing.version_of(assembly.graph.block.patches[0].group) is None


@pytest.mark.parametrize("name", ["nine-patch", "pinwheel", "ohio-star", "log-cabin", "churn-dash", "drunkards-path"])
def test_versions_cost_no_lock_and_no_clip(name):
    """The same field without a word of who placed what is pressed without minding versions, and locks no better."""
    assembly = assembly_of(block_of(field_text(name, 2)))
    graph = assembly.graph
    plain = tuple(replace(patch, group=()) for patch in graph.block.patches)
    loose = replace(assembly, graph=replace(graph, block=replace(graph.block, patches=plain)))
    pressing, free = press(assembly), press(loose)
    drawing = check(assembly, pressing)
    costs = [drawing.costs({p.segment: p.toward for p in one.directions})[:2] for one in (pressing, free)]
    assert free.versions == ()
    assert costs[0] == costs[1]
