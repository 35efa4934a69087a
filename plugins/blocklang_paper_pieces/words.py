"""Everything that is said about piecing over papers."""

from typing import Final

from blocklang.plan import SewingPlan

SUBJECT: Final = "Papers for piecing by hand"
PAGE: Final = "papers, page"
GLANCE: Final = "At a glance"
MAKING: Final = "How it is made"
PAPERS: Final = "The papers"
ORDER: Final = "The order"
PICTURE: Final = "The numbers are the order in which the patches are joined."
COLUMNS: Final = ("No.", "Patch", "Fabric", "Whip-stitch it to")
LINES: Final = "Inner line: cut the paper. Dashed line: cut the fabric."
EVERY_LINE: Final = "These are the papers of one block, without allowance: cut on the line."
ONCE_LINE: Final = "Each paper is drawn once: trace it as often as it says."

_MAKING: Final = (
    "Cut the papers exactly, from stiff paper. Cut the fabric patches with their seam allowance all round.",
    "Lay a paper on the wrong side of its patch, fold the allowance over the paper and baste it.",
    "Lay two patches right sides together, edge on edge, and whip-stitch from corner to corner, through the fabric only.",
    "Where the next edge lies round a corner, fold the work, papers and all, until the two edges meet, and stitch on.",
    "Take a paper out when every edge of its patch is joined; leave those on the outside in until the end.",
)
_CURVED: Final = (
    "Some edges are curved: clip the allowance of a hollow edge nearly to the paper, gather that of a round one, and pin "
    "the dots of the templates together before you stitch."
)


def making(*, curved: bool) -> tuple[str, ...]:
    """Return how it is made, in the order of doing it."""
    return (*_MAKING, _CURVED) if curved else _MAKING


def counted_papers(papers: int, shapes: int) -> str:
    """Say how many papers a block takes."""
    kinds = "all of one shape" if shapes == 1 else f"of {shapes} shapes"
    return f"One block takes {papers} papers, {kinds}."


def counted_edges(edges: int) -> str:
    """Say how many edges are stitched."""
    return "One edge is whip-stitched." if edges == 1 else f"{edges} edges are whip-stitched, each once."


def cloth(plan: SewingPlan, patch: int) -> str:
    """Return what a patch is cut from."""
    drawn = plan.block.patches[patch]
    fabric = plan.block.fabric(drawn.fabric)
    return "the strip set" if drawn.stripes is not None else fabric.title or fabric.id


def fabric_patches(count: int, fabric: str) -> str:
    """Say how many fabric patches are basted over equal papers."""
    return f"{count} of {fabric}"


def paper_count(count: int) -> str:
    """Say how many equal papers a block takes."""
    return "1 paper" if count == 1 else f"{count} papers"


def round_title(number: int, count: int) -> str:
    """Return the heading of a round."""
    return f"Round {number}: {'one patch' if count == 1 else f'{count} patches'}"


def joined_to(others: tuple[int, ...], edges: int, folds: int) -> str:
    """Say what a patch is stitched to: the places of its neighbours in the order, and how often the work is folded."""
    if not others:
        return "begin with this patch"
    said = ", then ".join(map(str, others))
    counted = "1 edge" if edges == 1 else f"{edges} edges"
    folded = {0: "", 1: "; fold once", 2: "; fold twice"}.get(folds, f"; fold {folds} times")
    return f"{said} ({counted}{folded})"
