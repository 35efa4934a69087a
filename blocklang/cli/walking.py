"""Walking the route for a command: from FILE and options to a checked block or a plan."""

from dataclasses import dataclass, field, replace
from typing import TYPE_CHECKING

from blocklang import route
from blocklang.cli.opening import open_block
from blocklang.cli.plugged import Plugged
from blocklang.diagnostics import Diagnostic, SourceText
from blocklang.library import Library

if TYPE_CHECKING:
    from blocklang.hooks import Output
    from blocklang.language import Overrides


@dataclass(slots=True)
class Walk:
    """One command's way along the route; the library and the plugins are shared by all the files it is given."""

    plugged: Plugged = field(default_factory=Plugged)
    library: Library = field(init=False)

    def __post_init__(self) -> None:
        """Let the library ask this command's plugins."""
        self.library = Library(more_folders=self.plugged.library_folders)

    def draft(self, file: str, overrides: "Overrides") -> route.Drafted:
        """Read a block and work out what it draws."""
        source = open_block(file, self.library)
        if not isinstance(source, SourceText):
            return route.Drafted(None, source)
        return route.draft(source, overrides, self.library, self.plugged.cells)

    def check(self, file: str, overrides: "Overrides") -> route.Checked:
        """Read a block and see whether its patches fit together."""
        return route.check(self.draft(file, overrides))

    def plan(self, file: str, overrides: "Overrides", copies: int) -> route.Planned:
        """Plan the sewing of a block."""
        from blocklang.cli.choices import options_for
        from blocklang.cli.technique_choices import asked_techniques

        checked = self.check(file, overrides)
        if checked.graph is None:
            return route.Planned(None, checked.diagnostics)
        techniques = self.plugged.techniques()
        options = replace(options_for(checked.graph.block.unit, copies), techniques=asked_techniques(techniques))
        return route.plan(checked, options, techniques)

    def outputs(self) -> "tuple[Output, ...]":
        """Return what can be made."""
        return self.plugged.outputs()

    def all_of(self, diagnostics: tuple[Diagnostic, ...]) -> tuple[Diagnostic, ...]:
        """Return what is wrong with the plugins and packs asked so far, then these diagnostics."""
        return (*self.plugged.diagnostics, *self.library.diagnostics, *diagnostics)
