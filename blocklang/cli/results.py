"""The results of `make`, written one by one as they are made, and what was not made."""

from dataclasses import dataclass, field, replace
from pathlib import Path
from typing import TYPE_CHECKING

from blocklang.cli.failing import FILE_FAULT, FINE, CommandFault, say
from blocklang.cli.jobs import Job
from blocklang.cli.waiting import Going
from blocklang.cli.writing import STDOUT, guard, print_bytes, write_files
from blocklang.diagnostics import Diagnostic

if TYPE_CHECKING:
    from blocklang.calling import Made
    from blocklang.cli.making import Finished
    from blocklang.hooks import OutputFile


@dataclass(slots=True)
class Results:
    """Where results go, and how it went so far.

    `shown` holds what has been told already, `written` every file that was written and what it belongs to.
    """

    folder: Path | None
    force: bool
    going: Going
    shown: set[Diagnostic] = field(default_factory=set)
    code: int = FINE
    written: dict[Path, Job] = field(default_factory=dict)
    missing: list[Job] = field(default_factory=list)

    def show(self, diagnostics: tuple[Diagnostic, ...]) -> None:
        """Show diagnostics, each one once for the whole command."""
        new = tuple(one for one in dict.fromkeys(diagnostics) if one not in self.shown)
        self.shown.update(new)
        self.code = max(self.code, self.going.show(new))

    def take_all(self, jobs: tuple[Job, ...], finished: "Finished") -> None:
        """Write the results of one block."""
        self.show(finished.diagnostics)
        for job, made in zip(jobs, finished.made or [None] * len(jobs), strict=True):
            self.take(job, made)

    def take(self, job: Job, made: "Made | None") -> None:
        """Write a result, unless it could not be made; where that is refused the others are still written."""
        self.show(tuple(self._named(one, job) for one in made.diagnostics) if made is not None else ())
        if made is None or not made.files:
            self._miss(job, FILE_FAULT)
        else:
            try:
                self._write(job, made.files)
            except CommandFault as fault:
                if self.folder is None:
                    raise
                self.going.say(str(fault))
                self._miss(job, fault.exit_code)
        self.going.done()

    def _named(self, one: Diagnostic, job: Job) -> Diagnostic:
        """Say of which block an output cannot be made, where there may be several."""
        return one if self.folder is None or job.item is None else replace(one, title=f"{one.title} of {job.item.stem}")

    def _miss(self, job: Job, code: int) -> None:
        self.missing.append(job)
        self.code = max(self.code, code)

    def _write(self, job: Job, files: "tuple[OutputFile, ...]") -> None:
        path = job.path
        if path == STDOUT:
            if len(files) > 1:
                raise CommandFault(
                    "This output has several files, which standard output cannot hold: give a file name."
                )
            print_bytes(files[0].data)
            return
        paths = {path.with_name(f"{path.stem}-{one.name}") if one.name else path: one.data for one in files}
        if self.folder is not None:
            self._prepare(job, list(paths))
        write_files(paths)
        self.written |= dict.fromkeys(paths, job)
        if not self.going.is_seen or self.folder is None:
            say(f"Wrote {path}" + (f" and {len(files) - 1} more beside it" if len(files) > 1 else ""))

    def _prepare(self, job: Job, paths: list[Path]) -> None:
        other = next((self.written[path] for path in paths if self.written.get(path, job) != job), None)
        if other is not None:
            raise CommandFault(f"The {job.told} would overwrite the {other.told}: make it alone.")
        guard([path for path in paths if path not in self.written], self.force)

    def close(self, jobs: tuple[Job, ...]) -> int:
        """Say how it went, where there is more than one result, and return the exit code."""
        if len(jobs) > 1:
            made, where = len(jobs) - len(self.missing), f" in {self.folder}" if self.folder is not None else ""
            say(f"Made {made} of {len(jobs)}{where}{'; not made: ' if self.missing else ''}{self._lost()}.")
        return self.code

    def _lost(self) -> str:
        """Name what is not made, output by output."""
        lost: dict[str, list[str]] = {}
        for job in self.missing:
            lost.setdefault(job.wanted.name, []).extend([job.item.stem] if job.item is not None else [])
        return "; ".join(f"{name} of {', '.join(stems)}" if stems else name for name, stems in lost.items())
