"""Give a block file its one layout, and never another meaning."""

from collections.abc import Callable
from itertools import takewhile
from typing import NamedTuple

from blocklang.diagnostics import Diagnostic, SourceText
from blocklang.language.laying_out import cells_of, fabric_columns, spaced
from blocklang.language.parsing import GROUPS, Parser
from blocklang.language.scanning import Token
from blocklang.language.table import load_table


class Line(NamedTuple):
    """One line of a file: its words, and the comment after them ("" when there is none)."""

    tokens: tuple[Token, ...]
    comment: str


def format_text(source: SourceText) -> tuple[str | None, tuple[Diagnostic, ...]]:
    """Return the text in its one layout; None beside diagnostics when it cannot be understood."""
    recorder = Recorder(source, load_table())
    recorder.run()
    if recorder.diagnostics:
        return None, tuple(recorder.diagnostics)
    laid = _indented(_without_idle_blanks(recorder.lines()))
    return "".join(f"{line}\n" for line in laid), ()


class Recorder(Parser):
    """A parser that writes down what every word counted as, and every comment."""

    def run(self) -> tuple[object, ...]:
        """Parse, and keep the words."""
        self.taken: list[Token] = []
        self.comments: list[tuple[int, int]] = []
        return super().run()

    def _feed(self, kind: str, token: Token) -> bool:
        fits = super()._feed(kind, token)
        if fits and kind != "_NL":
            self.taken.append(token._replace(kind=kind))
        return fits

    def pass_comment(self, start: int, end: int) -> None:
        """Keep a comment."""
        self.comments.append((start, end))

    def lines(self) -> list[Line]:
        """Return the file line by line."""
        text = self.source.text
        starts = [0, *(index + 1 for index, letter in enumerate(text) if letter == "\n")]
        tokens: list[list[Token]] = [[] for _ in starts]
        comments = [""] * len(starts)
        row = 0
        for token in self.taken:
            while row + 1 < len(starts) and starts[row + 1] <= token.start:
                row += 1
            tokens[row].append(token)
        row = 0
        for start, end in self.comments:
            while row + 1 < len(starts) and starts[row + 1] <= start:
                row += 1
            comments[row] = _tidy_comment(text[start:end])
        return [Line(tuple(words), comment) for words, comment in zip(tokens, comments, strict=True)]


def _tidy_comment(text: str) -> str:
    said = " ".join(text[1:].split())
    return f"# {said}" if said else "#"


EMPTY = Line((), "")


def _without_idle_blanks(lines: list[Line]) -> list[Line]:
    """Leave out empty lines at both ends, after each other, after the beginning of a group and before its end."""
    kept: list[Line] = []
    idle = False
    for line in lines:
        if line == EMPTY:
            idle = True
            continue
        if idle and kept and not _opens(kept[-1]) and not _closes(line):
            kept.append(EMPTY)
        kept.append(line)
        idle = False
    return kept


def _opens(line: Line) -> bool:
    return bool(line.tokens) and line.tokens[0].kind in GROUP_KINDS


def _closes(line: Line) -> bool:
    return bool(line.tokens) and line.tokens[0].kind == "END"


GROUP_KINDS = frozenset(word.upper() for word in GROUPS)


def _indented(lines: list[Line]) -> list[str]:
    laid: list[str] = []
    open_groups: list[str] = []
    index = 0
    while index < len(lines):
        line = lines[index]
        if _closes(line):
            open_groups.pop()
        indent = "  " * len(open_groups)
        stretch = [line]
        if open_groups and open_groups[-1] == "ROWS":
            stretch = _stretch(lines, index, lambda inner: not _closes(inner))
            texts = _rows(stretch)
        elif _is_fabric(line):
            stretch = _stretch(lines, index, _is_fabric)
            texts = fabric_columns([inner.tokens for inner in stretch])
        else:
            texts = [spaced(line.tokens)]
            if _opens(line):
                open_groups.append(line.tokens[0].kind)
        laid += [_with_comment(indent, text, inner) for text, inner in zip(texts, stretch, strict=True)]
        index += len(stretch)
    return laid


def _is_fabric(line: Line) -> bool:
    return bool(line.tokens) and line.tokens[0].kind == "FABRIC"


def _stretch(lines: list[Line], index: int, belongs: Callable[[Line], bool]) -> list[Line]:
    """Return the lines from an index on, as long as they belong."""
    return list(takewhile(belongs, lines[index:]))


def _rows(lines: list[Line]) -> list[str]:
    """Return rows with their cells in columns."""
    table = [cells_of(line.tokens) for line in lines]
    widths: list[int] = []
    for cells in table:
        widths += [0] * (len(cells) - len(widths))
        for column, cell in enumerate(cells):
            widths[column] = max(widths[column], len(cell))
    return [" ".join(cell.ljust(width) for cell, width in zip(cells, widths, strict=False)).rstrip() for cells in table]


def _with_comment(indent: str, text: str, line: Line) -> str:
    gap = "  " if text and line.comment else ""
    return f"{indent}{text}{gap}{line.comment}".rstrip()
