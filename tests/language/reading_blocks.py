"""Blocks read from text, for the tests of the language."""

from pathlib import Path

from blocklang.block import Block
from blocklang.diagnostics import Diagnostic, SourceText
from blocklang.geometry import TICKS_PER_INCH
from blocklang.language import Overrides, decode_source, evaluate, parse

LIBRARY = Path(__file__).parents[2] / "blocks"
HEADING = """block "Harbour Light"
language 1
size 6 in
fabric fog as F background light #e8eef2
fabric deep as D accent dark #1f3a5f
"""


class Texts:
    """Finds placed blocks among texts, and then in the library that ships with the program."""

    def __init__(self, **texts: str) -> None:
        """Keep the texts under their names, with _ for -."""
        self.texts = {name.replace("_", "-"): text for name, text in texts.items()}

    def find(self, name: str, placing: SourceText) -> SourceText | Diagnostic | None:
        """Return a text of that name."""
        if name in self.texts:
            return SourceText(name, self.texts[name])
        for path in sorted(LIBRARY.rglob(f"{name}.block")):
            read = decode_source(path.name, path.read_bytes())
            return read if isinstance(read, SourceText) else read[0]
        return None

    def names(self) -> tuple[str, ...]:
        """Return the names of the texts."""
        return tuple(self.texts)


def diagnose(text: str, overrides: Overrides | None = None, **texts: str) -> tuple[Diagnostic, ...]:
    """Return what is wrong with a text."""
    return work_out(text, overrides, **texts)[1]


def work_out(
    text: str, overrides: Overrides | None = None, **texts: str
) -> tuple[Block | None, tuple[Diagnostic, ...]]:
    """Return the block of a text and what is wrong with it."""
    parsed = parse(SourceText("test.block", text))
    if parsed.tree is None:
        return None, parsed.diagnostics
    evaluated = evaluate(parsed.tree, overrides=overrides or Overrides(), finder=Texts(**texts))
    return evaluated.block, evaluated.diagnostics


def block_of(text: str, overrides: Overrides | None = None, **texts: str) -> Block:
    """Return the block of a text that is right."""
    block, diagnostics = work_out(text, overrides, **texts)
    assert block is not None, diagnostics
    return block


def codes(text: str, **texts: str) -> list[str]:
    """Return the codes of what is wrong with a text."""
    return [diagnostic.code for diagnostic in diagnose(text, None, **texts)]


def inches(block: Block, patch_id: str) -> list[tuple[float, float]]:
    """Return a patch's corners in inches, to a millionth, from the lowest leftmost one on."""
    patch = next(patch for patch in block.patches if patch.id == patch_id)
    corners = [(round(x / TICKS_PER_INCH, 5), round(y / TICKS_PER_INCH, 5)) for x, y in patch.outline.corners]
    first = corners.index(min(corners, key=lambda corner: (corner[1], corner[0])))
    return corners[first:] + corners[:first]


def covered(block: Block) -> float:
    """Return how much of the outline's area the patches cover, 1 for all of it."""
    return sum(patch.outline.area() for patch in block.patches) / block.outline.area()
