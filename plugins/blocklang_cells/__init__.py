"""More cells for `rows`: a square in a square, a snowball, and rails of three strips."""

from blocklang.hooks import hookimpl
from blocklang.language import Cell


@hookimpl
def blocklang_cells() -> tuple[Cell, ...]:
    """Offer the cells."""
    from blocklang_cells.cornered import SNOWBALL, SQUARE_IN_SQUARE
    from blocklang_cells.rails import RAILS_ACROSS, RAILS_UPRIGHT

    return (SQUARE_IN_SQUARE, SNOWBALL, RAILS_ACROSS, RAILS_UPRIGHT)
