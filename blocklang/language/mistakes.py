"""Word the mistakes of spelling and order that a file can hold; loaded only when there is one."""

from blocklang.diagnostics import Diagnostic, Related, Severity, SourceText, Span
from blocklang.language.scanning import RESERVED, Token
from blocklang.language.suggesting import did_you_mean
from blocklang.limits import DEEPEST_GROUPS, LONGEST_NAME, LONGEST_NUMBER, LONGEST_TEXT, MOST_WORDS

#: How each line is written, by its first words.
USAGE = {
    "block": 'block "Harbour Light"',
    "language": "language 1",
    "size": "size 12 in",
    "outline": "outline a b c d",
    "family": "family stars",
    "by": 'by "Odile Fenwick" licence CC-BY-4.0',
    "licence": "licence CC-BY-4.0",
    "source": 'source "drafted from the geometry of the tradition"',
    "note": 'note "Cut the side triangles from one square, twice across."',
    "fabric": "fabric fog background light #e8eef2",
    "let": "let d = size / 4",
    "point": "point n from c by 3 in toward 45 deg",
    "patch": "patch diamond of fog through c n t m",
    "place": 'place "nine-patch" as first at 0, 6 size 6 in',
    "add": "add log of fog deep to n e s w by 1",
    "counts": "counts 17 patches and 24 seams",
    "seam allowance": "seam allowance 1/4 in",
    "seam": "seam diamond.1 diamond.2 stops at m.1",
    "set": "set in corner.1 between diamond.1 and diamond.2",
    "sew": "sew first a b c as wing",
    "partial": "partial seam bar.1 middle",
    "press": "press away from fog",
    "spin": "spin centre clockwise",
    "turn": "turn 8 about centre",
    "mirror": "mirror across p q",
    "rows": "rows",
    "cut": "cut block",
    "along": "along nw se",
    "from": "from p to q",
    "piece": "piece sky of fog at t",
    "end": "end",
}

#: The other way to write some lines, where the word `at` has been written.
USAGE_AT = {
    "point": "point c at 6, 6",
    "patch": "patch hearth of coral at 3, 3 size 4 by 2",
}

#: What each terminal is called to people; words and signs that are missing here are shown as they are written.
CALLED = {
    "NAME": "a name",
    "NUMBER": "a number",
    "STRING": "a text in quotes",
    "COLOUR": "a colour such as #1f3a5f",
    "_NL": "the end of the line",
}
SIGNS = {
    "LPAR": "`(`",
    "RPAR": "`)`",
    "STAR": "`*`",
    "PLUS": "`+`",
    "COMMA": "`,`",
    "MINUS": "`-`",
    "DOT": "`.`",
    "SLASH": "`/`",
    "EQUAL": "`=`",
    "BACKSLASH": "`\\`",
    "DEGREE": "`deg`",
}
ARITHMETIC = {"PLUS", "MINUS", "STAR", "SLASH"}
VALUES = {"NUMBER", "SQRT", "SIN", "COS", "TAN", "LPAR", "WIDTH", "HEIGHT", "SIZE"}
UNITS = {"IN", "INCH", "INCHES", "CM", "MM", "DEG", "DEGREE"}


def unexpected(source: SourceText, line: list[Token], kind: str, allowed: set[str], group: str) -> Diagnostic:
    """Say what a line holds where something else had to stand; `group` is the first word of the group it is in."""
    token, span = line[-1], _span(source, line[-1])
    if len(line) == 1:
        return _bad_beginning(token, span, group)
    before = line[-2].text
    if group in ("rows", "cut") and line[0].text in set(USAGE) - {"along", "from", "piece", "end"}:
        return _bad_beginning(line[0], _span(source, line[0]), group)
    expected = _expected(allowed)
    usage = _usage(line, group)
    if kind == "_NL":
        end = line[-2].end
        found = f"After `{before}` there should be {expected}, but the line ends."
        return _error("line-too-short", "This line stops too early", found, usage, Span(source, end, end))
    if token.text in RESERVED and "NAME" in allowed:
        found = f"`{token.text}` is a word of the language, so nothing can be named by it."
        return _error("reserved-word", "This cannot be a name", found, usage, span)
    after = source.text[token.end : token.end + 1]
    if token.text == "," and line[-2].kind == "NUMBER" and after.isdigit():
        found = f"After `{before}` a comma cannot stand here."
        return _error(
            "decimal-comma",
            "This line is not understood",
            found,
            f"Write a decimal with a point: `{before}.{after}`.",
            span,
        )
    found = f"After `{before}` there should be {expected}, but there is `{token.text}`."
    words = [word.lower() for word in allowed - set(CALLED) - set(SIGNS)]
    return _error("not-understood", "This line is not understood", found, did_you_mean(token.text, words, usage), span)


