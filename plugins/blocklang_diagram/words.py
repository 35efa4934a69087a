"""Every sentence on a diagram."""

from collections.abc import Sequence


def counted(name: str, cloth: str, count: int) -> str:
    """Say what a number stands for: a line of the cutting list."""
    return f"{name}: {count} of {cloth}"


def strip_set(fabrics: Sequence[str]) -> str:
    """Say which fabrics a strip set is sewn from, in order."""
    return f"a strip set of {', '.join(fabrics[:-1])} and {fabrics[-1]}"


def left_out(count: int) -> str:
    """Say that numbers are left out."""
    patches = "1 patch is" if count == 1 else f"{count} patches are"
    return f"{patches} too small for a number here."


def taken_apart(parts: int, first: int, last: int) -> str:
    """Say what the moved units are, and in which steps they are joined."""
    steps = f"step {first}" if first == last else f"steps {first} {'and' if last == first + 1 else 'to'} {last}"
    return f"The block before {steps}: {parts} parts."


def sizes(name: str) -> str:
    """Say what the strip shows."""
    return f"{name} at several finished sizes, all to one scale."
