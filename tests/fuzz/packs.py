"""The targets that read packs: bytes as they are, real archives with changes, and the records that lie in them."""

import io
import json
import struct
import tempfile
import zipfile
from collections.abc import Iterator
from contextlib import contextmanager
from functools import cache
from pathlib import Path
from typing import Any

from blocklang.catalogue import index as index_module
from blocklang.catalogue.facts import Facts
from blocklang.catalogue.index import FORMAT, Index, Known, Stamp, _written, maker
from blocklang.cli.cards import _lines
from blocklang.cli.cataloguing import Listed
from blocklang.cli.library_command import _row, as_json
from blocklang.cli.unpack_command import _write_all
from blocklang.cli.verify_command import _credits, print_json
from blocklang.diagnostics import Diagnostic, render_long
from blocklang.library import Entry, Shelf
from blocklang.packs.folding import fold
from blocklang.packs.manifest import manifest_bytes, read_manifest, read_signature, signature_bytes
from blocklang.packs.reading import unfold
from blocklang.packs.signing import _private, _public
from blocklang.packs.values import Pack, Signature
from blocklang.packs.verifying import credit_line, verify
from tests.fuzz.choices import Choices
from tests.fuzz.texts import more_cells
from tests.fuzz.watching import promise
from tests.packs.zips import Member, a_pack, manifest, packed, text, zipped

NAMES = ["harbour.block", "parts/wing.block", "HARBOUR.block", "../out.block", "/etc/out.block", "a\\b.block", "con.block",
         "manifest.json", "signature.json", "café.block", "cafe\u0301.block", "harbour.block/x.block", "x" * 130 + ".block",
         "a/b/c/d/e/f.block", "harbour\x00.block", "harbour", ".block", "ﬁ.block", "fi.block", "ı.block", "i\u0307.block"]  # fmt: skip
DATAS = [text(), text("Tide Mill"), b"", b"#" * 3000, b"\xff\xfe", b"block \"x\"\n", b"PK\x03\x04", text() * 3,
         text().replace(b"rows\n", b'place "wing" as w at 0, 0\nrows\n'), b'place "../wing.block" as w at 0, 0\n']  # fmt: skip


def any_bytes(data: bytes) -> None:
    """Read any bytes as a pack."""
    used(unfold("fuzzed.pack", data))


def changed_archive(data: bytes) -> None:
    """Read a real archive with changes."""
    used(unfold("fuzzed.pack", archive(Choices(data))))


def used(pack: Pack | Diagnostic) -> None:
    """Use what was read in every way: verified, folded again, shown, unpacked."""
    if isinstance(pack, Diagnostic):
        render_long((pack,))
        return
    promise(unfold(pack.name, fold(pack)) == pack, "what is folded again is read as it was")
    verified = verify(pack, more_cells)
    render_long(verified.diagnostics)
    for block in pack.blocks:
        for credit in block.credits:
            credit_line(credit)
    with silent():
        print_json(pack, verified, None, None)
    _credits(verified)
    with tempfile.TemporaryDirectory(prefix="fuzz-") as folder:
        _write_all(pack, Path(folder, "out"), False)
        written = {str(p.relative_to(folder)) for p in Path(folder).rglob("*") if p.is_file()}
        promise(written == {f"out/{block.file}" for block in pack.blocks}, f"only its files are written: {written}")


@contextmanager
def silent() -> Iterator[None]:
    """Let standard output go nowhere."""
    from contextlib import redirect_stderr, redirect_stdout

    with redirect_stdout(io.TextIOWrapper(io.BytesIO())), redirect_stderr(io.TextIOWrapper(io.BytesIO())):
        yield


def archive(choices: Choices) -> bytes:
    """Return an archive: members with odd names, data and marks, then changes to its bytes."""
    data = choices.one_of([_ours, _ours, _strange])(choices)
    held = bytearray(data)
    for _ in range(choices.below(4)):
        _damage(choices, held)
    return bytes(held)


def _ours(choices: Choices) -> bytes:
    """Return a pack as we write it, its manifest perhaps changed."""
    pack = _bases()[choices.below(len(_bases()))]
    if not choices.yes(6):
        return fold(pack)
    members = [Member("manifest.json", manifest_like(choices, manifest_bytes(pack.blocks)))]
    if choices.yes(4):
        members.append(Member("signature.json", json_like(choices, signature_bytes(Signature("ab" * 32, "cd" * 64)))))
    members += [Member(block.file, block.data) for block in pack.blocks]
    return zipped(members)


@cache
def _bases() -> tuple[Pack, ...]:
    placing = packed("harbour.block")
    return (
        a_pack(),
        a_pack("harbour.block", "parts/wing.block"),
        Pack("tides.pack", ()),
        Pack("tides.pack", (placing,), Signature("0" * 64, "0" * 128)),
    )


def _strange(choices: Choices) -> bytes:
    """Return an archive of members that are odd in one way or another, with a manifest that fits."""
    members = [_member(choices) for _ in range(1 + choices.below(3))]
    listed = {member.name: member.data for member in members if member.name.endswith(".block")}
    whole = [Member("manifest.json", manifest(listed)), *members]
    return zipped(whole, choices.one_of([b"", b"", b"comment"]))


def _member(choices: Choices) -> Member:
    return Member(
        choices.one_of(NAMES).replace("\x00", "0"),
        choices.one_of(DATAS),
        choices.one_of(
            [zipfile.ZIP_STORED, zipfile.ZIP_STORED, zipfile.ZIP_DEFLATED, zipfile.ZIP_BZIP2, zipfile.ZIP_LZMA]
        ),
        choices.one_of([0o100644, 0o100644, 0o120777, 0o040755, 0o020000, 0]),
        choices.one_of([b"", b"", b"said"]),
        choices.one_of([b"", b"", b"\x01\x00\x02\x00ab", b"\x75\x70\x0b\x00\x01abcdhidden"[:15]]),
    )


