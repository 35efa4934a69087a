"""Packing, unpacking, verifying, comparing: as a person at a terminal meets them."""

import json
import shutil
import stat
import subprocess
import sys
from pathlib import Path

import pytest

from blocklang.block import Credit
from blocklang.packs.folding import fold
from blocklang.packs.values import Pack, PackedBlock
from tests.cli.conftest import GOOD
from tests.packs.zips import Member, pack_of, text

CREDITED = GOOD.replace("language 1\n", 'language 1\nby "Odile Fenwick" licence CC-BY-4.0\n')


def tree(folder: Path) -> dict[str, bytes]:
    """Return every file below a folder."""
    return {path.relative_to(folder).as_posix(): path.read_bytes() for path in folder.rglob("*") if path.is_file()}


@pytest.fixture
def packed(command, folder) -> Path:
    """Make tides.pack of two blocks, one of which places the other."""
    (folder / "steps.block").write_text(CREDITED, encoding="utf-8")
    placing = CREDITED.partition("rows")[0].replace("Harbour Steps", "Four Steps").replace("size 9", "size 18")
    spots = ("0, 0", "9, 0", "0, 9", "9, 9")
    places = "".join(f'place "steps.block" as s{n} at {spot} size 9 in\n' for n, spot in enumerate(spots))
    (folder / "four.block").write_text(placing.replace("fabric", "# fabric") + places, encoding="utf-8")
    ran = command("pack", "four.block", "-o", "tides")
    assert (ran.code, ran.err) == (0, "Wrote tides.pack: 2 blocks.\n")
    return folder / "tides.pack"


def test_newcomer_drafts_mends_draws_packs_and_a_friend_gets_the_same(command, folder, monkeypatch) -> None:
    """New file, mistake, message, fix, picture, sheet, pack, verify, unpack elsewhere: the same bytes."""
    assert command("new", "tide-pool").code == 0
    file = folder / "tide-pool.block"
    right = file.read_text(encoding="utf-8").replace(
        "language 1\n", 'language 1\nby "Odile Fenwick" licence CC-BY-4.0\n'
    )
    file.write_text(right.replace("  deep fog  deep\n", "  deep fogg deep\n", 1), encoding="utf-8")
    wrong = command("check", "tide-pool.block")
    assert wrong.code == 1
    assert "`fogg`" in wrong.err
    assert "Did you mean `fog`?" in wrong.err
    file.write_text(right, encoding="utf-8")
    assert command("check", "tide-pool.block").out == "tide-pool.block: fine\n"
    assert command("make", "diagram", "tide-pool.block", "-o", "tide-pool.svg").code == 0
    assert (folder / "tide-pool.svg").read_bytes().startswith(b"<?xml")
    assert command("make", "sewing-sheet", "tide-pool.block", "-o", "tide-pool.pdf").code == 0
    assert (folder / "tide-pool.pdf").read_bytes().startswith(b"%PDF")
    assert command("pack", "tide-pool.block", "-o", "tide-pool.pack").code == 0
    friend = folder / "friend"
    friend.mkdir()
    shutil.copy(folder / "tide-pool.pack", friend)
    monkeypatch.chdir(friend)
    verified = command("verify", "tide-pool.pack")
    assert verified.code == 0
    assert verified.out == (
        "tide-pool.pack: 1 block, all of it is sound. It is not signed.\n"
        "tide-pool.block\n"
        "    Tide Pool, by Odile Fenwick, CC-BY-4.0\n"
    )
    assert command("unpack", "tide-pool.pack").err == "Wrote 1 block to tide-pool.\n"
    assert (friend / "tide-pool" / "tide-pool.block").read_bytes() == file.read_bytes()
    assert command("make", "diagram", "tide-pool/tide-pool.block", "-o", "mine.svg").code == 0
    assert (friend / "mine.svg").read_bytes() == (folder / "tide-pool.svg").read_bytes()
    assert command("pack", "tide-pool/tide-pool.block", "-o", "again").code == 0
    assert (friend / "again.pack").read_bytes() == (folder / "tide-pool.pack").read_bytes()


def test_placed_blocks_come_along_and_are_credited(command, packed) -> None:
    ran = command("verify", "tides.pack")
    assert ran.code == 0
    assert ran.out.splitlines() == [
        "tides.pack: 2 blocks, all of it is sound. It is not signed.",
        "four.block",
        "    Four Steps, by Odile Fenwick, CC-BY-4.0",
        "    places Harbour Steps, by Odile Fenwick, CC-BY-4.0",
        "steps.block",
        "    Harbour Steps, by Odile Fenwick, CC-BY-4.0",
    ]
    told = json.loads(command("verify", "tides.pack", "--format", "json").out)
    assert [block["file"] for block in told["blocks"] if block["sound"]] == ["four.block", "steps.block"]
    assert told["signed"] == "no"


