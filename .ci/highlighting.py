"""Makes docs/highlighting/blocklang.tmLanguage.json, by which editors colour block files, or says that it is stale.

A word is a keyword only where the language takes it for one, so each statement has a rule of its own. That no word is
forgotten is what tests/highlighting is for.
"""

import json
import sys
from pathlib import Path
from typing import Any

ROOT = Path(__file__).resolve().parent.parent
GRAMMAR = ROOT / "docs" / "highlighting" / "blocklang.tmLanguage.json"
sys.path.insert(0, str(ROOT))

from blocklang.language.scanning import RESERVED  # noqa: E402

Rule = dict[str, Any]

NAME = r"[^\W\d_]\w*(?:-\w+)*(?:\.\w+(?:-\w+)*)*"
QUOTE = '["“”]'
STRING = f'{QUOTE}[^"“”]*{QUOTE}'
NUMBER = r"\d+[ \t]+\d+/\d+(?![\d.])|\d+/\d+(?![\d.])|\d*[ \t]?[¼½¾⅓⅔⅛⅜⅝⅞]|\d+(?:\.\d+)?|\.\d+"
WHOLE = r"(?!\w|[-.]\w)"  # a word ends here: `size-d` and `by.1` are names
UNIT = rf"(?:(?:in|inch|inches|cm|mm|deg){WHOLE}|°)"

HEAD = "keyword.control.statement.blocklang"
GROUP = "keyword.control.group.blocklang"
WORD = "keyword.other.blocklang"
SIGN = "keyword.operator.blocklang"
COMMA = "punctuation.separator.comma.blocklang"
REFERENCE = "variable.other.blocklang"
DECLARED = "entity.name.{}.blocklang"


def grammar() -> Rule:
    """Return the whole grammar."""
    return {
        "name": "Patchwork block",
        "scopeName": "source.blocklang",
        "fileTypes": ["block"],
        "patterns": _include("comment", "rows", *statements()),
        "repository": {**SMALL, **statements()},
    }


def _include(*names: str) -> list[Rule]:
    return [{"include": f"#{name}"} for name in names]


def _words(*words: str) -> str:
    return rf"(?:{'|'.join(words)}){WHOLE}"


def _match(pattern: str, *scopes: str) -> Rule:
    """Give the parts of a pattern, in round brackets, their scopes."""
    return {"match": pattern, "captures": {str(place): {"name": scope} for place, scope in enumerate(scopes, 1)}}


def _line(pattern: str, scopes: tuple[str, ...], *inner: str) -> Rule:
    """Return a rule for what begins a statement, and for the rest of its line."""
    captures = {str(place): {"name": scope} for place, scope in enumerate(scopes, 1)}
    begin = r"^[ \t]*" + pattern.replace(" ", r"[ \t]+").replace("NAME", f"({NAME})")
    return {"begin": begin, "beginCaptures": captures, "end": "$", "patterns": _include("comment", *inner)}


NAMES = ("joining", "reference", "comma")
STEPS = ("arc", "times", *NAMES)
VALUES = ("measure", "known-value", "function", "arithmetic", "string")

