"""Lay out the words of one line: what stands apart, what stands together, what stands in columns."""

from collections.abc import Sequence

from blocklang.language.quantities import FRACTIONS
from blocklang.language.scanning import Token

#: After one of these a minus takes away; after anything else it belongs to the number that follows.
ENDS_A_VALUE = frozenset("NUMBER NAME RPAR IN INCH INCHES CM MM DEG DEGREE WIDTH HEIGHT SIZE".split())
SPELT = {"INCH": "in", "INCHES": "in", "DEGREE": "deg"}
Tokens = Sequence[Token]


def spaced(tokens: Tokens) -> str:
    """Return a line with one space wherever one belongs."""
    pieces: list[str] = []
    clings = False
    for index, token in enumerate(tokens):
        before = tokens[index - 1] if index else None
        apart = before is not None and not clings and token.kind not in ("COMMA", "RPAR")
        pieces.append((" " if apart else "") + spelt(token, before))
        clings = token.kind == "LPAR" or (token.kind == "MINUS" and (before is None or before.kind not in ENDS_A_VALUE))
    return "".join(pieces)


def spelt(token: Token, before: Token | None = None) -> str:
    """Return a word in its one spelling."""
    if token.kind == "STRING":
        return f'"{token.text[1:-1]}"'
    if token.kind == "NUMBER":
        return _number(token.text, before)
    if token.kind == "COLOUR":
        return token.text.lower()
    return SPELT.get(token.kind, token.text)


def _number(text: str, before: Token | None) -> str:
    if text[-1] not in FRACTIONS:
        return " ".join(text.split())
    whole = text[:-1].strip()
    if not whole and before is not None and before.text in ("/", "sqrt", "sin", "cos", "tan"):
        return text  # written out, it could be read two ways
    return f"{whole} {FRACTIONS[text[-1]]}".strip()


def cells_of(tokens: Tokens) -> list[str]:
    """Return the cells of a row, each as one text."""
    cells: list[str] = []
    inside = False
    before: Token | None = None
    for token in tokens:
        text = spelt(token)
        if inside:
            joined = token.kind in ("RPAR", "COMMA") or (before is not None and before.kind == "LPAR")
            cells[-1] += text if joined else f" {text}"
        elif token.kind in JOINED or (before is not None and before.kind in ("SLASH", "BACKSLASH")):
            cells[-1:] = [cells[-1] + text] if cells else [text]
        elif token.kind == "TURN" or (before is not None and before.kind == "TURN"):
            cells[-1] += f" {text}"
        else:
            cells.append(text)
        inside = token.kind == "LPAR" or (inside and token.kind != "RPAR")
        before = token
    return cells


JOINED = frozenset(("SLASH", "BACKSLASH", "LPAR", "COMMA"))


def fabric_columns(lines: Sequence[Tokens]) -> list[str]:
    """Return neighbouring fabric lines in columns: name, short name, role, value, colour, print, title."""
    table = [_fabric(tokens) for tokens in lines]
    widths = [max(len(row[column]) for row in table) for column in range(len(table[0]))]
    used = [column for column, width in enumerate(widths) if width]
    return ["fabric " + " ".join(row[column].ljust(widths[column]) for column in used).rstrip() for row in table]


def _fabric(tokens: Tokens) -> list[str]:
    words = [spelt(token) for token in tokens[1:]]
    short = ""
    if tokens[2].kind == "AS":
        short = f"as {words[2]}"
        del words[1:3]
    kinds = [token.kind for token in tokens]
    said = dict(zip(kinds[kinds.index("COLOUR") + 1 :], words[4:], strict=True))
    return [words[0], short, *words[1:4], said.get("NAME", ""), said.get("STRING", "")]