def test_pack_is_a_folder_to_every_command(command, packed, folder) -> None:
    (folder / "steps.block").unlink()
    (folder / "four.block").unlink()
    assert command("check", "tides.pack/four").out == "tides.pack/four: fine\n"
    assert command("check", "tides.pack/four.block").code == 0
    assert "Four Steps, finished 18 in × 18 in" in command("plan", "tides.pack/four").out
    ran = command("check", "tides.pack/fuor")
    assert (ran.code, "Did you mean `tides.pack/four`?" in ran.err) == (1, True)
    ran = command("plan", "tides.pack")
    assert (ran.code, "Name a block in it, such as `tides.pack/four`." in ran.err) == (1, True)
    ran = command("format", "tides.pack/four")
    assert ran.code == 2
    assert ran.err == "`tides.pack/four.block` lies in a pack, which is never changed: unpack it first.\n"


def test_pack_in_the_library_is_searched_and_named(command, packed, folder, monkeypatch) -> None:
    monkeypatch.setenv("BLOCKLANG_LIBRARY", "tides.pack")
    (folder / "four.block").unlink()
    listed = {one["name"]: one for one in json.loads(command("library", "--format", "json").out)}
    assert (listed["four"]["origin"], listed["four"]["patches"]) == ("tides.pack", 36)
    assert command("check", "four").code == 0


def test_broken_pack_in_the_library_is_named_and_passed_over(command, packed, folder, monkeypatch) -> None:
    packed.write_bytes(packed.read_bytes() + b"more")
    monkeypatch.setenv("BLOCKLANG_LIBRARY", "tides.pack")
    ran = command("check", "nine-patch")
    assert ran.code == 0
    assert ran.err.count("Something stands after its end") == 1
    (folder / "four.block").unlink()
    for arguments in (("check", "four"), ("make", "diagram", "four", "-o", "x.svg")):
        ran = command(*arguments)
        assert (ran.code, ran.err.count("Something stands after its end")) == (2, 1)
    ran = command("make", "diagram", "nine-patch", "-o", "x.svg")
    assert (ran.code, ran.err.count("Something stands after its end")) == (0, 1)
    assert command("check", "tides.pack/four").code == 1


def test_nothing_is_overwritten_without_asking(command, packed, folder) -> None:
    before = packed.read_bytes()
    ran = command("pack", "steps.block", "-o", "tides.pack")
    assert ran.code == 2
    assert ran.err == "`tides.pack` is there already, and is left as it is; --force writes over it.\n"
    (folder / "out").mkdir()
    (folder / "out" / "steps.block").write_text("mine")
    ran = command("unpack", "tides.pack", "-o", "out")
    assert (ran.code, tree(folder / "out")) == (2, {"steps.block": b"mine"})
    assert packed.read_bytes() == before
    assert command("unpack", "tides.pack", "-o", "out", "--force").code == 0
    assert set(tree(folder / "out")) == {"four.block", "steps.block"}
    assert command("pack", "steps.block", "-o", "tides.pack", "--force").code == 0
    assert packed.read_bytes() != before


def test_unpacking_over_a_link_never_leaves_the_folder(command, folder) -> None:
    (folder / "wings.pack").write_bytes(pack_of(Member("parts/wing.block", text())))
    (folder / "secret").mkdir()
    (folder / "out").mkdir()
    (folder / "out" / "parts").symlink_to(folder / "secret")
    ran = command("unpack", "wings.pack", "-o", "out", "--force")
    assert ran.code == 2
    assert "nothing is written" in ran.err
    assert tree(folder / "secret") == {}
    (folder / "out" / "parts").unlink()
    (folder / "out" / "parts").mkdir()
    (folder / "precious").write_text("precious")
    (folder / "out" / "parts" / "wing.block").symlink_to(folder / "precious")
    assert command("unpack", "wings.pack", "-o", "out", "--force").code == 2
    assert (folder / "precious").read_text() == "precious"


@pytest.mark.parametrize("name", ["../a.block", "/tmp/a.block", "C:\\a.block", "a/../../b.block", "a.txt"])
def test_no_name_leads_out_of_the_folder(command, folder, name) -> None:
    (folder / "bad.pack").write_bytes(pack_of(Member(name, text())))
    before = tree(folder.parent)
    for arguments in (("unpack", "bad.pack"), ("unpack", "bad.pack", "--force"), ("verify", "bad.pack")):
        assert command(*arguments).code == 1
    assert tree(folder.parent) == before


