"""Break text into words, numbers, texts and signs."""

import re
from typing import NamedTuple

#: Words that hold sentences together; nothing may be named by one of them.
RESERVED = frozenset(
    "about across along and arc as at between by end from meets of striped through to toward where with".split()
)
#: Words that arithmetic knows already.
KNOWN_VALUES = frozenset("size width height sqrt sin cos tan".split())

SCANNER = re.compile(
    r"""
    [ \t\r\f]*
    (?: (?P<NAME>[^\W\d_]\w*(?:-\w+)*(?:\.\w+(?:-\w+)*)*)
      | (?P<_NL>\n)
      | (?P<BAD>\d+-\d+/\d+ | \d[\d.]*\.[\d.]*\.[\d.]* | ["“”][^"“”\n]*(?=\n|\Z))
      | (?P<NUMBER>\d+[ \t]+\d+/\d+(?![\d.]) | \d+/\d+(?![\d.]) | \d*[ \t]?[¼½¾⅓⅔⅛⅜⅝⅞] | \d+(?:\.\d+)? | \.\d+)
      | (?P<STRING>["“”][^"“”\n]*["“”])
      | (?P<HASH>\#[0-9A-Za-z]*)
      | (?P<SIGN>[-+*/\\=(),.°])
      | (?P<STRANGE>[^\n])
      | (?P<FINISH>\Z)
    )
    """,
    re.VERBOSE,
)


class Token(NamedTuple):
    """One word or sign: `kind` is the terminal it counts as, as far as that is known from the text alone."""

    kind: str
    text: str
    start: int
    end: int


def comment_end(text: str, start: int) -> int:
    """Return where a comment stops: at its line's end."""
    end = text.find("\n", start)
    return len(text) if end < 0 else end