SMALL: dict[str, Rule] = {
    "comment": {"name": "comment.line.number-sign.blocklang", "match": "#.*$"},
    "string": {
        "name": "string.quoted.double.blocklang",
        "match": f'({QUOTE})[^"“”]*({QUOTE})',
        "captures": {
            "1": {"name": "punctuation.definition.string.begin.blocklang"},
            "2": {"name": "punctuation.definition.string.end.blocklang"},
        },
    },
    "joining": {"name": WORD, "match": _words(*sorted(RESERVED))},
    "reference": {"name": REFERENCE, "match": NAME},
    "comma": {"name": COMMA, "match": ","},
    "number": {"name": "constant.numeric.blocklang", "match": NUMBER},
    "measure": _match(rf"({NUMBER})(?:[ \t]*({UNIT}))?", "constant.numeric.blocklang", "keyword.other.unit.blocklang"),
    "known-value": {
        "patterns": [
            _match(rf"(size)[ \t]+(size){WHOLE}", WORD, "variable.language.blocklang"),
            _match(rf"([-+*/(=,])[ \t]*(size){WHOLE}(?![ \t]*=)", SIGN, "variable.language.blocklang"),
            _match(rf"(at|by|toward|sqrt|sin|cos|tan)[ \t]+(size){WHOLE}", WORD, "variable.language.blocklang"),
            _match(rf"(size){WHOLE}", WORD),
            {"name": "variable.language.blocklang", "match": _words("width", "height")},
        ]
    },
    "function": {"name": "support.function.arithmetic.blocklang", "match": _words("sqrt", "sin", "cos", "tan")},
    "arithmetic": {
        "patterns": [
            _match(rf"(\))[ \t]*({UNIT})", "punctuation.section.parens.blocklang", "keyword.other.unit.blocklang"),
            {"name": "punctuation.section.parens.blocklang", "match": r"[()]"},
            {"name": "keyword.operator.arithmetic.blocklang", "match": r"[-+*/]"},
            {"name": "keyword.operator.assignment.blocklang", "match": "="},
        ]
    },
    "arc": _match(rf"(arc)[ \t]+(clockwise|counterclockwise|not|via){WHOLE}", WORD, WORD),
    "times": _match(rf"({NUMBER})[ \t]+(times){WHOLE}", "constant.numeric.blocklang", WORD),
    "through": {
        "begin": rf"(through){WHOLE}",
        "beginCaptures": {"1": {"name": WORD}},
        "end": "$",
        "patterns": _include("comment", *STEPS),
    },
    "swap": _match(rf"({NAME})[ \t]*(=)[ \t]*({NAME})", REFERENCE, "keyword.operator.assignment.blocklang", REFERENCE),
    "placing": {"name": WORD, "match": _words("turn", "mirrored")},
    "counted": {"name": WORD, "match": _words("patches", "patch", "seams", "seam")},
    "folder": _match(rf"(family|licence)[ \t]+({NAME})", HEAD, REFERENCE),
    "credit": {"name": HEAD, "match": _words("block", "language", "family", "by", "licence", "source", "note")},
    "print": {"name": "constant.language.print.blocklang", "match": NAME},
    "striped": {
        "begin": f"(striped){WHOLE}",
        "beginCaptures": {"1": {"name": WORD}},
        "end": f"(?=(?:through|at){WHOLE})|$",
        "patterns": _include("comment", *NAMES),
    },
    "declared-unit": _match(rf"(as)[ \t]+({NAME})", WORD, DECLARED.format("patch")),
    "opening": _match(rf"(open){WHOLE}(?=[ \t]*(?:#|$))", WORD),
    "rows": {
        "begin": r"^[ \t]*(rows)" + WHOLE + rf"(?:[ \t]+(as)[ \t]+({NAME}))?(?:[ \t]+(in){WHOLE})?",
        "beginCaptures": {
            "1": {"name": GROUP},
            "2": {"name": WORD},
            "3": {"name": DECLARED.format("patch")},
            "4": {"name": WORD},
        },
        "end": rf"^[ \t]*(end){WHOLE}",
        "endCaptures": {"1": {"name": GROUP}},
        "patterns": [
            *_include("comment"),
            _match(
                rf"({STRING})[ \t]+(turn)[ \t]+({NUMBER})",
                "string.quoted.double.blocklang",
                WORD,
                "constant.numeric.blocklang",
            ),
            *_include("string", "number", "joining"),
            _match(rf"({NAME})(?=[ \t]*\()", "support.function.cell.blocklang"),
            *_include("reference", "comma"),
            {"name": "punctuation.section.parens.blocklang", "match": r"[()]"},
            {"name": "keyword.operator.cell.blocklang", "match": r"[/\\]"},
            {"name": "constant.language.empty.blocklang", "match": r"\."},
        ],
    },
}


