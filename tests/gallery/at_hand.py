"""Blocks as a gallery is given them, and galleries made of them in this process, without a command line."""

from collections.abc import Iterable
from dataclasses import dataclass, field
from functools import cache
from pathlib import Path

from blocklang_gallery import blocklang_outputs

from blocklang import route
from blocklang.block import LengthUnit
from blocklang.cli.plugged import Plugged
from blocklang.cli.walking import Walk
from blocklang.diagnostics import SourceText
from blocklang.hooks import CannotMakeError, Output, OutputFile, OutputOptions
from blocklang.language import Overrides
from blocklang.plan import PlanOptions, SewingPlan
from tests.library.plans import BLOCKS

(GALLERY,) = blocklang_outputs()
#: Loaded once: a command does that too.
PLUGGED = Plugged()


@cache
def others() -> dict[str, Output]:
    """Return what can be made of one block."""
    return {output.name: output for output in PLUGGED.outputs()}


@dataclass
class AtHand:
    """A block at hand; `asked` remembers the sizes it was planned in and the outputs made of it."""

    name: str
    source: SourceText
    asked: list[str] = field(default_factory=list)

    def plan(self, size: str = "") -> SewingPlan | None:
        """Plan it."""
        self.asked.append(size or "own size")
        walk = Walk(PLUGGED)
        drafted = route.draft(self.source, Overrides(size or None), walk.library, walk.plugged.cells)
        return route.plan(route.check(drafted), PlanOptions(), walk.plugged.techniques()).plan

    def make(self, output: str, plan: SewingPlan, options: OutputOptions) -> tuple[OutputFile, ...]:
        """Make something of it."""
        self.asked.append(f"{output}.{options.format}")
        try:
            return others()[output].make(plan, options)
        except CannotMakeError:
            return ()


def of_library(name: str) -> AtHand:
    """Return a block of the library."""
    (path,) = BLOCKS.glob(f"*/{name}.block")
    return AtHand(name, SourceText(str(path), path.read_text(encoding="utf-8")))


def of_text(name: str, text: str) -> AtHand:
    """Return a block that is written out in a test."""
    return AtHand(name, SourceText(f"{name}.block", text))


def options_of(*settings: str, unit: LengthUnit = LengthUnit.INCH, **more: object) -> OutputOptions:
    """Return the options of a gallery with these settings, such as "sheets=no"."""
    pairs = tuple((name, value) for name, _, value in (setting.partition("=") for setting in settings))
    return OutputOptions("html", unit=unit, settings=pairs, **more)


def gallery_of(blocks: Iterable[AtHand], options: OutputOptions) -> dict[str, bytes]:
    """Return every file of a gallery by its path."""
    shares = [GALLERY.make_folder.of_each(block, options) for block in blocks]
    there = [share for share in shares if share is not None]
    whole = GALLERY.make_folder.of_all(tuple(share.about for share in there), options)
    return {file.name: file.data for file in (*(file for share in there for file in share.files), *whole)}


def write_gallery(folder: Path, files: dict[str, bytes]) -> None:
    """Write a gallery into a folder."""
    for name, data in files.items():
        (folder / name).parent.mkdir(parents=True, exist_ok=True)
        (folder / name).write_bytes(data)


SMALL = ("whirl", "eight-pointed-star", "nine-patch", "ohio-star", "drunkards-path", "harbour-sampler")


@cache
def small_gallery() -> dict[str, bytes]:
    """Return the files of a gallery of six blocks, without sheets."""
    return gallery_of([of_library(name) for name in SMALL], options_of("sheets=no"))
