"""The targets that take a block file along the route."""

from collections import Counter
from dataclasses import replace
from functools import cache

from blocklang import extensions, route
from blocklang.block import Block
from blocklang.cli.plan_text import plan_to_text
from blocklang.diagnostics import Diagnostic, Severity, SourceText, render_json, render_long, render_short
from blocklang.hooks import CannotMakeError, Output, OutputOptions, Paper
from blocklang.language import Overrides, decode_source, format_text, parse
from blocklang.plan import PlanOptions, SewingPlan
from blocklang.plan_json import plan_to_json
from tests.fuzz.choices import Choices
from tests.fuzz.texts import LIBRARY, drafted, more_cells
from tests.fuzz.watching import promise

MOST_PATCHES = 40  # of a block that is planned
OURS_BROKEN = {"broken-cutting-method", "broken-check", "broken-plugin", "cannot-make-output"}
PLACEABLE = ("nine-patch", "pinwheel", "flying-geese", "half-square-triangle", "ohio-star")
#: Formats that need no page setting, which would take most of the time.
QUICK = ("svg", "text", "txt", "html", "csv", "json")


class Shelf:
    """Finds a few of the library's blocks, and the file itself, which it then places in a circle."""

    def __init__(self, itself: SourceText) -> None:
        """Know the file that is read."""
        self.itself = itself

    def find(self, name: str, placing: SourceText) -> SourceText | Diagnostic | None:
        """Return the text of a block."""
        if name == "itself":
            return self.itself
        return _shelved().get(name)

    def names(self) -> tuple[str, ...]:
        """Return the names there are."""
        return PLACEABLE


@cache
def _shelved() -> dict[str, SourceText]:
    paths = {path.stem: path for path in sorted(LIBRARY.rglob("*.block"))}
    return {n: SourceText(f"{n}.block", paths[n].read_text(encoding="utf-8")) for n in PLACEABLE if n in paths}


@cache
def techniques() -> route.Techniques:
    """Return what the plugins add to planning."""
    plugins = extensions.load_plugins()
    return route.Techniques(
        extensions.cutting_methods(plugins).items,
        extensions.pressing_preferences(plugins).items,
        extensions.checks(plugins).items,
    )


@cache
def outputs() -> tuple[Output, ...]:
    """Return every output that can be made without setting pages."""
    offered = extensions.outputs(extensions.load_plugins()).items
    return tuple(output for output in offered if set(QUICK) & set(output.formats))


def check_bytes(data: bytes) -> None:
    """Read any bytes as a block file, as far as the graph."""
    source = decode_source("fuzzed.block", data)
    if isinstance(source, SourceText):
        checked(source)
        laid_out_alike(source)
    else:
        told(source)


def checked(source: SourceText) -> route.Checked:
    """Check a text and hold the answer to what every answer owes."""
    drafted_block = route.draft(source, Overrides(), Shelf(source), more_cells)
    found = route.check(drafted_block)
    told(found.diagnostics)
    bad = any(one.severity is Severity.ERROR for one in found.diagnostics)
    promise((found.graph is None) == bad, f"graph {found.graph is not None}, errors {bad}")
    return found


def told(diagnostics: tuple[Diagnostic, ...]) -> None:
    """See that diagnostics can be shown, and point into the text."""
    render_long(diagnostics, colour=True)
    render_short(diagnostics)
    render_json(diagnostics)
    for one in diagnostics:
        promise(one.code not in OURS_BROKEN, f"{one.code}: {one.found}")
        spans = [one.span] if one.span else []
        for span in (*spans, *(related.span for related in one.related)):
            promise(0 <= span.start <= span.end <= len(span.source.text), f"span outside the text, {one.code}")


def laid_out_alike(source: SourceText) -> None:
    """Lay a text out: doing so again changes nothing, and it draws the same block or has the same mistakes."""
    text, diagnostics = format_text(source)
    told(diagnostics)
    promise((text is None) == (parse(source).tree is None), "what can be read can be laid out")
    if text is None:
        return
    promise(format_text(SourceText(source.name, text))[0] == text, "laying out twice changes nothing")
    before, after = (
        route.draft(one, Overrides(), Shelf(one), more_cells) for one in (source, replace(source, text=text))
    )
    promise(_drawn(before.block) == _drawn(after.block), "the layout draws the same block")
    codes = [Counter(one.code for one in side.diagnostics) for side in (before, after)]
    promise(codes[0] == codes[1], f"the layout has the same mistakes: {codes}")


def _drawn(block: Block | None) -> object:
    if block is None:
        return None
    patches = [(p.id, p.fabric, p.outline, p.stripes) for p in block.patches]
    return block.name, block.fabrics, block.credits, block.notes, block.outline, patches, len(block.wishes)


def whole_route(data: bytes) -> None:
    """Draft a file from decisions, and plan it if it is small."""
    choices = Choices(data)
    text = drafted(choices)
    planned(SourceText("drafted.block", text))
    laid_out_alike(SourceText("drafted.block", text))


def planned(source: SourceText) -> SewingPlan | None:
    """Plan a block if it is sound and small, and write the plan in every way there is."""
    found = checked(source)
    if found.graph is None or len(found.graph.block.patches) > MOST_PATCHES:
        return None
    result = route.plan(found, PlanOptions(), techniques())
    told(result.diagnostics)
    if result.plan is None:
        promise(route.has_errors(result.diagnostics), "no plan without an error")
        return None
    plan_to_json(result.plan)
    plan_to_text(result.plan, True)
    return result.plan


def outputs_made(data: bytes) -> None:
    """Draft a file, plan it, and make one of the outputs of it, with settings that may be any text."""
    choices = Choices(data)
    output = choices.one_of(outputs())
    form = choices.one_of([one for one in output.formats if one in QUICK])
    settings = tuple((one.name, choices.one_of(one.choices or SETTINGS)) for one in output.settings if choices.yes(8))
    options = OutputOptions(
        form, choices.one_of(list(Paper)), copies=choices.one_of([1, 2, 20, 10_000]),
        black_and_white=choices.yes(8), large_print=choices.yes(8), settings=settings,
    )  # fmt: skip
    plan = planned(SourceText("drafted.block", drafted(choices)))
    if plan is None:
        return
    try:
        made = output.make(plan, replace(options, unit=plan.block.unit))
    except CannotMakeError as fault:
        promise(bool(str(fault)), "a reason is given")
        return
    promise(sum(file.name == "" for file in made) == 1, "one file has no name")


SETTINGS = [
    "1",
    "0",
    "-1",
    "4 1/2",
    "x",
    "",
    "1/0",
    "9" * 40,
    "1e9",
    "fog: 4 fat quarters",
    "fog: 6 strips 2 1/2 in",
    "</svg>",
    "½",
    ":",
    "nan",
]