def test_pack_with_a_faulty_block_is_told_and_not_unpacked(command, folder) -> None:
    (folder / "bad.pack").write_bytes(pack_of(Member("a.block", b'block "A" language 1\nsize 9 in\n')))
    ran = command("verify", "bad.pack")
    assert ran.code == 1
    assert "not all of it is sound" in ran.out
    assert command("unpack", "bad.pack").code == 1
    assert not (folder / "bad").exists()


def test_file_with_mistakes_is_not_packed(command, bad, folder) -> None:
    ran = command("pack", "bad.block", "-o", "bad")
    assert (ran.code, (folder / "bad.pack").exists()) == (1, False)
    assert "`deap`" in ran.err


@pytest.mark.parametrize(
    ("arguments", "sentence"),
    [
        (("pack",), "Name the block files to pack, and with -o the pack to write."),
        (("pack", "good.block"), "Name the block files to pack, and with -o the pack to write."),
        (("pack", "-", "-o", "x"), "A pack is made of files, so that each block has a name."),
        (("pack", "none.block", "-o", "x"), "There is no file `none.block`."),
        (("pack", "good.block", "-o", "no/x"), "There is no folder `no`: make it first, or write elsewhere."),
        (("verify", "none.pack"), "There is no file `none.pack`."),
        (("unpack", "none.pack"), "There is no file `none.pack`."),
        (("verify", "x.pack", "--pictures", "p"), "--pictures shows what changed: name the older pack with --against."),
    ],
)
def test_command_line_errors_are_one_sentence_and_code_2(command, good, arguments, sentence) -> None:
    ran = command(*arguments)
    assert (ran.code, sentence in ran.err) == (2, True)


def test_signed_pack_from_end_to_end(command, good, folder) -> None:
    assert command("pack", "--new-key", "guild").code == 0
    assert stat.S_IMODE((folder / "guild.key").stat().st_mode) == 0o600
    assert command("pack", "--new-key", "guild").code == 2
    assert command("pack", "good.block", "-o", "plain").code == 0
    assert command("pack", "good.block", "-o", "signed", "--sign", "guild.key").err.endswith("1 block, signed.\n")
    assert "unchanged since" in command("verify", "signed.pack", "--key", "guild.public").out
    assert "not checked without --key" in command("verify", "signed.pack").out
    ran = command("verify", "plain.pack", "--key", "guild.public")
    assert (ran.code, "It is not signed." in ran.err) == (1, True)
    ran = command("unpack", "plain.pack", "--key", "guild.public")
    assert (ran.code, (folder / "plain").exists()) == (1, False)
    assert command("unpack", "signed.pack", "--key", "guild.public").code == 0


def test_library_that_asks_for_a_key_uses_no_other_pack(command, good, folder, monkeypatch) -> None:
    command("pack", "--new-key", "guild")
    command("pack", "good.block", "-o", "plain")
    command("pack", "good.block", "-o", "signed", "--sign", "guild.key")
    monkeypatch.setenv("BLOCKLANG_KEY", "guild.public")
    assert command("check", "signed.pack/good").code == 0
    ran = command("check", "plain.pack/good")
    assert (ran.code, "It is not signed." in ran.err) == (1, True)


def test_comparing_tells_what_changed_to_whoever_sews_it(command, folder) -> None:
    pairs = {"before": "fabric fog  background light #e8eef2", "after": "fabric fog  background light #ffffff"}
    for when, fabric in pairs.items():
        (folder / when).mkdir()
        written = CREDITED.replace(pairs["before"], fabric)
        (folder / when / "steps.block").write_text(written.replace("size 9", "size 12") if when == "after" else written)
        (folder / when / "same.block").write_text(CREDITED.replace("Harbour Steps", "Same"))
    frame = next((Path(__file__).parents[2] / "blocks").rglob("attic-window.block")).read_text()
    (folder / "after" / "window.block").write_text(frame)
    (folder / "before" / "old.block").write_text(CREDITED.replace("Harbour Steps", "Old"))
    for when in pairs:
        assert command("pack", *sorted((folder / when).glob("*.block")), "-o", when).code == 0
    ran = command("verify", "after.pack", "--against", "before.pack", "--pictures", "pictures")
    assert ran.code == 0
    assert ran.out.splitlines()[-4:] == [
        "Changed since before.pack:",
        "    old: gone",
        "    steps: changed: finished 12 in instead of 9 in; fog is #ffffff instead of #e8eef2",
        "    window: new: 3 patches, finished 6 in, moderate",
    ]
    names = ["old-before", "steps-after", "steps-before", "window-after"]
    assert sorted(path.stem for path in (folder / "pictures").iterdir()) == names
    assert command("verify", "after.pack", "--against", "before.pack", "--pictures", "pictures").code == 2
    assert command("verify", "after.pack", "--against", "after.pack").out.endswith(
        "Nothing changed since after.pack.\n"
    )


