"""The part of the corpus that is no readable text, or too large to lie about: made from a table, with what is answered."""

from collections.abc import Callable
from typing import NamedTuple

from blocklang.limits import MOST_BYTES

HEADING = """block "Harbour Light"
language 1
size 6 in
fabric fog as F background light #e8eef2
fabric deep as D accent dark #1f3a5f
"""
GRID = "rows\n  F D\n  D F\nend\n"
SOUND = HEADING + GRID


class MadeFile(NamedTuple):
    """How a hostile file is made, and the answer it must get."""

    make: Callable[[], bytes]
    answer: str


def _bytes(content: bytes, answer: str) -> MadeFile:
    return MadeFile(lambda: content, answer)


def _text(make: Callable[[], str], answer: str) -> MadeFile:
    return MadeFile(lambda: make().encode(), answer)


def _damaged(bad: bytes, answer: str) -> MadeFile:
    """Put bytes into the middle of a comment."""
    return _bytes(SOUND.encode().replace(b"rows", b"# tide " + bad + b" mill\nrows"), answer)


def _many(line: str, count: int, answer: str, head: str = HEADING, tail: str = GRID) -> MadeFile:
    """Repeat a line; {n} in it is its number."""
    return _text(lambda: head + "".join(line.replace("{n}", str(n)) for n in range(count)) + tail, answer)


