"""`blocklang plan` and `blocklang make`: results, where they go, and what is refused."""

import json

import pytest

from blocklang.hooks import OutputFile
from tests.plugins.strangers import an_output


def test_plan_tells_the_steps(command, good) -> None:
    ran = command("plan", good)
    assert (ran.code, ran.err) == (0, "")
    assert ran.out.startswith("Harbour Steps, finished 9 in × 9 in\n9 patches, ")
    assert "  1. " in ran.out
    assert "9 1/2 in × 3 1/2 in" in ran.out
    assert "All 4 junctions that can lock do." in ran.out


def test_plan_in_centimetres(command, good) -> None:
    assert command("plan", good, "--units", "cm").out.startswith("Harbour Steps, finished 22.9 cm × 22.9 cm\n")


def test_plan_as_json_has_the_schema_and_the_copies(command, good) -> None:
    ran = command("plan", good, "--format", "json", "--size", "12in", "--copies", "20")
    plan = json.loads(ran.out)
    assert plan["schema"] == "blocklang.plan/1"
    assert plan["block"]["finished"] == [12, 12]
    assert len(plan["patches"]) == 9


def test_plan_is_the_same_every_time(command, good) -> None:
    assert command("plan", good, "--format", "json").raw == command("plan", good, "--format", "json").raw


def test_plan_of_a_file_with_errors_gives_nothing(command, bad) -> None:
    ran = command("plan", bad)
    assert (ran.code, ran.out) == (1, "")


def test_outputs_lists_what_ships(command) -> None:
    ran = command("outputs")
    assert (ran.code, ran.err) == (0, "")
    assert "diagram (svg, png, pdf): " in ran.out
    named = {one["name"]: one for one in json.loads(command("outputs", "--format", "json").out)}
    assert named["diagram"]["formats"] == ["svg", "png", "pdf"]


def test_make_writes_where_it_is_told(command, good, folder) -> None:
    ran = command("make", "diagram", good, "-o", "picture.svg")
    assert (ran.code, ran.out, ran.err) == (0, "", "Wrote picture.svg\n")
    assert b"<svg" in (folder / "picture.svg").read_bytes()


def test_make_writes_to_standard_output(command, good) -> None:
    ran = command("make", "diagram", good, "-o", "-")
    assert (ran.code, ran.err) == (0, "")
    assert b"<svg" in ran.raw


@pytest.mark.parametrize(
    ("arguments", "sentence"),
    [
        (("diagram", "-o", "a.docx"), "`diagram` cannot be made as docx; it can be svg or png or pdf."),
        (("diagram", "-o", "a.svg", "-f", "gif"), "`diagram` cannot be made as gif"),
        (("diagramm", "-o", "a.svg"), "There is no output `diagramm`. Did you mean `diagram`?"),
        (("diagram", "-o", "a.svg", "--set", "view"), "`--set view` should look like `--set name=value`."),
        (("diagram", "-o", "a.svg", "--set", "mood=blue"), "`diagram` has no setting `mood`; it has `view`, `steps`"),
        (
            ("diagram", "-o", "a.svg", "--set", "view=blue"),
            "`view` of `diagram` is one of fabrics, lines, numbered, laid-apart, sizes.",
        ),
        (("diagram", "-o", "nowhere/a.svg"), "There is no folder `nowhere`"),
        (("diagram", "-o", "a.svg", "--copies", "0"), "0 is not in the range"),
        (("diagram", "-o", "a.svg", "--paper", "a5"), "'a5' is not one of"),
    ],
)
def test_what_cannot_be_made_is_a_fault_of_the_command_line(command, good, folder, arguments, sentence) -> None:
    output, *options = arguments
    ran = command("make", output, "good.block", *options)
    assert (ran.code, ran.out) == (2, "")
    assert sentence in ran.err
    assert [path.name for path in folder.iterdir()] == ["good.block"]


def test_file_with_errors_makes_nothing(command, bad, folder) -> None:
    ran = command("make", "diagram", "bad.block", "-o", "a.svg")
    assert ran.code == 1
    assert [path.name for path in folder.iterdir()] == ["bad.block"]


def test_one_document_of_several_blocks(command, good) -> None:
    ran = command("make", "handout", good, "nine-patch", "-o", "class.pdf")
    assert ran.code == 0 and "Wrote class.pdf" in ran.err


def test_an_output_of_one_block_says_so(command, good) -> None:
    ran = command("make", "diagram", good, good, "-o", "a.svg")
    assert ran.code == 2 and "`diagram` is made of one block at a time: give one FILE, or a folder" in ran.err


def _offer(monkeypatch, output) -> None:
    monkeypatch.setattr("blocklang.cli.plugged.Plugged.outputs", lambda self: (output,))


def test_output_of_several_files_is_written_side_by_side(command, good, folder, monkeypatch) -> None:
    files = (OutputFile("", b"all"), OutputFile("step-1.txt", b"one"))
    _offer(monkeypatch, an_output("steps", make=lambda plan, options: files))
    ran = command("make", "steps", "good.block", "-o", "star.txt")
    assert (ran.code, ran.err) == (0, "Wrote star.txt and 1 more beside it\n")
    assert (folder / "star.txt").read_bytes() == b"all"
    assert (folder / "star-step-1.txt").read_bytes() == b"one"
    assert "standard output cannot hold" in command("make", "steps", "good.block", "-o", "-").err


def test_choices_reach_the_output(command, good, monkeypatch) -> None:
    seen = []

    def make(plan: object, options: object) -> tuple[OutputFile, ...]:
        seen.append(options)
        return (OutputFile("", b""),)

    _offer(monkeypatch, an_output("list", make=make))
    command(
        "make", "list", good, "-o", "a.txt", "--paper", "a4", "--units", "cm", "--copies", "3", "--large-print",
        "--black-and-white",
    )  # fmt: skip
    (options,) = seen
    assert (options.format, options.paper, options.unit, options.copies) == ("txt", "a4", "cm", 3)
    assert options.large_print
    assert options.black_and_white


def test_output_that_fails_is_named_without_a_traceback(command, good, folder, monkeypatch) -> None:
    _offer(monkeypatch, an_output("list", make=lambda plan, options: 1 / 0))
    ran = command("make", "list", "good.block", "-o", "a.txt")
    assert ran.code == 1
    assert "`list`" in ran.err
    assert "ZeroDivisionError" in ran.err
    assert "Traceback" not in ran.err
    assert [path.name for path in folder.iterdir()] == ["good.block"]


@pytest.mark.parametrize(
    ("asked", "told"),
    [
        (("--size", "15cm"), "finished 15 cm × 15 cm"),
        (("--size", "150 mm"), "finished 150 mm × 150 mm"),
        (("--size", "6in"), "finished 6 in × 6 in"),
        (("--size", "6"), "finished 6 in × 6 in"),
        (("--size", "15cm", "--units", "in"), "finished 5 7/8 in × 5 7/8 in"),
    ],
)
def test_lengths_are_shown_in_the_unit_that_the_size_is_typed_in(command, good, asked, told) -> None:
    assert command("plan", good, *asked).out.startswith(f"Harbour Steps, {told}\n")
