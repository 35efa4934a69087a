"""The option that asks for a technique which a plugin knows, such as piecing by hand."""

from collections.abc import Callable
from typing import TYPE_CHECKING, Any, TypeVar

import click
from click.shell_completion import CompletionItem

if TYPE_CHECKING:
    from blocklang.route import Techniques

Command = TypeVar("Command", bound=Callable[..., Any])

_CHOSEN = "blocklang.techniques"


def technique_option(command: Command) -> Command:
    """Add `--technique`; `asked_techniques` finds it again, so that no command need hand it on."""
    return click.option(
        "--technique",
        metavar="NAME",
        multiple=True,
        expose_value=False,
        callback=_keep,
        shell_complete=_complete,
        help="Press as a technique asks that a plugin knows, such as hand-piecing. Can be repeated.",
    )(command)


def asked_techniques(known: "Techniques") -> tuple[str, ...]:
    """Return the techniques that were typed; one that no plugin knows is a mistake in the command line."""
    context = click.get_current_context(silent=True)
    asked: tuple[str, ...] = context.meta.get(_CHOSEN, ()) if context is not None else ()
    names = sorted({one.technique for one in known.pressing_preferences if one.technique})
    for name in asked:
        if name not in names:
            raise click.UsageError(f"No plugin knows the technique `{name}`. There is: {', '.join(names) or 'none'}.")
    return tuple(dict.fromkeys(asked))


def _keep(context: click.Context, _: click.Parameter, value: tuple[str, ...]) -> None:
    context.meta[_CHOSEN] = value


def _complete(_: click.Context, __: click.Parameter, incomplete: str) -> list[CompletionItem]:
    from blocklang.cli.plugged import Plugged

    preferences = Plugged().techniques().pressing_preferences
    names = sorted({one.technique for one in preferences if one.technique})
    return [CompletionItem(name) for name in names if name.startswith(incomplete)]
