"""The one place where "the same" and "straight" are given a size."""

from typing import Final

#: Ticks in an inch: the least common multiple of 1 to 16, so that a block drawn on a grid of up to sixteen
#: cells to the inch, and every eighth and sixteenth, is exact.
TICKS_PER_INCH: Final = 720_720

#: Corners no further apart than this (about 1/23,000 in) are one junction. Snapping moves a point by half a tick.
SAME_POINT: Final = 32

#: Corners further apart than `SAME_POINT` but nearer than this (1/32 in) are a drafting slip, never a seam.
NEAR_MISS: Final = TICKS_PER_INCH // 32

#: Two seams run on into each other when they turn by less than this many radians (about 1/17 degree).
STRAIGHT_ANGLE: Final = 1e-3

#: A curve is drawn, measured and overlaid as chords that leave it by no more than this (1/1000 in).
CHORD_ERROR: Final = TICKS_PER_INCH // 1000

#: A cut size may lie this much (1/2000 in) beyond a mark of the ruler and still be read off at that mark.
RULER_SLACK: Final = TICKS_PER_INCH // 2000
