"""The way of somebody who has just installed blocklang: from an empty folder to a pack that a friend unpacks."""

import subprocess
import sys
from pathlib import Path

import pytest
from pypdf import PdfReader


@pytest.fixture
def type_in(folder):
    """Type a command line as a person does, and see everything that it says."""

    def typed(line: str, *, inside: Path = folder) -> tuple[int, str]:
        program, *words = line.split()
        assert program == "blocklang"
        command = [sys.executable, "-m", "blocklang", *words]
        ran = subprocess.run(
            command, cwd=inside, stdin=subprocess.DEVNULL, stdout=subprocess.PIPE, stderr=subprocess.STDOUT,
            encoding="utf-8", check=False,
        )  # fmt: skip
        return ran.returncode, ran.stdout

    return typed


def test_from_an_empty_folder_to_a_friend(type_in, folder) -> None:
    block = folder / "harbour-steps.block"

    # She starts a block, and it is right from the first moment on.
    code, said = type_in("blocklang new harbour-steps")
    assert code == 0 and "Wrote harbour-steps.block." in said
    assert type_in("blocklang check harbour-steps.block") == (0, "harbour-steps.block: fine\n")
    code, said = type_in("blocklang new harbour-steps")
    assert code == 2 and "`harbour-steps.block` is there already, and is left as it is." in said

    # She makes a slip; the message says where it is and what she may have meant.
    right = block.read_text(encoding="utf-8")
    lines = right.splitlines()
    row = max(number for number, line in enumerate(lines) if "deep" in line)
    column = lines[row].index("deep")
    lines[row] = lines[row].replace("deep", "deap", 1)
    block.write_text("\n".join(lines) + "\n", encoding="utf-8")
    code, said = type_in("blocklang check harbour-steps.block")
    assert code == 1
    assert f"harbour-steps.block, line {row + 1}, column {column + 1}\n" in said
    assert f"  {row + 1} | {lines[row]}\n" in said and "`deep`" in said
    code, said = type_in("blocklang make diagram harbour-steps.block -o harbour-steps.svg")
    assert code == 1 and "`deep`" in said
    assert [path.name for path in folder.iterdir()] == ["harbour-steps.block"]

    # She puts it right and makes a picture and a sheet.
    block.write_text(right, encoding="utf-8")
    assert type_in("blocklang make diagram harbour-steps.block -o harbour-steps.svg") == (
        0,
        "Wrote harbour-steps.svg\n",
    )
    assert (folder / "harbour-steps.svg").read_text(encoding="utf-8").rstrip().endswith("</svg>")
    code, said = type_in("blocklang make sewing-sheet.pdf,cutting-list harbour-steps.block -o sheets/")
    assert (code, said.splitlines()[-1]) == (0, "Made 2 of 2 in sheets.")
    sheet = PdfReader(folder / "sheets" / "harbour-steps-sewing-sheet.pdf")
    assert "Harbour Steps" in sheet.pages[0].extract_text()
    assert "deep" in (folder / "sheets" / "harbour-steps-cutting-list.txt").read_text(encoding="utf-8")

    # She packs it to pass it on, is asked to say whose it is, and does.
    code, said = type_in("blocklang pack harbour-steps.block -o harbour")
    assert code == 0 and 'Write a line such as `by "Odile Fenwick" licence CC-BY-4.0`.' in said
    block.write_text(right.replace("\n\n", '\nby "Odile Fenwick" licence CC-BY-4.0\n\n', 1), encoding="utf-8")
    assert type_in("blocklang pack harbour-steps.block -o harbour --force") == (0, "Wrote harbour.pack: 1 block.\n")

    # Her friend looks at the pack, unpacks it elsewhere and has the same file.
    code, said = type_in("blocklang verify harbour.pack")
    assert code == 0 and "harbour-steps.block" in said and "Odile Fenwick" in said
    (folder / "friend").mkdir()
    (folder / "harbour.pack").rename(folder / "friend" / "harbour.pack")
    friend = folder / "friend"
    assert type_in("blocklang unpack harbour.pack", inside=friend) == (0, "Wrote 1 block to harbour.\n")
    assert (friend / "harbour" / "harbour-steps.block").read_bytes() == block.read_bytes()
    code, said = type_in("blocklang make diagram harbour/harbour-steps.block -o seen.svg", inside=friend)
    assert code == 0
    assert (friend / "seen.svg").read_bytes() == (folder / "harbour-steps.svg").read_bytes()
