"""Calls what plugins have offered; whatever goes wrong in there becomes a diagnostic that names it."""

from collections.abc import Callable
from dataclasses import dataclass, field, replace
from typing import TYPE_CHECKING, Any, ParamSpec, TypeVar

from blocklang.diagnostics import Diagnostic, Severity
from blocklang.hooks import BlockAtHand, CannotMakeError, Check, Output, OutputFile, OutputOptions, Share
from blocklang.packs.file_names import fault_of_path, fault_of_twins
from blocklang.plan import SewingPlan

if TYPE_CHECKING:
    from blocklang.cutting.methods import CuttingMethod

Asked = ParamSpec("Asked")
Answer = TypeVar("Answer")


@dataclass(frozen=True, slots=True)
class Made:
    """The files of an output; none when it could not be made, and then a diagnostic says why.

    `declined` is true where the output itself said so, because it is not for this block or not for these options.
    """

    files: tuple[OutputFile, ...]
    diagnostics: tuple[Diagnostic, ...]
    declined: bool = False


def make_files(output: Output, plan: SewingPlan, options: OutputOptions) -> Made:
    """Have an output made."""
    return _made(output, lambda: output.make(plan, options), _fault_of_files)


def make_files_of_several(output: Output, plans: tuple[SewingPlan, ...], options: OutputOptions) -> Made:
    """Have one output made of several blocks; it must be one that can."""
    several = output.make_several
    assert several is not None
    return _made(output, lambda: several(plans, options), _fault_of_files)


@dataclass(frozen=True, slots=True)
class MadeShare:
    """One block's share of a folder; None when it has none, and then a diagnostic may say why."""

    share: Share | None
    diagnostics: tuple[Diagnostic, ...]


def make_share(output: Output, block: BlockAtHand, options: OutputOptions) -> MadeShare:
    """Have one block's share of a folder made."""
    folder = output.make_folder
    assert folder is not None
    try:
        share = folder.of_each(block, options)
    except Exception as fault:  # noqa: BLE001 - a stranger's code may raise anything
        return MadeShare(None, _refused(output, fault).diagnostics)
    wrong = "" if share is None else _fault_of_share(share)
    return MadeShare(None, _wrong(output, wrong).diagnostics) if wrong else MadeShare(share, ())


def make_rest(output: Output, about: tuple[Any, ...], options: OutputOptions) -> Made:
    """Have the files made that belong to a whole folder, from what the shares say about the blocks."""
    folder = output.make_folder
    assert folder is not None
    return _made(output, lambda: folder.of_all(about, options), _fault_of_paths)


def _made(output: Output, make: Callable[[], tuple[OutputFile, ...]], fault_of: Callable[[object], str]) -> Made:
    try:
        files = make()
    except Exception as fault:  # noqa: BLE001 - a stranger's code may raise anything
        return _refused(output, fault)
    wrong = fault_of(files)
    return _wrong(output, wrong) if wrong else Made(files, ())


def _refused(output: Output, fault: Exception) -> Made:
    if isinstance(fault, CannotMakeError):
        return Made((), (_cannot_make(output, str(fault)),), declined=True)
    return _wrong(output, _fails(fault))


def _wrong(output: Output, found: str) -> Made:
    return Made((), (_cannot_make(output, found, "Tell whoever wrote this output."),))


def run_checks(checks: tuple[Check, ...], plan: SewingPlan) -> tuple[Diagnostic, ...]:
    """Hold a plan against every rule, in the order given."""
    return tuple(diagnostic for check in checks for diagnostic in _run(check, plan))


@dataclass(slots=True)
class Watched:
    """Cutting methods of plugins, watched while they are asked; `diagnostics` names each that fails, once."""

    diagnostics: list[Diagnostic] = field(default_factory=list)
    _failed: set[str] = field(default_factory=set)

    def method(self, method: "CuttingMethod") -> "CuttingMethod":
        """Return the method so that it answers None from where it first fails."""
        from blocklang.cutting import Claim, Offer

        claims = self._watch(method.name, method.claims, Claim)
        return replace(method, claims=claims, offers=self._watch(method.name, method.offers, Offer))

    def _watch(
        self, name: str, ask: Callable[Asked, Answer | None], kind: type[Answer]
    ) -> Callable[Asked, Answer | None]:
        def answer(*args: Asked.args, **named: Asked.kwargs) -> Answer | None:
            if name in self._failed:
                return None
            try:
                given = ask(*args, **named)
            except Exception as fault:  # noqa: BLE001 - a stranger's code may raise anything
                self._fails(name, _fails(fault))
                return None
            if given is None or isinstance(given, kind):
                return given
            self._fails(name, f"It gives something other than a {kind.__name__} or None.")
            return None

        return answer

    def _fails(self, name: str, found: str) -> None:
        self._failed.add(name)
        title, advice = f"The cutting method `{name}` is broken", "Tell whoever wrote the plugin it comes from."
        self.diagnostics.append(Diagnostic("broken-cutting-method", Severity.WARNING, title, found, advice))


def _run(check: Check, plan: SewingPlan) -> tuple[Diagnostic, ...]:
    try:
        said = check.run(plan)
    except Exception as fault:  # noqa: BLE001 - a stranger's code may raise anything
        return (_broken_check(check, _fails(fault)),)
    if not isinstance(said, tuple) or not all(isinstance(one, Diagnostic) for one in said):
        return (_broken_check(check, "It gives something other than a tuple of diagnostics."),)
    return said


def _fault_of_files(files: object) -> str:
    if not isinstance(files, tuple) or not all(isinstance(file, OutputFile) for file in files):
        return "It gives something other than a tuple of files."
    if sum(file.name == "" for file in files) != 1:
        return "It should give exactly one file without a name of its own."
    names = [file.name for file in files]
    if len(set(names)) < len(names):
        return "It gives two files of one name."
    strange = next((name for name in names if "/" in name or "\\" in name or "\0" in name), None)
    return "" if strange is None else f"It gives a file the name {strange!r}, which is not a plain file name."


def _fault_of_share(share: object) -> str:
    return _fault_of_paths(share.files) if isinstance(share, Share) else "It gives something other than a share."


def _fault_of_paths(files: object) -> str:
    """Return why files cannot lie in one folder on every system, or ""."""
    if not isinstance(files, tuple) or not all(isinstance(file, OutputFile) for file in files):
        return "It gives something other than a tuple of files."
    strange = next((file.name for file in files if not file.name or fault_of_path(file.name)), None)
    if strange is not None:
        return f"It gives a file the name {strange!r}, which does not lie inside its folder on every system."
    return "It gives two files of one name." if fault_of_twins(file.name for file in files) else ""


def _fails(fault: Exception) -> str:
    return f"It fails with {type(fault).__name__}: {fault}".strip().removesuffix(":") + "."


def _cannot_make(output: Output, found: str, advice: str = "") -> Diagnostic:
    title = f"The output `{output.name}` cannot be made"
    return Diagnostic("cannot-make-output", Severity.ERROR, title, found, advice)


def _broken_check(check: Check, found: str) -> Diagnostic:
    title = f"The check `{check.name}` is broken"
    return Diagnostic("broken-check", Severity.WARNING, title, found, "Tell whoever wrote the plugin it comes from.")
