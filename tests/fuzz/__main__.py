"""The command: `python -m tests.fuzz TARGET --seconds 600 --seed 1`; exit code 1 when something crashed.

What it found lies in .fuzz/TARGET: `crashes` holds one input for each place that crashed beside its trace, `corpus` the
inputs that reached something new, `figures.json` what was done. `--replay FILE` runs one input again.
"""

import argparse
import json
import os
import subprocess
import sys
import time
from collections import deque
from importlib.util import find_spec
from pathlib import Path

from tests.fuzz.lines import lines_reached
from tests.fuzz.targets import TARGETS

ROOT = Path(__file__).parents[2]
KEPT = ROOT / ".fuzz"
#: The first is guided by the code that an input reaches; the second is there for systems without the first.
ENGINES = ("atheris", "hypothesis")


def main(arguments: list[str]) -> int:
    """Run one target, or all of them in turn."""
    asked = argparse.ArgumentParser("dev.py fuzz", description=__doc__)
    asked.add_argument("targets", nargs="*", choices=[*TARGETS, []], metavar="TARGET", help=", ".join(TARGETS))
    asked.add_argument("--seconds", type=int, default=60, help="how long each target runs")
    asked.add_argument("--seed", type=int, default=1, help="the same seed makes the same inputs")
    asked.add_argument("--engine", choices=ENGINES, default=ENGINES[0] if find_spec(ENGINES[0]) else ENGINES[1])
    asked.add_argument("--replay", type=Path, help="run one input and let it crash")
    told = asked.parse_args(arguments)
    if told.replay:
        TARGETS[told.targets[0]].run(told.replay.read_bytes())
        return 0
    return max(fuzz(name, told.seconds, told.seed, told.engine) for name in told.targets or TARGETS)


def fuzz(name: str, seconds: int, seed: int, engine: str) -> int:
    """Run one target in a process of its own, and tell the figures."""
    folder = KEPT / name
    corpus = folder / "corpus"
    corpus.mkdir(parents=True, exist_ok=True)
    for number, data in enumerate(TARGETS[name].seeds()):
        (corpus / f"seed-{number:04}").write_bytes(data)
    environment = os.environ | {"XDG_CACHE_HOME": str(folder / "cache"), "PYTHONHASHSEED": "0"}
    command = [sys.executable, "-m", f"tests.fuzz.by_{engine}", name, str(folder), str(seconds), str(seed)]
    begun = time.monotonic()
    last: deque[str] = deque(maxlen=40)
    with subprocess.Popen(
        command, cwd=ROOT, env=environment, stderr=subprocess.PIPE, text=True, errors="replace"
    ) as run:
        assert run.stderr is not None
        for line in run.stderr:
            if "INFO: Instrumenting" not in line and "UserWarning" not in line:
                last.append(line.rstrip())
    done = folder / "done.json"
    if run.returncode not in (0, 1) or not done.exists():
        print(f"{name}: the fuzzer itself ended with {run.returncode}:", *last, sep="\n")
        return 1
    figures = {"engine": engine, "seed": seed, **json.loads(done.read_text()), **_guided(last)}
    figures["seconds"] = round(time.monotonic() - begun)
    figures |= lines_reached(name, corpus)
    (folder / "figures.json").write_text(json.dumps(figures, indent=1) + "\n")
    print(f"{name}: {json.dumps(figures)}", flush=True)
    return 1 if figures["crashes"] else 0


def _guided(last: "deque[str]") -> dict[str, int]:
    """Return how many edges and features the guided fuzzer last told of, and how many inputs it kept."""
    for line in reversed(last):
        words = line.split()
        if "cov:" in words and "ft:" in words and "corp:" in words:
            kept = words[words.index("corp:") + 1].partition("/")[0]
            return {
                "edges": int(words[words.index("cov:") + 1]),
                "features": int(words[words.index("ft:") + 1]),
                "kept": int(kept),
            }
    return {}


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
