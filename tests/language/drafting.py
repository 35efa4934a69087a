"""Draft syntax trees at random."""

from hypothesis import strategies as st

from blocklang.language.scanning import KNOWN_VALUES, RESERVED
from blocklang.language.syntax import (
    AddLine,
    AllowanceLine,
    CellText,
    CountsLine,
    CutLine,
    Cutting,
    FabricLine,
    Heading,
    LetLine,
    Material,
    Mirror,
    Number,
    Operation,
    OutlineLine,
    PatchLine,
    Piece,
    PlaceLine,
    PointLine,
    RectangleLine,
    Rounds,
    Row,
    Rows,
    SizeLine,
    Spot,
    Step,
    Swap,
    Turn,
    WishLine,
    Word,
)

OFTEN = "a b c fog deep navy-blue wing.2 r1c2.1 m.1.2 öl _".split()[:-1]
#: Words of the language in places where only a name can stand are names; here they would be keywords.
KEPT = RESERVED | KNOWN_VALUES | {"block", "patches", "first", "allowance", "away", "turn", "in", "open", "not"}
KEPT |= {"clockwise", "counterclockwise", "via", "rows", "columns", "mirrored", "toward"}

NAMES = (st.sampled_from(OFTEN) | st.from_regex(r"[a-z][a-z0-9_]{0,6}(-[a-z0-9]{1,3})?", fullmatch=True)).filter(
    lambda name: name not in KEPT
)
TEXTS = st.text(st.characters(categories=("L", "N", "P", "Zs"), exclude_characters='"“”\n'), min_size=1, max_size=12).filter(
    str.isprintable
)  # fmt: skip
NUMBERS = st.sampled_from(["0", "1", "12", "3 1/2", "1/4", "12.5", ".75"])


Expression = Word | Number | Operation


def word(texts: st.SearchStrategy[str]) -> st.SearchStrategy[Word]:
    """Draft a word."""
    return texts.map(lambda text: Word(text, 0, 0))


def operation(verbs: list[str], count: int, parts: st.SearchStrategy[Expression]) -> st.SearchStrategy[Operation]:
    """Draft arithmetic on a number of parts."""
    return st.builds(
        lambda verb, inner: Operation(verb, tuple(inner), 1, 0, 0),
        st.sampled_from(verbs),
        st.lists(parts, min_size=count, max_size=count),
    )


NAME, NUMBER, TEXT = word(NAMES), word(NUMBERS), word(TEXTS)
LEAVES: st.SearchStrategy[Expression] = (
    NAME | NUMBERS.map(lambda text: Number(text, 0, 0)) | operation(["width", "height"], 0, st.nothing())
)
EXPRESSION = st.recursive(
    LEAVES,
    lambda inner: (
        operation(["+", "-", "*", "/"], 2, inner)
        | operation(["negative", "sqrt", "sin", "cos", "tan", "in", "cm", "mm", "deg"], 1, inner)
    ),
    max_leaves=5,
)


def several(strategy: st.SearchStrategy, least: int, most: int) -> st.SearchStrategy[tuple]:  # type: ignore[type-arg]
    """Draft a tuple."""
    return st.lists(strategy, min_size=least, max_size=most).map(tuple)


def spot(verb: str, points: int, amounts: int) -> st.SearchStrategy[Spot]:
    """Draft where a point lies."""
    return st.builds(
        Spot, st.just(verb), several(NAME, points, points), several(EXPRESSION, amounts, amounts), ZERO, ZERO
    )


