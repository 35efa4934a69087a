"""Every bound in blocklang/limits.py: a file at the bound is read, and one past it is told so."""

from collections.abc import Callable
from pathlib import Path

import pytest

from blocklang.language import read_source
from blocklang.limits import (
    DEEPEST_ARITHMETIC,
    DEEPEST_GROUPS,
    DEEPEST_PLACING,
    LARGEST_LENGTH,
    LARGEST_VALUE,
    LONGEST_NAME,
    LONGEST_NUMBER,
    LONGEST_TEXT,
    MOST_BYTES,
    MOST_CORNERS,
    MOST_CUTS,
    MOST_FABRICS,
    MOST_MESSAGES,
    MOST_NAMES,
    MOST_PATCHES,
    MOST_POINTS,
    MOST_TURNS,
    MOST_WISHES,
    MOST_WORDS,
    MOST_WRITTEN_CORNERS,
)
from tests.language.reading_blocks import HEADING, codes, work_out

SQUARE = "patch whole of fog at 0, 0 size 6\npress away from deep\n"


def grid(cells: int) -> str:
    """Return rows of just so many cells, a hundred a row and the rest in a grid of its own."""
    full, rest = divmod(cells, 100)
    text = "rows in sw e\n" + (" F" * 100 + "\n") * full + "end\n"
    return text + (f"rows as more in sw e\n{' D' * rest}\nend\n" if rest else "press away from deep\n")


def ring(corners: int, name: str = "p") -> str:
    """Return a patch with so many corners on a circle."""
    points = "".join(f"point {name}{i} from centre by 2 toward 360 deg * {i} / {corners}\n" for i in range(corners))
    return points + f"patch {name} of fog through {' '.join(f'{name}{i}' for i in range(corners))}\n"


def slices(cuts: int) -> str:
    """Return a block that is cut into upright slices."""
    points = "".join(
        f"point p{i} at size * {i} / {cuts + 1}, 0\npoint q{i} from p{i} by 1 toward 90 deg\n"
        for i in range(1, cuts + 1)
    )
    inside = "".join(f"point t{i} at size * (2 * {i} + 1) / (2 * {cuts + 1}), 3\n" for i in range(cuts + 1))
    lines = "".join(f"along p{i} q{i}\n" for i in range(1, cuts + 1))
    return f"{points}{inside}cut block\n{lines}piece s of fog at {' '.join(f't{i}' for i in range(cuts + 1))}\nend\n"


def corners_written(count: int) -> str:
    """Return patches with so many corners written out in all; the last sixty or so are shared by two patches."""
    text = "".join(f"point p{i} from centre by 2 toward 6 deg * {i}\n" for i in range(60))
    full = count // 60 - 1
    names = [f"p{i}" for i in range(60)]
    text += "".join(f"patch q{i} of fog through {' '.join(names)}\n" for i in range(full))
    text += f"patch x of fog through {' '.join(names[:30])}\n"
    return text + f"patch y of fog through {' '.join(names[: count - 60 * full - 30])}\n"


def fabrics(count: int) -> str:
    """Return more fabrics, so many with those of the heading."""
    return SQUARE + "".join(f"fabric f{i} role dark #000000\n" for i in range(count - 2))


