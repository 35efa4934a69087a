"""`blocklang new NAME`: every start and option gives a right and tidy file, and bad answers are asked again."""

import json
import os
import pty
import select
import subprocess
import sys
import time

import pytest
from click.testing import CliRunner

from blocklang.cli import new_command
from blocklang.cli.program import program
from blocklang.cli.starting.answers import LONGEST_TITLE, read_size
from blocklang.cli.starting.designs import DESIGNS
from blocklang.cli.starting.fabrics import PALETTE, read_cloth, value_of

CLOTHS = ("fog", "deep", "coral", "moss meadow #4f6b4a")


@pytest.fixture
def runner(folder, monkeypatch):
    """Answer questions as a person at a terminal would."""
    monkeypatch.setattr(new_command, "at_a_terminal", lambda: True)

    def run(*words: str, answers: list[str]):
        return CliRunner().invoke(program, ["new", *words], input="".join(f"{one}\n" for one in answers))

    return run


def planned(command, path):
    """Return the plan of a file that check, format and plan have nothing to say about."""
    checked = command("check", path)
    assert (checked.code, checked.err) == (0, "")
    assert command("format", "--check", path).code == 0
    ran = command("plan", path, "--format", "json")
    assert (ran.code, ran.err) == (0, "")
    return json.loads(ran.out)


@pytest.mark.parametrize("count", [2, 3, 4])
@pytest.mark.parametrize("design", [design.name for design in DESIGNS])
def test_every_start_is_right_with_two_to_four_fabrics(command, folder, design, count) -> None:
    chosen = [word for cloth in CLOTHS[:count] for word in ("--fabric", cloth)]
    assert command("new", "tide", "--start", design, *chosen).code == 0
    plan = planned(command, "./tide.block")
    used = {patch["fabric"] for patch in plan["patches"]}
    assert used == {cloth.split()[0] for cloth in CLOTHS[:count]}


@pytest.mark.parametrize("design", DESIGNS, ids=lambda design: design.name)
def test_start_without_more_has_its_usual_size_and_fabrics(command, folder, design) -> None:
    assert command("new", "tide", "--start", design.name, "--no-questions").code == 0
    plan = planned(command, "./tide.block")
    assert plan["block"]["finished"] == [float(design.size.split()[0])] * 2
    assert [fabric["id"] for fabric in plan["fabrics"]] == [cloth.name for cloth in PALETTE[: design.usual]]
    assert [fabric["role"] for fabric in plan["fabrics"]] == list(design.roles[: design.usual])


def test_options_are_what_the_file_says(command, folder) -> None:
    ran = command(
        "new", "tide", "--title", "Spring Tide", "--start", "log-cabin", "--size", "30cm", "--by", "Odile Fenwick",
        "--licence", "for the guild only", "--fabric", "sand", "--fabric", "kelp", "--fabric", "ember hearth dark #c8452f",
    )  # fmt: skip
    assert ran.code == 0
    text = (folder / "tide.block").read_text(encoding="utf-8")
    assert 'by "Odile Fenwick" licence "for the guild only"\n' in text
    assert "fabric ember hearth dark  #c8452f\n" in text
    block = planned(command, "./tide.block")["block"]
    assert (block["name"], block["unit"], block["finished"]) == ("Spring Tide", "cm", [30.0, 30.0])


@pytest.mark.parametrize(
    "title",
    [
        "Møre & Romsdal", "潮だまり", "مد", "'); drop table", "${HOME} `id` %s {title}", "a\\b", "block # not a remark",
        "x" * LONGEST_TITLE, "🌊",
    ],
)  # fmt: skip
def test_strange_titles_come_through_unchanged(command, folder, title) -> None:
    assert command("new", "tide", "--title", title).code == 0
    assert planned(command, "./tide.block")["block"]["name"] == title


