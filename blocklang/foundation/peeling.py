"""Whether patches can be one section: taking off, one after another, what one straight line cuts off."""

from collections.abc import Iterator

from blocklang.foundation.lines import Lay, Line, patches_of


def is_section(lay: Lay, members: int) -> bool:
    """Tell whether patches can be sewn to one paper.

    Taking off any patch that can be sewn last never spoils the rest (docs/foundation.md), so no choice is undone.
    """
    core = core_of(lay, members)
    return not core & (core - 1)


def core_of(lay: Lay, members: int, kept: int = 0) -> int:
    """Return what is left when no more patches can be taken off; those in `kept` are never taken."""
    waiting = list(patches_of(members & ~kept))
    while waiting and members & (members - 1):
        patch = waiting.pop()
        if members >> patch & 1 and last_line(lay, members, patch) is not None:
            members &= ~(1 << patch)
            waiting = list(patches_of(members & ~kept))
    return members


def last_line(lay: Lay, members: int, patch: int) -> Line | None:
    """Return the line along which a patch of a section can have been sewn last, or None."""
    rest = members & ~(1 << patch)
    return next((line for line in lay.lines[patch] if lay.can_add(line, rest)), None)


def additions(lay: Lay, members: int) -> Iterator[tuple[int, Line]]:
    """Yield the patches that can be sewn to a section next, ascending, each with its line."""
    around = 0
    for patch in patches_of(members):
        around |= lay.near[patch]
    for patch in patches_of(around & ~members):
        for line in lay.lines[patch]:
            if lay.can_add(line, members):
                yield patch, line
                break
