"""Block files drafted from decisions: mostly sound ones, derivations of the grammar, and library files with changes."""

from functools import cache
from pathlib import Path

from lark import Lark
from lark.grammar import NonTerminal
from lark.lexer import PatternStr

import blocklang.language
from blocklang.diagnostics import SourceText
from blocklang.extensions import cells, load_plugins
from blocklang.language import Cell, evaluate, parse
from tests.fuzz.choices import Choices

LIBRARY = Path(__file__).parents[2] / "blocks"
FABRICS = "fog deep coral F D C".split()
POINTS = "sw se ne nw s e n w centre c d p.1 m r1c1 zz".split()
PATCHES = "p q r r1c1 r1c2 r2c1 r2c2 r1c1.1 r1c1.2 p.1 p.2 q.1 s.1 top zz".split()
NUMBERS = [
    *"0 1 2 3 4 6 8 12 1/2 1/3 3/4 1.5 12.5 ¼ 2½ 90 45 30 360 361 1000 999999999 0.0001 .5 1/0 22.5".split(),
    "3 1/2",
]
CELLS = "goose-up goose-left goose-down goose-right pie-sw pie-se pie-ne pie-nw bars-across bars-upright quarters square-in-square snowball rails-across rails-upright nosuch".split()
PLACED = "nine-patch pinwheel flying-geese half-square-triangle ohio-star nosuch ../nosuch.block".split()
TEXTS = ["sea", "", "a" * 60, "</svg><script>", "=cmd()", "#eval(1)", "\\", "é", "e\u0301", "💙", "{{x}}", "&amp;"]
COLOURS = "#1f3a5f #abc #e8eef2 #000000 #12 #ggg #1f3a5f00".split()
MOST_ROUNDS = 40  # statements of one drafted file


def drafted(choices: Choices) -> str:
    """Return a block file."""
    kind = choices.below(4)
    if kind == 0:
        return mended(choices, choices.one_of(library_texts()))
    if kind == 1:
        return HEADING + derived(choices, "file")
    return sound(choices)


HEADING = """block "Harbour Light"
language 1
size 6 in
fabric fog as F background light #e8eef2
fabric deep as D accent dark #1f3a5f
fabric coral as C accent medium #d9643a
"""


@cache
def library_texts() -> list[str]:
    """Return the smaller files of the library."""
    texts = [path.read_text(encoding="utf-8") for path in sorted(LIBRARY.rglob("*.block"))]
    return [text for text in texts if len(text) < 1500 and "place " not in text]


# ---- files that are mostly sound


def sound(choices: Choices) -> str:
    """Return a file that says what a person might: patches in one of several ways, then wishes about them."""
    head = HEADING
    if choices.yes(3):
        head = head.replace(
            "6 in", choices.one_of(["6 cm", "3 in by 6", "1/4 in", "1000 in", "0.3 in", "40 mm", "12½ in", "7"])
        )
    if choices.yes(2):
        head += f'by "{choices.one_of(TEXTS)}" licence "{choices.one_of(TEXTS)}" source "{choices.one_of(TEXTS)}"\n'
    if choices.yes(2):
        head += f"seam allowance {choices.one_of(['1/4 in', '1 cm', '0', '3/8', '3 in', '1/8'])}\n"
    if choices.yes(2):
        head += f'fabric print p {choices.one_of(["light", "dark"])} {choices.one_of(COLOURS)} {choices.one_of(["solid", "directional", "batik"])} "{choices.one_of(TEXTS)}"\n'
    body = choices.one_of([_grid, _grid, _grid, _rectangles, _spokes, _slices, _nested])(choices)
    if not choices.yes(8):
        return head + body
    patches = drawn_in(head + body) if choices.yes(14) else []
    return head + body + "".join(_wish(choices, patches or PATCHES) for _ in range(1 + choices.below(3)))


def drawn_in(text: str) -> list[str]:
    """Return the ids of the patches that a file draws, so that wishes can be about them."""
    tree = parse(SourceText("drafted", text)).tree
    block = None if tree is None else evaluate(tree, more_cells=more_cells).block
    return [] if block is None else [patch.id for patch in block.patches]


@cache
def more_cells() -> tuple[Cell, ...]:
    """Return the cells of the plugins, loaded once."""
    return cells(load_plugins()).items


def _grid(choices: Choices) -> str:
    columns = 1 + choices.below(5)
    rows = 1 + choices.below(5) if choices.yes(4) else columns
    shares = ""
    if choices.yes(2):
        shares = f" {' '.join(choices.one_of(['1', '2', '1/2', '3']) for _ in range(columns))} by {' '.join(choices.one_of(['1', '2']) for _ in range(rows))}"
    lines = [" ".join(_cell(choices) for _ in range(columns)) for _ in range(rows)]
    return f"rows{shares}\n" + "".join(f"  {line}\n" for line in lines) + "end\n"


