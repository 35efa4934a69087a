"""How wide a line of text is, from a fixed table, so that no layout depends on the fonts of a machine.

The widths are those of a wide sans-serif face: text set in a common narrower one always fits.
"""

import unicodedata

#: Thousandths of the type size, for the characters 32 to 126.
_REGULAR = (
    318,
    401,
    460,
    838,
    636,
    950,
    780,
    275,
    390,
    390,
    500,
    838,
    318,
    361,
    318,
    337,
    636,
    636,
    636,
    636,
    636,
    636,
    636,
    636,
    636,
    636,
    337,
    337,
    838,
    838,
    838,
    531,
    1000,
    684,
    686,
    698,
    770,
    632,
    575,
    775,
    752,
    295,
    295,
    656,
    557,
    863,
    748,
    787,
    603,
    787,
    695,
    635,
    611,
    732,
    684,
    989,
    685,
    611,
    685,
    390,
    337,
    390,
    838,
    500,
    500,
    613,
    635,
    550,
    635,
    615,
    352,
    635,
    634,
    278,
    278,
    579,
    278,
    974,
    634,
    612,
    635,
    635,
    411,
    521,
    392,
    634,
    592,
    818,
    592,
    592,
    525,
    636,
    337,
    636,
    838,
)
_BOLD = (
    348,
    456,
    521,
    838,
    696,
    1002,
    872,
    306,
    457,
    457,
    523,
    838,
    380,
    415,
    380,
    365,
    696,
    696,
    696,
    696,
    696,
    696,
    696,
    696,
    696,
    696,
    400,
    400,
    838,
    838,
    838,
    580,
    1000,
    774,
    762,
    734,
    830,
    683,
    683,
    821,
    837,
    372,
    372,
    775,
    637,
    995,
    837,
    850,
    733,
    850,
    770,
    720,
    682,
    812,
    774,
    1103,
    771,
    724,
    725,
    457,
    365,
    457,
    838,
    500,
    500,
    675,
    716,
    593,
    716,
    678,
    435,
    716,
    712,
    343,
    343,
    665,
    343,
    1042,
    712,
    687,
    716,
    716,
    493,
    595,
    478,
    712,
    652,
    924,
    645,
    652,
    582,
    712,
    365,
    712,
    838,
)
_ELSE, _ELSE_BOLD, _FULL = 720, 800, 1050
#: Signs of other languages and of measures that are narrower or wider than that, regular and bold.
_SIGNS = {
    "«": (612, 646), "»": (612, 646), "¿": (531, 580), "¡": (401, 456), "″": (400, 500), "°": (500, 500),
    **dict.fromkeys("×÷±¬←→ÐĐØŊ", (838, 850)),
    **dict.fromkeys("¼½¾ÆæĦŉ—―…©®™", (1000, 1085)),
    **dict.fromkeys("Œœ", (1070, 1167)),
    "‰": (1342, 1440), "ľ": (480, 480),
}  # fmt: skip
_FIRST = 32


def text_width(text: str, size: float, bold: bool = False) -> float:
    """Return the width of a line of text in points."""
    return sum(_width(character, bold) for character in text) * size / 1000


def shorten(text: str, size: float, room: float, bold: bool = False) -> str:
    """Return the text, cut short with an ellipsis when it is wider than the room."""
    if text_width(text, size, bold) <= room:
        return text
    kept = text
    while kept and text_width(kept + "…", size, bold) > room:
        kept = kept[:-1]
    return kept.rstrip() + "…" if kept else ""


def clean_text(text: str) -> str:
    """Return the text without the characters that XML 1.0 cannot hold, its white space made plain."""
    return " ".join("".join(character if _allowed(character) else " " for character in text).split())


def _allowed(character: str) -> bool:
    code = ord(character)
    return (
        code >= _FIRST
        and code not in range(0x7F, 0xA0)
        and code not in range(0xD800, 0xE000)
        and (code & 0xFFFE != 0xFFFE)
    )


def _width(character: str, bold: bool) -> int:
    table = _BOLD if bold else _REGULAR
    index = ord(character) - _FIRST
    if 0 <= index < len(table):
        return table[index]
    if character in _SIGNS:
        return _SIGNS[character][bold]
    if unicodedata.combining(character):
        return 0
    letter = unicodedata.normalize("NFD", character)[0]
    if letter != character:
        return _width(letter, bold)
    if unicodedata.east_asian_width(character) in "FW" or ord(character) > 0x2FFF:
        return _FULL
    return _ELSE_BOLD if bold else _ELSE
