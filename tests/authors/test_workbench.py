"""The workbench finds what is wrong with a plugin, says it in a sentence, and has nothing to say about a sound one."""

import random
from fractions import Fraction

import pytest

from blocklang.block import LengthUnit
from blocklang.cutting import METHODS, Claim, CuttingMethod
from blocklang.cutting.values import Lay
from blocklang.diagnostics import Diagnostic, Severity
from blocklang.geometry import TICKS_PER_INCH
from blocklang.hooks import CannotMakeError, Check, FolderMaker, Output, OutputFile, OutputOptions, Setting, Share
from blocklang.language import Cell, CellPatch
from blocklang.pressing import PressingPreference
from blocklang.testing import NotHeldError, Workbench

SQUARE = ((0, 0), (1, 0), (1, 1), (0, 1))


@pytest.fixture(scope="module")
def bench() -> Workbench:
    return Workbench()


@pytest.fixture(scope="module")
def plan(bench):
    return bench.plan("nine-patch")


def making(make, form="txt", **more) -> Output:
    """Return an output that makes what a function says."""
    return Output("tide-table", (form,), form, "A text.", make, **more)


def of_bytes(data: bytes, form="txt") -> Output:
    return making(lambda plan, options: (OutputFile("", data),), form)


def told(plan, options) -> tuple[OutputFile, ...]:
    """Tell everything that was chosen, a line each."""
    said = (options.paper, plan.block.unit, plan.cutting.options.copies, options.black_and_white, options.large_print)
    return (OutputFile("", f"{said} {options.setting('mood')} {options.setting('depth')}\n".encode()),)


def test_sound_output_gives_its_files(bench, plan) -> None:
    settings = (Setting("mood", "How it is.", ("calm", "rough")), Setting("depth", "In fathoms."))
    every = ("paper", "unit", "copies", "black_and_white", "large_print", "mood", "depth")
    output = making(told, settings=settings)
    (file,) = bench.output(output, plan, honours=every, settings={"depth": ["3"]})
    assert file.data.startswith(b"(<Paper.LETTER: 'letter'>, <LengthUnit.INCH: 'in'>, 1, False, False)")


@pytest.mark.parametrize("option", ["paper", "unit", "copies", "black_and_white", "large_print", "mood"])
def test_option_that_changes_nothing_is_named(bench, plan, option) -> None:
    with pytest.raises(NotHeldError, match=f"tide-table` of the block Nine Patch makes no difference for {option}"):
        bench.output(of_bytes(b"same\n"), plan, honours=(option,))


def test_other_bytes_the_second_time(bench, plan) -> None:
    output = making(lambda plan, options: (OutputFile("", f"{random.random()}\n".encode()),))
    with pytest.raises(NotHeldError, match="gives other bytes the second time"):
        bench.output(output, plan)


@pytest.mark.parametrize(
    ("files", "said"),
    [
        ((), "exactly one file without a name"),
        ((OutputFile("a.txt", b"a\n"),), "exactly one file without a name"),
        ((OutputFile("", b"a\n"), OutputFile("", b"b\n")), "exactly one file without a name"),
        ((OutputFile("", b"a\n"), OutputFile("../b", b"b\n")), "not a plain file name"),
        ([OutputFile("", b"a\n")], "something other than a tuple"),
        ((OutputFile("", b"a\n"), OutputFile("b.json", b"{")), "the file b.json is not right: it is not JSON"),
    ],
)
def test_wrong_files(bench, plan, files, said) -> None:
    with pytest.raises(NotHeldError, match=said):
        bench.output(making(lambda plan, options: files), plan)


@pytest.mark.parametrize(
    ("form", "data", "said"),
    [
        ("txt", b"", "it is empty"),
        ("txt", b"no end", "its last line has no end"),
        ("text", b"\xff\n", "not UTF-8"),
        ("json", b'{"a": NaN}', "not JSON"),
        ("json", b"\xff", "not UTF-8"),
        ("csv", b"a,b\nc\n", "different numbers of fields"),
        ("svg", b"<svg><g></svg>", "not well-formed"),
        ("svg", b'<!DOCTYPE a [<!ENTITY b "c">]><a>&b;</a>', "entities"),
        ("html", b"<p><b>a</p>", "closes nothing"),
        ("html", b"<p>a<br>", "never closed"),
        ("png", b"GIF", "not begin as a PNG"),
        ("png", b"\x89PNG\r\n\x1a\n", "cut off"),
        ("png", b"\x89PNG\r\n\x1a\n\0\0\0\0IHDR\0\0\0\0", "damaged"),
        ("pdf", b"%PDF-1.7 nothing", "begin and end as a PDF"),
        ("pdf", b"%PDF-1.7\nnothing\n%%EOF\n", "cannot be opened"),
    ],
)
def test_format_that_is_not_what_it_says(bench, plan, form, data, said) -> None:
    with pytest.raises(NotHeldError, match=said):
        bench.output(of_bytes(data, form), plan)