def statements() -> dict[str, Rule]:
    """Return the rules for everything that can begin a line, but `rows`."""
    heading = "block|language|family|by|licence|source|note"
    return {
        "heading": {
            "begin": rf"^(?=[ \t]*(?:{heading}){WHOLE})",
            "end": "$",
            "patterns": _include("comment", "string", "folder", "credit", "number", "reference"),
        },
        "size": _line(f"(size){WHOLE}", (HEAD,), *VALUES, *NAMES),
        "outline-of-patches": _line(f"(outline) (of) (patches){WHOLE}", (HEAD, WORD, WORD)),
        "outline": _line(f"(outline){WHOLE}", (HEAD,), *STEPS),
        "allowance": _line(f"(seam) (allowance){WHOLE}", (HEAD, WORD), *VALUES, *NAMES),
        "counts": _line(f"(counts){WHOLE}", (HEAD,), "number", "counted", *NAMES),
        "fabric": fabric(),
        "let": _line("(let) NAME", ("storage.type.blocklang", DECLARED.format("value")), *VALUES, *NAMES),
        "point": _line("(point) NAME", ("storage.type.blocklang", DECLARED.format("point")), *VALUES, *NAMES),
        "patch": _line(
            "(patch) NAME(?: (of) NAME)?",
            ("storage.type.blocklang", DECLARED.format("patch"), WORD, REFERENCE),
            "through",
            "striped",
            *VALUES,
            *NAMES,
        ),
        "add": _line("(add) NAME", ("storage.type.blocklang", DECLARED.format("patch")), *VALUES, *NAMES),
        "place": _line(
            f"(place) ({STRING}) (as) NAME",
            ("storage.type.blocklang", "string.quoted.double.blocklang", WORD, DECLARED.format("patch")),
            "swap",
            "placing",
            *VALUES,
            *NAMES,
        ),
        "stop": _line(
            f"(seam) NAME[ \\t]*(?:(,)|(and){WHOLE})?[ \\t]*NAME (stops) (at)",
            (HEAD, REFERENCE, COMMA, WORD, REFERENCE, WORD, WORD),
            *NAMES,
        ),
        "set-in": _line("(set) (in) NAME", (HEAD, WORD, REFERENCE), *NAMES),
        "sew-in": _line(f"(sew) (in) (rows|columns){WHOLE}", (HEAD, WORD, WORD)),
        "sew-first": _line(f"(sew) (first){WHOLE}", (HEAD, WORD), "declared-unit", *NAMES),
        "partial": _line(f"(partial) (seam){WHOLE}", (HEAD, WORD), *NAMES),
        "press-all": _line("(press) (?:(away) (from)|(toward)) NAME", (HEAD, WORD, WORD, WORD, REFERENCE)),
        "press": _line(f"(press){WHOLE}", (HEAD,), "opening", *NAMES),
        "spin": _line(f"(spin) NAME (clockwise|counterclockwise|not){WHOLE}", (HEAD, REFERENCE, WORD)),
        "turn": _line(f"(turn){WHOLE}", (GROUP,), *VALUES, *NAMES),
        "mirror": _line(f"(mirror) (across){WHOLE}", (GROUP, WORD), *NAMES),
        "cut-block": _line(f"(cut) (block){WHOLE}", (GROUP, WORD)),
        "cut": _line(f"(cut){WHOLE}", (GROUP,), *STEPS),
        "cut-line": _line(f"(along|from){WHOLE}", (HEAD,), *NAMES),
        "piece": _line("(piece) NAME", ("storage.type.blocklang", DECLARED.format("patch")), *NAMES),
        "end": _line(f"(end){WHOLE}", (GROUP,)),
    }


def fabric() -> Rule:
    """Return the rule for a fabric: the one line where a `#` begins a colour."""
    return _line(
        r"(fabric) NAME(?: (as) NAME)? NAME NAME(?:[ \t]*(#[0-9A-Za-z]+))?",
        (
            "storage.type.blocklang",
            DECLARED.format("fabric"),
            WORD,
            DECLARED.format("fabric"),
            "variable.other.role.blocklang",
            "constant.language.value.blocklang",
            "constant.other.color.blocklang",
        ),
        "string",
        "print",
    )


def text() -> str:
    """Return the grammar as the file has it."""
    return json.dumps(grammar(), indent=1, ensure_ascii=False) + "\n"


if __name__ == "__main__":
    if "--write" in sys.argv:
        GRAMMAR.write_text(text(), encoding="utf-8")
    elif GRAMMAR.read_text(encoding="utf-8") != text():
        sys.exit("The highlighting is stale (python3 .ci/highlighting.py --write).")
