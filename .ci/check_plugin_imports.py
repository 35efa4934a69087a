"""Checks that plugins use only public names of blocklang, as a stranger's plugin would have to.

Public are the modules listed here; of a module with __all__ only what it lists, else names without an underscore in
front. docs/plugins.md lists the same modules for people.
"""

import ast
import importlib
import sys
from collections.abc import Iterator
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
PUBLIC = {
    "blocklang",
    "blocklang.assembly",
    "blocklang.assembly.values",
    "blocklang.bias",
    "blocklang.block",
    "blocklang.catalogue.difficulty",
    "blocklang.catalogue.facts",
    "blocklang.catalogue.working_out",
    "blocklang.cloth",
    "blocklang.cutting",
    "blocklang.cutting.methods",
    "blocklang.cutting.values",
    "blocklang.cutting.words",
    "blocklang.diagnostics",
    "blocklang.foundation",
    "blocklang.geometry",
    "blocklang.graph",
    "blocklang.graph.values",
    "blocklang.hooks",
    "blocklang.language",
    "blocklang.paper_piecing",
    "blocklang.plan",
    "blocklang.plan_json",
    "blocklang.pressing",
    "blocklang.pressing.preferences",
    "blocklang.pressing.values",
    "blocklang.testing",
    "blocklang.thickness",
    "blocklang.wording",
}


def faults_of(path: Path) -> Iterator[str]:
    """Say of every import of blocklang in a file what is not public about it."""
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        where = f"{path.relative_to(ROOT)}:{getattr(node, 'lineno', 0)}"
        if isinstance(node, ast.Import):
            for alias in node.names:
                if alias.name.split(".")[0] == "blocklang" and alias.name not in PUBLIC:
                    yield f"{where}: {alias.name} is not public"
        elif isinstance(node, ast.ImportFrom) and (node.module or "").split(".")[0] == "blocklang":
            for alias in node.names:
                if not is_public(node.module or "", alias.name):
                    yield f"{where}: {alias.name} of {node.module} is not public"


def is_public(module: str, name: str) -> bool:
    """Say whether a plugin may import a name from a module."""
    if f"{module}.{name}" in PUBLIC:
        return True
    if module not in PUBLIC:
        return False
    listed = getattr(importlib.import_module(module), "__all__", None)
    return name in listed if listed is not None else not name.startswith("_")


def main() -> int:
    """Check every plugin that ships."""
    files = sorted((ROOT / "plugins").rglob("*.py"))
    faults = [fault for path in files for fault in faults_of(path)]
    print("\n".join(faults) or f"{len(files)} files of plugins import public names only.")
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main())
