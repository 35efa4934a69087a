"""Every trick with a zip archive is refused, with a sentence; what we write ourselves is read back."""

import random
import struct
import warnings
import zipfile

import pytest

from blocklang.diagnostics import Diagnostic
from blocklang.packs.folding import fold
from blocklang.packs.reading import unfold
from blocklang.packs.values import Pack
from tests.packs.zips import Member, a_pack, folded, manifest, pack_of, text, zipped

STEPS = Member("harbour.block", text())
LINK = 0o120777
FOLDER = 0o040755


def refusal(data: bytes) -> tuple[str, str]:
    """Return why a pack is refused: the code and the sentence."""
    found = unfold("tides.pack", data)
    assert isinstance(found, Diagnostic), found
    assert found.title == "`tides.pack` is not a sound pack"
    return found.code, found.found


def test_what_we_write_is_read_back() -> None:
    pack = a_pack("harbour.block", "parts/wing.block")
    assert unfold("tides.pack", fold(pack)) == pack


def test_same_blocks_make_the_same_bytes_and_carry_no_date() -> None:
    assert folded("a.block", "b.block") == folded("b.block", "a.block")
    assert b"\x00\x00\x21\x00" in folded()[:14]  # 1980-01-01 00:00, the least that a zip archive can say


def test_pack_made_by_another_program_from_the_description_is_read() -> None:
    read = unfold("tides.pack", pack_of(STEPS))
    assert isinstance(read, Pack)
    assert read.blocks[0].data == text()


def test_deflated_pack_is_read() -> None:
    members = [Member("manifest.json", manifest({"harbour.block": text()})), STEPS]
    squeezed = zipped(member._replace(method=zipfile.ZIP_DEFLATED) for member in members)
    assert isinstance(unfold("tides.pack", squeezed), Pack)


@pytest.mark.parametrize(
    ("name", "sentence"),
    [
        ("../harbour.block", "The name `../harbour.block` in it leads out of the pack."),
        ("parts/../../harbour.block", "The name `parts/../../harbour.block` in it leads out of the pack."),
        ("/etc/harbour.block", "The name `/etc/harbour.block` in it begins at the root of a disk."),
        ("C:/harbour.block", "The name `C:/harbour.block` in it begins with a drive letter."),
        ("c:harbour.block", "The name `c:harbour.block` in it begins with a drive letter."),
        ("parts\\harbour.block", "The name `parts\\harbour.block` in it has a backslash."),
        ("..\\harbour.block", "The name `..\\harbour.block` in it has a backslash."),
        ("//server/harbour.block", "The name `//server/harbour.block` in it begins at the root of a disk."),
        ("parts//harbour.block", "A part of the name `parts//harbour.block` in it is empty, or begins or ends with a sign that systems treat differently."),
        ("./harbour.block", "A part of the name `./harbour.block` in it is empty, or begins or ends with a sign that systems treat differently."),
        (".block", "A part of the name `.block` in it is empty, or begins or ends with a sign that systems treat differently."),
        ("parts./a.block", "A part of the name `parts./a.block` in it is empty, or begins or ends with a sign that systems treat differently."),
        ("-rf.block", "A part of the name `-rf.block` in it is empty, or begins or ends with a sign that systems treat differently."),
        ("harbour:stream.block", "The name `harbour:stream.block` in it has a sign that not every system allows."),
        ("what?.block", "The name `what?.block` in it has a sign that not every system allows."),
        ("con.block", "The name `con.block` in it stands for a device on some systems."),
        ("parts/LPT1.wing.block", "The name `parts/LPT1.wing.block` in it stands for a device on some systems."),
        ("har\nbour.block", "The name `har\\nbour.block` in it has characters that cannot be seen."),
        ("har\u202ebour.block", "The name `har\\u202ebour.block` in it has characters that cannot be seen."),
        ("harbour.txt", "It holds `harbour.txt`, which is no block file."),
        ("run.sh", "It holds `run.sh`, which is no block file."),
        ("inner.pack", "It holds `inner.pack`, which is no block file."),
        ("inner.zip", "It holds `inner.zip`, which is no block file."),
        ("Manifest.json", "It holds `Manifest.json`, which is no block file."),
    ],
)  # fmt: skip
def test_name_that_could_lead_elsewhere_is_refused(name, sentence) -> None:
    assert refusal(pack_of(Member(name, text()))) == ("bad-file-name", sentence)


