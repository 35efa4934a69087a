"""What patches are called wherever they are told: by the lines of the cutting list."""

from blocklang.block import Block
from blocklang.cutting.called import Thing, called, of_fabric
from blocklang.cutting.values import Cutting


def patch_labels(block: Block, cutting: Cutting) -> tuple[str, ...]:
    """Return what to call each patch: its line of the cutting list, with the fabric where two lines share a name."""
    fabrics: dict[str, set[str]] = {}
    for piece in cutting.pieces:
        fabrics.setdefault(piece.name, set()).add(piece.fabric)
    labels: dict[int, str] = {}
    for piece in cutting.pieces:
        fabric = block.fabric(piece.fabric)
        told_apart = len(fabrics[piece.name]) > 1
        label = of_fabric(piece.name, fabric.title or fabric.id) if told_apart else piece.name
        for patch in piece.patches:
            labels[patch] = label
    return tuple(labels.get(place) or called(Thing(patch.name)) for place, patch in enumerate(block.patches))