def _bad_beginning(token: Token, span: Span, group: str) -> Diagnostic:
    if group in ("rows", "cut") and token.text in USAGE:
        found = f"`{token.text}` begins a new statement, but the `{group}` above it is still open."
        return _error("end-missing", "An `end` is missing", found, "Write `end` on a line before it.", span)
    if group == "cut":
        found = f"`{token.text}` is not one of the lines of a cut."
        return _error("not-a-cut", "This line is not understood", found, "Write `along`, `from` or `piece`.", span)
    words = {name.split()[0] for name in USAGE} - {"along", "from", "piece"}
    advice = did_you_mean(token.text, words, "A line begins with a word such as `fabric`, `point`, `patch` or `rows`.")
    found = f"No line begins with `{token.text}`."
    return _error("unknown-line", "This line is not understood", found, advice, span)


def _expected(allowed: set[str]) -> str:
    """Name what may stand here, in the order of how likely it is to be meant."""
    names = []
    if allowed & VALUES:
        names.append("a length, a number or an angle")
        allowed = allowed - VALUES - {"MINUS", "NAME", "COLOUR"}
    if allowed & {"PLUS", "STAR"}:
        allowed = allowed - ARITHMETIC - {"COMMA"} | ({"COMMA"} if not {"_NL", "RPAR"} & allowed else set())
    if len(allowed & UNITS) > 2:
        allowed = allowed - UNITS
        names.append("a unit")
    if "NAME" in allowed:
        allowed = allowed - {"COMMA", "AND"}
    names += [CALLED[kind] for kind in CALLED if kind in allowed]
    names += sorted(SIGNS.get(kind, f"`{kind.lower()}`") for kind in allowed - set(CALLED) - {"$END"})
    if len(names) > 5:
        return "something else"
    return names[0] if len(names) == 1 else ", ".join(names[:-1]) + " or " + names[-1] if names else "nothing more"


def _usage(line: list[Token], group: str) -> str:
    first = line[0].text
    if group == "rows" and first != "end":
        return "A row is a list of cells, such as `fog navy/fog goose-up(fog navy) fog`."
    two = " ".join(token.text for token in line[:2])
    at = USAGE_AT.get(first, "") if any(token.text == "at" for token in line[:-1]) else ""
    usage = at or USAGE.get(two, USAGE.get(first, ""))
    return f"Write it like this: `{usage}`." if usage else ""


def odd_token(source: SourceText, kind: str, token: Token) -> Diagnostic:
    """Say what is wrong with a sign, a number, a name or a text by itself."""
    span = _span(source, token)
    if kind == "STRANGE":
        return _strange(token, span)
    if kind == "BAD" and token.text[0] in '"“”':
        found = "This text begins with a quotation mark and the line ends before the second one."
        return _error("text-not-closed", "A quotation mark is missing", found, 'Write a second `"`.', span)
    if kind == "BAD" and "/" in token.text:
        whole, _, part = token.text.partition("-")
        found = f"`{token.text}` could be {whole} and {part}, or {whole} less {part}."
        advice = f"Write `{whole} {part}` for the first, `{whole} - {part}` for the second."
        return _error("ambiguous-number", "This number can be read two ways", found, advice, span)
    if kind == "BAD":
        found = f"`{_short(token.text)}` has more than one decimal point."
        return _error("bad-number", "This is not a number", found, "Write it like `12.5`.", span)
    return _too_long(kind, token, span)


#: Signs that a word processor puts in place of those of the language.
MEANT = {"×": "*", "·": "*", "÷": "/", "−": "-", "–": "-", "—": "-", "″": "in", "′": "in"}


