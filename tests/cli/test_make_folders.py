"""`blocklang make` of an output that is a whole folder."""

import os
import signal
import subprocess
import sys
from pathlib import Path

import pytest

from blocklang.hooks import FolderMaker, OutputFile, OutputOptions, Share
from blocklang.library import Library
from tests.cli.conftest import GOOD
from tests.plugins.strangers import an_output

#: A plugin that lays a page of each block, and a list of them all, into a folder.
SHELF = '''
"""The output `shelf`."""
import os
import sys
import time
from blocklang.hooks import FolderMaker, Output, OutputFile, OutputOptions, Share, hookimpl

def of_each(block, options):
    if block.name == "sunk":
        os._exit(9)
    if block.name == "becalmed":
        sys.stderr.write("becalmed\\n")
        time.sleep(60)
    small, own = block.plan("6in"), block.plan()
    if own is None or small is None:
        return None
    pictures = block.make("diagram", own, OutputOptions("svg"))
    page = f"{own.block.name} {len(own.steps)} {small.block.size} {options.copies} {own.cutting.options.oversize} {block.source.name}"
    files = (OutputFile(f"pages/{block.name}.txt", page.encode()), OutputFile(f"pages/{block.name}.svg", pictures[0].data))
    return Share(files, block.name)

def of_all(about, options):
    return (OutputFile("list.txt", "\\n".join(about).encode()),)

@hookimpl
def blocklang_outputs():
    return (Output("shelf", ("txt",), "txt", "All blocks.", make_folder=FolderMaker(of_each, of_all)),)
'''


def page_of(block, options: OutputOptions) -> Share | None:
    plan = block.plan()
    return None if plan is None else Share((OutputFile(f"{block.name}.txt", plan.block.name.encode()),), block.name)


def list_of(about: tuple[str, ...], options: OutputOptions) -> tuple[OutputFile, ...]:
    return (OutputFile("deep/list.txt", " ".join(about).encode()),)


def tree(folder: Path) -> dict[str, bytes]:
    return {path.relative_to(folder).as_posix(): path.read_bytes() for path in folder.rglob("*") if path.is_file()}


def offer(monkeypatch, of_each=page_of, of_all=list_of) -> None:
    outputs = (an_output("shelf", make_folder=FolderMaker(of_each, of_all)), an_output("hello"))
    monkeypatch.setattr("blocklang.cli.plugged.Plugged.outputs", lambda self: outputs)


@pytest.fixture
def blocks(folder) -> Path:
    """Write two blocks into a folder."""
    (folder / "blocks").mkdir()
    for name in ("harbour", "marsh"):
        (folder / "blocks" / f"{name}.block").write_text(GOOD.replace("Harbour Steps", f"{name.title()} Steps"))
    return folder / "blocks"


def test_folder_is_made_block_by_block_and_then_as_a_whole(command, blocks, folder, monkeypatch) -> None:
    offer(monkeypatch)
    ran = command("make", "shelf", "blocks", "-o", "site")
    assert (ran.code, ran.out, ran.err) == (0, "", "Wrote site: 3 files of 2 blocks.\n")
    assert tree(folder / "site") == {
        "harbour.txt": b"Harbour Steps", "marsh.txt": b"Marsh Steps", "deep/list.txt": b"harbour marsh",
    }  # fmt: skip
    assert sorted(path.name for path in folder.iterdir()) == ["blocks", "site"]


def test_faulty_block_is_told_and_left_out(command, blocks, folder, monkeypatch) -> None:
    offer(monkeypatch)
    (blocks / "aground.block").write_text("block\n")
    ran = command("make", "shelf", "blocks", "-o", "site")
    assert ran.code == 1 and "blocks/aground.block, line 1, column 6" in ran.err
    assert ran.err.endswith("Wrote site: 3 files of 2 blocks; left out: aground.\n")
    assert tree(folder / "site")["deep/list.txt"] == b"harbour marsh"


