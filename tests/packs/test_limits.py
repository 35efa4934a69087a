"""Every bound on a pack: what lies at it is read, what lies one past it is refused."""

import zipfile
import zlib

import pytest

from blocklang.diagnostics import Diagnostic
from blocklang.limits import (
    DEEPEST_FOLDERS,
    LONGEST_FILE_NAME,
    MOST_BYTES,
    MOST_KEY_BYTES,
    MOST_MANIFEST_BYTES,
    MOST_PACK_BLOCKS,
    MOST_PACK_BYTES,
    MOST_PACK_TEXT,
    MOST_UNFOLDING,
)
from blocklang.packs.archive import open_archive
from tests.packs.zips import Member, zipped

SQUEEZED = zipfile.ZIP_DEFLATED


def code_of(*members: Member) -> str:
    """Return why an archive is refused, "" when it is opened."""
    found = open_archive("tides.pack", zipped(members))
    return found.code if isinstance(found, Diagnostic) else ""


@pytest.mark.parametrize(
    ("name", "most", "code"),
    [
        ("a.block", MOST_BYTES, "file-too-large"),
        ("manifest.json", MOST_MANIFEST_BYTES, "file-too-large"),
        ("signature.json", MOST_KEY_BYTES, "file-too-large"),
    ],
)
def test_size_of_a_file(name, most, code) -> None:
    assert code_of(Member(name, b"#" * most)) == ""
    assert code_of(Member(name, b"#" * (most + 1))) == code


def test_number_of_files() -> None:
    both = [Member("manifest.json"), Member("signature.json")]
    members = [Member(f"b{number}.block") for number in range(MOST_PACK_BLOCKS + 1)]
    assert code_of(*both, *members[:-1]) == ""
    assert code_of(*both, *members) == "too-many-files"


def test_size_of_the_pack() -> None:
    """Ten files of almost the largest size are one archive of exactly the size that is allowed."""
    names = [f"b{number}.block" for number in range(10)]
    room = MOST_PACK_BYTES - len(zipped(Member(name, b"") for name in names))
    sizes = [room // 10 + (1 if number < room % 10 else 0) for number in range(10)]
    full = zipped(Member(name, bytes(size)) for name, size in zip(names, sizes, strict=True))
    assert len(full) == MOST_PACK_BYTES
    assert not isinstance(open_archive("tides.pack", full), Diagnostic)
    sizes[0] += 1
    fuller = zipped(Member(name, bytes(size)) for name, size in zip(names, sizes, strict=True))
    found = open_archive("tides.pack", fuller)
    assert isinstance(found, Diagnostic)
    assert (found.code, found.found) == ("pack-too-large", f"A pack has at most {MOST_PACK_BYTES:,} bytes.")


def test_size_of_all_files_unfolded() -> None:
    each = MOST_PACK_TEXT // 40
    text = b"".join(bytes(range(48, 112)) + b"%d\n" % (n * 7919) for n in range(each // 64))[:each]
    members = [Member(f"b{number}.block", text, SQUEEZED) for number in range(40)]
    assert sum(len(member.data) for member in members) == MOST_PACK_TEXT
    assert code_of(*members) == ""
    assert code_of(*members, Member("one.block", b"#")) == "too-much-text"


def folded_size(data: bytes) -> int:
    squeezing = zlib.compressobj(1, zlib.DEFLATED, -15)
    return len(squeezing.compress(data) + squeezing.flush())


def test_how_far_a_file_unfolds() -> None:
    """A varied beginning and a long even end, so that the whole is exactly as many times larger as is allowed."""
    varied = bytes((n * n * 37 + n * 11) % 251 for n in range(400))
    even = [varied[:n] + b"#" * (MOST_UNFOLDING * size - n) for n in range(1, 50) for size in range(20, 150)]
    exact = next(data for data in even if folded_size(data) * MOST_UNFOLDING == len(data))
    assert code_of(Member("a.block", exact, SQUEEZED)) == ""
    assert folded_size(exact + b"#") == folded_size(exact)
    assert code_of(Member("a.block", exact + b"#", SQUEEZED)) == "unfolds-too-far"


def test_length_of_a_name() -> None:
    assert code_of(Member("a" * (LONGEST_FILE_NAME - 6) + ".block")) == ""
    assert code_of(Member("a" * (LONGEST_FILE_NAME - 5) + ".block")) == "bad-file-name"


def test_depth_of_folders() -> None:
    assert code_of(Member("f/" * DEEPEST_FOLDERS + "a.block")) == ""
    assert code_of(Member("f/" * (DEEPEST_FOLDERS + 1) + "a.block")) == "bad-file-name"