@pytest.mark.parametrize(
    ("names", "sentence"),
    [
        (("a.block", "A.block"), "It holds `a.block` and `A.block`, which differ only in capitals."),
        (("straße.block", "STRASSE.block"), "It holds `straße.block` and `STRASSE.block`, which differ only in capitals."),
        (("caf\u00e9.block", "cafe\u0301.block"), "It holds two files called `caf\u00e9.block`, whose letters are only written differently inside."),
        (("a.block", "a.block/b.block"), "It holds the file `a.block` and a folder of the same name, for `a.block/b.block`."),
        (("A.block", "a.block/b.block"), "It holds the file `A.block` and a folder of the same name, for `a.block/b.block`."),
    ],
)  # fmt: skip
def test_two_names_that_are_one_on_some_system_are_refused(names, sentence) -> None:
    assert refusal(pack_of(*(Member(name, text()) for name in names))) == ("twin-names", sentence)


def test_name_twice_is_refused() -> None:
    with warnings.catch_warnings():
        warnings.simplefilter("ignore", UserWarning)
        twice = zipped(
            [Member("manifest.json", manifest({"a.block": text()})), Member("a.block"), Member("a.block", text())]
        )
    assert refusal(twice) == ("twin-names", "It holds two files called `a.block`.")


@pytest.mark.parametrize(
    ("member", "code", "sentence"),
    [
        (STEPS._replace(mode=LINK), "not-a-file", "`harbour.block` in it is a link, and a pack holds only files."),
        (STEPS._replace(mode=FOLDER), "not-a-file", "`harbour.block` in it is no plain file, and a pack holds only files."),
        (STEPS._replace(mode=0o010644), "not-a-file", "`harbour.block` in it is no plain file, and a pack holds only files."),
        (Member("parts/", b""), "bad-file-name", "It holds the folder `parts/`, and a pack holds only files."),
        (STEPS._replace(comment=b"hello"), "hidden-words", "`harbour.block` in it carries a comment or other data that packs do not have."),
        (STEPS._replace(extra=b"\x55\x54\x01\x00x"), "hidden-words", "`harbour.block` in it carries a comment or other data that packs do not have."),
        (STEPS._replace(method=zipfile.ZIP_BZIP2), "unknown-folding", "`harbour.block` in it is compressed in a way that packs do not use."),
        (STEPS._replace(method=zipfile.ZIP_LZMA), "unknown-folding", "`harbour.block` in it is compressed in a way that packs do not use."),
        (Member("a.block", b"#" * 500_000, zipfile.ZIP_DEFLATED), "unfolds-too-far", "`a.block` in it grows to more than 100 times its size when it is unfolded."),
    ],
)  # fmt: skip
def test_member_that_is_no_plain_file_is_refused(member, code, sentence) -> None:
    assert refusal(pack_of(member)) == (code, sentence)


def patched(data: bytes, at: int, form: str, value: int) -> bytes:
    """Return bytes with one number in them changed."""
    changed = bytearray(data)
    struct.pack_into(form, changed, at, value)
    return bytes(changed)


def flagged(bits: int) -> bytes:
    """Return a pack whose first member has these flags in both places."""
    data = folded()
    listed = data.index(b"PK\x01\x02")
    return patched(patched(data, 6, "<H", bits), listed + 8, "<H", bits)


@pytest.mark.parametrize(
    ("bits", "code", "sentence"),
    [
        (0x1, "encrypted", "`manifest.json` in it is encrypted."),
        (0x41, "encrypted", "`manifest.json` in it is encrypted."),
        (0x8, "unusual-archive", "`manifest.json` in it is written in a way that packs do not use."),
        (0x20, "unusual-archive", "`manifest.json` in it is written in a way that packs do not use."),
    ],
)
def test_odd_flags_are_refused(bits, code, sentence) -> None:
    assert refusal(flagged(bits)) == (code, sentence)


def test_words_after_the_end_are_refused() -> None:
    assert refusal(folded() + b"#!/bin/sh\n") == ("pack-end", "Something stands after its end, or the end is missing.")


def test_second_archive_after_the_end_is_refused() -> None:
    assert refusal(folded("a.block") + folded("b.block"))[0] == "pack-end"


def test_comment_of_the_archive_is_refused() -> None:
    members = [Member("manifest.json", manifest({"harbour.block": text()})), STEPS]
    assert refusal(zipped(members, comment=b"see you"))[0] == "pack-end"


