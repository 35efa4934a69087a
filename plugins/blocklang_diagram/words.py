"""Every sentence on a diagram."""

from collections.abc import Sequence

from blocklang.wording import listed, say, say_number


def counted(name: str, cloth: str, count: int) -> str:
    """Say what a number stands for: a line of the cutting list."""
    return say("{name}: {count} of {cloth}", name=name, count=count, cloth=cloth)


def strip_set(fabrics: Sequence[str]) -> str:
    """Say which fabrics a strip set is sewn from, in order."""
    return say("a strip set of {fabrics}", fabrics=listed(fabrics))


def left_out(count: int) -> str:
    """Say that numbers are left out."""
    return say_number(
        "{count} patch is too small for a number here.", "{count} patches are too small for a number here.", count
    )


def taken_apart(parts: int, first: int, last: int) -> str:
    """Say what the moved units are, and in which steps they are joined."""
    if first == last:
        steps = say("step {number}", number=first)
    elif last == first + 1:
        steps = say("steps {first} and {last}", first=first, last=last)
    else:
        steps = say("steps {first} to {last}", first=first, last=last)
    return say("The block before {steps}: {count} parts.", steps=steps, count=parts)


def sizes(name: str) -> str:
    """Say what the strip shows."""
    return say("{name} at several finished sizes, all to one scale.", name=name)


def times_high(measure: str) -> str:
    """Say the second of two sizes, on a line of its own."""
    return say("by {measure}", measure=measure)


def sizes_shown(name: str) -> str:
    """Say what the picture shows."""
    return say("{name}: several sizes", name=name)


def apart_shown(name: str) -> str:
    """Say what the picture shows."""
    return say("{name}: laid apart", name=name)


def names_shown(name: str) -> str:
    """Say what the picture shows."""
    return say("{name}: the patches and their names", name=name)
