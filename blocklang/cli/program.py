"""The command `blocklang` and its sub-commands, each loaded only when it is used."""

from importlib import import_module

import click

from blocklang import __version__
from blocklang.cli.failing import FINE, TYPING_FAULT, guarded, say

COMMANDS = {
    "check": "Say whether block files are right.",
    "format": "Give block files their one tidy layout.",
    "plan": "Show how a block is sewn, step by step.",
    "make": "Make a sheet, a list or a picture of a block.",
    "outputs": "List what can be made.",
    "library": "List the blocks of the library.",
    "pack": "Put blocks into one file to pass on.",
    "unpack": "Write the blocks of a pack as files.",
    "verify": "Say whether a pack is sound, and whom it credits.",
    "new": "Start a new block file.",
    "completion": "Print what makes your shell complete blocklang's words.",
}


class LazyCommands(click.Group):
    """Sub-commands that are known by name and one line, and imported when they are asked for."""

    def list_commands(self, ctx: click.Context) -> list[str]:
        """List the names in the order of work."""
        return list(COMMANDS)

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:
        """Load one sub-command."""
        if cmd_name not in COMMANDS:
            return None
        command: click.Command = import_module(f"blocklang.cli.{cmd_name}_command").command
        return command

    def resolve_command(
        self, ctx: click.Context, args: list[str]
    ) -> tuple[str | None, click.Command | None, list[str]]:
        """Find the sub-command that is meant, or suggest one."""
        if args and args[0] not in COMMANDS and not args[0].startswith("-"):
            from difflib import get_close_matches

            near = get_close_matches(args[0], COMMANDS, n=1)
            advice = f"Did you mean `{near[0]}`?" if near else "`blocklang --help` lists the commands."
            raise click.UsageError(f"There is no command `{args[0]}`. {advice}", ctx)
        return super().resolve_command(ctx, args)

    def format_commands(self, ctx: click.Context, formatter: click.HelpFormatter) -> None:
        """Write the list of commands without loading any."""
        with formatter.section("Commands"):
            formatter.write_dl(list(COMMANDS.items()))


@click.command(
    "blocklang",
    cls=LazyCommands,
    no_args_is_help=False,
    invoke_without_command=True,
    epilog="A FILE is the path of a .block file, one in a pack (tides.pack/star), or a name in the library.",
)
@click.version_option(__version__, prog_name="blocklang", message="%(prog)s %(version)s")
@click.pass_context
def program(context: click.Context) -> None:
    """Plan the sewing of patchwork blocks, from a block written as text to a sheet to sew from."""
    if context.invoked_subcommand is None:
        click.echo(context.get_help())


def run(arguments: list[str]) -> int:
    """Run one command line and return its exit code; whatever goes wrong is one sentence, never a traceback."""
    return guarded(lambda: _run(arguments))


def _run(arguments: list[str]) -> int:
    try:
        code = program.main(arguments, prog_name="blocklang", standalone_mode=False)
    except click.Abort as stopped:
        raise KeyboardInterrupt from stopped
    except click.ClickException as fault:
        return _typed_wrongly(fault)
    return code if isinstance(code, int) else FINE


def _typed_wrongly(fault: click.ClickException) -> int:
    context = getattr(fault, "ctx", None)
    say(fault.format_message())
    if context is not None:
        say(f"`{context.command_path} --help` says what you can write.")
    return TYPING_FAULT
