"""`--technique` asks for what a plugin knows about pressing."""

from click.testing import CliRunner

from blocklang.cli.program import program


def _run(*arguments: str) -> tuple[int, str, str]:
    result = CliRunner().invoke(program, list(arguments), standalone_mode=False)
    fault = str(getattr(result.exception, "message", "")) if result.exception else ""
    return (0 if result.exception is None else 2), result.stdout, fault


def test_hand_piecing_changes_the_pressing_and_says_so() -> None:
    code, plain, _ = _run("plan", "roman-stripe")
    again, by_hand, _ = _run("plan", "roman-stripe", "--technique", "hand-piecing")
    assert (code, again) == (0, 0)
    assert "Pressed for hand-piecing." in by_hand and "Pressed for" not in plain
    assert [line for line in plain.splitlines() if "Press" in line] != [
        line for line in by_hand.splitlines() if "Press" in line and "for" not in line
    ]


def test_a_technique_that_no_plugin_knows_is_a_mistake_in_the_command_line() -> None:
    code, out, fault = _run("plan", "churn-dash", "--technique", "ironing-blind")
    assert code == 2 and not out
    assert fault == "No plugin knows the technique `ironing-blind`. There is: hand-piecing."
