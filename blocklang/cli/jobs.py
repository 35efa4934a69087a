"""What is to be made of which block, and where each result goes."""

import os
from collections.abc import Iterable
from dataclasses import dataclass
from pathlib import Path

import click

from blocklang.cli.asked import Errand
from blocklang.cli.failing import CommandFault
from blocklang.cli.items import Item, items_of
from blocklang.cli.wanted import Named, Wanted, wanted
from blocklang.cli.writing import STDOUT
from blocklang.library import PACK_SUFFIX, SUFFIX, Library


@dataclass(frozen=True, slots=True)
class Job:
    """One result; `item` is None for a document of all the blocks."""

    wanted: Wanted
    item: Item | None
    path: Path

    @property
    def told(self) -> str:
        """Return what it is, in a few words."""
        return self.wanted.name if self.item is None else f"{self.wanted.name} of {self.item.stem or self.item.file}"


@dataclass(frozen=True, slots=True)
class Layout:
    """All results of one errand; `folder` is None where the one result goes into a file that was named."""

    items: tuple[Item, ...]
    jobs: tuple[Job, ...]
    folder: Path | None

    @property
    def documents(self) -> tuple[Job, ...]:
        """Return the jobs that need all the blocks."""
        return tuple(job for job in self.jobs if job.item is None)

    @property
    def by_item(self) -> tuple[tuple[Job, ...], ...]:
        """Return the other jobs, block by block."""
        own: dict[int, list[Job]] = {id(item): [] for item in self.items}
        for job in self.jobs:
            if job.item is not None:
                own[id(job.item)].append(job)
        return tuple(tuple(own[id(item)]) for item in self.items)

    @property
    def work(self) -> tuple[tuple[Item, tuple[Wanted, ...]], ...]:
        """Return which outputs are made of each block."""
        own = zip(self.items, self.by_item, strict=True)
        return tuple((item, tuple(job.wanted for job in jobs)) for item, jobs in own)


def lay_out(errand: Errand, library: Library, names: tuple[Named, ...]) -> Layout:
    """Return what an errand asks for; slips in what was typed are faults."""
    items = items_of(errand.files, library)
    folder = Path(errand.place) if is_folder(errand.place, names, items) else None
    if folder is None and Path(errand.place).suffix.lower() in (SUFFIX, PACK_SUFFIX):
        raise CommandFault(f"`{errand.place}` is a name for a block or a pack: give the result another one.")
    chosen = wanted(names, Path(errand.place) if folder is None else None, errand.form, errand.settings)
    return Layout(items, jobs_for(chosen, items, errand.place, folder is not None), folder)


def is_folder(place: str, names: tuple[Named, ...], items: tuple[Item, ...]) -> bool:
    """Say whether the results go into a folder: several always do, one does where the person names a folder."""
    count = sum(1 if _is_document(one, items) else len(items) for one in names)
    path = Path(place)
    if count == 1:
        return path != STDOUT and (place.endswith(("/", os.sep)) or path.is_dir())
    if path == STDOUT or (not path.is_dir() and path.suffix.lower().removeprefix(".") in _endings(names)):
        raise click.UsageError(_several_into_one(path, names, count))
    return True


def jobs_for(asked: tuple[Wanted, ...], items: tuple[Item, ...], place: str, in_folder: bool) -> tuple[Job, ...]:
    """Return what is to be made, block by block and then the documents of all blocks."""
    path, many = Path(place), len({one.name for one in asked}) > 1
    single = [one for one in asked if not _is_document(one, items)]
    documents = [one for one in asked if _is_document(one, items)]
    jobs = [Job(one, item, _at(path, item, one, many) if in_folder else path) for item in items for one in single]
    jobs += [Job(one, None, path / f"{one.name}.{one.ending}" if in_folder else path) for one in documents]
    if in_folder:
        _refuse_clashes(jobs)
    return tuple(jobs)


def _is_document(one: Named | Wanted, items: tuple[Item, ...]) -> bool:
    return one.output.make_several is not None and len(items) > 1


def _at(folder: Path, item: Item, one: Wanted, many: bool) -> Path:
    if not item.stem:
        raise CommandFault("A block from standard input has no name: give a file name with -o.")
    return folder / (f"{item.stem}-{one.name}.{one.ending}" if many else f"{item.stem}.{one.ending}")


def _endings(names: tuple[Named, ...]) -> set[str]:
    return {Wanted(one.output, form).ending for one in names for form in one.output.formats}


def _several_into_one(path: Path, names: tuple[Named, ...], count: int) -> str:
    advice = "a folder to write into, such as -o class/."
    if len(names) == 1:
        return f"`{names[0].output.name}` is made of one block at a time: give one FILE, or {advice}"
    return (
        f"These are {count} results, and {'standard output' if path == STDOUT else f'`{path}`'} is one: give {advice}"
    )


def _refuse_clashes(jobs: Iterable[Job]) -> None:
    """Refuse two results of one name: one would take the other's place, on some systems also in other capitals."""
    seen: dict[str, Job] = {}
    for job in jobs:
        other = seen.setdefault(str(job.path).casefold(), job)
        if other is not job:
            files = " and ".join(f"`{one.item.file}`" for one in (other, job) if one.item is not None)
            raise CommandFault(f"{files} would both become `{job.path}`: write them into two folders.")
