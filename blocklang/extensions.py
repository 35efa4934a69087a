"""The one typed door to plugins: finds them, asks them, and names and skips whatever is broken."""

import re
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from importlib.metadata import EntryPoint, entry_points
from pathlib import Path
from typing import TYPE_CHECKING, Generic, TypeVar

import pluggy

from blocklang import hooks
from blocklang.diagnostics import Diagnostic, Severity
from blocklang.hooks import Check, Output

if TYPE_CHECKING:
    from blocklang.cutting.methods import CuttingMethod
    from blocklang.language import Cell
    from blocklang.pressing.preferences import PressingPreference

Item = TypeVar("Item")
_NAME = re.compile(r"[a-z][a-z0-9]*(-[a-z0-9]+)*")


@dataclass(frozen=True, slots=True)
class Plugin:
    """A plugin that could be loaded: its entry point's name, and a manager that holds it and nothing else.

    One manager for each plugin keeps a broken one away from the others, and lets every complaint name its plugin.
    """

    name: str
    manager: pluggy.PluginManager

    def ask(self, hook: str) -> list[object]:
        """Call one hook; an empty list means that the plugin has no such hook."""
        caller = getattr(self.manager.hook, hook)
        answers: list[object] = caller()
        if caller.get_hookimpls() and not answers:
            return [None]  # pluggy drops an answer of None
        return answers


@dataclass(frozen=True, slots=True)
class Plugins:
    """All plugins that could be loaded, sorted by name, and what is wrong with the others."""

    plugins: tuple[Plugin, ...]
    diagnostics: tuple[Diagnostic, ...]


@dataclass(frozen=True, slots=True)
class Offered(Generic[Item]):
    """What the plugins offer for one hook, sorted by name, and what is wrong with the rest."""

    items: tuple[Item, ...]
    diagnostics: tuple[Diagnostic, ...]


def load_plugins(found: Iterable[EntryPoint] | None = None) -> Plugins:
    """Load every plugin by name, by default all that are installed."""
    installed = entry_points(group=hooks.PROJECT) if found is None else found
    plugins: list[Plugin] = []
    diagnostics: list[Diagnostic] = []
    for name, value in sorted({(entry.name, entry.value) for entry in installed}):
        loaded = _load(EntryPoint(name, value, hooks.PROJECT))
        (plugins if isinstance(loaded, Plugin) else diagnostics).append(loaded)  # type: ignore[arg-type]
    return Plugins(tuple(plugins), tuple(diagnostics))


def outputs(plugins: Plugins) -> Offered[Output]:
    """Ask for outputs."""
    return _named(plugins, "blocklang_outputs", Output, _faults_of_output)


def checks(plugins: Plugins) -> Offered[Check]:
    """Ask for rules over a plan."""
    return _named(plugins, "blocklang_checks", Check, _faults_of_check)


def cells(plugins: Plugins) -> "Offered[Cell]":
    """Ask for grid cells."""
    from blocklang.language import Cell

    return _named(plugins, "blocklang_cells", Cell, _no_faults)


def cutting_methods(plugins: Plugins) -> "Offered[CuttingMethod]":
    """Ask for cutting methods."""
    from blocklang.cutting.methods import CuttingMethod

    return _named(plugins, "blocklang_cutting_methods", CuttingMethod, _no_faults)


def pressing_preferences(plugins: Plugins) -> "Offered[PressingPreference]":
    """Ask for pressing preferences."""
    from blocklang.pressing.preferences import PressingPreference

    return _named(plugins, "blocklang_pressing_preferences", PressingPreference, _no_faults)


def library_folders(plugins: Plugins) -> Offered[tuple[str, Path]]:
    """Ask for library folders; each comes with the name of the plugin that offers it."""
    folders: list[tuple[str, Path]] = []
    diagnostics: list[Diagnostic] = []
    for plugin in plugins.plugins:
        given, wrong = _ask(plugin, "blocklang_library_folders", Path)
        diagnostics += wrong
        folders += [(plugin.name, folder) for folder in given]
    return Offered(tuple(folders), tuple(diagnostics))