def _too_long(kind: str, token: Token, span: Span) -> Diagnostic:
    what, most, advice = {
        "NUMBER": ("number", LONGEST_NUMBER, "Write it with fewer digits."),
        "STRING": ("text", LONGEST_TEXT, "Say it in fewer words, or in several `note` lines."),
    }.get(kind, ("name", LONGEST_NAME, "Choose a shorter name."))
    found = f"A {what} has at most {most} characters; this one has {len(token.text) - 2 * (kind == 'STRING')}."
    return _error(f"{what}-too-long", f"This {what} is too long", found, advice, span)


def _strange(token: Token, span: Span) -> Diagnostic:
    code = ord(token.text)
    if not token.text.isprintable():
        found = f"There is a character here that cannot be seen (U+{code:04X})."
        return _error("control-character", "This line holds a hidden character", found, "Take it out.", span)
    found = f"`{token.text}` (U+{code:04X}) has no meaning in a block file."
    if token.text in MEANT:
        found = f"`{token.text}` is not a sign of the language."
        return _error("strange-character", "This character is not used", found, f"Write `{MEANT[token.text]}`.", span)
    advice = "Use `...` for a text, `#` for a remark." if token.text in "'`«»" else "Take it out."
    advice = advice.replace("`...`", 'quotation marks like `"`')
    return _error("strange-character", "This character is not used", found, advice, span)


def unprintable(source: SourceText, token: Token) -> Diagnostic:
    """Say that a text holds a character that cannot be seen."""
    index = next(index for index, letter in enumerate(token.text) if not letter.isprintable())
    place = token.start + index
    found = f"There is a character in this text that cannot be seen (U+{ord(token.text[index]):04X})."
    span = Span(source, place, place + 1)
    return _error("control-character", "This text holds a hidden character", found, "Take it out.", span)


def ambiguous_fraction(source: SourceText, before: Token, token: Token) -> Diagnostic:
    """Say that `/ 3/4` and `sqrt 3/4` can be read two ways."""
    top, _, bottom = token.text.partition("/")
    found = (
        f"`{before.text} {token.text}` could mean `({before.text} {top}) / {bottom}` or `{before.text} ({token.text})`."
    )
    if before.text == "/":
        found = f"`a / {token.text}` could mean `(a / {top}) / {bottom}` or `a / ({token.text})`."
    span = Span(source, before.start, token.end)
    return _error("ambiguous-number", "This can be read two ways", found, "Write the brackets that you mean.", span)


def too_deep(source: SourceText, first: Token) -> Diagnostic:
    """Say that groups are nested too deep."""
    found = f"Groups stand inside groups at most {DEEPEST_GROUPS} deep, and this would be one more."
    advice = "Draw the inner part as a block of its own and place it."
    return _error("too-deep", "These groups are too deep", found, advice, _span(source, first))


def too_many_words(source: SourceText, token: Token) -> Diagnostic:
    """Say that the file goes on too long."""
    found = f"A file holds at most {MOST_WORDS:,} words, numbers and signs, and this one goes on."
    advice = "Use `rows` and groups, or split it into smaller blocks and place them."
    return _error("too-many-words", "This file is too long", found, advice, _span(source, token))


def end_too_many(source: SourceText, token: Token) -> Diagnostic:
    """Say that there is an `end` without a group."""
    found = "No `turn`, `mirror`, `rows` or `cut` is open here."
    return _error("end-too-many", "There is one `end` too many", found, "Take it out.", _span(source, token))


def unclosed(source: SourceText, first: Token) -> Diagnostic:
    """Say that a group has no `end`."""
    end = len(source.text.rstrip())
    found = f"This `{first.text}` has no `end`."
    last = (Related(Span(source, end, end), "The file ends here."),)
    advice = "Write `end` on a line of its own after the last line of the group."
    span = _span(source, first)
    return Diagnostic("end-missing", Severity.ERROR, "An `end` is missing", found, advice, span, last)


def _short(text: str) -> str:
    return text if len(text) <= 20 else text[:17] + "..."


def _span(source: SourceText, token: Token) -> Span:
    return Span(source, token.start, token.end)


def _error(code: str, title: str, found: str, advice: str, span: Span) -> Diagnostic:
    return Diagnostic(code, Severity.ERROR, title, found, advice, span)
