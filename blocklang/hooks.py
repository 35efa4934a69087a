"""What a plugin may offer: hook specifications that only declare frozen descriptions, and those descriptions."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from enum import StrEnum
from pathlib import Path
from typing import TYPE_CHECKING, Any, Protocol

import pluggy

from blocklang.block import LengthUnit
from blocklang.diagnostics import Diagnostic, SourceText
from blocklang.plan import SewingPlan
from blocklang.wording import ENGLISH, Language

if TYPE_CHECKING:
    from blocklang.cutting.methods import CuttingMethod
    from blocklang.language import Cell
    from blocklang.pressing.preferences import PressingPreference

PROJECT = "blocklang"

hookspec = pluggy.HookspecMarker(PROJECT)
hookimpl = pluggy.HookimplMarker(PROJECT)


class Paper(StrEnum):
    """The paper that pages are made for."""

    LETTER = "letter"
    A4 = "a4"


class CannotMakeError(Exception):
    """Raised by an output that cannot be made as asked; its text is one plain sentence for the person who asked."""


@dataclass(frozen=True, slots=True)
class OutputOptions:
    """What the person chose about an output beyond the plan; `settings` holds what only this output understands.

    `language.tell(contents)` says the contents of an output in the language that was asked for.
    """

    format: str
    paper: Paper = Paper.LETTER
    unit: LengthUnit = LengthUnit.INCH
    copies: int = 1
    black_and_white: bool = False
    large_print: bool = False
    settings: tuple[tuple[str, str], ...] = ()
    language: Language = ENGLISH

    def setting(self, name: str, default: str = "") -> str:
        """Return the setting of that name, the last one given when there are several."""
        return dict(self.settings).get(name, default)


@dataclass(frozen=True, slots=True)
class OutputFile:
    """One file of an output.

    `name` is "" for the file that is written where the person said; any other name ("step-3.svg") is written beside
    it with the stem of that file in front. Exactly one file of an output has no name. In an output that is a folder
    every file has a name, which may lie deeper ("blocks/star.html").
    """

    name: str
    data: bytes


@dataclass(frozen=True, slots=True)
class Setting:
    """Something that one output lets the person choose with --set name=value; no `choices` means any text."""

    name: str
    summary: str
    choices: tuple[str, ...] = ()


class BlockAtHand(Protocol):
    """A block that a folder is being made of; it is planned when that is asked for, at any size.

    Whatever is wrong with it is told to the person who asked, so no answer here needs to be explained.
    """

    @property
    def name(self) -> str:
        """Return what its file is called, without .block."""

    @property
    def source(self) -> SourceText:
        """Return the block file as it was read."""

    def plan(self, size: str = "") -> SewingPlan | None:
        """Return its plan, at another size ("6in") when one is given; None when it cannot be planned."""

    def make(self, output: str, plan: SewingPlan, options: OutputOptions) -> tuple[OutputFile, ...]:
        """Return the files of another output, by its name; none when it cannot be made."""


@dataclass(frozen=True, slots=True)
class Share:
    """What one block adds to a folder: its files, and in `about` whatever the files of the whole have to know of it.

    It is made in any process, so `about` must be a value that can be pickled.
    """

    files: tuple[OutputFile, ...] = ()
    about: Any = None


@dataclass(frozen=True, slots=True)
class FolderMaker:
    """How an output that is a whole folder is made.

    `of_each` is called for every block that can be read, in several processes at once and in no order; None leaves the
    block out. `of_all` then gets what the shares say about the blocks, in the order in which they were typed.
    """

    of_each: Callable[[BlockAtHand, OutputOptions], Share | None]
    of_all: Callable[[tuple[Any, ...], OutputOptions], tuple[OutputFile, ...]]


def not_of_one_plan(plan: SewingPlan, options: OutputOptions) -> tuple[OutputFile, ...]:  # noqa: ARG001
    """Say that an output writes a folder; what stands for `make` in such an output."""
    raise CannotMakeError("It is a whole folder of files: make it with `blocklang make`.")


@dataclass(frozen=True, slots=True)
class Output:
    """Something that can be made from a plan.

    `name` is what is typed, in lower case with hyphens; `formats` are file name extensions without the dot; `make`
    returns the files of the format it is asked for, the same bytes every time. An output that can put several blocks
    into one document has `make_several` too, which gets their plans in the order in which they were typed. An output
    that is a whole folder has `make_folder` instead of `make`.
    """

    name: str
    formats: tuple[str, ...]
    default_format: str
    summary: str
    make: Callable[[SewingPlan, OutputOptions], tuple[OutputFile, ...]] = not_of_one_plan
    settings: tuple[Setting, ...] = ()
    make_several: Callable[[tuple[SewingPlan, ...], OutputOptions], tuple[OutputFile, ...]] | None = None
    make_folder: FolderMaker | None = None


@dataclass(frozen=True, slots=True)
class Check:
    """A rule that a finished plan is held against; `run` returns what it has to say about it."""

    name: str
    summary: str
    run: Callable[[SewingPlan], tuple[Diagnostic, ...]]


@hookspec
def blocklang_outputs() -> Sequence[Output]:
    """Offer outputs: sheets, lists, drawings, data."""
    return ()


@hookspec
def blocklang_cutting_methods() -> "Sequence[CuttingMethod]":
    """Offer ways to cut a shape."""
    return ()


@hookspec
def blocklang_checks() -> Sequence[Check]:
    """Offer rules that every finished plan is held against."""
    return ()


@hookspec
def blocklang_cells() -> "Sequence[Cell]":
    """Offer words for the cells of `rows`."""
    return ()


@hookspec
def blocklang_library_folders() -> Sequence[Path]:
    """Offer folders of block files."""
    return ()


@hookspec
def blocklang_pressing_preferences() -> "Sequence[PressingPreference]":
    """Offer reasons to press a seam one way rather than the other."""
    return ()
