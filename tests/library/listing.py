"""docs/library.md, made from the library's files and the numbers that tests hold them to."""

from blocklang.graph import PatchGraph
from tests.library.expected import EXPECTED
from tests.library.plans import NAMES, graph_of

HEAD = """# The library

Every block is drawn from the geometry of the tradition, under a name that belongs to nobody. The last column says where the
pattern comes from and how sure that is; a name "in print by 1915" stands in *Quilts: Their Story and How to Make Them*, and
a museum's count in the museum's own record. Patches and seams are checked against the `counts` line of each file, and
tests hold them and the set-in and partial seams against counts made by hand or published (tests/library/expected.py).
*Set in* counts the places where the needle turns; *partial* the seams that are sewn in part and finished later.
`blocklang library` lists the blocks on the screen. After a change, `BLOCKLANG_RENEW=1 pytest tests/library` writes this page
again, and with it what tests/library/told keeps of each block: its picture in letters, its sewing and its cutting.

| family | block | by name | patches | seams | set in | partial | where it comes from |
| --- | --- | --- | --- | --- | --- | --- | --- |
"""


def page() -> str:
    """Return the page, sorted by family and name."""
    rows = sorted((graph_of(name).block.family, name) for name in NAMES)
    return HEAD + "".join(_row(family, name, graph_of(name)) for family, name in rows)


def _row(family: str, name: str, graph: PatchGraph) -> str:
    block, expected = graph.block, EXPECTED[name]
    assert block.counts is not None
    cells = (
        family,
        block.name,
        f"`{name}`",
        str(block.counts.patches),
        str(block.counts.seams),
        str(expected.pivots or "–"),
        str(expected.partials or "–"),
        block.credits[0].source,
    )
    return f"| {' | '.join(cells)} |\n"
