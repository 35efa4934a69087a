"""A broken plugin that is installed beside us is named, and the command goes on without it."""

import os
import subprocess
import sys


def test_command_names_the_broken_plugin_and_does_its_work(good, tmp_path) -> None:
    installed = tmp_path / "site" / "sunk-1.dist-info"
    installed.mkdir(parents=True)
    (installed / "METADATA").write_text("Metadata-Version: 2.1\nName: sunk\nVersion: 1\n")
    (installed / "entry_points.txt").write_text("[blocklang]\nsunk = sunk_plugin\n")
    (tmp_path / "site" / "sunk_plugin.py").write_text('raise RuntimeError("the hull leaks")\n')
    command = [sys.executable, "-m", "blocklang", "make", "diagram", str(good), "-o", "a.svg"]
    path = os.pathsep.join([str(tmp_path / "site"), os.environ.get("PYTHONPATH", "")])
    environment = os.environ | {"PYTHONPATH": path}
    ran = subprocess.run(command, env=environment, cwd=tmp_path, capture_output=True, text=True, check=False)
    assert (ran.returncode, ran.stdout) == (0, "")
    assert ran.stderr == (
        "warning: The plugin `sunk` is broken\n"
        "It cannot be loaded: RuntimeError: the hull leaks. "
        "It is skipped; ask whoever wrote the plugin, or remove it.\n"
        "Wrote a.svg\n"
    )
    assert (tmp_path / "a.svg").exists()
