"""Writing the folder of a new plugin: one output, one test, and how to install them."""

import importlib.util
import keyword
import re
import sys
from pathlib import Path

from blocklang.cli.failing import CommandFault
from blocklang.cli.folders import whole_folder
from blocklang.cli.starting.creating import refuse_if_there
from blocklang.cli.starting.plugin_files import FILES

LONGEST_NAME = 40
_NAME = re.compile(r"[a-z][a-z0-9]*(-[a-z0-9]+)*")


def create_plugin(where: str) -> Path:
    """Write the folder of a plugin whose name is the last part of a path; return the folder."""
    folder = Path(where)
    name = folder.name
    fault = _fault_of_name(name)
    if fault:
        raise CommandFault(fault)
    refuse_if_there(folder)
    with whole_folder(folder, force=False) as draft:
        for path, text in _files(name).items():
            draft.add(path, text.encode())
    return folder


def _files(name: str) -> dict[str, str]:
    package = _package(name)
    return {
        path.replace("PACKAGE", package): text.replace("PACKAGE", package).replace("NAME", name)
        for path, text in FILES.items()
    }


def _package(name: str) -> str:
    return name.replace("-", "_")


def _fault_of_name(name: str) -> str:
    if not _NAME.fullmatch(name):
        return f"`{name}` cannot name a plugin: write it in lower case, with hyphens, such as `fabric-count`."
    if len(name) > LONGEST_NAME:
        return f"The name of a plugin has at most {LONGEST_NAME} characters; `{name}` has {len(name)}."
    if name in _outputs():
        return f"There is an output `{name}` already: give the plugin another name."
    package = _package(name)
    if keyword.iskeyword(package) or package in sys.stdlib_module_names or importlib.util.find_spec(package):
        return f"`{package}` means something to Python already: give the plugin another name, such as `{name}-sheet`."
    return ""


def _outputs() -> frozenset[str]:
    from blocklang.cli.plugged import Plugged

    return frozenset(output.name for output in Plugged().outputs())
