"""The commands, thin: they read what was typed, walk the route, and show or write what comes out.

May import everything below; nothing imports the commands. Nothing heavy is imported before it is needed.
"""

import sys


def main() -> None:
    """Run the command line and exit: 0 fine, 1 the file has errors, 2 the command line has."""
    try:
        sys.exit(_run(sys.argv[1:]))
    except KeyboardInterrupt:  # while modules are still being loaded
        sys.exit(130)


def _run(arguments: list[str]) -> int:
    """Go the short way for `check FILE...` without options, because loading click takes a quarter of its time."""
    if arguments[:1] == ["check"] and arguments[1:] and not any(word.startswith("-") for word in arguments):
        from blocklang.cli.checking import check_plainly
        from blocklang.cli.failing import guarded

        return guarded(lambda: check_plainly(arguments[1:]))
    from blocklang.cli.program import run

    return run(arguments)
