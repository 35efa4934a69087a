"""Every sentence about a quilt."""

from typing import Final

NO_RECTANGLE: Final = "Blocks are sewn in rows only where their outline is a rectangle, and this one's is not."
NOT_EVEN: Final = "A barn raising is laid out about the middle: ask for an even number of rows and of columns."
NOT_SQUARE: Final = (
    "Only a square block fits beside others when it is turned a quarter: ask for another turning, such as furrows."
)
TOO_MANY: Final = "So many blocks have too many patches for one picture: ask for fewer rows or columns."
MIRRORED: Final = "A mirrored block is another block to cut and sew, unless the block is its own mirror image."


def not_a_count(name: str, most: int) -> str:
    """Say what a number of rows or columns is."""
    return f"The number of {name} is a whole number from 1 to {most}: write --set {name}=5."


def counted(name: str, rows: int, columns: int) -> str:
    """Say how many blocks there are."""
    in_row = "1 block" if columns == 1 else f"{columns} blocks"
    return f"{name}: {rows} {'row' if rows == 1 else 'rows'} of {in_row}, {rows * columns} in all."


def measured(width: str, height: str) -> str:
    """Say how large the quilt is."""
    return f"The quilt top measures {width} wide and {height} high, finished, before borders and binding."


def title(name: str) -> str:
    """Say what the picture is, for those who cannot see it."""
    return f"{name}: a quilt of this block"