def _cell(choices: Choices) -> str:
    kind = choices.below(10)
    a, b, c, d = (
        [choices.one_of(FABRICS[3:]) for _ in range(4 if kind > 6 else 2)] * 2
        if kind <= 6
        else [choices.one_of(FABRICS[3:]) for _ in range(4)]
    )
    if kind < 5:
        return a
    if kind == 5:
        return f"{a}/{b}"
    if kind == 6:
        return f"{a}\\{b}"
    if kind == 7:
        return f"{choices.one_of(CELLS[:-5])}({a} {b})"
    if kind == 8:
        return f"quarters({a} {b} {c} {d})"
    return choices.one_of(
        [
            '"nine-patch"',
            '"pinwheel" turn 90',
            f"{choices.one_of(CELLS)}({a} {b} {c})",
            ".",
            "square-in-square(F D)",
            "snowball(F D)",
            "pie-sw(F D 1/2)",
        ]
    )


def _rectangles(choices: Choices) -> str:
    """Cut the block in two again and again, each part written as a rectangle."""
    parts = [(0, 0, 24, 24)]
    for _ in range(choices.below(8)):
        x, y, w, h = parts.pop(choices.below(len(parts)))
        across, at = choices.yes(8), 1 + choices.below(3)
        if across:
            parts += [(x, y, w * at // 4, h), (x + w * at // 4, y, w - w * at // 4, h)]
        else:
            parts += [(x, y, w, h * at // 4), (x, y + h * at // 4, w, h - h * at // 4)]
    names = "pqrstuvwxyz"
    lines = [
        f"patch {names[n]} of {choices.one_of(FABRICS)} at size * {x}/24, height * {y}/24 size size * {w}/24 by height * {h}/24\n"
        for n, (x, y, w, h) in enumerate(parts)
    ]
    return "".join(lines).replace("* 0/24", "* 0")


def _spokes(choices: Choices) -> str:
    """Turn patches about the middle, the way stars are drafted."""
    count = choices.one_of([8, 4, 6, 2, 3, 5, 12])
    reach = choices.one_of(["2", "size / 4", "size / (2 + sqrt 2)", "size/2", "1.5 in", "0.1"])
    ground = choices.one_of(["", "patch ground of fog through sw se ne nw\n", "outline of patches\n"])
    arc = choices.one_of(
        [" t", " t", f" arc {choices.one_of(['clockwise', 'counterclockwise'])} about c to t", " arc via u to t"]
    )
    material = choices.one_of(
        ["of deep", "of deep", "striped deep fog along c n1", "striped fog deep coral along n1 t"]
    )
    return (
        f"point c at centre\npoint n1 from c by {reach} toward 0 deg\npoint u from c by {reach} * 3/4 toward 180 deg / {count}\n"
        f"point t from c by {reach} toward 360 deg / {count}\nturn {count} about c\n"
        f"patch p {material} through c n1{arc}\nend\n{ground}"
    )


def _slices(choices: Choices) -> str:
    """Cut the block along lines between points on its sides."""
    ends = ["sw", "se", "ne", "nw", "s", "e", "n", "w"]
    cuts = ""
    for _ in range(choices.below(5)):
        one, other = choices.one_of(ends), choices.one_of(ends)
        cuts += choices.one_of([f"  along {one} {other}\n", f"  along {one} {other}\n", f"  from {one} to {other}\n"])
    shift = choices.one_of(["0", "1/10"])
    spots = "".join(
        f"point t{n} at size * {1 + 2 * (n % 3)}/6, height * {1 + 2 * (n // 3)}/6 + {shift}\n" for n in range(9)
    )
    pieces = "".join(
        f"  piece {'abcdefghi'[n]} of {choices.one_of(FABRICS)} at t{choices.below(9)} t{choices.below(9)}\n"
        for n in range(choices.below(5))
    )
    shape = choices.one_of(["block", "block", "sw se ne", "sw e nw"])
    return spots + f"cut {shape}\n{cuts}{pieces}end\n"


def _nested(choices: Choices) -> str:
    """Groups in groups, with grids and rectangles in them."""
    outer = choices.one_of(
        ["mirror across s n", "turn 4 about centre", "turn 2 about centre by 180 deg", "mirror across sw ne"]
    )
    inner = choices.one_of(
        [
            "patch p of fog at 0, 0 size size/2\n",
            "rows in sw s centre w\n F D\n D F\nend\n",
            "patch p of fog through sw s centre\npatch q of deep through sw centre w\n",
            'place "nine-patch" as b at 0, 0 size size/2\n',
            "mirror across sw centre\npatch p of fog through sw s centre\nend\n",
            "patch p of fog through sw s centre 4 times about centre\n",
        ]
    )
    return f"{outer}\n{inner}end\n" + (_grid(choices) if choices.yes(2) else "")


def _wish(choices: Choices, patches: list[str]) -> str:
    a = choices.below(len(patches))
    a, b, c = (patches[(a + choices.below(8)) % len(patches)] for _ in range(3))
    at, colour = choices.one_of(POINTS), choices.one_of(FABRICS)
    return choices.one_of([
        f"press {a} {b} toward {a}\n", f"press {a} {b} open\n", f"press away from {colour}\n", f"press toward {colour}\n",
        f"sew first {a} {b} as top\n", f"sew first {a} {b} {c} as top\n", "sew in rows\n", "sew in columns\n",
        f"partial seam {a} {b}\n", f"set in {a} between {b} {c}\n", f"seam {a} {b} stops at {at}\n",
        f"spin {at} {choices.one_of(['clockwise', 'counterclockwise', 'not'])}\n", f"add p of {colour} to n by 1/2\n",
        f"add p of {colour} {colour} to n e s w by 1 in\n", "counts 4 patches 4 seams\n", "counts 9 patches, 12 seams\n",
    ])  # fmt: skip


# ---- files that the grammar allows, whatever they mean


@cache
def _grammar() -> tuple[dict[str, list[tuple[list[str], int]]], dict[str, str]]:
    """Return the expansions of every rule (the shortest first) and the texts of the fixed words."""
    path = Path(blocklang.language.__file__).with_name("grammar.lark")
    lark = Lark(path.read_text(encoding="utf-8"), start="file", parser="lalr", maybe_placeholders=False)
    rules: dict[str, list[list[str]]] = {}
    for rule in lark.rules:
        symbols = [("!" if isinstance(s, NonTerminal) else "") + s.name for s in rule.expansion]
        rules.setdefault(rule.origin.name, []).append(symbols)
    words = {t.name: t.pattern.value for t in lark.terminals if isinstance(t.pattern, PatternStr)}
    depths: dict[str, int] = {}
    for _ in range(30):
        for name, expansions in rules.items():
            known = [[depths.get(s[1:], 99) for s in one if s[0] == "!"] for one in expansions]
            depths[name] = min(1 + max(inner, default=0) for inner in known)

    def depth(one: list[str]) -> int:
        return max((depths[s[1:]] for s in one if s[0] == "!"), default=0)

    return {
        name: sorted(((one, depth(one)) for one in many), key=lambda pair: pair[1]) for name, many in rules.items()
    }, words


def derived(choices: Choices, start: str) -> str:
    """Return a text that the grammar derives from a rule."""
    rules, words = _grammar()
    said: list[str] = []
    waiting = [("!" + start, 0)]
    while waiting:
        symbol, depth = waiting.pop()
        if symbol[0] == "!":
            expansions = rules[symbol[1:]]
            room = 14 - depth if len(said) < 400 and not choices.used_up else 0
            fitting = [one for one, least in expansions if least <= room] or [expansions[0][0]]
            waiting += [(inner, depth + (symbol[1] != "_")) for inner in reversed(choices.one_of(fitting))]
        else:
            said.append(words.get(symbol) or _word(choices, symbol))
    return " ".join(said).replace(" \n ", "\n")


def _word(choices: Choices, terminal: str) -> str:
    if terminal == "NAME":
        return choices.one_of(FABRICS + POINTS + PATCHES[:8] + CELLS + ["background", "light", "dark", "accent"])
    if terminal == "NUMBER":
        return choices.one_of(NUMBERS)
    if terminal == "STRING":
        return f'"{choices.one_of(TEXTS + PLACED)}"'
    if terminal == "COLOUR":
        return choices.one_of(COLOURS)
    return "\n"


# ---- library files with changes


def mended(choices: Choices, text: str) -> str:
    """Return a text with a few of its words or lines changed, dropped, doubled or swapped."""
    lines = text.splitlines()
    for _ in range(1 + choices.below(4)):
        here, there = choices.below(len(lines)), choices.below(len(lines))
        words = lines[here].split(" ")
        place = choices.below(len(words))
        kind = choices.below(7)
        if kind == 0:
            lines[here], lines[there] = lines[there], lines[here]
        elif kind == 1:
            lines.insert(there, lines[here])
        elif kind == 2 and len(lines) > 1:
            del lines[here]
        elif kind == 3:
            lines.insert(there, derived(choices, "statement"))
        else:
            words[place] = choices.one_of(NUMBERS + POINTS + FABRICS + PATCHES) if kind < 6 else ""
            lines[here] = " ".join(words)
    return "\n".join(lines) + "\n"
