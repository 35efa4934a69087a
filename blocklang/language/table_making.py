"""Make grammar.table from grammar.lark with lark; run by the developers, never by the program.

The table holds lark's LALR(1) automaton as plain text, so that no parser has to be built, and nothing has to be
trusted or written, when a block file is read.
"""

import zlib
from pathlib import Path
from typing import Any

GRAMMAR = Path(__file__).with_name("grammar.lark")
TABLE = Path(__file__).with_name("grammar.table")


def table_text() -> str:
    """Return the table for the grammar as it stands, one record a line."""
    from lark import Lark

    grammar = GRAMMAR.read_text(encoding="utf-8")
    built = Lark(grammar, parser="lalr", start="file")
    automaton: Any = built.parser.parser._parse_table
    order = _numbered(automaton.states, automaton.start_states["file"])
    rules = sorted({_record_of_rule(rule) for row in automaton.states.values() for rule in _reductions(row)})
    words = (f"word {t.pattern.value} {t.name}" for t in built.terminals if t.pattern.type == "str")
    lines = [
        f"grammar {zlib.crc32(grammar.encode()):08x}",
        f"end {order[automaton.end_states['file']]}",
        *sorted(words),
        *rules,
        *(_record_of_state(automaton.states[state], order, rules) for state in order),
    ]
    return "\n".join(lines) + "\n"


def _numbered(states: Any, start: int) -> dict[int, int]:
    """Number the states in the order in which they are reached, since lark's own numbers differ from run to run."""
    order = {start: 0}
    waiting = [start]
    for state in waiting:
        for _, (action, target) in sorted(states[state].items()):
            if action.name == "Shift" and target not in order:
                order[target] = len(order)
                waiting.append(target)
    return order


def _reductions(row: Any) -> Any:
    return (target for action, target in row.values() if action.name == "Reduce")


def _record_of_rule(rule: Any) -> str:
    name = rule.alias or rule.origin.name
    first = rule.expansion[0].name if rule.expansion else ""
    kind = "?" if rule.options.expand1 and not rule.alias else "+" if first == rule.origin.name else "-"
    return " ".join(["rule", rule.origin.name, name, kind, str(len(rule.expansion)), *_kept(rule)])


def _kept(rule: Any) -> list[str]:
    """Return what a rule keeps of its parts: `2` a part, `2*` all that a helper rule gathered, `n` nothing said."""
    kept: list[str] = []
    parts = iter(range(len(rule.expansion)))
    for absent in rule.options.empty_indices or (False,) * len(rule.expansion):
        if absent:
            kept.append("n")
            continue
        index = next(parts)
        symbol = rule.expansion[index]
        if rule.options.keep_all_tokens or not (symbol.is_term and symbol.filter_out):
            kept.append(f"{index}*" if not symbol.is_term and symbol.name.startswith("_") else str(index))
    return kept


def _record_of_state(row: Any, order: dict[int, int], rules: list[str]) -> str:
    moves = (
        f"{symbol}{f'>{order[target]}' if action.name == 'Shift' else f'<{rules.index(_record_of_rule(target))}'}"
        for symbol, (action, target) in sorted(row.items())
    )
    return " ".join(["state", *moves])


if __name__ == "__main__":
    TABLE.write_text(table_text(), encoding="utf-8")
