"""`make --watch`: blocks are made again whenever a file is saved, and what changed is told in sewing terms."""

import signal
from dataclasses import dataclass, field
from pathlib import Path

import click

from blocklang.cli.asked import Errand
from blocklang.cli.errands import make_documents
from blocklang.cli.failing import FINE, CommandFault, say
from blocklang.cli.followed import Followed, files_of, told
from blocklang.cli.items import Item
from blocklang.cli.jobs import Job, Layout, lay_out
from blocklang.cli.making import Bench
from blocklang.cli.opening import STDIN
from blocklang.cli.plugged import Plugged
from blocklang.cli.results import Results
from blocklang.cli.stamps import Stamp, stamps, wait_for_change
from blocklang.cli.waiting import going_through
from blocklang.cli.walking import Walk
from blocklang.cli.wanted import Named
from blocklang.cli.writing import STDOUT


def watch(errand: Errand, plugged: Plugged, names: tuple[Named, ...]) -> int:
    """Make everything, and again what changes, until the person ends it, which is no fault."""
    if STDIN in errand.files or Path(errand.place) == STDOUT:
        raise click.UsageError("Only files are watched, and what is made goes into files: name them.")
    watched = Watch(errand, plugged, names)
    before = signal.signal(signal.SIGTERM, signal.default_int_handler)  # nothing is left half-written then either
    try:
        watched.make_new()
        say("Watching for changes; Ctrl-C ends.")
        while True:
            wait_for_change(watched.stamps)
            watched.make_new()
    except KeyboardInterrupt:
        return FINE
    finally:
        signal.signal(signal.SIGTERM, before)


@dataclass(slots=True)
class Watch:
    """What is watched: every block as it was last seen, and the stamps of all files and folders that matter."""

    errand: Errand
    plugged: Plugged
    names: tuple[Named, ...]
    stamps: dict[str, Stamp] = field(default_factory=dict)
    followed: dict[str, Followed] = field(default_factory=dict)
    written: dict[Path, Job] = field(default_factory=dict)

    def make_new(self) -> None:
        """Make again whatever is drawn with a file that changed; what cannot be made is told, and waited for."""
        self.stamps = now = stamps(self.stamps)
        try:
            self._make(Walk(self.plugged), {path for one in self.followed.values() for path in one.changed(now)})
        except CommandFault as fault:
            say(str(fault))
        except click.ClickException as fault:
            say(fault.format_message())

    def _make(self, walk: Walk, changed: set[str]) -> None:
        layout = lay_out(self.errand, walk.library, self.names)
        bench = Bench(walk, self.errand.asked)
        again = [index for index, item in enumerate(layout.items) if self._is_new(item, bench, changed)]
        jobs = tuple(job for index in again for job in layout.by_item[index]) + (layout.documents if again else ())
        with going_through(len(jobs)) as going:
            known = set(self.plugged.diagnostics)
            results = Results(layout.folder, self.errand.force, going, known, written=self.written)
            for index in again:
                self._make_one(layout, index, bench, results, changed)
            if again:
                plans = (self.followed[item.file].plan for item in layout.items)
                make_documents(layout, bench, tuple(plan for plan in plans if plan is not None), results)
        results.close(jobs)

    def _is_new(self, item: Item, bench: Bench, changed: set[str]) -> bool:
        """Say whether a block is to be made again, and take note of the files that it is drawn with."""
        known = self.followed.get(item.file)
        if known is not None and not changed.intersection(known.stamps):
            return False
        files = files_of(item, bench.walk)
        self.stamps = files.stamps | self.stamps  # the older stamp wins: at worst a glance finds nothing new
        if known is None:
            self.followed[item.file] = Followed(files.stamps, files.data)
            return True
        is_same = known.plan is not None and known.data == files.data
        known.stamps, known.data = files.stamps, files.data
        return not is_same

    def _make_one(self, layout: Layout, index: int, bench: Bench, results: Results, changed: set[str]) -> None:
        (item, outputs), followed = layout.work[index], self.followed[layout.items[index].file]
        finished = bench.make(item, outputs, results.going.on)
        sentence = told(item, followed, finished.plan, changed)
        if sentence:
            results.going.say(sentence)
        followed.take(finished.plan)
        results.take_all(layout.by_item[index], finished)
