"""Guided by coverage: atheris changes inputs and keeps those that reach code which none reached before.

Started by the command as a process of its own, since the fuzzer below it ends the process when its time is up.
"""

import importlib
import json
import os
import pkgutil
import sys
import time
import warnings
from pathlib import Path

PLUGINS = Path(__file__).parents[2] / "plugins"


def import_instrumented() -> None:
    """Import all of blocklang and its plugins so that the fuzzer sees where an input leads; only then the targets."""
    import atheris

    packages = ["blocklang", *sorted(path.name for path in PLUGINS.iterdir() if (path / "__init__.py").exists())]
    with atheris.instrument_imports(include=packages):
        for package in packages:
            root = importlib.import_module(package)
            for module in pkgutil.walk_packages(root.__path__, f"{package}."):
                if not module.name.endswith(("__main__", "table_making")):
                    importlib.import_module(module.name)


def main(name: str, folder: Path, seconds: int, seed: int) -> None:
    """Fuzz one target until its time is up; write how many inputs there were."""
    import atheris

    import_instrumented()
    from tests.fuzz.targets import TARGETS
    from tests.fuzz.watching import Crashes

    warnings.simplefilter("ignore")
    target, crashes = TARGETS[name], Crashes(folder / "crashes")
    target.seeds()  # whatever has to be there is made before an input is timed
    count, begun = 0, 0.0

    def run(data: bytes) -> None:
        nonlocal count, begun
        begun = begun or time.monotonic()
        crashes.watch(target.run, data)
        count += 1
        if time.monotonic() - begun > seconds:
            end(folder, count, time.monotonic() - begun, crashes.places)

    options = [f"-seed={seed}", f"-max_len={target.longest}", "-timeout=120", "-rss_limit_mb=500", "-len_control=20"]
    atheris.Setup([sys.argv[0], *options, f"-artifact_prefix={folder}/", str(folder / "corpus")], run)
    atheris.Fuzz()


def end(folder: Path, count: int, seconds: float, places: dict[str, int]) -> None:
    """Write the figures and end at once, since the fuzzer would not come back."""
    told = {"inputs": count, "per_second": round(count / seconds, 1), "crashes": places}
    (folder / "done.json").write_text(json.dumps(told))
    sys.stderr.flush()
    os._exit(1 if places else 0)


if __name__ == "__main__":
    main(sys.argv[1], Path(sys.argv[2]), int(sys.argv[3]), int(sys.argv[4]))