@pytest.mark.parametrize(
    ("option", "value", "said"),
    [
        ("--title", 'Sea" language 2', "double quotes"),
        ("--title", "Sea”", "double quotes"),
        ("--title", "Sea\nsize 1 in", "cannot be seen"),
        ("--title", "Sea\u202eaeS", "cannot be seen"),
        ("--title", "\x1b[31mSea", "cannot be seen"),
        ("--title", "Sea\u2028eaS", "cannot be seen"),
        ("--title", "x" * (LONGEST_TITLE + 1), "at most"),
        ("--title", "  ", "has a title"),
        ("--by", 'Odile"', "double quotes"),
        ("--licence", 'CC"', "double quotes"),
        ("--size", "banana", "is not a size"),
        ("--size", "12 in by 6 in", "is not a size"),
        ("--size", "12 in\nrows", "is not a size"),
        ("--size", "0", "at least 0.25 in"),
        ("--size", "1e9", "is not a size"),
        ("--size", "9" * 30, "at most 18 characters"),
        ("--size", "1/0", "zero"),
        ("--size", "1001", "longer than 1,000 in"),
        ("--start", "castle", "one of nine-patch, four-patch"),
        ("--start", "0", "one of nine-patch, four-patch"),
        ("--fabric", "chiffon", "give its colour too"),
        ("--fabric", "through #123456", "`through`"),
        ("--fabric", "9fog #123456", "9"),
        ("--fabric", "moss #12", "not a colour"),
        ("--fabric", "moss #12345z", "not a colour"),
        ("--fabric", "fog one two", "two roles"),
        ("--fabric", "fog #111111 #222222", "two colours"),
        ("--fabric", "fog light dark", "two values"),
        ("--fabric", "fog light#ffffff", "light"),
        ("--fabric", "", "name of a fabric"),
    ],
)
def test_bad_option_is_refused_with_the_reason_and_nothing_is_written(command, folder, option, value, said) -> None:
    ran = command("new", "tide", option, value)
    assert ran.code == 2
    assert said in ran.err
    assert "Traceback" not in ran.err
    assert not list(folder.iterdir())


def test_two_fabrics_of_one_name_and_five_fabrics_are_refused(command, folder) -> None:
    assert "a fabric `fog` already" in command("new", "tide", "--fabric", "fog", "--fabric", "fog").err
    five = [word for name in ("fog", "deep", "coral", "reed", "sand") for word in ("--fabric", name)]
    assert "2 to 4 fabrics" in command("new", "tide", *five).err
    assert not list(folder.iterdir())


def test_several_names_and_a_missing_folder_are_refused(command, folder) -> None:
    assert command("new", "tide", "pool").err.startswith("A new file has one name: write `tide-pool`.")
    assert command("new", "nowhere/tide").err == "There is no folder `nowhere`: make it first, or write elsewhere.\n"


def test_link_that_leads_nowhere_is_left_alone(command, folder) -> None:
    (folder / "tide.block").symlink_to(folder / "elsewhere")
    assert command("new", "tide").code == 2
    assert not (folder / "elsewhere").exists()


def test_questions_are_asked_in_order_and_answers_written(runner, command, folder) -> None:
    answers = ["Spring Tide", "log-cabin", "14 in", "3", "sand", "deep", "ember #c8452f", "Odile Fenwick", ""]
    ran = runner("tide", answers=answers)
    assert ran.exit_code == 0
    asked = [line for line in ran.output.splitlines() if line.rstrip().endswith(tuple(answers[:-1])) and ":" in line]
    assert [line.partition(" [")[0].partition(":")[0] for line in asked] == [
        "Title", "Start from", "Finished size, such as 12 in or 30 cm", "How many fabrics, 2 to 4",
        "Fabric 1 of 3, the day", "Fabric 2 of 3, the night", "Fabric 3 of 3, the hearth",
        "Who drafted it, for the credit (or nothing)",
    ]  # fmt: skip
    text = (folder / "tide.block").read_text(encoding="utf-8")
    assert 'by "Odile Fenwick" licence CC-BY-4.0\n' in text
    assert "fabric ember hearth medium #c8452f\n" in text
    assert planned(command, "./tide.block")["block"]["finished"] == [14.0, 14.0]


def test_empty_answers_give_what_is_usual(runner, command, folder) -> None:
    assert runner("asked", answers=[""] * 7).exit_code == 0
    assert command("new", "told", "--title", "Asked", "--no-questions").code == 0
    assert (folder / "asked.block").read_bytes() == (folder / "told.block").read_bytes()


