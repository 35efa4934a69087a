"""Every sentence about a quilt."""

from typing import Final

from blocklang.wording import say, say_number

NO_RECTANGLE: Final = "Blocks are sewn in rows only where their outline is a rectangle, and this one's is not."
NOT_EVEN: Final = "A barn raising is laid out about the middle: ask for an even number of rows and of columns."
NOT_SQUARE: Final = (
    "Only a square block fits beside others when it is turned a quarter: ask for another turning, such as furrows."
)
TOO_MANY: Final = "So many blocks have too many patches for one picture: ask for fewer rows or columns."
MIRRORED: Final = say("A mirrored block is another block to cut and sew, unless the block is its own mirror image.")


def not_a_count(name: str, most: int) -> str:
    """Say what a number of rows or columns is."""
    return f"The number of {name} is a whole number from 1 to {most}: write --set {name}=5."


def counted(name: str, rows: int, columns: int) -> str:
    """Say how many blocks there are."""
    in_row = say_number("{count} block", "{count} blocks", columns)
    return say_number(
        "{name}: {count} row of {in_row}, {all} in all.",
        "{name}: {count} rows of {in_row}, {all} in all.",
        rows,
        name=name,
        in_row=in_row,
        all=rows * columns,
    )


def measured(width: str, height: str) -> str:
    """Say how large the quilt is."""
    return say(
        "The quilt top measures {width} wide and {height} high, finished, before borders and binding.",
        width=width,
        height=height,
    )


def title(name: str) -> str:
    """Say what the picture is, for those who cannot see it."""
    return say("{name}: a quilt of this block", name=name)
