"""`blocklang plan`: how a block is sewn, as text or as JSON."""

import click

from blocklang.cli.choices import block_options, file_argument, overrides_from, plan_options
from blocklang.cli.showing import show
from blocklang.cli.waiting import working
from blocklang.cli.walking import Walk
from blocklang.cli.writing import print_text


@click.command("plan")
@file_argument
@block_options
@plan_options
@click.option("--format", "form", type=click.Choice(["text", "json"]), default="text", help="For people or programs.")
@click.option("--why", is_flag=True, help="Say why each step comes where it does, and what each stop is for.")
def command(
    file: str, size: str | None, fabrics: tuple[str, ...], copies: int, units: str | None, form: str, why: bool
) -> int:
    """Show how a block is sewn, step by step."""
    walk = Walk()
    with working("Planning the sewing"):
        planned = walk.plan(file, overrides_from(size, fabrics, units), copies)
    code = show(walk.all_of(planned.diagnostics))
    if planned.plan is None:
        return code
    if form == "json":
        from blocklang.plan_json import plan_to_json

        print_text(plan_to_json(planned.plan))
    else:
        from blocklang.cli.plan_text import plan_to_text

        print_text(plan_to_text(planned.plan, why))
    return code
