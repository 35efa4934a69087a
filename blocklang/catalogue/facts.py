"""Facts about a block that people look for, as a frozen value."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Facts:
    """One block as a library knows it; lengths in ticks.

    `set_in` counts the seams that are set in, `pivots` the places where the needle turns in them, `partials` the seams
    sewn in part, `curves` the curved joins, `steps` the different steps, `smallest` is how wide the narrowest patch is.
    """

    title: str
    family: str
    shape: str
    unit: str
    width: int
    height: int
    fabrics: int
    patches: int
    seams: int
    set_in: int
    pivots: int
    partials: int
    curves: int
    steps: int
    smallest: int
    difficulty: str
    because: tuple[str, ...]
    author: str
    licence: str
    source: str
