"""Text to syntax tree: the driver of the automaton, which goes on after a line that it cannot understand."""

from dataclasses import dataclass
from typing import Any

from blocklang.diagnostics import Diagnostic, SourceText
from blocklang.language.scanning import RESERVED, SCANNER, Token, comment_end
from blocklang.language.syntax import BlockFile, Word
from blocklang.language.table import ABSENT, Rule, Table, load_table
from blocklang.language.tree_building import BUILDERS
from blocklang.limits import DEEPEST_GROUPS, LONGEST_NAME, LONGEST_NUMBER, LONGEST_TEXT, MOST_MESSAGES, MOST_WORDS

GROUPS = frozenset(("turn", "mirror", "rows", "cut"))
FINISH = "$END"
#: Kinds of token that can be wrong by themselves.
FAULTY = frozenset(("NAME", "NUMBER", "STRING", "COLOUR", "BAD", "STRANGE"))
LONGEST = {"NAME": LONGEST_NAME, "NUMBER": LONGEST_NUMBER, "STRING": LONGEST_TEXT + 2, "COLOUR": LONGEST_NAME}


@dataclass(frozen=True, slots=True)
class Parsed:
    """A syntax tree; `tree` is None when a line could not be understood."""

    tree: BlockFile | None
    diagnostics: tuple[Diagnostic, ...]


def parse(source: SourceText) -> Parsed:
    """Return the syntax tree of a block file, or everything that cannot be understood in it."""
    parser = Parser(source, load_table())
    items = parser.run()
    if parser.diagnostics:
        return Parsed(None, tuple(parser.diagnostics))
    return Parsed(BlockFile(items, source), ())


class OpenGroup:
    """A group that has begun: `understood` is false when its first line was not."""

    __slots__ = ("first", "understood")

    def __init__(self, first: Token) -> None:
        """Begin a group at its first word."""
        self.first = first
        self.understood = True


