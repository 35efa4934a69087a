"""Plugins that a stranger might write: sound ones and one broken in each way; each class stands for a module."""

from importlib.metadata import EntryPoint
from pathlib import Path

from blocklang.hooks import Check, Output, OutputFile, hookimpl

calls: list[str] = []


def entry(name: str, stranger: str | None = None, module: str = "tests.plugins.strangers") -> EntryPoint:
    """Return the entry point of a stranger, named as its author likes."""
    return EntryPoint(name, f"{module}:{stranger}" if stranger else module, "blocklang")


def an_output(name: str, **changed: object) -> Output:
    """Return an output that makes one short text file."""
    made = {"formats": ("txt",), "default_format": "txt", "summary": "A text.", "make": say_hello} | changed
    return Output(name, **made)  # type: ignore[arg-type]


def say_hello(plan: object, options: object) -> tuple[OutputFile, ...]:
    """Make one file."""
    return (OutputFile("", b"hello"),)


class Harbour:
    """A sound plugin with something for every hook that needs no later stage; notes when it is called."""

    @staticmethod
    @hookimpl
    def blocklang_outputs() -> tuple[Output, ...]:
        """Offer two outputs, not in order."""
        calls.append("harbour: outputs")
        return (an_output("tide-table"), an_output("buoy-list"))

    @staticmethod
    @hookimpl
    def blocklang_checks() -> list[Check]:
        """Offer a rule, in a list."""
        calls.append("harbour: checks")
        return [Check("low-water", "Nothing runs aground.", lambda plan: ())]

    @staticmethod
    @hookimpl
    def blocklang_library_folders() -> tuple[Path, ...]:
        """Offer a folder."""
        calls.append("harbour: library folders")
        return (Path("/nowhere/harbour"),)


class Marsh:
    """A second sound plugin, with nothing but an output."""

    @staticmethod
    @hookimpl
    def blocklang_outputs() -> tuple[Output, ...]:
        """Offer an output."""
        calls.append("marsh: outputs")
        return (an_output("reed-count"),)


class Misspelt:
    """Has a hook that no specification knows."""

    @staticmethod
    @hookimpl
    def blocklang_output() -> tuple[Output, ...]:
        """Never called."""
        raise AssertionError


class WrongArguments:
    """Wants an argument that its hook does not have."""

    @staticmethod
    @hookimpl
    def blocklang_outputs(plan: object) -> tuple[Output, ...]:
        """Never called."""
        raise AssertionError


class Raises:
    """Fails when it is asked."""

    @staticmethod
    @hookimpl
    def blocklang_outputs() -> tuple[Output, ...]:
        """Fail."""
        raise RuntimeError("the tide is out")


class Exits:
    """Wants to end the program."""

    @staticmethod
    @hookimpl
    def blocklang_outputs() -> tuple[Output, ...]:
        """Try to take the program down."""
        raise SystemExit(3)


class GivesNothing:
    """Forgets to return."""

    @staticmethod
    @hookimpl
    def blocklang_outputs() -> None:
        """Return nothing."""


class GivesText:
    """Returns names where descriptions are due."""

    @staticmethod
    @hookimpl
    def blocklang_outputs() -> tuple[str, ...]:
        """Return the wrong type inside a right one."""
        return ("tide-table",)


class GivesOne:
    """Returns one output where a sequence is due."""

    @staticmethod
    @hookimpl
    def blocklang_outputs() -> Output:
        """Return the wrong type."""
        return an_output("tide-table")


class Clashes:
    """Offers a name that Harbour has, and one of its own."""

    @staticmethod
    @hookimpl
    def blocklang_outputs() -> tuple[Output, ...]:
        """Offer both."""
        return (an_output("tide-table", summary="Mine."), an_output("sail-plan"))


class BadName:
    """Offers a name that cannot be typed easily."""

    @staticmethod
    @hookimpl
    def blocklang_outputs() -> tuple[Output, ...]:
        """Offer it."""
        return (an_output("Tide Table"),)


class BadDefault:
    """Offers an output whose default format it does not have."""

    @staticmethod
    @hookimpl
    def blocklang_outputs() -> tuple[Output, ...]:
        """Offer it."""
        return (an_output("tide-table", default_format="pdf"),)


class NoFormats:
    """Offers an output that comes in no format."""

    @staticmethod
    @hookimpl
    def blocklang_outputs() -> tuple[Output, ...]:
        """Offer it."""
        return (an_output("tide-table", formats=()),)


class NothingToCall:
    """Offers an output and a check that cannot be called."""

    @staticmethod
    @hookimpl
    def blocklang_outputs() -> tuple[Output, ...]:
        """Offer it."""
        return (an_output("tide-table", make="tide.txt"),)

    @staticmethod
    @hookimpl
    def blocklang_checks() -> tuple[Check, ...]:
        """Offer it."""
        return (Check("low-water", "Never run.", None),)  # type: ignore[arg-type]
