"""What patches are called wherever they are told: by the lines of the cutting list."""

from blocklang.block import Block
from blocklang.cutting.values import Cutting


def patch_labels(block: Block, cutting: Cutting) -> tuple[str, ...]:
    """Return what to call each patch: its line of the cutting list, with the fabric where two lines share a name."""
    fabrics: dict[str, set[str]] = {}
    for piece in cutting.pieces:
        fabrics.setdefault(piece.name, set()).add(piece.fabric)
    labels = [patch.name for patch in block.patches]
    for piece in cutting.pieces:
        fabric = block.fabric(piece.fabric)
        label = piece.name if len(fabrics[piece.name]) == 1 else f"{fabric.title or fabric.id} {piece.name}"
        for patch in piece.patches:
            labels[patch] = label
    return tuple(labels)
