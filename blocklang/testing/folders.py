"""Trying an output that is a whole folder: every share twice, in two orders, and what belongs to all of them."""

import pickle
from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Any

from blocklang.calling import Made, MadeShare, make_rest, make_share
from blocklang.diagnostics import SourceText
from blocklang.hooks import Output, OutputFile, OutputOptions, Share
from blocklang.plan import SewingPlan
from blocklang.testing.formats import fault_of_bytes
from blocklang.testing.holding import NotHeldError, hold

if TYPE_CHECKING:
    from blocklang.testing.workbench import Workbench


@dataclass(frozen=True, slots=True)
class BlockOnBench:
    """A block that a folder is being made of, as `BlockAtHand` says."""

    name: str
    bench: "Workbench"

    @property
    def source(self) -> SourceText:
        """The block file as it was read."""
        return self.bench.planner.source(self.name)

    def plan(self, size: str = "") -> SewingPlan | None:
        """Return its plan, at another size when one is given; None when it cannot be planned."""
        try:
            return self.bench.plan(self.name, size=size or None)
        except NotHeldError:
            return None

    def make(self, output: str, plan: SewingPlan, options: OutputOptions) -> tuple[OutputFile, ...]:
        """Return the files of another installed output, by its name; none when it cannot be made."""
        from blocklang.calling import make_files

        other = self.bench.planner.output(output)
        return () if other is None else make_files(other, plan, options).files


def try_folder(output: Output, blocks: Sequence[BlockOnBench]) -> tuple[OutputFile, ...]:
    """Make a folder in every format, and return the files of its default format."""
    usual: tuple[OutputFile, ...] = ()
    for form in output.formats:
        files = _made(output, blocks, OutputOptions(form))
        usual = files if form == output.default_format else usual
    return usual


def _made(output: Output, blocks: Sequence[BlockOnBench], options: OutputOptions) -> tuple[OutputFile, ...]:
    told = f"The output `{output.name}` ({options.format})"
    shares = [_share(output, block, options) for block in blocks]
    again = [_share(output, block, options) for block in reversed(blocks)][::-1]
    hold(shares == again, f"{told} gives another share of a block when the blocks come in another order.")
    kept = [share for share in shares if share is not None]
    about = tuple(share.about for share in kept)
    rest, rest_again = _rest(output, about, options), _rest(output, about, options)
    hold(rest == rest_again, f"{told} gives other files of the whole the second time.")
    files = (*(file for share in kept for file in share.files), *rest)
    for file in files:
        fault = fault_of_bytes(file.data, file.name.rpartition(".")[2])
        hold(not fault, f"{told}: the file {file.name} is not right: {fault}.")
    names = [file.name for file in files]
    hold(len(set(names)) == len(names), f"{told} gives two files of one name.")
    return files


def _share(output: Output, block: BlockOnBench, options: OutputOptions) -> Share | None:
    made: MadeShare = make_share(output, block, options)
    hold(not made.diagnostics, f"The block {block.name}: " + " ".join(one.found for one in made.diagnostics))
    share = made.share
    return None if share is None else replace(share, about=_carried(output, share.about))


def _carried(output: Output, about: Any) -> Any:
    """Carry a value from one process to another, as happens when a folder is made by several."""
    try:
        return pickle.loads(pickle.dumps(about))  # noqa: S301 - written a moment ago by this same process
    except Exception as fault:
        raise NotHeldError(f"The output `{output.name}` gives in `about` what cannot be pickled: {fault}") from fault


def _rest(output: Output, about: tuple[Any, ...], options: OutputOptions) -> tuple[OutputFile, ...]:
    made: Made = make_rest(output, about, options)
    hold(not made.diagnostics, " ".join(one.found for one in made.diagnostics))
    return made.files