def broken(plugin: str, found: str, advice: str = "") -> Diagnostic:
    """Return the warning that names a plugin, what is wrong with it, and that it is skipped."""
    return Diagnostic(
        "broken-plugin",
        Severity.WARNING,
        f"The plugin `{plugin}` is broken",
        found,
        advice or "It is skipped; ask whoever wrote the plugin, or remove it.",
    )


def _load(entry: EntryPoint) -> Plugin | Diagnostic:
    manager = pluggy.PluginManager(hooks.PROJECT)
    manager.add_hookspecs(hooks)
    try:
        manager.register(entry.load(), name=entry.name)
        manager.check_pending()
    except pluggy.PluginValidationError as fault:
        return broken(entry.name, f"It has a hook that does not fit: {_first_line(fault)}.")
    except (Exception, SystemExit) as fault:  # noqa: BLE001 - a plugin may do anything while it is imported
        return broken(entry.name, f"It cannot be loaded: {_told(fault)}.")
    return Plugin(entry.name, manager)


def _ask(plugin: Plugin, hook: str, kind: type[Item]) -> tuple[list[Item], list[Diagnostic]]:
    try:
        answers = plugin.ask(hook)
    except (Exception, SystemExit) as fault:  # noqa: BLE001 - a plugin may do anything in a hook
        return [], [broken(plugin.name, f"Its hook {hook} fails: {_told(fault)}.")]
    items: list[Item] = []
    for answer in answers:
        if not isinstance(answer, Sequence) or not all(isinstance(item, kind) for item in answer):
            said = f"Its hook {hook} should give a sequence of {kind.__name__}, but gives {_kind_of(answer)}."
            return [], [broken(plugin.name, said)]
        items += answer
    return items, []


def _named(plugins: Plugins, hook: str, kind: type[Item], faults: Callable[[Item], str]) -> Offered[Item]:
    """Ask every plugin, keep what is sound, and let the first plugin in order have a name that two want."""
    kept: dict[str, tuple[str, Item]] = {}
    diagnostics: list[Diagnostic] = []
    for plugin in plugins.plugins:
        items, wrong = _ask(plugin, hook, kind)
        diagnostics += wrong
        for item in items:
            name: str = item.name  # type: ignore[attr-defined]
            fault = _fault_of_name(name, kind) or faults(item)
            if not fault and name in kept:
                fault = f"It offers `{name}` ({hook}), which the plugin `{kept[name][0]}` offers already."
            if fault:
                diagnostics.append(broken(plugin.name, fault))
            else:
                kept[name] = (plugin.name, item)
    return Offered(tuple(kept[name][1] for name in sorted(kept)), tuple(diagnostics))


def _fault_of_name(name: object, kind: type) -> str:
    if isinstance(name, str) and _NAME.fullmatch(name):
        return ""
    return f"It offers {kind.__name__} with the name {name!r}; write names in lower case, with hyphens."


def _faults_of_output(output: Output) -> str:
    if not isinstance(output.formats, tuple) or not output.formats:
        return f"Its output `{output.name}` names no formats."
    if output.default_format not in output.formats:
        return f"Its output `{output.name}` has the default format {output.default_format!r}, which it does not offer."
    return "" if callable(output.make) else f"Its output `{output.name}` has nothing to call as `make`."


def _faults_of_check(check: Check) -> str:
    return "" if callable(check.run) else f"Its check `{check.name}` has nothing to call as `run`."


def _no_faults(_: object) -> str:
    return ""


def _told(fault: BaseException) -> str:
    return f"{type(fault).__name__}: {_first_line(fault)}".removesuffix(": ")


def _first_line(fault: BaseException) -> str:
    return next((line.strip().rstrip(".") for line in str(fault).splitlines() if line.strip()), "")


def _kind_of(answer: object) -> str:
    if answer is None:
        return "nothing"
    if isinstance(answer, (list, tuple)):
        return "a sequence that holds " + ", ".join(sorted({type(item).__name__ for item in answer}))
    return f"a {type(answer).__name__}"
