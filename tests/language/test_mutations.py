"""Library files with words swapped, dropped and doubled at random: whatever comes of them, nothing is thrown."""

import random

import pytest

from tests.language.reading_blocks import LIBRARY, work_out

TEXTS = [path.read_text(encoding="utf-8") for path in sorted(LIBRARY.rglob("*.block"))]
WORDS = [
    *sorted({word for text in TEXTS for word in text.split()}),
    "0",
    "-1",
    "1/0",
    "sqrt",
    "(",
    ")",
    "turn",
    "end",
    "cut",
]


def mutated(text: str, chance: random.Random) -> str:
    """Change one to three words of a text, and leave its lines as they are."""
    lines = [line.split(" ") for line in text.splitlines()]
    for _ in range(chance.randint(1, 3)):
        line = chance.choice(lines)
        place = chance.randrange(len(line) + 1)
        line[place : place + chance.randint(0, 2)] = chance.choices(WORDS, k=chance.randint(0, 2))
    return "\n".join(" ".join(line) for line in lines)


@pytest.mark.parametrize("seed", range(10))
def test_a_mutated_file_is_read_or_refused(seed: int) -> None:
    chance = random.Random(seed)
    read = refused = 0
    for _ in range(60):
        text = chance.choice([text for text in TEXTS if "Large Star" not in text])
        block, diagnostics = work_out(mutated(text, chance))
        assert block is not None or diagnostics
        read += block is not None
        refused += block is None
    assert read and refused
