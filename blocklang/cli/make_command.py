"""`blocklang make`: a sheet, a list or a picture, written where the person says."""

from pathlib import Path
from typing import TYPE_CHECKING

import click

from blocklang.cli.choices import (
    block_options,
    complete_blocks,
    complete_outputs,
    output_named,
    overrides_from,
    plan_options,
    split_pair,
)
from blocklang.cli.failing import CommandFault, say
from blocklang.cli.showing import show
from blocklang.cli.waiting import working
from blocklang.cli.walking import Walk
from blocklang.cli.writing import STDOUT, print_bytes, write_files

if TYPE_CHECKING:
    from blocklang.hooks import Output, OutputFile, OutputOptions
    from blocklang.plan import SewingPlan
    from blocklang.wording import Language

SAME_FORMAT = {"txt": "text", "text": "txt", "htm": "html"}


@click.command("make")
@click.argument("output", shell_complete=complete_outputs)
@click.argument("files", metavar="FILE...", nargs=-1, required=True, shell_complete=complete_blocks)
@click.option("-o", "path", required=True, metavar="PATH", type=click.Path(path_type=Path), help="Where to write it.")
@click.option("-f", "--format", "form", metavar="FORMAT", help="Such as pdf or svg; else the ending of PATH decides.")
@block_options
@plan_options
@click.option("--paper", type=click.Choice(["letter", "a4"]), default="letter", show_default=True, help="Paper size.")
@click.option("--black-and-white", is_flag=True, help="Tell fabrics apart without colour.")
@click.option("--large-print", is_flag=True, help="Set the words larger.")
@click.option(
    "--language", metavar="CODE", default="en", show_default=True, help="The language of the words: en or es."
)
@click.option("--set", "settings", metavar="NAME=VALUE", multiple=True, help="Something only this output can do.")
def command(
    output: str, files: tuple[str, ...], path: Path, form: str | None, size: str | None, fabrics: tuple[str, ...],
    copies: int, units: str | None, paper: str, black_and_white: bool, large_print: bool, language: str,
    settings: tuple[str, ...],
) -> int:  # fmt: skip
    """Make OUTPUT from FILE: a sheet to sew from, a cutting list, a picture; a handout from several.

    `blocklang outputs` lists what OUTPUT can be. With -o - the result goes to standard output.
    """
    walk = Walk()
    wanted = output_named(output, _told(walk))
    chosen = format_for(wanted, path, form)
    chosen_settings, spoken = settings_for(wanted, settings), language_for(language)
    if len(files) > 1 and wanted.make_several is None:
        raise click.UsageError(f"`{wanted.name}` is made of one block at a time: give one FILE.")
    with working("Planning the sewing"):
        planned = [walk.plan(file, overrides_from(size, fabrics, units), copies) for file in files]
    code = show(walk.all_of(tuple(one for each in planned for one in each.diagnostics)))
    plans = tuple(each.plan for each in planned if each.plan is not None)
    if len(plans) < len(files):
        return code
    from blocklang.hooks import OutputOptions, Paper

    unit = plans[0].block.unit
    options = OutputOptions(chosen, Paper(paper), unit, copies, black_and_white, large_print, chosen_settings, spoken)
    return max(code, _make(wanted, plans, options, path))


def format_for(output: "Output", path: Path, form: str | None) -> str:
    """Return the format asked for, or what the path's ending says, or the output's own."""
    ending = path.suffix.removeprefix(".").lower()
    wanted = form.lower() if form else ending if ending and path != STDOUT else output.default_format
    for name in (wanted, SAME_FORMAT.get(wanted, wanted)):
        if name in output.formats:
            return name
    raise click.UsageError(f"`{output.name}` cannot be made as {wanted}; it can be {' or '.join(output.formats)}.")


def language_for(code: str) -> "Language":
    """Return the language of a code as typed."""
    from blocklang.wording import find_language, languages

    found = find_language(code.lower())
    if found is None:
        raise click.UsageError(f"There are no words in `{code}`; there are words in {', '.join(languages())}.")
    return found


def settings_for(output: "Output", given: tuple[str, ...]) -> tuple[tuple[str, str], ...]:
    """Return the settings as typed, once each is one that the output has."""
    pairs = tuple(split_pair(text, "--set", "name=value") for text in given)
    known = {setting.name: setting for setting in output.settings}
    for name, value in pairs:
        if name not in known:
            has = f"it has {', '.join(f'`{name}`' for name in known)}" if known else "it has none"
            raise click.UsageError(f"`{output.name}` has no setting `{name}`; {has}.")
        if known[name].choices and value not in known[name].choices:
            raise click.UsageError(f"`{name}` of `{output.name}` is one of {', '.join(known[name].choices)}.")
    return pairs


def _told(walk: Walk) -> "tuple[Output, ...]":
    outputs = walk.outputs()
    show(walk.plugged.diagnostics)
    walk.plugged.diagnostics.clear()
    return outputs


def _make(output: "Output", plans: "tuple[SewingPlan, ...]", options: "OutputOptions", path: Path) -> int:
    from blocklang.calling import make_files, make_files_of_several

    with working(f"Making the {output.name}"):
        several = len(plans) > 1
        made = make_files_of_several(output, plans, options) if several else make_files(output, plans[0], options)
    code = show(made.diagnostics)
    if made.files:
        _write(made.files, path)
    return code


def _write(files: "tuple[OutputFile, ...]", path: Path) -> None:
    if path == STDOUT:
        if len(files) > 1:
            raise CommandFault("This output has several files, which standard output cannot hold: give a file name.")
        print_bytes(files[0].data)
        return
    write_files({path.with_name(f"{path.stem}-{file.name}") if file.name else path: file.data for file in files})
    say(f"Wrote {path}" + (f" and {len(files) - 1} more beside it" if len(files) > 1 else ""))
