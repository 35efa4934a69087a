"""What counts as a crash: anything thrown, more than five seconds of processor time, a broken promise."""

import hashlib
import signal
import time
import traceback
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path

MOST_SECONDS = 5.0


class Hang(BaseException):
    """Raised out of whatever has run for too long; no `except Exception` on the way can keep it."""


class PromiseBrokenError(AssertionError):
    """Something that must always be true was not."""


def promise(kept: bool, what: str) -> None:
    """Complain when something that must always be true is not."""
    if not kept:
        raise PromiseBrokenError(what)


@contextmanager
def in_time(seconds: float = MOST_SECONDS) -> Iterator[None]:
    """Break off what takes more processor time than this, and complain of what could not be broken off."""

    def broken_off(*_: object) -> None:
        raise Hang(f"more than {seconds:g} s of processor time")

    before = signal.signal(signal.SIGPROF, broken_off)
    begun = time.process_time()
    signal.setitimer(signal.ITIMER_PROF, seconds)
    try:
        yield
    finally:
        signal.setitimer(signal.ITIMER_PROF, 0)
        signal.signal(signal.SIGPROF, before)
    if time.process_time() - begun > seconds:
        broken_off()


class Crashes:
    """Keeps one input for each place where something went wrong, in a folder beside the trace."""

    def __init__(self, folder: Path) -> None:
        """Keep them in a folder, which is made when there is something to keep."""
        self.folder = folder
        self.places: dict[str, int] = {}

    def watch(self, run: Callable[[bytes], None], data: bytes, seconds: float = MOST_SECONDS) -> None:
        """Run a target on one input and keep the input if it crashes."""
        try:
            with in_time(seconds):
                run(data)
        except (KeyboardInterrupt, SystemExit):
            raise
        except BaseException as fault:  # noqa: BLE001 - whatever it is, it is a finding
            self._keep(data, fault)

    def _keep(self, data: bytes, fault: BaseException) -> None:
        place = place_of(fault)
        self.places[place] = self.places.get(place, 0) + 1
        if self.places[place] == 1:
            name = hashlib.sha256(place.encode()).hexdigest()[:12]
            self.folder.mkdir(parents=True, exist_ok=True)
            (self.folder / f"{name}.input").write_bytes(data)
            (self.folder / f"{name}.txt").write_text("".join(traceback.format_exception(fault)), encoding="utf-8")


def place_of(fault: BaseException) -> str:
    """Return what tells one crash from another: its kind, and where in our own code it was thrown."""
    frames = [f for f in traceback.extract_tb(fault.__traceback__) if "blocklang" in f.filename]
    last = frames[-1] if frames else None
    if isinstance(fault, Hang):
        return f"Hang in {frames[min(len(frames), 6) - 1].name}" if frames else "Hang"
    said = str(fault).partition(":")[0][:80] if isinstance(fault, PromiseBrokenError) else ""
    where = f"{last.filename.rpartition('blocklang')[2]}:{last.lineno}" if last else "outside"
    return f"{type(fault).__name__} at {where} {said}".strip()
