"""How a command ends when it cannot do its work: one sentence and an exit code."""

import sys
from collections.abc import Callable

FINE = 0
FILE_FAULT = 1
TYPING_FAULT = 2
_MOST_SHOWN = 120  # characters of a name
STOPPED = 130  # what a shell expects after Ctrl-C


class CommandFault(Exception):  # noqa: N818 - it is the person's or the system's fault, not an error of ours
    """A command cannot go on; its text is one plain sentence for the person who typed it."""

    def __init__(self, sentence: str, exit_code: int = TYPING_FAULT) -> None:
        super().__init__(sentence)
        self.exit_code = exit_code


class ReaderLeftError(Exception):
    """Whoever read our output has seen enough (`| head`), which is nobody's fault."""


def say(sentence: str) -> None:
    """Tell the person something beside the result; what a terminal cannot show is replaced, never an error."""
    if sys.stderr is None:
        return  # closed by whoever started us
    try:
        sys.stderr.write(f"{sentence}\n")
    except UnicodeEncodeError:
        sys.stderr.write(sentence.encode("ascii", "replace").decode() + "\n")
    except OSError:
        return  # nobody is there to be told


def guarded(work: Callable[[], int]) -> int:
    """Do the work of a command and return its exit code; whatever keeps it from being done is one sentence."""
    try:
        return work()
    except ReaderLeftError:
        return FINE
    except KeyboardInterrupt:
        say("Stopped.")
        return STOPPED
    except CommandFault as fault:
        say(str(fault))
        return fault.exit_code
    except OSError as fault:  # such as a name longer than the system can have
        named = f"`{str(fault.filename)[:_MOST_SHOWN]}`" if fault.filename is not None else "A file"
        say(f"{named} cannot be used: {reason(fault)}.")
        return TYPING_FAULT


def reason(fault: OSError) -> str:
    """Return why the system refused, in its words."""
    return (fault.strerror or "the system does not say why").lower()