def wishes(count: int) -> str:
    """Return so many wishes, most of them in a group."""
    text = "turn 100 about centre\npatch p of fog at 0, 0 size 1\npatch q of fog at 1, 0 size 1\n"
    return text + "press p q open\n" * (count // 100) + "end\n" + "press p.1 q.1 open\n" * (count % 100)


def points(count: int) -> str:
    """Return so many points, most of them in a group."""
    many = "".join(f"point p{i} at 1, 1\n" for i in range(count // 100))
    return SQUARE + f"turn 100 about centre\n{many}end\n" + "".join(f"point q{i} at 1, 1\n" for i in range(count % 100))


AT_THE_BOUND: dict[str, tuple[int, str, Callable[[int], str]]] = {
    "LONGEST_NAME": (LONGEST_NAME, "name-too-long", lambda n: SQUARE + f"point {'p' * n} at 0, 0\n"),
    "LONGEST_TEXT": (LONGEST_TEXT, "text-too-long", lambda n: SQUARE + f'note "{"n" * n}"\n'),
    "LONGEST_NUMBER": (LONGEST_NUMBER, "number-too-long", lambda n: SQUARE + f"point p at 1.{'0' * (n - 2)}, 0\n"),
    "DEEPEST_GROUPS": (
        DEEPEST_GROUPS, "too-deep", lambda n: "turn 2 about centre\n" * n + "point m at 1, 1\n" + "end\n" * n + SQUARE
    ),
    "DEEPEST_ARITHMETIC": (DEEPEST_ARITHMETIC, "too-deep", lambda n: SQUARE + f"let x = {'-' * n}1\n"),
    "LARGEST_VALUE": (LARGEST_VALUE, "number-too-large", lambda n: SQUARE + f"let x = {n} * 1\n"),
    "LARGEST_LENGTH": (LARGEST_LENGTH, "length-too-large", lambda n: SQUARE + f"point p at {n} in, 0\n"),
    "MOST_TURNS": (MOST_TURNS, "number-out-of-range", lambda n: SQUARE + f"turn {n} about centre\npoint m at 1, 1\nend\n"),
    "MOST_PATCHES": (MOST_PATCHES, "too-many-patches", grid),
    "MOST_POINTS": (MOST_POINTS, "too-many-points", points),
    "MOST_CORNERS": (MOST_CORNERS, "too-many-corners", lambda n: ring(n) + "press away from deep\n"),
    "MOST_WRITTEN_CORNERS": (MOST_WRITTEN_CORNERS, "too-many-corners", lambda n: corners_written(n) + "press away from deep\n"),
    "MOST_FABRICS": (MOST_FABRICS, "too-many-fabrics", fabrics),
    "MOST_WISHES": (MOST_WISHES, "too-many-wishes", lambda n: wishes(n)),
    "MOST_CUTS": (MOST_CUTS, "too-many-cuts", lambda n: slices(n) + "press away from deep\n"),
    "MOST_NAMES": (
        MOST_NAMES, "too-many-names", lambda n: grid(1000) + f"sew first {' '.join(f'r{i // 100 + 1}c{i % 100 + 1}' for i in range(n - 1))} as top\n"
    ),
}  # fmt: skip


def errors(text: str) -> list[str]:
    """Return the codes of the errors of a text, warnings left out."""
    return [code for code in codes(HEADING + text) if code != "unused-fabric"]


@pytest.mark.parametrize("name", AT_THE_BOUND)
def test_at_the_bound_a_file_is_read_and_past_it_is_told_so(name: str) -> None:
    bound, code, text = AT_THE_BOUND[name]
    assert errors(text(bound)) == []
    assert set(errors(text(bound + 1))) == {code}


def test_a_file_of_the_largest_size_is_read(tmp_path: Path) -> None:
    path = tmp_path / "large.block"
    path.write_bytes(b"#" * MOST_BYTES)
    assert not isinstance(read_source(path), tuple)
    path.write_bytes(b"#" * (MOST_BYTES + 1))
    refused = read_source(path)
    assert isinstance(refused, tuple)
    assert [found.code for found in refused] == ["file-too-large"]


def test_a_file_of_the_most_words_is_read() -> None:
    text = HEADING + SQUARE
    room = MOST_WORDS - 1 - words_of(text)  # the end of the file counts as one
    assert errors_of(text + "\n" * room) == []
    assert errors_of(text + "\n" * (room + 1)) == ["too-many-words"]


def words_of(text: str) -> int:
    """Count words the way a reader does: names, numbers, texts, signs and line ends."""
    import re

    return len(re.findall(r'"[^"]*"|#\w+|[\w./]+(?:-\w+)*|,|\n', text))


def errors_of(text: str) -> list[str]:
    """Return the codes of the errors of a whole text."""
    return [code for code in codes(text) if code != "unused-fabric"]


def test_only_so_many_messages_are_kept() -> None:
    assert len(codes("pacth\n" * MOST_MESSAGES)) == MOST_MESSAGES
    assert len(codes("pacth\n" * (MOST_MESSAGES + 5))) == MOST_MESSAGES
    assert (
        len(codes(HEADING + "point p at zz, 0\n" + "".join(f"let v{i} = u{i}\n" for i in range(50)))) == MOST_MESSAGES
    )


def placed(deep: int) -> dict[str, str]:
    """Return blocks that place one another, so many in all."""
    body = HEADING + SQUARE.replace("press away from deep\n", "")
    texts = {f"b{i}": HEADING + f'place "b{i + 1}" as x at 0, 0\n' for i in range(1, deep)}
    return {**texts, f"b{deep}": body}


def test_blocks_are_placed_in_blocks_so_deep() -> None:
    text = HEADING + 'place "b1" as x at 0, 0\n'
    assert work_out(text, None, **placed(DEEPEST_PLACING - 1))[0] is not None
    assert "too-deep" in codes(text, **placed(DEEPEST_PLACING))


def test_the_smallest_block_is_a_quarter_inch() -> None:
    assert errors_of((HEADING + "rows\n F\nend\n").replace("6 in", "1/4 in")) == []
    assert errors_of((HEADING + "rows\n F\nend\n").replace("6 in", "6/25 in")) == ["size-too-small"]


def test_a_fraction_that_grows_goes_on_as_a_decimal() -> None:
    lines = "let a0 = 1/3\n" + "".join(
        f"let a{i + 1} = a{i} * a{i} * 7/5\n".replace("* 7/5", "* (7/5)") for i in range(12)
    )
    assert errors(SQUARE + lines) == []
