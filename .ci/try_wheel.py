"""Builds the wheel and tries it from a folder of its own, away from the source tree: blocks, plugins and commands."""

import os
import subprocess
import sys
import tempfile
import zipfile
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
STRANGERS = ("tests/", "docs/", "plugins/", "blocks/", ".ci/")


def build(folder: Path) -> Path:
    """Build the wheel into a folder."""
    pip = [sys.executable, "-m", "pip", "--disable-pip-version-check", "--quiet"]
    subprocess.run([*pip, "wheel", "--no-deps", "--wheel-dir", str(folder), str(ROOT)], check=True)
    wheel = next(folder.glob("*.whl"))
    subprocess.run([*pip, "install", "--no-deps", "--target", str(folder / "site"), str(wheel)], check=True)
    return wheel


def faults_of(wheel: Path) -> list[str]:
    """Say what the wheel lacks or should not have."""
    names = zipfile.ZipFile(wheel).namelist()
    blocks = {path.name for path in (ROOT / "blocks").rglob("*.block")}
    carried = {Path(name).name for name in names if name.startswith("blocklang/blocks/")}
    faults = [f"the wheel lacks the block {name}" for name in sorted(blocks - carried)]
    faults += [f"the wheel should not have {name}" for name in names if name.startswith(STRANGERS)]
    for plugin in sorted(path.name for path in (ROOT / "plugins").iterdir() if (path / "__init__.py").exists()):
        if f"{plugin}/__init__.py" not in names:
            faults.append(f"the wheel lacks the plugin {plugin}")
    return faults


def use(folder: Path) -> list[str]:
    """Run commands with the wheel's code only, and say which fail."""
    environment = os.environ | {"PYTHONPATH": str(folder / "site")}
    commands = (
        ["library"],
        ["check", "nine-patch"],
        ["make", "diagram", "nine-patch", "-o", str(folder / "a.svg")],
    )
    faults = []
    for command in commands:
        ran = subprocess.run(
            [sys.executable, "-m", "blocklang", *command],
            cwd=folder, env=environment, check=False, capture_output=True, text=True,
        )  # fmt: skip
        if ran.returncode or str(ROOT) in ran.stdout + ran.stderr or "broken" in ran.stderr:
            faults.append(f"blocklang {' '.join(command)}: {ran.returncode}\n{ran.stdout[-500:]}{ran.stderr[-2000:]}")
    return faults


def main() -> int:
    """Build, look inside, use."""
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        wheel = build(folder)
        faults = faults_of(wheel) + use(folder)
        print("\n".join(faults) or f"{wheel.name} works on its own ({wheel.stat().st_size // 1000} kB).")
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main())
