"""Carrying out `make`: what was typed becomes jobs, block by block results are made, and each is written at once."""

from typing import TYPE_CHECKING

import click

from blocklang.cli.asked import Errand, language_for
from blocklang.cli.folders import folder_for_results
from blocklang.cli.jobs import Layout, lay_out
from blocklang.cli.making import Bench
from blocklang.cli.making_folders import make_folder
from blocklang.cli.processes import processes_for, workshop
from blocklang.cli.results import Results
from blocklang.cli.showing import show
from blocklang.cli.technique_choices import asked_techniques
from blocklang.cli.waiting import going_through
from blocklang.cli.walking import Walk
from blocklang.cli.wanted import named
from blocklang.cli.writing import guard

if TYPE_CHECKING:
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
    layout = lay_out(errand, walk.library, names)
    if layout.folder is not None:
        guard([job.path for job in layout.jobs], errand.force)
    with folder_for_results(layout.folder):
        if not errand.watch:
            return _make(errand, walk, layout)
        from blocklang.cli.watching import watch

        return watch(errand, walk.plugged, names)


def _make(errand: Errand, walk: Walk, layout: Layout) -> int:
    with going_through(len(layout.jobs)) as going:
        results = Results(layout.folder, errand.force, going, set(walk.plugged.diagnostics))
        _work(errand, Bench(walk, errand.asked), layout, results)
    return results.close(layout.jobs)


def _work(errand: Errand, bench: Bench, layout: Layout, results: Results) -> None:
    """Go through the blocks, each planned once; plans are kept only where a document needs all of them."""
    plans: list[SewingPlan] = []
    count = 1 if layout.documents else processes_for(len(layout.items), errand.processes)
    with workshop(bench, count) as shop:
        for mine, finished in zip(layout.by_item, shop.make(layout.work, results.going.on), strict=True):
            results.take_all(mine, finished)
            if layout.documents and finished.plan is not None:
                plans.append(finished.plan)
    make_documents(layout, bench, tuple(plans), results)


def make_documents(layout: Layout, bench: Bench, plans: "tuple[SewingPlan, ...]", results: Results) -> None:
    """Make the documents of all blocks, unless a plan is missing."""
    from blocklang.calling import make_files_of_several

    for job in layout.documents:
        if len(plans) < len(layout.items):
            results.take(job, None)
        else:
            results.going.on(f"Making the {job.told}")
            options = bench.asked.options(job.wanted.form, job.wanted.settings, plans[0].block.unit)
            results.take(job, make_files_of_several(job.wanted.output, plans, options))