def test_folder_that_is_there_is_written_over_only_when_forced(command, blocks, folder, monkeypatch) -> None:
    offer(monkeypatch)
    (folder / "site").mkdir()
    for name in ("mine.txt", "marsh.txt"):
        (folder / "site" / name).write_bytes(b"mine")
    ran = command("make", "shelf", "blocks", "-o", "site")
    assert (ran.code, ran.err) == (2, "`site` is there already, and is left as it is; --force writes over it.\n")
    assert tree(folder / "site") == {"mine.txt": b"mine", "marsh.txt": b"mine"}
    assert command("make", "shelf", "blocks", "-o", "site", "--force").code == 0
    assert tree(folder / "site")["mine.txt"] == b"mine"
    assert tree(folder / "site")["marsh.txt"] == b"Marsh Steps"
    assert len(tree(folder / "site")) == 4


def test_nothing_is_written_through_a_link_that_leads_out(command, blocks, folder, monkeypatch) -> None:
    offer(monkeypatch)
    (folder / "site").mkdir()
    (folder / "other").mkdir()
    (folder / "site" / "deep").symlink_to(folder / "other")
    ran = command("make", "shelf", "blocks", "-o", "site", "--force")
    assert ran.code == 2 and "is a link, or lies behind one that leads out of `site`: nothing is written." in ran.err
    assert tree(folder / "site") == tree(folder / "other") == {}


@pytest.mark.parametrize("name", ["../a", "/a", "a/../../b", "C:a", "a\\b", "", "nul.txt", "a/", ".hidden", "a\0b"])
@pytest.mark.parametrize("which", ["share", "whole"])
def test_file_that_does_not_lie_inside_is_refused(command, blocks, folder, monkeypatch, name, which) -> None:
    files = (OutputFile(name, b"x"),)
    if which == "share":
        offer(monkeypatch, of_each=lambda block, options: Share(files))
    else:
        offer(monkeypatch, of_all=lambda about, options: files)
    ran = command("make", "shelf", "blocks", "-o", "site")
    assert ran.code == 1 and f"It gives a file the name {name!r}, which does not lie inside its folder" in ran.err
    assert sorted(path.name for path in folder.rglob("*")) == ["blocks", "harbour.block", "marsh.block"]


@pytest.mark.parametrize(
    ("changed", "sentence"),
    [
        ({"of_each": lambda block, options: 1 / 0}, "It fails with ZeroDivisionError"),
        ({"of_all": lambda about, options: 1 / 0}, "It fails with ZeroDivisionError"),
        ({"of_each": lambda block, options: ()}, "It gives something other than a share."),
        ({"of_all": lambda about, options: None}, "It gives something other than a tuple of files."),
        ({"of_each": lambda block, options: Share((OutputFile("a", b""),), "")}, "It holds two files called `a`"),
        ({"of_each": lambda block, options: None}, "Nothing can be made of these blocks"),
    ],
)
def test_output_that_fails_leaves_nothing(command, blocks, folder, monkeypatch, changed, sentence) -> None:
    offer(monkeypatch, **changed)
    ran = command("make", "shelf", "blocks", "-o", "site")
    assert ran.code == 1 and sentence in ran.err and "Traceback" not in ran.err
    assert [path.name for path in folder.iterdir()] == ["blocks"]


@pytest.mark.parametrize(
    ("arguments", "sentence"),
    [
        (("shelf,hello", "blocks", "-o", "site"), "`shelf` is a whole folder: make it alone."),
        (("shelf", "blocks", "-o", "-"), "`shelf` is a whole folder: give it a name with -o."),
        (("shelf", "-", "-o", "site"), "A block from standard input has no name"),
        (("shelf", "blocks", "blocks/marsh.block", "-o", "site"), "have one name: make two folders of them."),
        (("shelf", "blocks", "-o", "no/site"), "There is no folder `no`"),
        (("shelf", "blocks", "-o", "blocks/marsh.block"), "is there already"),
    ],
)
def test_slip_in_what_is_typed_makes_nothing(command, blocks, folder, monkeypatch, arguments, sentence) -> None:
    offer(monkeypatch)
    before = sorted(folder.rglob("*"))
    ran = command("make", *arguments)
    assert ran.code == 2 and sentence in ran.err
    assert sorted(folder.rglob("*")) == before


