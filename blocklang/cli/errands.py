"""Carrying out `make`: what was typed becomes jobs, block by block results are made, and each is written at once."""

from pathlib import Path
from typing import TYPE_CHECKING

import click

from blocklang.cli.asked import Errand, language_for
from blocklang.cli.items import Item, items_of
from blocklang.cli.jobs import Job, is_folder, jobs_for
from blocklang.cli.making import Bench
from blocklang.cli.making_folders import make_folder
from blocklang.cli.processes import processes_for, workshop
from blocklang.cli.results import Results
from blocklang.cli.showing import show
from blocklang.cli.technique_choices import asked_techniques
from blocklang.cli.waiting import going_through
from blocklang.cli.walking import Walk
from blocklang.cli.wanted import Named, named, wanted
from blocklang.cli.writing import guard, require_parent

if TYPE_CHECKING:
    from blocklang.calling import Made
    from blocklang.plan import SewingPlan


def carry_out(errand: Errand) -> int:
    """Make everything that was asked for, and return the exit code; mistakes in what was typed come first."""
    walk = Walk()
    outputs, techniques = walk.outputs(), walk.plugged.techniques()
    show(walk.plugged.diagnostics)
    names = named(errand.outputs, outputs)
    language_for(errand.asked.language)
    asked_techniques(techniques)
    if any(one.output.make_folder is not None for one in names):
        return make_folder(errand, walk, names)
    if not errand.files:
        raise click.UsageError("Name the FILE to make it from.")
    return _make(errand, walk, names, items_of(errand.files, walk.library))


def _make(errand: Errand, walk: Walk, names: tuple[Named, ...], items: tuple[Item, ...]) -> int:
    path = Path(errand.place)
    in_folder = is_folder(errand.place, names, items)
    chosen = wanted(names, None if in_folder else path, errand.form, errand.settings)
    jobs = jobs_for(chosen, items, errand.place, in_folder)
    if in_folder:
        require_parent(path)
        guard([job.path for job in jobs], errand.force)
    with going_through(len(jobs)) as going:
        results = Results(path if in_folder else None, errand.force, going, set(walk.plugged.diagnostics))
        _work(errand, Bench(walk, errand.asked), items, jobs, results)
    return results.close(jobs)


def _work(errand: Errand, bench: Bench, items: tuple[Item, ...], jobs: tuple[Job, ...], results: Results) -> None:
    """Go through the blocks, each planned once; plans are kept only where a document needs all of them."""
    documents = [job for job in jobs if job.item is None]
    own = [[job for job in jobs if job.item is item] for item in items]
    work = [(item, tuple(job.wanted for job in mine)) for item, mine in zip(items, own, strict=True)]
    plans: list[SewingPlan] = []
    with workshop(bench, 1 if documents else processes_for(len(items), errand.processes)) as shop:
        for mine, finished in zip(own, shop.make(work, results.going.on), strict=True):
            results.show(finished.diagnostics)
            for job, made in zip(mine, finished.made or [None] * len(mine), strict=True):
                results.take(job, made)
            if documents and finished.plan is not None:
                plans.append(finished.plan)
    for job in documents:
        results.take(job, _document(job, bench, tuple(plans), results) if len(plans) == len(items) else None)


def _document(job: Job, bench: Bench, plans: "tuple[SewingPlan, ...]", results: Results) -> "Made":
    from blocklang.calling import make_files_of_several

    results.going.on(f"Making the {job.told}")
    one = job.wanted
    options = bench.asked.options(one.form, one.settings, plans[0].block.unit)
    return make_files_of_several(one.output, plans, options)
