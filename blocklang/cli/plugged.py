"""The plugins as one command meets them: loaded when first needed, complained about once."""

from dataclasses import dataclass, field
from pathlib import Path
from typing import TYPE_CHECKING, TypeVar

from blocklang.diagnostics import Diagnostic

if TYPE_CHECKING:
    from blocklang.extensions import Offered, Plugins
    from blocklang.hooks import Output
    from blocklang.language import Cell
    from blocklang.route import Techniques

Item = TypeVar("Item")


@dataclass(slots=True)
class Plugged:
    """What plugins add to one command; `diagnostics` holds what is wrong with them, as far as they were asked."""

    diagnostics: list[Diagnostic] = field(default_factory=list)
    _plugins: "Plugins | None" = None
    _outputs: "tuple[Output, ...] | None" = None

    def outputs(self) -> "tuple[Output, ...]":
        """Ask for outputs."""
        if self._outputs is None:
            from blocklang import extensions

            self._outputs = self._kept(extensions.outputs(self._loaded()))
        return self._outputs

    def cells(self) -> "tuple[Cell, ...]":
        """Ask for grid cells."""
        from blocklang import extensions

        return self._kept(extensions.cells(self._loaded()))

    def library_folders(self) -> tuple[tuple[str, Path], ...]:
        """Ask for library folders, each with its plugin's name."""
        from blocklang import extensions

        return self._kept(extensions.library_folders(self._loaded()))

    def techniques(self) -> "Techniques":
        """Ask for everything that planning can use."""
        from blocklang import extensions
        from blocklang.route import Techniques

        plugins = self._loaded()
        return Techniques(
            self._kept(extensions.cutting_methods(plugins)),
            self._kept(extensions.pressing_preferences(plugins)),
            self._kept(extensions.checks(plugins)),
        )

    def _loaded(self) -> "Plugins":
        if self._plugins is None:
            from blocklang.extensions import load_plugins

            self._plugins = load_plugins()
            self.diagnostics += self._plugins.diagnostics
        return self._plugins

    def _kept(self, offered: "Offered[Item]") -> tuple[Item, ...]:
        self.diagnostics += offered.diagnostics
        return offered.items
