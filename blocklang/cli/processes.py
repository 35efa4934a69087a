"""Working on blocks in several processes at once; answers come in the order in which the blocks were typed."""

import os
import signal
import threading
from collections import deque
from collections.abc import Callable, Iterable, Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any, TypeVar

from blocklang.cli.asked import Asked, keep_choices, kept_choices
from blocklang.cli.failing import STOPPED, CommandFault
from blocklang.cli.items import Item
from blocklang.cli.making import Bench, Finished, Tell
from blocklang.cli.walking import Walk
from blocklang.cli.wanted import Wanted, Wish

if TYPE_CHECKING:
    from concurrent.futures import ProcessPoolExecutor

    from blocklang.calling import MadeShare

Given = TypeVar("Given")
Answer = TypeVar("Answer")
Work = tuple[Item, tuple[Wanted, ...]]

#: More would mostly wait for each other's memory.
MOST_PROCESSES = 8
#: A process takes as long to start as two or three blocks take to make (1 s against 0.4 s for a sheet and a list).
WORTH_A_PROCESS = 6

#: The bench of a process that was started here.
_benches: list[Bench] = []


def processes_for(items: int, asked: int | None) -> int:
    """Return how many processes work on so many blocks: those asked for, or as many as are worth their start."""
    worth = min(os.cpu_count() or 1, MOST_PROCESSES, items // WORTH_A_PROCESS)
    return max(1, min(asked or worth, items))


@dataclass(frozen=True, slots=True)
class Workshop:
    """One bench here or, with a pool, one in each process of it; what is made does not depend on which."""

    bench: Bench
    pool: "ProcessPoolExecutor | None" = None

    def make(self, work: Iterable[Work], tell: Tell) -> Iterator[Finished]:
        """Plan each block and make the outputs of it; plans stay in the process that made them."""
        if self.pool is None:
            return (self.bench.make(item, outputs, tell) for item, outputs in work)
        asked = [(item, tuple(one.wish for one in outputs)) for item, outputs in work]
        return _told(_answers(self.pool, _make, asked), [item for item, _ in asked], tell)

    def share(self, items: tuple[Item, ...], one: Wanted, tell: Tell) -> "Iterator[MadeShare]":
        """Have each block's share of a folder made."""
        if self.pool is None:
            return _told((self.bench.share(item, one) for item in items), items, tell)
        return _told(_answers(self.pool, _share, [(item, one.wish) for item in items]), items, tell)


@contextmanager
def workshop(bench: Bench, processes: int) -> Iterator[Workshop]:
    """Open a workshop; one process means this one."""
    if processes < 2:
        yield Workshop(bench)
        return
    from concurrent.futures import ProcessPoolExecutor
    from concurrent.futures.process import BrokenProcessPool
    from multiprocessing import active_children, get_context

    # Spawned, not forked: it works alike on every system, and no thread of a library is caught half-way.
    pool = ProcessPoolExecutor(processes, get_context("spawn"), _begin, (bench.asked, kept_choices()))
    try:
        yield Workshop(bench, pool)
    except BrokenProcessPool as fault:
        raise CommandFault(
            "A process that was working on the blocks ended by itself; perhaps memory was short. --processes 1 takes least."
        ) from fault
    except BaseException:
        for process in active_children():
            process.terminate()  # what they are working on is not wanted any more
        raise
    finally:
        pool.shutdown()


def _answers(
    pool: "ProcessPoolExecutor", function: Callable[[Given], Answer], given: Iterable[Given]
) -> Iterator[Answer]:
    """Have everything worked on, and give the answers in order, each forgotten once it is given.

    The pool's own way to do so takes back what is not done when we are stopped, which the pool cannot then count as lost.
    """
    waiting = deque(pool.submit(function, one) for one in given)
    while waiting:
        yield waiting.popleft().result()


def _told(answers: Iterable[Answer], items: Iterable[Item], tell: Tell) -> Iterator[Answer]:
    """Hand on answers, and say of which block the next one is."""
    waiting = iter(answers)
    for item in items:
        tell(f"Making {item.stem or item.file}")
        yield next(waiting)


def _begin(asked: Asked, choices: Mapping[str, Any]) -> None:
    """Set up the bench of a process; it leaves when it is stopped or when the process that started it is gone."""
    signal.signal(signal.SIGINT, lambda *_: os._exit(STOPPED))
    threading.Thread(target=_leave_with_parent, daemon=True).start()
    keep_choices(choices)
    _benches.append(Bench(Walk(), asked))


def _leave_with_parent() -> None:
    from multiprocessing import parent_process

    parent = parent_process()
    if parent is not None:
        parent.join()
        os._exit(STOPPED)


def _make(work: tuple[Item, tuple[Wish, ...]]) -> Finished:
    (bench,), (item, wishes) = _benches, work
    finished = bench.make(item, tuple(wish.granted(bench.walk.outputs()) for wish in wishes), _silently)
    return Finished(finished.made, finished.diagnostics)


def _share(work: tuple[Item, Wish]) -> "MadeShare":
    (bench,), (item, wish) = _benches, work
    return bench.share(item, wish.granted(bench.walk.outputs()))


def _silently(_: str) -> None:
    """Say nothing: the process that started this one does."""
