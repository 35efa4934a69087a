"""The renderer: long, short and JSON say the same, and nothing in a file can command a terminal."""

import json

from blocklang.diagnostics import (
    Diagnostic,
    Related,
    Severity,
    SourceText,
    Span,
    render_json,
    render_long,
    render_short,
)

SOURCE = SourceText("tide.block", 'block "Tide"\nsize 12 im\n\tpoint a at centre\n')
UNIT = Diagnostic(
    "unknown-unit", Severity.ERROR, "This unit is not known", "`im` is no unit.", "Write `in`.", Span(SOURCE, 21, 23)
)


def test_a_long_message_shows_the_line_with_the_place_underlined() -> None:
    assert render_long([UNIT]) == (
        "error: This unit is not known\n"
        "  tide.block, line 2, column 9\n"
        "  2 | size 12 im\n"
        "    |         ^^\n"
        "`im` is no unit. Write `in`.\n"
    )


def test_messages_stand_apart_and_show_what_else_belongs_to_them() -> None:
    warning = Diagnostic(
        "w", Severity.WARNING, "Odd", "It is odd.", related=(Related(Span(SOURCE, 0, 5), "It began here."),)
    )
    assert render_long([warning, UNIT]).split("\n\n") == [
        'warning: Odd\nIt is odd.\nIt began here.\n  tide.block, line 1, column 1\n  1 | block "Tide"\n    | ^^^^^',
        render_long([UNIT]),
    ]


def test_a_short_message_is_one_line() -> None:
    assert render_short([UNIT]) == "tide.block:2:9: error: This unit is not known. `im` is no unit. Write `in`.\n"
    assert render_short([Diagnostic("n", Severity.NOTE, "So", "So it is.")]) == "note: So. So it is.\n"


def test_json_holds_every_part() -> None:
    document = json.loads(render_json([UNIT]))
    assert document["schema"] == "blocklang.diagnostics/1"
    assert document["diagnostics"] == [
        {
            "code": "unknown-unit",
            "severity": "error",
            "title": "This unit is not known",
            "found": "`im` is no unit.",
            "advice": "Write `in`.",
            "place": {"file": "tide.block", "line": 2, "column": 9, "end_line": 2, "end_column": 11},
            "related": [],
        }
    ]


def test_colour_only_when_asked() -> None:
    assert "\x1b" not in render_long([UNIT])
    coloured = render_long([UNIT], colour=True)
    assert coloured.startswith("\x1b[1;31merror: This unit is not known\x1b[0m\n")
    assert "\x1b[31m^^\x1b[0m" in coloured


def test_a_tab_is_one_column_wide() -> None:
    shown = render_long([Diagnostic("t", Severity.ERROR, "T", "F.", span=Span(SOURCE, 25, 30))]).splitlines()
    assert shown[2:4] == ["  3 |  point a at centre", "    |  ^^^^^"]


def test_wide_letters_are_underlined_in_full() -> None:
    source = SourceText("x", "潮 tide")
    shown = render_long([Diagnostic("t", Severity.ERROR, "T", "F.", span=Span(source, 0, 1))]).splitlines()
    assert shown[3] == "    | ^^"
    shown = render_long([Diagnostic("t", Severity.ERROR, "T", "F.", span=Span(source, 2, 6))]).splitlines()
    assert shown[3] == "    |    ^^^^"


def test_a_long_line_is_shown_in_part_round_the_place() -> None:
    source = SourceText("x", "a" * 500 + "HERE" + "b" * 500)
    shown = render_long([Diagnostic("t", Severity.ERROR, "T", "F.", span=Span(source, 500, 504))]).splitlines()
    assert len(shown[2]) < 120
    start = shown[3].index("^")
    assert shown[2][start : start + 4] == "HERE"
    assert shown[3].count("^") == 4


def test_a_place_over_several_lines_is_underlined_to_the_end_of_the_first() -> None:
    shown = render_long([Diagnostic("t", Severity.ERROR, "T", "F.", span=Span(SOURCE, 18, 30))]).splitlines()
    assert shown[3] == "    |      ^^^^^"


def test_the_end_of_a_file_is_a_place() -> None:
    end = len(SOURCE.text)
    shown = render_long([Diagnostic("t", Severity.ERROR, "T", "F.", span=Span(SOURCE, end, end))]).splitlines()
    assert shown[1:4] == ["  tide.block, line 4, column 1", "  4 |", "    | ^"]


def test_nothing_in_a_file_reaches_the_terminal_as_a_command() -> None:
    source = SourceText("a\x1bb", "x\x1b[31m\u202ey")
    wicked = Diagnostic("t", Severity.ERROR, "T\x07", "F\x1b[2J.", span=Span(source, 0, 1))
    for text in (render_long([wicked]), render_short([wicked])):
        assert all(letter.isprintable() or letter == "\n" for letter in text)
