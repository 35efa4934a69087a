"""What can be taken from the page of a block: the files of other outputs, and the block file itself."""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from blocklang.hooks import BlockAtHand, OutputFile, OutputOptions
from blocklang.plan import SewingPlan
from blocklang_gallery import words

SHEETS = "sewing-sheet"


@dataclass(frozen=True, slots=True)
class Taken:
    """One file to take: where it lies, what it is called, what it is for, and how large it is."""

    file: OutputFile
    title: str
    purpose: str
    size: str

    @property
    def name(self) -> str:
        """The file's own name."""
        return self.file.name.rpartition("/")[2]

    @property
    def is_block_file(self) -> bool:
        """Whether it is the block file itself."""
        return self.name.endswith(".block")

    @property
    def kind(self) -> str:
        """The kind of file, as people call it."""
        return words.TEXT_FILE if self.is_block_file else self.name.rpartition(".")[2].upper()


def take_all(
    block: BlockAtHand, plan: SewingPlan, options: OutputOptions, folder: str, with_sheets: bool
) -> tuple[Taken, ...]:
    """Return every file that goes with a block; what cannot be made of it is left out."""
    stem = f"{folder}/{folder.rpartition('/')[2]}"
    made = (
        one
        for entry in words.TAKEN
        if with_sheets or entry[0] != SHEETS
        for one in _made(block, plan, options, stem, entry)
    )
    source = OutputFile(f"{stem}.block", block.source.text.encode())
    return (*made, _taken(source, *words.BLOCK_FILE))


def _made(
    block: BlockAtHand, plan: SewingPlan, options: OutputOptions, stem: str, entry: tuple[str, str, str, str]
) -> Iterator[Taken]:
    output, form, title, purpose = entry
    files = block.make(output, plan, replace(options, format=form, settings=()))
    main = next((file for file in files if not file.name), None)
    if main is not None:
        yield _taken(OutputFile(f"{stem}-{output}.{form}", main.data), title, purpose)


def _taken(file: OutputFile, title: str, purpose: str) -> Taken:
    return Taken(file, title, purpose, words.kilobytes(len(file.data)))
