"""Everything that is said about piecing over papers."""

from typing import Final

from blocklang.plan import SewingPlan
from blocklang.wording import joined, say, say_number

SUBJECT: Final = say("Papers for piecing by hand")
PAGE: Final = say("papers, page")
#: A page of the order; the fields are filled in where the page is set.
PAGE_OF: Final = say("page {number} of {count}", number="{number}", count="{count}")
GLANCE: Final = say("At a glance")
MAKING: Final = say("How it is made")
PAPERS: Final = say("The papers")
ORDER: Final = say("The order")
PICTURE: Final = say("The numbers are the order in which the patches are joined.")
COLUMNS: Final = (say("No."), say("Patch"), say("Fabric"), say("Whip-stitch it to"))
LINES: Final = say("Inner line: cut the paper. Dashed line: cut the fabric.")
EVERY_LINE: Final = say("These are the papers of one block, without allowance: cut on the line.")
ONCE_LINE: Final = say("Each paper is drawn once: trace it as often as it says.")

_MAKING: Final = (
    say("Cut the papers exactly, from stiff paper. Cut the fabric patches with their seam allowance all round."),
    say("Lay a paper on the wrong side of its patch, fold the allowance over the paper and baste it."),
    say(
        "Lay two patches right sides together, edge on edge, and whip-stitch from corner to corner, through the fabric only."
    ),
    say(
        "Where the next edge lies round a corner, fold the work, papers and all, until the two edges meet, and stitch on."
    ),
    say("Take a paper out when every edge of its patch is joined; leave those on the outside in until the end."),
)
_CURVED: Final = say(
    "Some edges are curved: clip the allowance of a hollow edge nearly to the paper, gather that of a round one, and pin "
    "the dots of the templates together before you stitch."
)


def making(*, curved: bool) -> tuple[str, ...]:
    """Return how it is made, in the order of doing it."""
    return (*_MAKING, _CURVED) if curved else _MAKING


def counted_papers(papers: int, shapes: int) -> str:
    """Say how many papers a block takes."""
    return say_number(
        "One block takes {papers} papers, all of one shape.",
        "One block takes {papers} papers, of {count} shapes.",
        shapes,
        papers=papers,
    )


def counted_edges(edges: int) -> str:
    """Say how many edges are stitched."""
    return say_number("One edge is whip-stitched.", "{count} edges are whip-stitched, each once.", edges)


def cloth(plan: SewingPlan, patch: int) -> str:
    """Return what a patch is cut from."""
    drawn = plan.block.patches[patch]
    fabric = plan.block.fabric(drawn.fabric)
    return say("the strip set") if drawn.stripes is not None else fabric.title or fabric.id


def fabric_patches(count: int, fabric: str) -> str:
    """Say how many fabric patches are basted over equal papers."""
    return say("{count} of {fabric}", count=count, fabric=fabric)


def paper_count(count: int) -> str:
    """Say how many equal papers a block takes."""
    return say_number("{count} paper", "{count} papers", count)


def round_title(number: int, count: int) -> str:
    """Return the heading of a round."""
    return say_number("Round {number}: one patch", "Round {number}: {count} patches", count, number=number)


def joined_to(others: tuple[int, ...], edges: int, folds: int) -> str:
    """Say what a patch is stitched to: the places of its neighbours in the order, and how often the work is folded."""
    if not others:
        return say("begin with this patch")
    said = str(others[0])
    for other in others[1:]:
        said = say("{before}, then {after}", before=said, after=other)
    counted = say_number("{count} edge", "{count} edges", edges)
    inside = joined((counted, _folded(folds)), "; ") if folds else counted
    return joined((said, " (", inside, ")"), "")


def _folded(folds: int) -> str:
    return say("fold twice") if folds == 2 else say_number("fold once", "fold {count} times", folds)


def paper(number: int) -> str:
    """Say what a paper is called."""
    return say("Paper {number}", number=number)


def order_shown(name: str) -> str:
    """Say what the picture of the order shows."""
    return say("{name}: the order in which the patches are joined", name=name)
