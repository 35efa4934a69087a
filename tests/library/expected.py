"""What each library block must come to, worked out by hand or published; nothing here is read from the program.

"own geometry": counted from the drafting grid, patch by patch, as written beside it. "text": "Quilting", Wikipedia (2019
copy). "museum": Smithsonian American Art Museum, Pieced Quilt (Ohio Star), about 1845; Smithsonian NMAH, "Rising Sun"
quilt, 1825-1835, and silk star quilt, 1825-1850.
"""

from typing import NamedTuple


class Expected(NamedTuple):
    """Patches, corners of set-in seams, partial seams and curved joins, and where the numbers come from."""

    patches: int
    pivots: int = 0
    partials: int = 0
    curved: int = 0
    basis: str = "own geometry"


EXPECTED = {
    # four-patch
    "four-patch": Expected(2 * 2),
    "pinwheel": Expected(4 * 2, basis="own geometry: four half-square units"),
    "hourglass": Expected(4, basis="own geometry: a square cut twice across"),
    "sawtooth-star": Expected(1 + 4 + 4 * 3, basis="own geometry: centre, four corners, four geese"),
    "dutchmans-puzzle": Expected(8 * 3, basis="own geometry: eight geese"),
    "broken-dishes": Expected(16 * 2, basis="own geometry: sixteen half-square units"),
    "economy": Expected(1 + 4),
    "economy-9": Expected(1 + 4 + 4),
    "necktie": Expected(
        1 + 4, pivots=4, basis="own geometry: three seams meet at each corner of the knot, none in line"
    ),
    "kansas-troubles": Expected(
        4 * (1 + 4 * 2 + 4), basis="own geometry: a square, four units and four triangles, times 4"
    ),
    "ocean-waves": Expected(4 * (2 + 24), basis="own geometry: (16 - 4) cells of two triangles and two large, times 4"),
    "storm-at-sea": Expected(4 * 5 + 4 * 5 + 9, basis="own geometry: four economies, four diamonds, one of two rounds"),
    # nine-patch
    "nine-patch": Expected(9, basis="text: 5 dark and 4 light squares"),
    "shoo-fly": Expected(13, basis="text: 5 squares, 4 units of two triangles"),
    "churn-dash": Expected(17, basis="text: 1 square, 4 units of triangles, 4 of bars"),
    "friendship-star": Expected(5 + 4 * 2),
    "ohio-star": Expected(21, basis="museum: 21 pieces"),
    "puss-in-the-corner": Expected(
        9, basis="own geometry: centre, four corners, four bars; structure told in print 1915"
    ),
    "snowball": Expected(1 + 4, basis="own geometry: an octagon and four corners"),
    "spools": Expected(1 + 4, pivots=4, basis="own geometry: a mitre at each corner of the thread"),
    "spools-straight": Expected(5 + 4 * 2),
    "jacobs-ladder": Expected(5 * 4 + 4 * 2, basis="own geometry: five four-patches, four half-square units"),
    "double-nine-patch": Expected(5 * 9 + 4),
    "split-nine-patch": Expected(6 + 3 * 2),
    "maple-leaf": Expected(3 + 1 + 4 * 2 + 3, basis="own geometry: four squares, four units, a stem of three"),
    "octagon": Expected(
        4 + 1 + 4 + 4, pivots=8, basis="own geometry: a Y at each corner of the square and tip of a side"
    ),
    # five-patch
    "sisters-choice": Expected(17 + 8 * 2),
    "cross-and-crown": Expected(4 * (2 + 2 * 2) + 4 + 1),
    "double-irish-chain-a": Expected(25),
    "double-irish-chain-b": Expected(1 + 4, pivots=4, basis="own geometry: four inset corners"),
    "double-irish-chain-b-strips": Expected(4 + 2 + 1),
    # seven-patch
    "bears-paw": Expected(4 * (1 + 4 * 2 + 1) + 4 + 1, basis="own geometry: four paws of ten, four bars, a centre"),
    "triple-irish-chain": Expected(49),
    # stars: a Y wherever two points and a piece of ground meet
    "eight-pointed-star": Expected(8 + 4 + 4, pivots=8),
    "star-of-bethlehem": Expected(32 + 8, pivots=8, basis="museum: 32 diamonds; and eight pieces of ground"),
    "large-star": Expected(648 + 8, pivots=8, basis="museum: 648 diamonds; and eight pieces of ground"),
    "star-of-the-east": Expected(8 * 2 + 8, pivots=8),
    "six-pointed-star": Expected(6 + 6, pivots=6),
    "large-six-pointed-star": Expected(6 * 4**2 + 6, pivots=6),
    "rolling-star": Expected(8 + 8 + 8 + 4, pivots=16, basis="own geometry: eight notches and eight tips"),
    "four-pointed-star": Expected(4 + 4, pivots=4),
    "kaleidoscope": Expected(8 + 4),
    "mariners-compass": Expected(
        16 + 16 + 1 + 4, curved=2, basis="own geometry: rays and ground straight, two circles"
    ),
    # log-cabins: a centre and n strips on each of four (or two) sides
    "log-cabin": Expected(1 + 4 * 4),
    "courthouse-steps": Expected(1 + 4 * 3),
    "pineapple": Expected(1 + 8 * 3 + 4, basis="own geometry: three rounds of eight, four corners"),
    "half-log-cabin": Expected(1 + 2 * 6),
    # baskets-and-houses
    "cake-stand": Expected(1 + 6 * 2 + 2 + 2 * 2 + 1 + 2),
    "handle-basket": Expected(3 + 3 + 1, curved=2),
    "little-red-house": Expected(5 + 4 + 3 + 5 + 2),
    "sailboat": Expected(3 * 6 + 1),
    # curves: every pie, melon or ring is one curved join
    "drunkards-path": Expected(16 * 2, curved=16),
    "falling-timbers": Expected(16 * 2, curved=16),
    "fan": Expected(6 + 2, curved=2),
    "orange-peel": Expected(
        4 + 4, curved=7, basis="own geometry: every seam is an arc, and joins are patches less one"
    ),
    "robbing-peter-to-pay-paul": Expected(4 * 5, curved=4 * 4),
    "snowball-curved": Expected(1 + 4, curved=4),
    # hexagons-and-diamonds: n rings of hexagons have 1 + 3 n (n + 1) patches and 6 n^2 Y-junctions
    "hexagon-flower-7": Expected(1 + 3 * 1 * 2, pivots=6 * 1),
    "hexagon-flower-19": Expected(1 + 3 * 2 * 3, pivots=6 * 4),
    "hexagon-flower-37": Expected(1 + 3 * 3 * 4, pivots=6 * 9),
    "tumbling-blocks": Expected(7 * 3, pivots=7 + 3, basis="own geometry: one in each box, and where three boxes meet"),
    "seven-sisters": Expected(7 * 12, pivots=7 * 6, basis="own geometry: seven six-pointed stars; tips meet in line"),
    "hexagon-star": Expected(1 + 6 + 6, basis="own geometry: six lines right across"),
    # strips
    "whirl": Expected(1 + 4, partials=1, basis="own geometry: a ring of four bars"),
    "rail-fence": Expected(16 * 3),
    "roman-stripe": Expected(5),
    "wild-goose-chase": Expected(6 * 3),
    "streak-of-lightning": Expected(16 * 2),
    # borders-and-lattices
    "attic-window": Expected(3, pivots=1, basis="own geometry: one mitre"),
    "mitred-frame": Expected(1 + 4, pivots=4, basis="own geometry: four mitres"),
    "straight-border": Expected(17 + 2 * 4),
    "sashing": Expected(21 + 13 + 13 + 17 + 12 + 9, basis="four blocks, 12 sashes, 9 cornerstones"),
    "sawtooth-border": Expected(17 + 4 * (1 + 6 * 2)),
    "on-point-set": Expected(5 * 9 + 4 + 4),
    # units
    "flying-geese": Expected(3),
    "half-square": Expected(2),
    "split-quarter-square": Expected(3),
    "rail": Expected(3),
    "diamond-rectangle": Expected(1 + 4),
    "melon": Expected(1 + 4, curved=4),
    "tumbling-block": Expected(3, pivots=1),
    # samplers
    "harbour-sampler": Expected(21 + 13 + 13 + 17),
    "furrows": Expected(4 * 17),
    "harbour-runner": Expected(17 + 16 + 52, pivots=8),
}
