"""Load grammar.table: the automaton that says what may follow what."""

from functools import cache
from os.path import dirname, join
from typing import NamedTuple

#: Keep nothing, because an optional part was left out.
ABSENT = -1


class Rule(NamedTuple):
    """How parts become one.

    `kept` pairs a part's index (or `ABSENT`) with whether its list is spread out; `helps` marks a rule that only
    gathers parts, `grows` one that adds a part to a list; `passes` is the one part that is handed on as it is, or -1.
    """

    origin: str
    name: str
    length: int
    kept: tuple[tuple[int, bool], ...]
    helps: bool
    grows: bool
    passes: int


class Table:
    """The automaton; a small file visits few of its records, so each is worked out when it is first asked for."""

    start = 0

    def __init__(self, lines: list[str]) -> None:
        """Sort the records of the table file by kind."""
        self.end = int(lines[1].split()[1])
        self.words = {word: name for _, word, name in (line.split() for line in lines if line.startswith("word "))}
        self._rule_lines = [line for line in lines if line.startswith("rule ")]
        self._state_lines = [line for line in lines if line.startswith("state")]
        self.rules: list[Rule | None] = [None] * len(self._rule_lines)
        self.rows: list[dict[str, int] | None] = [None] * len(self._state_lines)

    def moves(self, state: int) -> dict[str, int]:
        """Return where each symbol leads from a state: to a state (0 and up), or to rule ~n (below 0)."""
        row = self.rows[state]
        if row is None:
            row = self.rows[state] = dict(map(_move, self._state_lines[state].split()[1:]))
        return row

    def rule(self, number: int) -> Rule:
        """Return a rule by its number."""
        rule = self.rules[number]
        if rule is None:
            rule = self.rules[number] = _rule(self._rule_lines[number].split())
        return rule


@cache
def load_table() -> Table:
    """Return the automaton that ships with the program."""
    with open(join(dirname(__file__), "grammar.table"), encoding="utf-8") as file:
        return Table(file.read().splitlines())


def _rule(record: list[str]) -> Rule:
    kept = tuple((ABSENT, False) if part == "n" else (int(part.rstrip("*")), part[-1] == "*") for part in record[5:])
    helps, bare = record[2].startswith("_"), record[3] == "?"
    passes = kept[0][0] if bare and not helps and len(kept) == 1 and not kept[0][1] else -1
    grows = helps and record[3] == "+" and kept == ((0, True), (1, False))
    return Rule(record[1], record[2], int(record[4]), kept, helps, grows, passes)


def _move(text: str) -> tuple[str, int]:
    symbol, shift, target = text.partition(">")
    if shift:
        return symbol, int(target)
    symbol, _, target = text.partition("<")
    return symbol, ~int(target)
