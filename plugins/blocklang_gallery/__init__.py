"""The output `gallery`: a library as a folder of pages, to choose blocks from and take their sheets."""

from typing import TYPE_CHECKING

from blocklang.hooks import (
    BlockAtHand,
    CannotMakeError,
    FolderMaker,
    Output,
    OutputFile,
    OutputOptions,
    Setting,
    Share,
    hookimpl,
)

if TYPE_CHECKING:
    from blocklang_gallery.cards import Card


@hookimpl
def blocklang_outputs() -> tuple[Output, ...]:
    """Offer the gallery."""
    return (
        Output(
            name="gallery",
            formats=("html",),
            default_format="html",
            summary="A folder of pages: every block with its picture, sizes, colours and sheets, and a page to find them.",
            settings=(
                Setting("title", "What the first page is headed."),
                Setting("sizes", "Which finished sizes each page tells beside the block's own, such as 6in,9in,12in."),
                Setting("sheets", "Whether sewing sheets are made too, which takes most of the time.", ("yes", "no")),
            ),
            make_folder=FolderMaker(of_each=make_block_page, of_all=make_first_page),
        ),
    )


def make_block_page(block: BlockAtHand, options: OutputOptions) -> Share | None:
    """Return the page of one block with everything that can be taken from it; None when it cannot be planned."""
    from blocklang_gallery.asking import read_choices
    from blocklang_gallery.block_page import make_page

    try:
        choices = read_choices(options)
    except CannotMakeError:
        return Share()  # told once, by the first page, and not for every block
    return make_page(block, options, choices)


def make_first_page(cards: "tuple[Card, ...]", options: OutputOptions) -> tuple[OutputFile, ...]:
    """Return the page on which blocks are found."""
    from blocklang_gallery.asking import read_choices
    from blocklang_gallery.first_page import write_first_page

    choices = read_choices(options)
    return (OutputFile("index.html", write_first_page(cards, options, choices).encode()),)