def test_comment_that_looks_like_an_end_is_refused() -> None:
    end = folded()[-22:]
    members = [Member("manifest.json", manifest({"harbour.block": text()})), STEPS]
    assert refusal(zipped(members, comment=end))[0] == "pack-end"


def test_words_before_the_beginning_are_refused() -> None:
    assert refusal(b"#!/bin/sh\n" + folded()) == (
        "no-archive",
        "It is not a zip archive, or something stands before its beginning.",
    )


def test_words_between_the_files_are_refused() -> None:
    data = folded()
    end, listed = len(data) - 22, data.index(b"PK\x01\x02")
    hidden = data[:listed] + b"hidden" + data[listed:end] + patched(data[end:], 16, "<L", listed + 6)
    assert refusal(hidden) == ("gap-in-pack", "Something is hidden between its files and its list of contents.")


def test_overlapping_files_are_refused() -> None:
    data = folded("a.block", "b.block")
    second = data.index(b"PK\x01\x02", data.index(b"PK\x01\x02") + 1)
    assert refusal(patched(data, second + 42, "<L", 0)) == (
        "gap-in-pack",
        "Its files overlap, or something is hidden between them.",
    )


def test_words_in_the_list_of_contents_are_refused() -> None:
    data = folded()
    end, listed = len(data) - 22, data.index(b"PK\x01\x02")
    longer = data[:end] + b"PK\x06\x07" + bytes(16) + patched(data[end:], 12, "<L", end - listed + 20)
    assert refusal(longer)[0] in ("pack-end", "damaged-pack")


@pytest.mark.parametrize("at", [6, 8, 14, 18, 22, 26, 28, 30])
def test_file_described_in_two_ways_is_refused(at) -> None:
    """Two programs would read two things: each number and the name before the file is held against the list."""
    data = folded()
    assert refusal(patched(data, at, "<B", data[at] ^ 4)) == (
        "two-stories",
        "It says one thing in its list of contents and another beside the file itself.",
    )


def test_changed_file_is_refused() -> None:
    data = folded().replace(b"#1f3a5f", b"#ffffff")
    assert refusal(data) == ("damaged-pack", "It is damaged: what it holds does not fit its list of contents.")


def test_file_changed_together_with_the_archive_is_refused() -> None:
    members = [Member("manifest.json", manifest({"harbour.block": text()})), Member("harbour.block", text("Other"))]
    assert refusal(zipped(members)) == ("altered-file", "`harbour.block` in it was changed after it was packed.")


def test_every_cut_is_refused() -> None:
    data = folded()
    assert {refusal(data[:length])[0] for length in range(0, len(data), 7)} <= {"no-archive", "pack-end"}


def test_every_changed_byte_is_refused() -> None:
    """Whatever single byte is changed, the pack is not read as another: what no reader looks at is the date alone."""
    data, whole = folded(), a_pack("harbour.block")
    for at in range(0, len(data), 3):
        found = unfold("tides.pack", data[:at] + bytes([data[at] ^ 0x15]) + data[at + 1 :])
        assert isinstance(found, Diagnostic) or found == whole, at


@pytest.mark.parametrize("data", [b"", b"PK", b"PK\x03\x04", b"PK\x05\x06" + bytes(18), b"\x1f\x8b" + bytes(40)])
def test_what_is_no_archive_is_refused(data) -> None:
    assert refusal(data)[0] in ("no-archive", "pack-end")


def test_random_damage_is_refused_or_harmless() -> None:
    """Bytes changed, cut out, doubled: a Diagnostic, or the pack as it was; never an exception, never another pack."""
    chance, data, whole = random.Random(20), folded("a.block", "parts/b.block"), a_pack("a.block", "parts/b.block")
    for _ in range(1_500):
        damaged = bytearray(data)
        for _ in range(chance.randint(1, 4)):
            at = chance.randrange(len(damaged))
            kind, length = chance.randrange(4), chance.choice((1, 2, 4, 22, 46))
            if kind == 0:
                damaged[at] = chance.choice((0, 1, 8, 47, 80, 127, 255))
            elif kind == 1:
                del damaged[at : at + length]
            elif kind == 2:
                damaged[at:at] = damaged[at : at + length]
            else:
                damaged[at : at + 2] = chance.randbytes(2)
        found = unfold("tides.pack", bytes(damaged))
        assert isinstance(found, Diagnostic) or found == whole