def test_bad_answers_are_asked_again_with_the_reason(runner, command, folder) -> None:
    answers = ['a "b"', "Sea", "castle", "3", "banana", "0", "30 cm", "7", "2", "chiffon", "fog", "fog", "deep", "", ""]
    ran = runner("tide", answers=answers)
    assert ran.exit_code == 0
    for reason in ("double quotes", "no start `castle`", "`banana` is not a size", "at least 0.25 in",
                   "a number from 2 to 4", "`chiffon` is not in the palette", "a fabric `fog` already"):  # fmt: skip
        assert reason in ran.output
    plan = planned(command, "./tide.block")
    assert (plan["block"]["name"], plan["block"]["unit"], len(plan["patches"])) == ("Sea", "cm", 24)


def test_what_an_option_says_is_not_asked(runner, folder) -> None:
    options = ["--title", "T", "--start", "star", "--size", "8in", "--fabric", "fog", "--fabric", "deep", "--by", "O"]
    ran = runner("tide", *options, "--licence", "CC0-1.0", answers=[])
    assert (ran.exit_code, ran.stdout) == (0, "")
    assert runner("pool", "--no-questions", answers=[]).stdout == ""


def test_end_of_input_writes_nothing(runner, folder) -> None:
    assert runner("tide", answers=["Sea"]).exit_code == 1
    assert not list(folder.iterdir())


def test_nothing_is_asked_before_an_existing_file_is_seen(runner, folder) -> None:
    (folder / "tide.block").write_text("mine", encoding="utf-8")
    ran = runner("tide", answers=[])
    assert "Title" not in ran.output
    assert (folder / "tide.block").read_text(encoding="utf-8") == "mine"


@pytest.mark.skipif(not hasattr(os, "openpty"), reason="there are no pseudo-terminals here")
def test_at_a_real_terminal(folder, command) -> None:
    master, slave = pty.openpty()
    code = "import sys; from blocklang.cli.program import run; sys.exit(run(['new', 'tide']))"
    process = subprocess.Popen([sys.executable, "-c", code], stdin=slave, stdout=slave, stderr=slave)
    os.close(slave)
    seen = ""
    for question, answer in (("Title [Tide]", ""), ("Start from", "2"), ("size", "5 1/2 in"), ("How many", "9"),
                             ("Write a number", "2"), ("Fabric 1", ""), ("Fabric 2", "coral"), ("credit", "")):  # fmt: skip
        seen = read_until(master, question)
        os.write(master, f"{answer}\n".encode())
    seen = read_until(master, "Wrote tide.block")
    assert process.wait(20) == 0
    os.close(master)
    assert "Traceback" not in seen
    plan = planned(command, "./tide.block")
    assert (plan["block"]["finished"], [fabric["id"] for fabric in plan["fabrics"]]) == ([5.5, 5.5], ["fog", "coral"])


def read_until(master: int, expected: str) -> str:
    """Read what the terminal shows up to a text, and what has come after it."""
    seen, last = "", time.monotonic() + 20
    while expected not in seen:
        ready, _, _ = select.select([master], [], [], max(last - time.monotonic(), 0))
        assert ready, seen
        seen += os.read(master, 4096).decode()
    return seen


@pytest.mark.parametrize(
    ("text", "size"),
    [("12", "12 in"), ("12in", "12 in"), ("12 inches", "12 in"), ('7 1/2"', "7 1/2 in"), ("3½ in", "3½ in"),
     (" 30  cm ", "30 cm"), (".5", ".5 in"), ("150 mm", "150 mm"), ("", None), ("in", None), ("-3", None),
     ("12 ft", None), ("٣", None)],
)  # fmt: skip
def test_sizes_are_read_as_people_write_them(text, size) -> None:
    assert read_size(text) == size


def test_help_names_every_start(command) -> None:
    told = " ".join(command("new", "--help").out.split())
    names = [design.name for design in DESIGNS]
    assert f"What to start from: {', '.join(names[:-1])} or {names[-1]}." in told


def test_palette_is_spread_over_the_values() -> None:
    assert {cloth.value for cloth in PALETTE} == {"light", "medium", "dark"}
    assert all(value_of(cloth.colour) == cloth.value for cloth in PALETTE)
    assert len({cloth.colour for cloth in PALETTE}) == len(PALETTE)


def test_value_follows_from_a_colour_of_ones_own() -> None:
    assert [read_cloth(f"mine {colour}").value for colour in ("#fff", "#808080", "#000")] == ["light", "medium", "dark"]
    assert read_cloth("fog #000000").value == "dark"
    assert read_cloth("mine dark #ffffff").value == "dark"