@pytest.mark.parametrize(
    ("form", "data"), [("json", b"[1]"), ("csv", b'a,"b\nc"\nd,e\n'), ("html", b"<p>a<br><img/></p>"), ("tide", b"\0")]
)
def test_format_that_is_right(bench, plan, form, data) -> None:
    assert bench.output(of_bytes(data, form), plan)[0].data == data


def test_pictures_and_pages_of_the_shipped_diagram_are_right(bench, plan) -> None:
    import blocklang_diagram

    from blocklang.testing.formats import fault_of_bytes

    (output,) = blocklang_diagram.blocklang_outputs()
    for form in ("svg", "png", "pdf"):
        data = of_format(output, plan, form)
        assert fault_of_bytes(data, form) == ""
        assert fault_of_bytes(data[: len(data) // 2], form) != ""


def of_format(output, plan, form) -> bytes:
    return output.make(plan, OutputOptions(form))[0].data


def test_own_exception_comes_through_and_says_where(bench, plan) -> None:
    with pytest.raises(ZeroDivisionError) as raised:
        bench.output(making(lambda plan, options: 1 // 0), plan)
    assert raised.value.__notes__ == ["while The output `tide-table` of the block Nine Patch (txt) was made"]


def refusing(sentence: str) -> Output:
    def make(plan, options):
        raise CannotMakeError(sentence)

    return making(make)


def test_refusal_is_one_sentence(bench, plan) -> None:
    assert bench.output(refusing("This block has curves."), plan) == ()
    with pytest.raises(NotHeldError, match="not one plain sentence"):
        bench.output(refusing("no"), plan)


def test_document_of_several_blocks_is_tried_too(bench, plan) -> None:
    seen = []
    output = making(told, make_several=lambda plans, options: (seen.append(len(plans)), told(plans[0], options))[1])
    bench.output(output, plan)
    assert seen == [2, 2]
    with pytest.raises(NotHeldError, match="exactly one file"):
        bench.output(making(told, make_several=lambda plans, options: ()), plan)


def shelf(of_each, of_all=lambda about, options: (OutputFile("list.txt", f"{about}\n".encode()),)) -> Output:
    """Return an output that is a folder."""
    return Output("shelf", ("txt",), "txt", "A folder.", make_folder=FolderMaker(of_each, of_all))


def page_of(block, options) -> Share:
    """Tell a block in a file of its own, with the picture that another output draws of it."""
    plan = block.plan("6in")
    (picture,) = block.make("diagram", plan, OutputOptions("svg"))
    text = f"{block.source.text.splitlines()[0]} {plan.block.size[0] // TICKS_PER_INCH}\n"
    files = (OutputFile(f"{block.name}/about.txt", text.encode()), OutputFile(f"{block.name}/it.svg", picture.data))
    return Share(files, block.name)


def test_sound_folder_gives_its_files(bench) -> None:
    files = {file.name: file.data for file in bench.folder(shelf(page_of), ["whirl", "nine-patch"])}
    assert list(files) == ["whirl/about.txt", "whirl/it.svg", "nine-patch/about.txt", "nine-patch/it.svg", "list.txt"]
    assert files["list.txt"] == b"('whirl', 'nine-patch')\n"
    assert files["whirl/about.txt"].startswith(b'block "Whirl"') and files["whirl/about.txt"].endswith(b" 6\n")


def test_block_may_be_left_out_of_a_folder(bench) -> None:
    output = shelf(lambda block, options: page_of(block, options) if block.plan("0.1in") else None)
    assert [file.data for file in bench.folder(output, ["whirl"])] == [b"()\n"]


@pytest.mark.parametrize(
    ("of_each", "said"),
    [
        (lambda block, options: Share((OutputFile("../a", b"a"),)), "does not lie inside its folder"),
        (lambda block, options: Share((OutputFile("a.json", b"{"),)), "a.json is not right"),
        (lambda block, options: Share((OutputFile("a.txt", b"a\n"),)), "two files of one name"),
        (lambda block, options: Share((), lambda: None), "cannot be pickled"),
        (lambda block, options: Share((), random.random()), "in another order"),
        (lambda block, options: "a", "other than a share"),
        (lambda block, options: 1 // 0, "ZeroDivisionError"),
    ],
)
def test_wrong_folders(bench, of_each, said) -> None:
    with pytest.raises(NotHeldError, match=said):
        bench.folder(shelf(of_each), ["whirl", "nine-patch"])


def test_wrong_files_of_the_whole(bench) -> None:
    with pytest.raises(NotHeldError, match="other files of the whole the second time"):
        bench.folder(
            shelf(page_of, lambda about, options: (OutputFile("a.txt", f"{random.random()}\n".encode()),)), ["whirl"]
        )
    with pytest.raises(NotHeldError, match="something other than a tuple"):
        bench.folder(shelf(page_of, lambda about, options: None), ["whirl"])


def test_language_is_one_of_the_options(bench, plan) -> None:
    output = making(lambda plan, options: (OutputFile("", f"{options.language.code}\n".encode()),))
    assert bench.output(output, plan, honours=("language",))[0].data == b"en\n"


def saying(*said: object) -> Check:
    return Check("low-water", "Nothing runs aground.", lambda plan: said)


def test_checks(bench, plan) -> None:
    fine = Diagnostic("low-water", Severity.NOTE, "It is low", "The water is low.")
    assert bench.check(saying(fine), plan) == (fine,)
    with pytest.raises(NotHeldError, match="other than a tuple of diagnostics"):
        bench.check(saying("low"), plan)
    with pytest.raises(NotHeldError, match="in a sentence"):
        bench.check(saying(Diagnostic("a", Severity.NOTE, "b", "low")), plan)
    with pytest.raises(NotHeldError, match="without a code"):
        bench.check(saying(Diagnostic("", Severity.NOTE, "b", "Low.")), plan)
    with pytest.raises(NotHeldError, match="the second time"):
        bench.check(
            Check("tide", "Tells.", lambda plan: (Diagnostic("a", Severity.NOTE, "b", f"{random.random()}."),)), plan
        )


def squares(larger: float):
    """Return a method that cuts everything as a square, so much larger than the finished patch."""

    def claims(outline, allowance, outside):
        left, low, right, high = outline.bounds()
        return Claim((max(right - left, high - low) / TICKS_PER_INCH + larger,), Lay.UPRIGHT, "along a side")

    return CuttingMethod("plain-squares", "everything as a square", 5, claims)


def test_cutting_methods(bench, plan) -> None:
    cutting = bench.cutting_method(squares(0.5), plan)
    assert {piece.method for piece in cutting.pieces} == {"plain-squares"}
    with pytest.raises(NotHeldError, match=r"9\.000 square inches cannot hold 12\.250"):
        bench.cutting_method(squares(0.0), plan)
    with pytest.raises(NotHeldError, match="claims Claim"):
        bench.cutting_method(squares(-100.0), plan)
    with pytest.raises(NotHeldError, match="should be a Claim or None"):
        bench.cutting_method(CuttingMethod("odd", "odd", 1, lambda *_: "yes"), plan)
    with pytest.raises(NotHeldError, match="the second time"):
        bench.cutting_method(
            CuttingMethod("odd", "odd", 1, lambda *_: Claim((4 + random.random(),), Lay.UPRIGHT, "any")), plan
        )


@pytest.mark.parametrize(
    "block", ["eight-pointed-star", "kaleidoscope", "tumbling-blocks", "octagon", "hexagon-flower-7", "storm-at-sea"]
)
def test_methods_that_ship_cut_shapes_large_enough(bench, block) -> None:
    """Each is asked before all others, so that it shows every shape that it claims."""
    plan = bench.plan(block)
    used = {piece.method for method in METHODS for piece in bench.cutting_method(method, plan).pieces}
    assert len(used) > 1


def test_pressing_preferences(bench, plan) -> None:
    left = PressingPreference(
        "left", "To the left.", lambda graph, seam: float((seam.left > seam.right) - (seam.left < seam.right))
    )
    assert set(bench.pressing_preference(left, plan)) <= {-1.0, 1.0}
    with pytest.raises(NotHeldError, match="from its other side"):
        bench.pressing_preference(PressingPreference("one", "Always.", lambda graph, seam: 1.0), plan)
    with pytest.raises(NotHeldError, match="as nan"):
        bench.pressing_preference(PressingPreference("nan", "Never.", lambda graph, seam: float("nan")), plan)


def test_cells(bench) -> None:
    bench.cell(Cell("patch", "a square", ("cloth",), lambda _: (CellPatch(0, SQUARE),)))
    corner = CellPatch(0, ((0, 0), (1, 0), (0, 1)))
    with pytest.raises(NotHeldError, match="does not fill its square"):
        bench.cell(Cell("corner", "half a square", ("cloth",), lambda _: (corner,)))
    with pytest.raises(NotHeldError, match="draws nothing of cloth1"):
        bench.cell(Cell("patch", "a square", ("cloth", "other"), lambda _: (CellPatch(0, SQUARE),)))

    def bar(part: Fraction):
        return (
            CellPatch(0, ((0, 0), (part, 0), (part, 1), (0, 1))),
            CellPatch(1, ((part, 0), (1, 0), (1, 1), (part, 1))),
        )

    bench.cell(Cell("bar", "two bars", ("one", "two"), bar, Fraction(1, 2), Fraction(1, 10), Fraction(9, 10)))
    with pytest.raises(NotHeldError, match="bar"):
        bench.cell(Cell("bar", "two bars", ("one", "two"), bar, Fraction(1, 2), Fraction(1, 10), Fraction(2)))


def test_plans_are_those_of_the_commands_and_made_once(bench, tmp_path) -> None:
    assert bench.plan("nine-patch") is bench.plan("nine-patch")
    plan = bench.plan("nine-patch", size="15cm", copies=4, unit=LengthUnit.CENTIMETRE)
    assert (plan.block.unit, plan.cutting.options.copies) == (LengthUnit.CENTIMETRE, 4)
    assert plan.block.size[0] == round(15 / 2.54 * TICKS_PER_INCH)
    path = tmp_path / "own.block"
    path.write_text(
        'block "Own"\nlanguage 1\nsize 4 in by 4 in\nfabric fog ground light #e8eef2\nrows\n fog fog\nend\n'
    )
    assert len(bench.plan(path).block.patches) == 2
    with pytest.raises(NotHeldError, match="no block `nowhere`"):
        bench.plan("nowhere")
    beside = 'block "Other"\nlanguage 1\nsize 4 in\nplace "own.block" as own at 0, 0 size 4 in\n'
    (tmp_path / "other.block").write_text(beside)
    assert len(bench.plan(tmp_path / "other.block").block.patches) == 2
    path.write_text('block "Own"\nsize 4 in\nrows\n fog\nend\n')
    with pytest.raises(NotHeldError, match="`fog`"):
        bench.plan(path)
    with pytest.raises(NotHeldError, match="Nothing of that name"):
        bench.plan(tmp_path / "nowhere.block")


def test_blocks_are_named_by_pattern(bench) -> None:
    assert "nine-patch" in bench.blocks()
    assert bench.blocks("*-nine-patch") == ("double-nine-patch", "split-nine-patch")
    assert bench.blocks("nosuch*") == ()


@pytest.mark.parametrize(
    ("module", "said"),
    [
        ("broken_on_import", "cannot be loaded"),
        ("exits_on_import", "cannot be loaded"),
        ("strangers", "offers nothing"),
    ],
)
def test_module_that_is_no_sound_plugin(bench, module, said) -> None:
    from types import ModuleType

    with pytest.raises(NotHeldError, match=said):
        bench.plugin(ModuleType(f"tests.plugins.{module}"))


def test_shipped_plugins_are_sound(bench) -> None:
    import blocklang_cells
    import blocklang_cutting_methods
    import blocklang_hand_piecing

    plan = bench.plan("ohio-star")
    for module in (blocklang_cells, blocklang_cutting_methods, blocklang_hand_piecing):
        bench.plugin(module)
    for cell in blocklang_cells.blocklang_cells():
        bench.cell(cell)
    for method in blocklang_cutting_methods.blocklang_cutting_methods():
        bench.cutting_method(method, plan)
    (preference,) = blocklang_hand_piecing.blocklang_pressing_preferences()
    assert set(map(abs, bench.pressing_preference(preference, plan))) == {16.0}
    (check,) = blocklang_hand_piecing.blocklang_checks()
    assert bench.check(check, plan) == ()
