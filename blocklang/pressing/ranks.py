"""What a good pressing is measured by, the most important first."""

from enum import IntEnum


class Rank(IntEnum):
    """One measure of a pressing; a lower rank is never traded for any number of higher ones.

    The author's own lines stand above all of them: they are followed, and what they cost is told.
    """

    CLIPS = 0  # joins that change side where nothing is spun, and have to be clipped there
    LOCKS = 1  # junctions that could lock and do not
    CENTRES = 2  # junctions of five or more seams that are not spun, by the number of their seams
    LIKENESS = 3  # units of a step that are not pressed like the first ones
    CROSSES = 4  # plain crosses that are not spun
    PREFERENCES = 5  # seams pressed against a preference, by its weight


#: A junction with this many seams piles up more layers than a plain cross, and is spun before any of those.
MANY_SEAMS = 5

#: A junction with fewer seams than this has nothing to gain from spinning.
SPIN_SEAMS = 4