ZERO = st.just(0)
PLACE = spot("at", 0, 2) | spot("point", 1, 0)
SPOT = (
    PLACE
    | spot("from", 1, 2)
    | spot("along", 2, 1)
    | spot("between", 2, 0)
    | spot("between", 2, 1)
    | spot("meeting", 4, 0)
)
STRAIGHT = st.builds(Step, NAME, st.just(""), st.none(), ZERO, ZERO)
STEP = STRAIGHT | st.builds(Step, NAME, st.sampled_from(["via", "clockwise", "counterclockwise"]), NAME, ZERO, ZERO)
STEPS = st.builds(lambda first, rest: (first, *rest), STRAIGHT, several(STEP, 0, 4))
ROUNDS = st.builds(Rounds, NUMBER, NAME, ZERO, ZERO)
MATERIAL = st.builds(lambda name: Material((name,), (), 0, 0), NAME) | st.builds(
    Material, several(NAME, 1, 3), several(NAME, 2, 2), ZERO, ZERO
)
ARGUMENT = NAME | word(st.sampled_from(["1", "3/4"]))
CELL = (
    st.builds(lambda verb, words: CellText(verb, words, 0, 0), st.just("square"), several(NAME, 1, 1))
    | st.builds(lambda verb, words: CellText(verb, words, 0, 0), st.sampled_from(["rising", "falling"]), several(NAME, 2, 2))
    | st.builds(lambda maker, words: CellText("made", (maker, *words), 0, 0), NAME, several(ARGUMENT, 1, 4).filter(lambda words: all(not (a.text == "1" and b.text == "3/4") for a, b in zip(words, words[1:], strict=False))))
    | st.builds(lambda block, turn: CellText("placed", (block, *turn), 0, 0), TEXT, several(word(st.just("90")), 0, 1))
    | st.just(CellText("empty", (), 0, 0))
)  # fmt: skip
ROW = st.builds(Row, several(CELL, 1, 4), ZERO, ZERO)
SHARES = st.just(((), ())) | st.tuples(several(NUMBER, 1, 3), several(NUMBER, 1, 3))
ROWS = st.builds(
    lambda name, field, shares, rows: Rows(name, field, shares[0], shares[1], rows, 0, 0),
    st.none() | NAME, st.just(()) | several(NAME, 2, 3), SHARES, several(ROW, 0, 3),
)  # fmt: skip
CUT = (
    st.builds(CutLine, st.just(False), several(NAME, 2, 2), ZERO, ZERO)
    | st.builds(CutLine, st.just(True), several(NAME, 1, 4), ZERO, ZERO)
    | st.builds(Piece, NAME, MATERIAL, several(NAME, 1, 3), ZERO, ZERO)
)
CUTTING = st.builds(Cutting, st.just(()) | STEPS, several(CUT, 0, 4), ZERO, ZERO)


def wish(verb: str, least: int, most: int, *last: str) -> st.SearchStrategy[WishLine]:
    """Draft a wish, whose last name may be a word of the language."""
    names = several(NAME, least, most)
    if last:
        names = st.builds(lambda before, after: (*before, after), names, word(st.sampled_from(last)))
    return st.builds(WishLine, st.just(verb), names, ZERO, ZERO)


WISH = st.one_of(
    wish("stop", 3, 3), wish("set in", 2, 4), wish("first", 2, 4), wish("sew in", 0, 0, "rows", "columns"),
    wish("partial", 2, 2), wish("press away", 1, 1), wish("press toward", 1, 1), wish("press open", 2, 2),
    wish("press", 3, 3), wish("spin", 1, 1, "clockwise", "counterclockwise", "not"),
)  # fmt: skip
COLOUR = word(st.sampled_from(["#1f3a5f", "#abc"]))
HEADING = st.builds(
    lambda verb, text: Heading(verb, text, 0, 0), st.sampled_from(["block", "note", "by", "source"]), TEXT
) | st.builds(lambda text: Heading("family", text, 0, 0), NAME)
STATEMENT = st.one_of(
    HEADING,
    several(HEADING, 2, 3),
    st.builds(SizeLine, EXPRESSION, st.none() | EXPRESSION, ZERO, ZERO),
    st.builds(AllowanceLine, EXPRESSION, ZERO, ZERO),
    st.builds(FabricLine, NAME, st.none() | NAME, NAME, NAME, COLOUR, st.none() | NAME, st.none() | TEXT, ZERO, ZERO),
    st.builds(LetLine, NAME, EXPRESSION, ZERO, ZERO),
    st.builds(PointLine, NAME, SPOT, ZERO, ZERO),
    st.builds(OutlineLine, st.just(()) | STEPS, ZERO, ZERO),
    st.builds(PatchLine, NAME, MATERIAL, STEPS, st.none() | ROUNDS, ZERO, ZERO),
    st.builds(CountsLine, NUMBER, NUMBER, ZERO, ZERO),
    st.builds(AddLine, NAME, several(NAME, 1, 3), several(NAME, 1, 3), EXPRESSION, ZERO, ZERO),
    st.builds(RectangleLine, NAME, MATERIAL, PLACE, EXPRESSION, st.none() | EXPRESSION, ZERO, ZERO),
    st.builds(
        PlaceLine, TEXT, NAME, PLACE, several(EXPRESSION, 0, 1), several(EXPRESSION, 0, 1), st.booleans(),
        several(st.builds(Swap, NAME, NAME, ZERO, ZERO), 0, 2), ZERO, ZERO,
    ),
    WISH,
    ROWS,
    CUTTING,
)  # fmt: skip
ITEMS = st.recursive(
    several(STATEMENT, 0, 3),
    lambda inner: several(
        STATEMENT
        | st.builds(Turn, word(st.just("8")), NAME, st.none() | EXPRESSION, inner, ZERO, ZERO)
        | st.builds(Mirror, several(NAME, 2, 2), inner, ZERO, ZERO),
        0, 3,
    ),
    max_leaves=4,
)  # fmt: skip