def test_name_that_means_another_block_outside_the_pack_is_told(command, folder) -> None:
    """In the pack, `nine-patch` is the block that came along; in the folder, it is the library's."""
    around = CREDITED.partition("fabric")[0] + 'place "nine-patch" as a at 0, 0 size 9 in\n'
    files = {"around.block": around.encode(), "nine-patch.block": CREDITED.encode()}
    credited = (Credit("Harbour Steps", "Odile Fenwick", "CC-BY-4.0"),)
    blocks = (
        PackedBlock("around.block", files["around.block"], 1, credited, ("nine-patch.block",)),
        PackedBlock("nine-patch.block", files["nine-patch.block"], 1, credited),
    )
    (folder / "odd.pack").write_bytes(fold(Pack("odd.pack", blocks)))
    ran = command("unpack", "odd.pack")
    assert ran.code == 0
    assert "Outside the pack, what places `nine-patch` gets the one from blocklang." in ran.err


DYING = """
import os, signal, sys
sys.path.insert(0, {root!r})
from blocklang.cli.program import run
WRITES = {{"open", "os.rename", "os.mkdir", "os.chmod", "os.remove", "os.rmdir", "os.truncate"}}
import blocklang.cli.pack_command, blocklang.cli.unpack_command, tempfile, shutil
run(["unpack", "tides.pack", "-o", "first"])  # so that no module is left to be loaded

def killed_at(number, arguments):
    pid = os.fork()
    if pid:
        return os.WIFSIGNALED(os.waitpid(pid, 0)[1])
    seen = 0
    def listen(event, details):
        nonlocal seen
        if event in WRITES and (event != "open" or (details[2] or 0) & (os.O_WRONLY | os.O_RDWR | os.O_CREAT)):
            seen += 1
            if seen == number:
                os.kill(os.getpid(), signal.SIGKILL)
    sys.addaudithook(listen)
    os._exit(run(arguments))

number = 1
while killed_at(number, {arguments!r}):
    print(number, sorted(os.listdir(".")), flush=True)
    {look}
    number += 1
print("done after", number - 1, flush=True)
"""


def killed_at_each_write(folder: Path, arguments: list[str], look: str) -> list[str]:
    """Run a command again and again, each time killed one write later, and look at what is there."""
    root = str(Path(__file__).parents[2])
    code = DYING.format(root=root, arguments=arguments, look=look)
    ran = subprocess.run([sys.executable, "-c", code], cwd=folder, capture_output=True, text=True, check=False)
    assert ran.returncode == 0, ran.stderr[-2000:]
    return ran.stdout.splitlines()


def test_unpacking_is_whole_or_not_at_all_wherever_it_is_killed(packed, folder) -> None:
    look = 'assert not os.path.exists("out") or sorted(os.listdir("out")) == ["four.block", "steps.block"]'
    told = killed_at_each_write(folder, ["unpack", "tides.pack", "-o", "out"], look)
    assert int(told[-1].rpartition(" ")[2]) >= 6  # a folder, two in it, two files, the renaming
    assert tree(folder / "out") == {name: (folder / name).read_bytes() for name in ("four.block", "steps.block")}


def test_packing_over_a_pack_keeps_the_old_or_the_new_wherever_it_is_killed(command, packed, folder) -> None:
    old = packed.read_bytes()
    command("pack", "steps.block", "-o", "new")
    new = (folder / "new.pack").read_bytes()
    look = 'assert open("tides.pack", "rb").read() in (open("old", "rb").read(), open("new.pack", "rb").read())'
    (folder / "old").write_bytes(old)
    told = killed_at_each_write(folder, ["pack", "steps.block", "-o", "tides", "--force"], look)
    assert int(told[-1].rpartition(" ")[2]) >= 2
    assert packed.read_bytes() == new


def test_unpacking_over_files_leaves_each_whole_wherever_it_is_killed(packed, folder) -> None:
    (folder / "out").mkdir()
    for name in ("four.block", "steps.block"):
        (folder / "out" / name).write_text("old")
    look = 'assert all(open("out/" + n).read() in ("old", open(n).read()) for n in ("four.block", "steps.block"))'
    told = killed_at_each_write(folder, ["unpack", "tides.pack", "-o", "out", "--force"], look)
    assert int(told[-1].rpartition(" ")[2]) >= 4
    assert (folder / "out" / "four.block").read_bytes() == (folder / "four.block").read_bytes()
