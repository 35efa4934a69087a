"""Every bound on what a file or a person may ask for, in one place; what goes past one is told so.

How long a search looks for something better is no such bound, and stands beside the search.
"""

from typing import Final

#: The largest file, in bytes. Twenty thousand patches written out one by one take about half of it.
MOST_BYTES: Final = 2_000_000
#: Words, numbers and signs in one file.
MOST_WORDS: Final = 90_000
#: The longest name, in characters.
LONGEST_NAME: Final = 60
#: The longest text in quotes, in characters.
LONGEST_TEXT: Final = 500
#: The longest number as written, in characters.
LONGEST_NUMBER: Final = 18
#: Groups inside groups.
DEEPEST_GROUPS: Final = 6
#: Operations inside operations in one piece of arithmetic; a sum of more terms is split over several `let` lines.
DEEPEST_ARITHMETIC: Final = 50
#: Bits of an exact fraction before it goes on as a decimal.
MOST_FRACTION_BITS: Final = 160
#: The largest value that arithmetic may reach.
LARGEST_VALUE: Final = 1_000_000_000
#: The largest finished width or height, and the furthest a point may lie from the lower left, in inches.
LARGEST_LENGTH: Final = 1_000
#: The smallest finished width or height, in inches.
SMALLEST_LENGTH: Final = 0.25
#: Members of one turn group.
MOST_TURNS: Final = 360
#: Patches in a block, placed blocks included.
MOST_PATCHES: Final = 20_000
#: Named points in a block, placed blocks included.
MOST_POINTS: Final = 40_000
#: Corners of one outline.
MOST_CORNERS: Final = 60
#: Corners of all outlines that are written out point by point.
MOST_WRITTEN_CORNERS: Final = 60_000
#: Fabrics in a block, placed blocks included; also the stripes of one patch.
MOST_FABRICS: Final = 200
#: Statements about the sewing (`seam`, `set in`, `sew`, `partial`, `press`, `spin`), repeats counted.
MOST_WISHES: Final = 20_000
#: Lines that one shape is cut along.
MOST_CUTS: Final = 60
#: Blocks placed in blocks placed in blocks.
DEEPEST_PLACING: Final = 6
#: Messages about one file; the rest is only counted.
MOST_MESSAGES: Final = 20
#: Names in one statement about the sewing.
MOST_NAMES: Final = 500
#: Names that a misspelt one is compared with; beyond, looking takes longer than a writer should wait.
MOST_COMPARED: Final = 2_000
#: Blocks that one plan is made for.
MOST_COPIES: Final = 10_000

#: The largest pack, in bytes.
MOST_PACK_BYTES: Final = 20_000_000
#: Block files in one pack.
MOST_PACK_BLOCKS: Final = 2_000
#: All the files of a pack together when they are unfolded, in bytes.
MOST_PACK_TEXT: Final = 40_000_000
#: The largest manifest of a pack, in bytes.
MOST_MANIFEST_BYTES: Final = 5_000_000
#: The largest signature of a pack and the largest key file, in bytes.
MOST_KEY_BYTES: Final = 4_000
#: How many times larger than in the pack a file may be when it is unfolded; plain block files stay below twenty.
MOST_UNFOLDING: Final = 100
#: The longest name of a file in a pack, folders included, in characters.
LONGEST_FILE_NAME: Final = 120
#: Folders inside folders in a pack.
DEEPEST_FOLDERS: Final = 4
#: Packs and block files that the library lists; the rest is passed over.
MOST_LISTED: Final = 50_000
#: The largest index that is read back, in bytes.
MOST_INDEX_BYTES: Final = 200_000_000
