"""Makes the pictures of the documents with the program itself, or says which are not up to date.

SVG is compared byte for byte. A page of the sheet as PNG depends on the version of the program that sets pages, so
only its presence is checked.
"""

import subprocess
import sys
import tempfile
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
PICTURES = ROOT / "docs" / "pictures"
DRAWN = {
    "eight-pointed-star.svg": ("diagram", "eight-pointed-star"),
    "churn-dash.svg": ("diagram", "churn-dash"),
}
SHEET = "sewing-sheet.png"
SHEET_BLOCK = "eight-pointed-star"
DOTS_PER_INCH = 80


def make(output: str, block: str, path: Path) -> None:
    """Make one output of a library block."""
    command = [sys.executable, "-m", "blocklang", "make", output, block, "-o", str(path)]
    subprocess.run(command, check=True, stderr=subprocess.DEVNULL)


def stale(folder: Path) -> list[str]:
    """Name the pictures that differ from what the program makes now."""
    names = []
    for name, (output, block) in DRAWN.items():
        make(output, block, folder / name)
        kept = PICTURES / name
        if not kept.exists() or kept.read_bytes() != (folder / name).read_bytes():
            names.append(name)
    return names + ([] if (PICTURES / SHEET).exists() else [SHEET])


def write() -> None:
    """Make every picture again."""
    import pypdfium2

    PICTURES.mkdir(exist_ok=True)
    for name, (output, block) in DRAWN.items():
        make(output, block, PICTURES / name)
    with tempfile.TemporaryDirectory() as folder:
        make("sewing-sheet", SHEET_BLOCK, Path(folder, "sheet.pdf"))
        document = pypdfium2.PdfDocument(Path(folder, "sheet.pdf"))
        document[0].render(scale=DOTS_PER_INCH / 72).to_pil().save(PICTURES / SHEET, optimize=True)


def main() -> int:
    """Make the pictures, or check them."""
    if "--write" in sys.argv:
        write()
        return 0
    with tempfile.TemporaryDirectory() as folder:
        names = stale(Path(folder))
    print(f"Stale pictures: {', '.join(names)} (python3 dev.py pictures)" if names else "The pictures are up to date.")
    return 1 if names else 0


if __name__ == "__main__":
    sys.exit(main())
