"""The commands, thin: they read what was typed, walk the route, and show or write what comes out.

May import everything below; nothing imports the commands. Nothing heavy is imported before it is needed.
"""

import sys


def main() -> None:
    """Run the command line and exit: 0 fine, 1 the file has errors, 2 the command line has."""
    try:
        from blocklang.cli.program import run

        sys.exit(run(sys.argv[1:]))
    except KeyboardInterrupt:
        sys.exit(130)
