"""Trying an output: every format twice, then every option, and whether what comes out is what it should be."""

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from blocklang.block import LengthUnit
from blocklang.calling import make_files
from blocklang.hooks import CannotMakeError, Output, OutputFile, OutputOptions, Paper
from blocklang.plan import SewingPlan
from blocklang.testing.formats import fault_of_bytes
from blocklang.testing.holding import hold
from blocklang.wording import ENGLISH, find_language, languages

#: Gives the same block planned for other copies or another unit.
Replanned = Callable[[int, LengthUnit], SewingPlan]
MORE_COPIES = 3


@dataclass(frozen=True, slots=True)
class Variation:
    """One thing chosen otherwise: the option's or setting's name, and the plan and options with it."""

    name: str
    plan: SewingPlan
    options: OutputOptions


def try_output(
    output: Output,
    plan: SewingPlan,
    replanned: Replanned | None,
    honours: Sequence[str],
    settings: Mapping[str, Sequence[str]],
) -> tuple[OutputFile, ...]:
    """Make an output in every format and with every option, and return the files of its default format.

    An output may refuse with `CannotMakeError`; then there are no files. `honours` names the options and settings that must
    change what is made of this block.
    """
    changed: set[str] = set()
    usual: tuple[OutputFile, ...] = ()
    for form in output.formats:
        options = OutputOptions(form, unit=plan.block.unit, copies=plan.cutting.options.copies)
        made = make_twice(output, plan, options)
        usual = made if form == output.default_format else usual
        for variation in variations(output, plan, options, replanned, settings):
            if make_once(output, variation.plan, variation.options) != made:
                changed.add(variation.name)
    unheeded = [name for name in honours if name not in changed]
    hold(not unheeded, f"{_told(output, plan)} makes no difference for {' and '.join(unheeded)}.")
    return usual


def variations(
    output: Output,
    plan: SewingPlan,
    options: OutputOptions,
    replanned: Replanned | None,
    settings: Mapping[str, Sequence[str]],
) -> Iterator[Variation]:
    """Vary one option after the other, then every setting over its choices."""
    yield Variation("paper", plan, replace(options, paper=Paper.A4))
    yield Variation("black_and_white", plan, replace(options, black_and_white=True))
    yield Variation("large_print", plan, replace(options, large_print=True))
    for code in languages():
        if code != ENGLISH.code:
            yield Variation("language", plan, replace(options, language=find_language(code) or ENGLISH))
    if replanned is not None:
        copies, unit = options.copies + MORE_COPIES, _other_unit(options.unit)
        yield Variation("copies", replanned(copies, options.unit), replace(options, copies=copies))
        yield Variation("unit", replanned(options.copies, unit), replace(options, unit=unit))
    for setting in output.settings:
        for value in (*setting.choices, *settings.get(setting.name, ())):
            yield Variation(setting.name, plan, replace(options, settings=((setting.name, value),)))


def make_twice(output: Output, plan: SewingPlan, options: OutputOptions) -> tuple[OutputFile, ...]:
    """Make an output twice, hold the files against each other, and return them."""
    first, second = make_once(output, plan, options), make_once(output, plan, options)
    hold(first == second, f"{_told(output, plan)} ({_chosen(options)}) gives other bytes the second time.")
    return first


def make_once(output: Output, plan: SewingPlan, options: OutputOptions) -> tuple[OutputFile, ...]:
    """Make an output, hold its files against their format, and return them."""
    files = _make(output, plan, options)
    for file in files:
        ending = file.name.rpartition(".")[2] if file.name else options.format
        fault = fault_of_bytes(file.data, ending)
        told = f"{_told(output, plan)} ({_chosen(options)}): the file {file.name or 'without a name'}"
        hold(not fault, f"{told} is not right: {fault}.")
    return files


def make_several(output: Output, plans: tuple[SewingPlan, ...]) -> None:
    """Make one document of several blocks, in every format."""
    several = output.make_several
    if several is not None:
        of_several = replace(output, make=lambda _, options: several(plans, options))
        for form in output.formats:
            make_twice(of_several, plans[0], OutputOptions(form, unit=plans[0].block.unit))


def _make(output: Output, plan: SewingPlan, options: OutputOptions) -> tuple[OutputFile, ...]:
    told = f"{_told(output, plan)} ({_chosen(options)})"
    try:
        files = output.make(plan, options)
    except CannotMakeError as refused:
        text = str(refused)
        hold(text.endswith(".") and "\n" not in text, f"{told} refuses with {text!r}, which is not one plain sentence.")
        return ()
    except Exception as fault:
        fault.add_note(f"while {told} was made")
        raise
    judged = make_files(replace(output, make=lambda *_: files), plan, options)
    hold(not judged.diagnostics, " ".join([told, *(one.found for one in judged.diagnostics)]))
    return files


def _other_unit(unit: LengthUnit) -> LengthUnit:
    return LengthUnit.CENTIMETRE if unit is LengthUnit.INCH else LengthUnit.INCH


def _told(output: Output, plan: SewingPlan) -> str:
    return f"The output `{output.name}` of the block {plan.block.name}"


def _chosen(options: OutputOptions) -> str:
    usual = OutputOptions(options.format)
    said: Iterable[str] = (
        f"{name} {getattr(options, name)}"
        for name in ("paper", "unit", "copies", "black_and_white", "large_print")
        if getattr(options, name) != getattr(usual, name)
    )
    said = (*said, *([f"language {options.language.code}"] if options.language != ENGLISH else []))
    return ", ".join((options.format, *said, *(f"{name}={value}" for name, value in options.settings)))
