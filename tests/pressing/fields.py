"""Blocks made of one block placed many times, as the text of a file and on the route."""

from blocklang import route
from blocklang.block import Block
from blocklang.cli.walking import Walk
from blocklang.diagnostics import SourceText
from blocklang.language import Overrides


def field_text(name: str, side: int, turns: bool = False, cell: int = 3) -> str:
    """Return the file of a square field of one library block; with `turns`, every second copy is turned a quarter."""
    heading = f'block "Marsh Field"\nlanguage 1\nsize {side * cell} in\n'
    if not turns:
        row = " ".join([f'"{name}"'] * side)
        return heading + "rows\n" + f"{row}\n" * side + "end\n"
    lines = []
    for row in range(side):
        for column in range(side):
            turned = "turn 90" if (row + column) % 2 else ""
            lines.append(f'place "{name}" as r{row}c{column} at {column * cell}, {row * cell} size {cell} in {turned}')
    return heading + "\n".join(line.rstrip() for line in lines) + "\n"


def block_of(text: str) -> Block:
    """Return the block that a text draws, with the library at hand."""
    drafted = route.draft(SourceText("field.block", text), Overrides(), Walk().library, tuple)
    assert drafted.block is not None, [(d.code, d.found) for d in drafted.diagnostics]
    return drafted.block
