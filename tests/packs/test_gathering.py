"""A pack holds the files asked for and all that they place, and draws the same from nothing else."""

import pytest

from blocklang.diagnostics import Severity, SourceText
from blocklang.library import Library
from blocklang.packs.folding import fold
from blocklang.packs.gathering import gather
from blocklang.packs.reading import unfold
from blocklang.packs.values import Pack
from blocklang.packs.verifying import verify
from tests.packs.zips import Member, manifest, text, zipped

PLACING = """\
block "{title}" language 1
by "Wim Tarrant" licence CC0-1.0
size 18 in
fabric fog  background light #e8eef2
fabric deep accent     dark  #1f3a5f
{lines}
"""


def placing(*names: str, title: str = "Two Sails") -> str:
    spots = ("0, 0", "9, 0", "0, 9", "9, 9")
    used = [names[n % len(names)] for n in range(4)]
    lines = "\n".join(
        f'place "{name}" as p{n} at {spot} size 9 in' for n, (name, spot) in enumerate(zip(used, spots, strict=True))
    )
    return PLACING.format(title=title, lines=lines)


@pytest.fixture
def folder(tmp_path):
    (tmp_path / "parts").mkdir()
    (tmp_path / "parts" / "wing.block").write_bytes(text("Wing"))
    (tmp_path / "tide.block").write_bytes(text("Tide"))
    return tmp_path


def gathered(folder, name: str, written: str, **more):
    (folder / name).write_text(written)
    source = SourceText(str(folder / name), written)
    return gather("sails.pack", [source], lambda _: Library(home=folder, shelves=(), **more), tuple)


def test_what_a_block_places_by_path_keeps_its_path(folder) -> None:
    pack, found = gathered(folder, "sails.block", placing("parts/wing.block", "tide.block"))
    assert [one.severity for one in found if one.severity is Severity.ERROR] == []
    assert pack is not None
    assert [block.file for block in pack.blocks] == ["parts/wing.block", "sails.block", "tide.block"]
    assert pack.by_file["sails.block"].places == ("parts/wing.block", "tide.block")
    assert [credit.name for credit in pack.by_file["sails.block"].credits] == ["Two Sails", "Wing", "Tide"]


def test_what_a_block_places_by_name_lies_under_that_name(folder) -> None:
    pack, _ = gathered(folder, "sails.block", placing("nine-patch"))
    assert pack is None  # without shelves there is no such name
    written = placing("nine-patch")
    source = SourceText(str(folder / "sails.block"), written)
    pack, _ = gather("sails.pack", [source], lambda _: Library(home=folder), tuple)
    assert pack is not None
    assert [block.file for block in pack.blocks] == ["nine-patch.block", "sails.block"]


def test_pack_draws_the_same_from_itself_alone(folder) -> None:
    pack, _ = gathered(folder, "sails.block", placing("parts/wing.block", "tide.block"))
    assert pack is not None
    again = unfold("sails.pack", fold(pack))
    assert isinstance(again, Pack)
    verified = verify(again, tuple)
    assert [block is not None for _, block in verified.blocks] == [True, True, True]
    assert not [one for one in verified.diagnostics if one.severity is Severity.ERROR]
    assert len(verified.blocks[1][1].patches) == 36


def test_part_that_places_from_its_own_folder_is_followed(folder) -> None:
    (folder / "parts" / "pair.block").write_text(placing("wing.block", "../tide.block", title="Pair"))
    pack, found = gathered(folder, "sails.block", placing("parts/pair.block"))
    assert pack is not None, found
    assert "tide.block" in pack.by_file
    assert pack.by_file["sails.block"].places == ("parts/pair.block", "parts/wing.block", "tide.block")


def test_file_with_mistakes_is_not_packed(folder) -> None:
    pack, found = gathered(folder, "sails.block", "block")
    assert pack is None
    assert found[0].severity is Severity.ERROR


def test_two_files_of_one_name_are_not_packed(folder) -> None:
    (folder / "other").mkdir()
    files = [(folder / "tide.block", text("Tide").decode()), (folder / "other" / "tide.block", text("Other").decode())]
    sources = [SourceText(str(path), written) for path, written in files]
    pack, found = gather("tides.pack", sources, lambda _: Library(home=folder, shelves=()), tuple)
    assert pack is None
    assert found[-1].found == f"`{files[0][0]}` and `{files[1][0]}` would both be `tide.block`."


def test_name_that_not_every_system_has_is_not_packed(folder) -> None:
    pack, found = gathered(folder, "con.block", text().decode())
    assert pack is None
    assert found[-1].found == "The name `con.block` in it stands for a device on some systems."


def test_block_in_a_pack_places_from_its_pack_alone() -> None:
    """The library has a nine patch; a pack that does not bring one gets none."""
    files = {"sails.block": placing("nine-patch").encode()}
    pack = unfold(
        "sails.pack", zipped([Member("manifest.json", manifest(files)), Member("sails.block", files["sails.block"])])
    )
    assert isinstance(pack, Pack)
    verified = verify(pack, tuple)
    assert verified.blocks[0][1] is None
    assert verified.diagnostics[0].code == "unknown-block"


@pytest.mark.parametrize("path", ["../secret.block", "/etc/secret.block", "parts/../../secret.block"])
def test_block_in_a_pack_cannot_place_from_outside(path, folder) -> None:
    (folder / "secret.block").write_bytes(text())
    files = {"sails.block": placing(path).encode()}
    pack = unfold(
        f"{folder}/sails.pack",
        zipped([Member("manifest.json", manifest(files)), Member("sails.block", files["sails.block"])]),
    )
    assert isinstance(pack, Pack)
    assert verify(pack, tuple).diagnostics[0].code == "outside-the-library"


def test_member_that_is_no_text_is_said_to_be_none() -> None:
    """An archive inside the archive, under the name of a block, is only a file that is no text."""
    inner = zipped([Member("a.block", text())])
    pack = unfold(
        "sails.pack", zipped([Member("manifest.json", manifest({"a.block": inner})), Member("a.block", inner)])
    )
    assert isinstance(pack, Pack)
    assert [one.code for one in verify(pack, tuple).diagnostics] == ["not-text"]


def test_wrong_credit_in_the_manifest_is_an_error() -> None:
    told = manifest({"a.block": text()}).replace(b"Odile Fenwick", b"Someone Else")
    pack = unfold("sails.pack", zipped([Member("manifest.json", told), Member("a.block", text())]))
    assert isinstance(pack, Pack)
    assert [one.code for one in verify(pack, tuple).diagnostics] == ["credits-differ"]


def test_missing_licence_is_a_warning(folder) -> None:
    pack, _ = gathered(folder, "plain.block", text().decode().replace(" licence CC-BY-4.0", ""))
    assert pack is not None
    found = verify(pack, tuple).diagnostics
    assert [(one.severity, one.found) for one in found] == [
        (Severity.WARNING, "`sails.pack/plain.block` does not say under which licence.")
    ]


def test_accents_that_one_system_splits_and_another_does_not_are_one_name(folder) -> None:
    (folder / "parts" / "me\u0301lange.block").write_bytes(text("Wing"))
    pack, found = gathered(folder, "voilie\u0300re.block", placing("parts/me\u0301lange.block"))
    assert pack is not None, found
    again = unfold("sails.pack", fold(pack))
    assert isinstance(again, Pack)
    assert [block.file for block in again.blocks] == ["parts/m\u00e9lange.block", "voili\u00e8re.block"]
    assert all(block is not None for _, block in verify(again, tuple).blocks)