def _damage(choices: Choices, held: bytearray) -> None:
    """Change bytes anywhere, or a whole field of one of the headers."""
    kind = choices.below(6)
    at = choices.below(65536) % (len(held) + 1)
    if kind == 0:
        held[at : at + 1] = choices.take(1)
    elif kind == 1:
        del held[at : at + 1 + choices.below(256)]
    elif kind == 2:
        held[at:at] = choices.take(choices.below(16))
    else:
        marks = [b"PK\x03\x04", b"PK\x01\x02", b"PK\x05\x06"]
        start = held.find(marks[kind - 3], choices.below(4) * 60)
        if start >= 0:
            field = start + 4 + choices.below(42)
            held[field : field + 2] = choices.one_of(
                [b"\x00\x00", b"\xff\xff", b"\x01\x00", struct.pack("<H", choices.below(65536))]
            )


# ---- records as JSON

LEAVES: list[Any] = [
    None,
    True,
    0,
    1,
    -1,
    10**30,
    1.5,
    float("nan"),
    "",
    "x",
    "\ud800",
    "a" * 5000,
    [],
    {},
    [[]],
    {"a": 1},
    "../x.block",
]


def json_like(choices: Choices, data: bytes) -> bytes:
    """Return a record with some of its values put in other places, dropped, or turned into something else."""
    told = json.loads(data)
    for _ in range(1 + choices.below(3)):
        told = _swapped(choices, told)
    return json.dumps(told, indent=choices.one_of([1, 1, None]), ensure_ascii=not choices.yes(4)).encode(
        "utf-8", "surrogatepass"
    ) + choices.one_of([b"\n", b""])


def manifest_like(choices: Choices, data: bytes) -> bytes:
    """Return a manifest with changes, in text or in values."""
    if choices.yes(8):
        return json_like(choices, data)
    held = bytearray(data)
    at = choices.below(65536) % len(held)
    held[at : at + choices.below(4)] = choices.take(choices.below(6))
    return bytes(held)


def _swapped(choices: Choices, told: Any) -> Any:
    if isinstance(told, dict) and told and choices.yes(13):
        key = choices.one_of(list(told))
        if choices.yes(1):
            return {k: v for k, v in told.items() if k != key}
        return {**told, key: _swapped(choices, told[key])}
    if isinstance(told, list) and told and choices.yes(13):
        at = choices.below(len(told))
        if choices.yes(1):
            return told[:at] + told[at + 1 :]
        return [*told[:at], _swapped(choices, told[at]), *told[at + 1 :]]
    return choices.one_of(LEAVES)


@cache
def _index_values() -> dict[str, Any]:
    facts = Facts(
        "Harbour Steps", "four-patch", "square", "in", 6, 6, 2, 4, 4, 0, 0, 0, 0, 2, 3, "easy", ("few",), "O", "CC0", ""
    )
    stamp = Stamp(3, 4, "ab")
    known = {"/a.block": Known(stamp, facts, (("b", "/b.block", stamp),)), "/b.block": Known(stamp, facts)}
    told: dict[str, Any] = json.loads(_written(known))
    return told


@cache
def maker_once() -> str:
    """Ask once who makes the index, since the answer takes longer than reading one."""
    said = maker()
    index_module.maker = lambda: said
    return said


def records(data: bytes) -> None:
    """Read an index, a manifest, a signature and keys that are bytes or changed records."""
    choices = Choices(data)
    maker_once()
    kind = choices.below(5)
    if kind == 0:
        told = dict(_index_values(), maker=maker_once(), format=FORMAT)
        index_of(json_like(choices, json.dumps(told).encode()))
    elif kind == 1:
        index_of(choices.rest())
    elif kind == 2:
        listed = manifest_like(choices, manifest_bytes(a_pack("a.block", "parts/b.block").blocks))
        read = read_manifest(listed)
        promise(isinstance(read, str) or bool(read) or b"[]" in listed, "a manifest lists something")
        read_signature(json_like(choices, signature_bytes(Signature("ab" * 32, "cd" * 64))))
    elif kind == 3:
        rest = choices.rest()
        read_manifest(rest)
        read_signature(rest)
    else:
        key = bytearray(KEY)
        for _ in range(choices.below(4)):
            at = choices.below(len(key))
            key[at : at + 1] = choices.take(choices.below(3))
        for read_key in (_public, _private):
            read_key(Path("a.key"), bytes(key))


KEY = b"-----BEGIN PUBLIC KEY-----\nMCowBQYDK2VwAyEAGb9ECWmEzf6FQbrBZ9w7lshQhqowtrbLDFw4rXAxZuE=\n-----END PUBLIC KEY-----\n"


def index_of(data: bytes) -> None:
    """Read an index and show all that it believes."""
    with tempfile.TemporaryDirectory(prefix="fuzz-") as folder:
        path = Path(folder, "index.json")
        path.write_bytes(data)
        index = Index.load(path)
        for name, known in index.known.items():
            index.put_stamp(name, known.stamp)
            for _, placed, stamp in known.placed:
                index.put_stamp(placed, stamp)
        for name in list(index.known):
            facts = index.fresh(name, lambda *_: True)
            one = Listed(Entry("a", Path("a.block"), Shelf("here", Path())), facts)
            _row(one)
            json.dumps(as_json(one))
            if facts is not None:
                list(_lines(one, facts))
        index.changed = True
        index.save()
        promise([one.name for one in Path(folder).iterdir()] == ["index.json"], "no draft is left")