FILES: dict[str, MadeFile] = {
    # not text, or text in some other way
    "nothing": _bytes(b"", "1: no-name 1:1, no-size 1:1"),
    "one-zero-byte": _bytes(b"\0", "1: not-text 1:1"),
    "a-megabyte-of-zeros": _bytes(bytes(1_000_000), "1: not-text 1:1"),
    "a-zero-byte-at-the-end": _bytes(SOUND.encode() + b"\0", "1: not-text 10:1"),
    "a-zero-byte-in-a-name": _bytes(SOUND.encode().replace(b"deep", b"de\0ep", 1), "1: not-text 5:10"),
    "every-byte": _bytes(bytes(range(256)), "1: not-text 3:115"),
    "every-high-byte": _bytes(bytes(range(128, 256)) * 400, "1: not-text 1:1"),
    "utf-16-little": _bytes(b"\xff\xfe" + SOUND.encode("utf-16-le"), "1: not-text 1:1"),
    "utf-16-big": _bytes(b"\xfe\xff" + SOUND.encode("utf-16-be"), "1: not-text 1:1"),
    "utf-16-without-a-mark": _bytes(SOUND.encode("utf-16-le"), "1: not-text 1:2"),
    "utf-32": _bytes(b"\xff\xfe\0\0" + SOUND.encode("utf-32-le"), "1: not-text 1:1"),
    "utf-7": _bytes(SOUND.replace("fog", "f+AG8-g", 1).encode(), "1: not-understood 4:9"),
    "latin-1": _damaged("é".encode("latin-1"), "1: not-text 6:8"),
    "windows-quotes": _damaged(b"\x93deep\x94", "1: not-text 6:8"),
    "overlong-slash": _damaged(b"\xc0\xaf", "1: not-text 6:8"),
    "overlong-zero": _damaged(b"\xc0\x80", "1: not-text 6:8"),
    "half-a-letter": _damaged(b"\xe2\x82", "1: not-text 6:8"),
    "half-a-letter-at-the-end": _bytes(SOUND.encode() + b"# \xe2\x82", "1: not-text 10:3"),
    "a-surrogate": _damaged(b"\xed\xa0\x80", "1: not-text 6:8"),
    "a-pair-of-surrogates": _damaged(b"\xed\xa0\xbd\xed\xb2\x99", "1: not-text 6:8"),
    "beyond-the-last-letter": _damaged(b"\xf4\x90\x80\x80", "1: not-text 6:8"),
    "continuation-alone": _damaged(b"\xbf", "1: not-text 6:8"),
    "five-byte-letter": _damaged(b"\xf8\x88\x80\x80\x80", "1: not-text 6:8"),
    "two-byte-order-marks": _bytes(b"\xef\xbb\xbf\xef\xbb\xbf" + SOUND.encode(), "1: control-character 1:1"),
    "one-byte-order-mark": _bytes(b"\xef\xbb\xbf" + SOUND.encode(), "0: fine"),
    "lone-returns-as-line-ends": _bytes(SOUND.replace("\n", "\r").encode(), "0: fine"),
    "returns-before-returns": _bytes(SOUND.replace("\n", "\r\r\n").encode(), "0: fine"),
    "a-program": _bytes(b"\x7fELF\x02\x01\x01\0" + bytes(200), "1: not-text 1:8"),
    "a-zip-archive": _bytes(b"PK\x03\x04\x14\0\0\0\x08\0" + bytes(range(200)), "1: not-text 3:115"),
    "a-pdf": _bytes(b"%PDF-1.7\n%\xe2\xe3\xcf\xd3\n1 0 obj\n", "1: not-text 2:2"),
    "a-picture": _bytes(b"\x89PNG\r\n\x1a\n" + bytes(100), "1: not-text 1:1"),
    # too much of one thing
    "one-byte-too-many": _text(lambda: SOUND + "#" * (MOST_BYTES + 1 - len(SOUND)), "1: file-too-large nowhere"),
    "fifty-megabytes": _bytes(b"#\n" * 25_000_000, "1: file-too-large nowhere"),
    "one-comment-of-a-megabyte": _text(lambda: SOUND + "#" * 1_000_000, "0: fine"),
    "one-line-of-a-megabyte": _text(lambda: HEADING + "x" * 1_000_000 + "\n" + GRID, "1: name-too-long 6:1"),
    "one-text-of-a-megabyte": _text(lambda: f'{HEADING}note "{"x" * 1_000_000}"\n{GRID}', "1: text-too-long 6:6"),
    "one-number-of-a-megabyte": _text(lambda: f"{HEADING}let x = {'9' * 1_000_000}\n{GRID}", "1: number-too-long 6:9"),
    "a-megabyte-of-spaces": _text(lambda: HEADING + " " * 1_000_000 + GRID, "0: fine"),
    "a-megabyte-of-line-ends": _text(lambda: HEADING + "\n" * 1_000_000 + GRID, "1: too-many-words 89980:1"),
    "a-megabyte-of-quotes": _text(lambda: HEADING + '"' * 1_000_000 + "\n" + GRID, "1: unknown-line 6:1"),
    "a-megabyte-of-brackets": _text(lambda: HEADING + "(" * 1_000_000 + "\n" + GRID, "1: unknown-line 6:1"),
    "a-value-in-ten-thousand-brackets": _text(lambda: f"{HEADING}let x = {'(' * 10_000}1{')' * 10_000}\n{GRID}", "0: fine"),
    "a-sum-of-ten-thousand-terms": _text(lambda: f"{HEADING}let x = {'1 + ' * 10_000}1\n{GRID}", "1: too-deep 6:9"),
    "forty-thousand-roots": _text(lambda: f"{HEADING}let x = {'sqrt ' * 40_000}2\n{GRID}", "1: too-deep 6:9"),
    "forty-thousand-minus-signs": _text(lambda: f"{HEADING}let x = {'-' * 40_000}2\n{GRID}", "1: too-deep 6:9"),
    "twenty-thousand-groups": _text(lambda: HEADING + "turn 2 about centre\n" * 20_000 + "end\n" * 20_000, "1: too-deep 12:1"),
    "groups-that-multiply": _text(
        lambda: HEADING + "turn 360 about centre\n" * 6 + "patch p of fog at 0, 0 size 1\n" + "end\n" * 6, "1: too-many-patches 10:1"
    ),
    "points-that-multiply": _text(
        lambda: HEADING + "turn 360 about centre\n" * 6 + "point p at 1, 1\n" + "end\n" * 6 + GRID, "1: too-many-points 10:1"
    ),
    "empty-groups-that-multiply": _text(lambda: HEADING + ("turn 360 about centre\n" * 6 + "end\n" * 6) * 300 + GRID, "1: empty-group 11:1, empty-group 10:1, empty-group 9:1, empty-group 8:1 and 16 more"),
    "wishes-that-multiply": _text(
        lambda: f"{HEADING}turn 360 about centre\npatch p of fog at 0, 0 size 1\n" + "press away from fog\n" * 2_000 + "end\n", "1: too-many-wishes 6:1"
    ),
    "cells-by-the-ten-thousand": _text(lambda: HEADING + "rows\n" + ("F " * 200 + "\n") * 120 + "end\n", "1: too-many-patches 7:1"),
    "a-row-of-twenty-five-thousand": _text(lambda: HEADING + "rows\n" + "F " * 25_000 + "\nend\n", "1: too-many-patches 7:1"),
    "uneven-rows-by-the-thousand": _text(lambda: HEADING + "rows\n" + "".join("F " * (n % 7 + 1) + "\n" for n in range(5_000)) + "end\n", "1: uneven-rows 8:1, uneven-rows 9:1, uneven-rows 10:1, uneven-rows 11:1 and 16 more"),
    "unknown-lines-by-the-hundred-thousand": _text(lambda: HEADING + "pacth\n" * 100_000, "1: unknown-line 6:1, unknown-line 7:1, unknown-line 8:1, unknown-line 9:1 and 16 more"),
    "open-texts-by-the-hundred-thousand": _text(lambda: HEADING + '"\n' * 100_000, "1: text-not-closed 6:1, text-not-closed 7:1, text-not-closed 8:1, text-not-closed 9:1 and 16 more"),
    "values-by-the-thousand": _many("let v{n} = {n}\n", 3_000, "0: fine"),
    "values-built-on-each-other": _text(
        lambda: HEADING + "let v0 = 1/3\n" + "".join(f"let v{n + 1} = v{n} * 2/3 + v{n} / 7 + sqrt v{n}\n" for n in range(600)) + GRID, "0: fine"
    ),
    "points-by-the-thousand": _many("point p{n} at {n} / 10000, 1\n", 2_000, "0: fine"),
    "points-built-on-each-other": _text(
        lambda: HEADING + "point p0 at 1, 1\n" + "".join(f"point p{n + 1} from p{n} by 1/1000 toward {n} deg\n" for n in range(500)) + GRID, "0: fine"
    ),
    "fabrics-by-the-thousand": _many("fabric f{n} role dark #000000\n", 1_000, "1: too-many-fabrics 204:1, too-many-fabrics 205:1, too-many-fabrics 206:1, too-many-fabrics 207:1 and 16 more"),
    "names-missing-by-the-thousand": _many("point p{n} at z, 2\n", 1_500, "1: unknown-value 6:13, unknown-value 7:13, unknown-value 8:13, unknown-value 9:13 and 16 more"),
    "one-name-by-the-thousand": _many("let v = {n}\n", 3_000, "1: name-taken 7:5, name-taken 8:5, name-taken 9:5, name-taken 10:5 and 16 more"),
    "patches-on-one-place": _many("patch p{n} of fog at 0, 0 size 6\n", 300, "1: unused-fabric 5:8, overlap 6:1, overlap 6:1, overlap 6:1 and 5 more", tail=""),
    "patches-that-share-one-corner": _text(
        lambda: HEADING
        + "".join(f"point p{n} from centre by 2 toward {n} deg / 2\n" for n in range(721))
        + "".join(f"patch q{n} of fog through centre p{n} p{n + 1}\n" for n in range(720)),
        "1: unused-fabric 5:8, sliver 727:1, sliver 728:1, sliver 729:1 and 5 more",
    ),
    "corners-by-the-ten-thousand": _text(lambda: HEADING + "patch p of fog through " + "sw " * 20_000 + "\n", "1: too-many-corners 6:24"),
    "stripes-by-the-ten-thousand": _text(
        lambda: HEADING + "patch p striped " + "fog " * 20_000 + "along sw se through sw se ne nw\n", "1: too-many-stripes 6:9"
    ),
    "names-in-one-wish": _text(lambda: SOUND + "sew first " + "r1c1 " * 20_000 + "as top\n", "1: too-many-names 10:1"),
    "wishes-by-the-thousand": _many("press r1c1 r1c2 open\n", 3_000, "0: fine", head=SOUND, tail=""),
    "cuts-by-the-thousand": _text(lambda: HEADING + "cut block\n" + "along s n\n" * 3_000 + "piece p of fog at w\nend\n", "1: too-many-cuts 67:1"),
    "strips-a-hair-wide": _text(lambda: HEADING + "rows\n" + " F" * 1_500 + "\nend\n", "1: unused-fabric 5:8, sliver 7:2, sliver 7:2, sliver 7:4 and 5 more"),
    "strips-a-hair-high": _text(lambda: HEADING + "rows\n" + " F\n" * 1_500 + "end\n", "1: unused-fabric 5:8, sliver 7:2, sliver 7:2, sliver 8:2 and 5 more"),
    "long-strips": _text(lambda: HEADING.replace("6 in", "1000 in") + "rows\n" + " F" * 600 + "\nend\n", "0: unused-fabric 5:8"),
    "a-fan-of-long-wedges": _text(
        lambda: HEADING
        + "".join(f"point p{n} at size * {n} / 150, size\n" for n in range(151))
        + "".join(f"patch q{n} of fog through sw p{n + 1} p{n}\n" for n in range(150))
        + "patch r of deep through sw se ne\n",
        "0: fine",
    ),
    "placed-block-in-a-hundred-cells": _text(
        lambda: HEADING.replace("6 in", "600 in") + "rows\n" + (' "nine-patch"' * 12 + "\n") * 12 + "end\n", "0: unused-fabric 5:8"
    ),
}  # fmt: skip