class Parser:
    """The automaton at work on one text.

    States, values and where each value starts are kept on parallel stacks. When a line cannot be understood,
    the stacks go back to where they stood before it, and the parser goes on with the next line.
    """

    def __init__(self, source: SourceText, table: Table) -> None:
        """Stand at the beginning of the text."""
        self.source = source
        self.table = table
        self.states: list[int] = [table.start]
        self.values: list[Any] = []
        self.starts: list[int] = []
        self.end = 0
        self.diagnostics: list[Diagnostic] = []
        self.groups: list[OpenGroup] = []
        self.line: list[Token] = []
        self.height = 1
        self.position = 0
        self.gave_up = False

    def run(self) -> tuple[Any, ...]:
        """Parse the whole text; the result is only good when there are no diagnostics."""
        words = 0
        while not self.gave_up:
            token = self._next()
            words += 1
            if words > MOST_WORDS:
                from blocklang.language.mistakes import too_many_words

                self._report(too_many_words(self.source, token))
                self.gave_up = True
            if token.kind == "FINISH":
                break
            if not self.line:
                if token.kind == "_NL":
                    continue
                if self._passed_over(token):
                    continue
            self._take(token)
        return self._finished()

    def _next(self) -> Token:
        """Return the next token, with comments left out."""
        text = self.source.text
        while True:
            match = SCANNER.match(text, self.position)
            assert match is not None and match.lastgroup is not None, "every character is at least strange"
            kind = match.lastgroup
            start, end = match.span(kind)
            if kind != "HASH" or (end > start + 1 and "COLOUR" in self.table.moves(self.states[-1])):
                self.position = end
                return Token(kind, match[kind], start, end)
            self.position = comment_end(text, start)
            self.pass_comment(start, self.position)

    def pass_comment(self, start: int, end: int) -> None:
        """Take note of a comment; only the formatter has a use for it."""

    def _take(self, token: Token) -> None:
        kind = self._kind(token)
        if len(self.line) == 0:
            self.height = len(self.states)
        self.line.append(token)
        fault = self._fault(kind, token) if kind in FAULTY else None
        if fault is not None or not self._feed(kind, token):
            self._recover(kind, token, fault)
        elif kind == "_NL":
            self._end_line()

    def _kind(self, token: Token) -> str:
        """Return the terminal that a token counts as here: words of the language are names where only a name can stand."""
        kind = token.kind
        if kind == "NAME" or kind == "SIGN":
            word = self.table.words.get(token.text)
            if word is None:
                return kind
            moves = self.table.moves(self.states[-1])
            if kind == "SIGN" or word in moves or token.text in RESERVED or "NAME" not in moves:
                return word
        elif kind == "HASH":
            return "COLOUR"
        return kind

    def _fault(self, kind: str, token: Token) -> Diagnostic | None:
        """Return what is wrong with a token by itself."""
        if kind in ("BAD", "STRANGE") or len(token.text) > LONGEST.get(kind, 1_000_000):
            from blocklang.language.mistakes import odd_token

            return odd_token(self.source, kind, token)
        if kind == "STRING" and not token.text.isprintable():
            from blocklang.language.mistakes import unprintable

            return unprintable(self.source, token)
        divided = kind == "NUMBER" and "/" in token.text and " " not in token.text and len(self.line) > 1
        if divided and self.line[-2].text in ("/", "sqrt", "sin", "cos", "tan"):
            from blocklang.language.mistakes import ambiguous_fraction

            return ambiguous_fraction(self.source, self.line[-2], token)
        return None

    def _feed(self, kind: str, token: Token) -> bool:
        """Shift a token after the reductions that it allows; say whether it may stand here."""
        states, values, starts, table = self.states, self.values, self.starts, self.table
        rows, rules = table.rows, table.rules
        while True:
            move = (rows[states[-1]] or table.moves(states[-1])).get(kind)
            if move is None:
                return False
            if move >= 0:
                _, text, start, end = token
                states.append(move)
                values.append(Word(text[1:-1] if kind == "STRING" else text, start, end))
                starts.append(start)
                self.end = end
                return True
            rule = rules[~move] or table.rule(~move)
            if rule.passes == 0 and rule.length == 1:
                states[-1] = (rows[states[-2]] or table.moves(states[-2]))[rule.origin]
            elif rule.grows:
                # One more part for a list leads back to the state that the list is in already.
                values[-2].append(values[-1])
                del states[-1], values[-1], starts[-1]
            else:
                self._reduce(rule)
            if len(states) < self.height and len(self.line) == 1:
                self.height = len(states)

    def _reduce(self, rule: Rule) -> None:
        """Make one of the last parts on the stacks; they end where the last token that was shifted ends."""
        states, values, starts, size = self.states, self.values, self.starts, rule.length
        if size == 0:
            values.append(_made(rule, [], self.end, self.end))
            starts.append(self.end)
        else:
            values[-size:] = (_made(rule, values[-size:], starts[-size], self.end),)
            if size > 1:
                del starts[1 - size :]
            del states[-size:]
        states.append(self.table.moves(states[-1])[rule.origin])

    def _end_line(self) -> None:
        first = self.line[0]
        if first.text in GROUPS and not self._in_grid():
            self.groups.append(OpenGroup(first))
            if len(self.groups) > DEEPEST_GROUPS:
                from blocklang.language.mistakes import too_deep

                self._report(too_deep(self.source, first))
                self.gave_up = True
        elif first.text == "end":
            self.groups.pop()
        self.line = []

    def _in_grid(self) -> bool:
        """Say whether the innermost group holds cells or cuts, where no other group can begin."""
        return bool(self.groups) and self.groups[-1].first.text in ("rows", "cut")

    def _passed_over(self, token: Token) -> bool:
        """Say whether a line belongs to a group that was not understood, or ends it, and pass over it."""
        inner = self.groups[-1] if self.groups else None
        if token.text == "end":
            if inner is None:
                from blocklang.language.mistakes import end_too_many

                self._report(end_too_many(self.source, token))
            elif inner.understood:
                return False
            else:
                self.groups.pop()
        elif inner is None or inner.understood or not self._in_grid():
            return False
        self.position = comment_end(self.source.text, token.start)
        return True

    def _recover(self, kind: str, token: Token, fault: Diagnostic | None) -> None:
        """Report a line that is not understood and go on with the next one."""
        first = self.line[0]
        if fault is None:
            from blocklang.language.mistakes import unexpected

            inner = self.groups[-1].first.text if self.groups else ""
            fault = unexpected(self.source, self.line, kind, self._allowed(), inner)
        self._report(fault)
        if kind != "_NL":
            self.position = comment_end(self.source.text, token.start)
        if first.text == "end" and len(self.line) > 1:
            self.line = [first]
            return
        excess = len(self.states) - self.height
        if excess > 0:
            del self.states[-excess:], self.values[-excess:], self.starts[-excess:]
        if first.text in GROUPS and not self._in_grid():
            self.groups.append(OpenGroup(first))
            self.groups[-1].understood = False
        self.line = []

    def _allowed(self) -> set[str]:
        """Return the terminals that may really stand here: a shared state lists some that a later reduction refuses."""
        listed = self.table.moves(self.states[-1])
        return {symbol for symbol in listed if symbol.isupper() and self._fits(symbol)}

    def _fits(self, symbol: str) -> bool:
        states = list(self.states)
        while True:
            move = self.table.moves(states[-1]).get(symbol)
            if move is None or move >= 0:
                return move is not None
            rule = self.table.rule(~move)
            if rule.length:
                del states[-rule.length :]
            states.append(self.table.moves(states[-1])[rule.origin])

    def _report(self, diagnostic: Diagnostic) -> None:
        if len(self.diagnostics) < MOST_MESSAGES:
            self.diagnostics.append(diagnostic)
        else:
            self.gave_up = True

    def _finished(self) -> tuple[Any, ...]:
        """Close the last line, see that no group is left open, and return the items of the file."""
        end = len(self.source.text)
        if self.line and not self.gave_up:
            self._take(Token("_NL", "\n", end, end))
        if not self.gave_up:
            for group in self.groups:
                if group.understood:
                    from blocklang.language.mistakes import unclosed

                    self._report(unclosed(self.source, group.first))
        if self.diagnostics:
            return ()
        self.height = len(self.states)
        while self.states[-1] != self.table.end:
            move = self.table.moves(self.states[-1])[FINISH]
            self._reduce(self.table.rule(~move))
        return tuple(self.values[-1])


def _made(rule: Rule, parts: list[Any], start: int, end: int) -> Any:
    """Build what a rule stands for from its parts; helper rules gather their parts in one list."""
    if rule.passes >= 0:
        return parts[rule.passes]
    kept: list[Any] = []
    for index, spread in rule.kept:
        if index == ABSENT:
            kept.append(None)
        elif not spread:
            kept.append(parts[index])
        elif rule.helps and not kept:
            kept = parts[index]  # a growing list is handed on, not copied, so that long files stay linear
        else:
            kept.extend(parts[index])
    return kept if rule.helps else BUILDERS[rule.name](kept, start, end)