def test_no_file_means_the_whole_library(command, folder, monkeypatch) -> None:
    def name_only(block, options: OutputOptions) -> Share:
        return Share((OutputFile(f"{block.name}.txt", b""),), block.name)

    offer(monkeypatch, of_each=name_only)
    ran = command("make", "shelf", "-o", "site", "--processes", "1")
    assert ran.code == 0
    listed = (folder / "site" / "deep" / "list.txt").read_text().split()
    assert listed == list(Library().names())


@pytest.fixture
def installed(tmp_path_factory) -> dict[str, str]:
    """Install a plugin for commands of their own, and return the environment that has it."""
    site = tmp_path_factory.mktemp("installed")
    (site / "shelf-1.dist-info").mkdir()
    (site / "shelf-1.dist-info" / "METADATA").write_text("Metadata-Version: 2.1\nName: shelf\nVersion: 1\n")
    (site / "shelf-1.dist-info" / "entry_points.txt").write_text("[blocklang]\nshelf = shelf_plugin\n")
    (site / "shelf_plugin.py").write_text(SHELF)
    return os.environ | {"PYTHONPATH": os.pathsep.join([str(site), os.environ.get("PYTHONPATH", "")])}


def make_shelf(folder: Path, environment: dict[str, str], *options: str) -> subprocess.Popen[str]:
    command = [sys.executable, "-m", "blocklang", "make", "shelf", "blocks", *options]
    return subprocess.Popen(command, env=environment, cwd=folder, stderr=subprocess.PIPE, text=True)


def test_processes_do_not_change_a_byte(blocks, folder, installed) -> None:
    (blocks / "aground.block").write_text("block\n")
    said = []
    for count in ("1", "2"):
        options = ("-o", f"site{count}", "--processes", count, "--copies", "3", "--oversize", "1/2in")
        ran = make_shelf(folder, installed, *options)
        _, err = ran.communicate(timeout=120)
        said.append((ran.returncode, err.replace(f"site{count}", "site")))
    assert said[0] == said[1]
    assert said[0][0] == 1 and said[0][1].endswith("Wrote site: 5 files of 2 blocks; left out: aground.\n")
    assert tree(folder / "site1") == tree(folder / "site2")
    assert sorted(tree(folder / "site1")) == [
        "list.txt", "pages/harbour.svg", "pages/harbour.txt", "pages/marsh.svg", "pages/marsh.txt",
    ]  # fmt: skip
    # What was typed reaches every process.
    assert b" 3 1/2 blocks/marsh.block" in tree(folder / "site2")["pages/marsh.txt"]


def test_process_that_dies_is_told_and_leaves_nothing(blocks, folder, installed) -> None:
    (blocks / "sunk.block").write_text(GOOD)
    ran = make_shelf(folder, installed, "-o", "site", "--processes", "2")
    _, err = ran.communicate(timeout=120)
    assert ran.returncode == 2
    assert err.startswith("A process that was working on the blocks ended by itself") and err.count("\n") == 1
    assert [path.name for path in folder.iterdir()] == ["blocks"]


@pytest.mark.parametrize("count", ["1", "2"])
def test_folder_that_is_stopped_half_way_leaves_nothing(blocks, folder, installed, count) -> None:
    (blocks / "becalmed.block").write_text(GOOD)
    ran = make_shelf(folder, installed, "-o", "site", "--processes", count)
    assert ran.stderr is not None and ran.stderr.readline() == "becalmed\n"
    ran.send_signal(signal.SIGINT)
    _, err = ran.communicate(timeout=30)  # the block takes a minute, which is not waited for
    assert (ran.returncode, err.strip()) == (130, "Stopped.")
    assert [path.name for path in folder.iterdir()] == ["blocks"]
