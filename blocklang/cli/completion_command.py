"""`blocklang completion`: the script that lets a shell complete blocklang's words."""

import click
from click.shell_completion import get_completion_class

from blocklang.cli.writing import print_text

VARIABLE = "_BLOCKLANG_COMPLETE"


@click.command("completion")
@click.argument("shell", type=click.Choice(["bash", "zsh", "fish"]))
@click.pass_context
def command(context: click.Context, shell: str) -> int:
    """Print what makes your shell complete commands, outputs and block names.

    For bash, put this line in ~/.bashrc:  eval "$(blocklang completion bash)"
    """
    script = get_completion_class(shell)
    assert script is not None, "click knows these three shells"
    print_text(script(context.find_root().command, {}, "blocklang", VARIABLE).source())
    return 0
