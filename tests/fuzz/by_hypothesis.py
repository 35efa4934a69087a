"""Not guided by coverage: hypothesis makes inputs from a seed and makes those that crash smaller.

For systems that atheris has no wheel for. It is told how many diagnostics and patches an input led to no more than

"""

import json
import sys
import time
from pathlib import Path

from hypothesis import HealthCheck, Phase, given, seed, settings
from hypothesis import strategies as st

from tests.fuzz.targets import TARGETS
from tests.fuzz.watching import Crashes


def main(name: str, folder: Path, seconds: int, start: int) -> int:
    """Fuzz one target for a time, a few hundred inputs from each seed; write how many inputs there were."""
    target, crashes = TARGETS[name], Crashes(folder / "crashes")
    seeds = target.seeds()
    inputs = st.binary(max_size=target.longest) | st.sampled_from(seeds).flatmap(_changed)
    count, begun, number = 0, time.monotonic(), start
    while time.monotonic() - begun < seconds:

        @seed(number)
        @settings(
            max_examples=200,
            deadline=None,
            database=None,
            suppress_health_check=list(HealthCheck),
            phases=[Phase.generate],
        )
        @given(inputs)
        def run(data: bytes) -> None:
            nonlocal count
            if time.monotonic() - begun < seconds:
                count += 1
                crashes.watch(target.run, data)

        run()
        number += 1
    spent = time.monotonic() - begun
    told = {"inputs": count, "per_second": round(count / spent, 1), "crashes": crashes.places}
    (folder / "done.json").write_text(json.dumps(told))
    return 1 if crashes.places else 0


def _changed(data: bytes) -> st.SearchStrategy[bytes]:
    """Put a few bytes in the place of a few others."""
    return st.tuples(st.integers(0, len(data)), st.integers(0, 8), st.binary(max_size=8)).map(
        lambda change: data[: change[0]] + change[2] + data[change[0] + change[1] :]
    )


if __name__ == "__main__":
    sys.exit(main(sys.argv[1], Path(sys.argv[2]), int(sys.argv[3]), int(sys.argv[4])))
