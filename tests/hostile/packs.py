"""Hostile packs as a table: each made by a few lines that say what is odd about it, with what is answered."""

import hashlib
import json
import struct
import zipfile
from collections.abc import Callable
from typing import Any, NamedTuple

from blocklang.limits import MOST_BYTES, MOST_MANIFEST_BYTES, MOST_PACK_BLOCKS, MOST_PACK_BYTES
from blocklang.packs.folding import fold
from blocklang.packs.values import Pack
from tests.packs.zips import Member, folded, manifest, pack_of, packed, text, zipped

STEPS = Member("harbour.block", text())
LOCAL, LISTED, END = b"PK\x03\x04", b"PK\x01\x02", b"PK\x05\x06"


class MadePack(NamedTuple):
    """How a hostile pack is made, and the answer it must get."""

    make: Callable[[], bytes]
    answer: str


def _named(name: str) -> Callable[[], bytes]:
    return lambda: pack_of(Member(name, text()))


def _pair(one: str, other: str) -> Callable[[], bytes]:
    return lambda: pack_of(Member(one, text()), Member(other, text("Tide Mill")))


def _odd(**marks: Any) -> Callable[[], bytes]:
    return lambda: pack_of(STEPS._replace(**marks))


def _field(mark: bytes, at: int, value: bytes, number: int = 0) -> Callable[[], bytes]:
    """Write over a field of a header: of the numberth local header, list entry or end record."""

    def make() -> bytes:
        held, start = bytearray(folded()), -1
        for _ in range(number + 1):
            start = held.index(mark, start + 1)
        held[start + at : start + at + len(value)] = value
        return bytes(held)

    return make


def _both(local: int, listed: int, value: bytes) -> Callable[[], bytes]:
    """Write over a field of the block's local header and of its list entry, so that they agree."""

    def make() -> bytes:
        held = bytearray(folded())
        for mark, at in ((LOCAL, local), (LISTED, listed)):
            start = held.index(mark, held.index(mark) + 1)
            held[start + at : start + at + len(value)] = value
        return bytes(held)

    return make


def _told(change: Callable[[dict[str, Any]], Any]) -> Callable[[], bytes]:
    """Change the values of the manifest, and write them as they should be written."""

    def make() -> bytes:
        told = json.loads(manifest({"harbour.block": text()}))
        changed = change(told)
        values = told if changed is None else changed
        return zipped([Member("manifest.json", (json.dumps(values, indent=1) + "\n").encode()), STEPS])

    return make


def _written(change: Callable[[bytes], bytes]) -> Callable[[], bytes]:
    """Change the text of the manifest."""
    return lambda: zipped([Member("manifest.json", change(manifest({"harbour.block": text()}))), STEPS])


def _signed(signature: bytes) -> Callable[[], bytes]:
    listed = Member("manifest.json", manifest({"harbour.block": text()}))
    return lambda: zipped([listed, Member("signature.json", signature), STEPS])


def _block(content: bytes, **others: bytes) -> Callable[[], bytes]:
    """Pack a block of this content, with the checksum and the credits that fit the others."""
    members = [Member("harbour.block", content), *(Member(f"{name}.block", data) for name, data in others.items())]
    return lambda: pack_of(*members)


def _first(block: dict[str, Any]) -> Callable[[dict[str, Any]], None]:
    return lambda told: told["blocks"][0].update(block)


def _placing(name: str) -> bytes:
    return text().replace(b"rows\n", f'place "{name}" as w at 0, 0 size 3\nrows\n'.encode())


def _many() -> bytes:
    return zipped([Member("manifest.json", b"{}"), *(Member(f"b{n}.block", b"") for n in range(MOST_PACK_BLOCKS + 2))])


def _bomb(layers: int = 1) -> bytes:
    return zipped(
        [Member("manifest.json", b"{}"), Member("a.block", b"#" * (MOST_BYTES // layers), zipfile.ZIP_DEFLATED)]
    )


def _listed_twice() -> bytes:
    """One file, listed twice in the list of contents."""
    whole = folded()
    start, end = whole.index(LISTED), whole.index(END)
    entries = whole[start:end]
    last = entries[entries.rindex(LISTED) :]
    count = 3
    return (
        whole[:start] + entries + last + struct.pack("<4s4H2LH", END, 0, 0, count, count, len(entries + last), start, 0)
    )


def _deflate_then_rubbish() -> bytes:
    """A deflated file with bytes after the end of its stream, counted as part of it."""
    whole = zipped(
        [Member("manifest.json", manifest({"harbour.block": text()})), STEPS._replace(method=zipfile.ZIP_DEFLATED)]
    )
    at = whole.index(LOCAL, 1)
    size = struct.unpack_from("<L", whole, at + 18)[0]
    body = at + 30 + len("harbour.block") + size
    held = bytearray(whole[:body] + b"hidden!!" + whole[body:])
    struct.pack_into("<L", held, at + 18, size + 8)
    listed = held.index(LISTED, held.index(LISTED) + 1)
    struct.pack_into("<L", held, listed + 20, size + 8)
    end = held.index(END)
    struct.pack_into("<L", held, end + 16, struct.unpack_from("<L", held, end + 16)[0] + 8)
    return bytes(held)


def _deep(count: int) -> bytes:
    return b"[" * count + b"]" * count


PACKS: dict[str, MadePack] = {
    # the two ends
    "nothing": MadePack(lambda: b"", "1: no-archive"),
    "text": MadePack(text, "1: no-archive"),
    "only-an-end": MadePack(lambda: folded()[-22:], "1: no-archive"),
    "only-a-beginning": MadePack(lambda: folded()[:30], "1: pack-end"),
    "cut-short-by-a-byte": MadePack(lambda: folded()[:-1], "1: pack-end"),
    "cut-in-the-middle": MadePack(lambda: folded()[: len(folded()) // 2], "1: pack-end"),
    "words-before-it": MadePack(lambda: b"#!/bin/sh\n" + folded(), "1: no-archive"),
    "words-after-it": MadePack(lambda: folded() + b"hidden", "1: pack-end"),
    "two-packs-in-a-row": MadePack(lambda: folded() + folded(), "1: pack-end"),
    "another-pack-after-it": MadePack(lambda: folded() + folded("other.block"), "1: pack-end"),
    "comment": MadePack(lambda: zipped([Member("manifest.json", manifest({})), STEPS], b"tide mill"), "1: pack-end"),
    "an-end-in-the-comment": MadePack(lambda: zipped([Member("manifest.json", manifest({})), STEPS], folded()[-22:]), "1: pack-end"),
    "tar": MadePack(lambda: b"harbour.block\0".ljust(512, b"\0") + bytes(512), "1: no-archive"),
    "gzip": MadePack(lambda: b"\x1f\x8b\x08\0" + bytes(40), "1: no-archive"),
    "seven-zip": MadePack(lambda: b"7z\xbc\xaf\x27\x1c" + bytes(40), "1: no-archive"),
    "a-pack-of-twenty-megabytes-and-one": MadePack(lambda: folded() + bytes(MOST_PACK_BYTES), "1: pack-too-large"),
    "second-disk": MadePack(_field(END, 4, b"\x01\x00"), "1: pack-end"),
    "list-on-the-second-disk": MadePack(_field(END, 6, b"\x01\x00"), "1: pack-end"),
    "fewer-files-than-listed": MadePack(_field(END, 10, b"\x03\x00"), "1: pack-end"),
    "more-files-than-listed": MadePack(_field(END, 8, b"\x01\x00\x01\x00"), "1: pack-end"),
    "list-that-begins-elsewhere": MadePack(_field(END, 16, b"\x00\x00\x00\x00"), "1: pack-end"),
    "list-of-no-size": MadePack(_field(END, 12, b"\x00\x00\x00\x00"), "1: pack-end"),
    "sixty-four-bit-marks": MadePack(_field(END, 8, b"\xff\xff\xff\xff\xff\xff\xff\xff\xff\xff\xff\xff"), "1: pack-end"),
    "no-files-at-all": MadePack(lambda: zipped([]), "1: no-archive"),
    "two-thousand-and-one-blocks": MadePack(_many, "1: too-many-files"),
    # what is said about a file in its two places
    "other-name-beside-the-file": MadePack(_field(LOCAL, 30, b"M"), "1: two-stories"),
    "other-checksum-beside-the-file": MadePack(_field(LOCAL, 14, b"\0\0\0\0"), "1: two-stories"),
    "other-size-beside-the-file": MadePack(_field(LOCAL, 22, b"\1\0\0\0"), "1: two-stories"),
    "other-packed-size-beside-the-file": MadePack(_field(LOCAL, 18, b"\1\0\0\0"), "1: two-stories"),
    "other-compression-beside-the-file": MadePack(_field(LOCAL, 8, b"\x08\0"), "1: two-stories"),
    "extra-words-beside-the-file": MadePack(_field(LOCAL, 28, b"\4\0"), "1: two-stories"),
    "other-version-needed": MadePack(_field(LISTED, 6, b"\xff\0"), "1: damaged-pack"),
    "list-entry-without-its-mark": MadePack(_field(LISTED, 0, b"PK\0\0"), "1: damaged-pack"),
    "local-header-without-its-mark": MadePack(_field(LOCAL, 0, b"PK\0\0", 1), "1: two-stories"),
    "files-that-overlap": MadePack(_field(LISTED, 42, b"\0\0\0\0", 1), "1: gap-in-pack"),
    "file-that-begins-in-the-list": MadePack(_field(LISTED, 42, b"\xff\xff\0\0", 1), "1: gap-in-pack"),
    "file-that-begins-past-the-end": MadePack(_field(LISTED, 42, b"\xff\xff\xff\x7f", 1), "1: gap-in-pack"),
    "file-larger-than-the-pack": MadePack(_both(18, 20, b"\xff\xff\xff\x7f\xff\xff\xff\x7f"), "1: file-too-large"),
    "file-of-no-packed-size": MadePack(_both(18, 20, b"\0\0\0\0"), "1: unfolds-too-far"),
    "file-one-byte-shorter-than-it-is": MadePack(_both(22, 24, b"\x01\0\0\0"), "1: damaged-pack"),
    "wrong-checksum-in-both-places": MadePack(_both(14, 16, b"\0\0\0\0"), "1: damaged-pack"),
    "encrypted": MadePack(_both(6, 8, b"\x01\0"), "1: encrypted"),
    "strongly-encrypted": MadePack(_both(6, 8, b"\x41\0"), "1: encrypted"),
    "sizes-told-afterwards": MadePack(_both(6, 8, b"\x08\0"), "1: unusual-archive"),
    "patched-data": MadePack(_both(6, 8, b"\x20\0"), "1: unusual-archive"),
    "hidden-header": MadePack(_both(6, 8, b"\0\x20"), "1: encrypted"),
    "one-file-listed-twice": MadePack(_listed_twice, "1: twin-names"),
    "rubbish-after-a-deflated-file": MadePack(_deflate_then_rubbish, "1: damaged-pack"),
    "bzip2": MadePack(_odd(method=zipfile.ZIP_BZIP2), "1: unknown-folding"),
    "lzma": MadePack(_odd(method=zipfile.ZIP_LZMA), "1: unknown-folding"),
    "stored-but-said-to-be-deflated": MadePack(_both(8, 10, b"\x08\0"), "1: damaged-pack"),
    "compression-of-no-name": MadePack(_both(8, 10, b"\x63\0"), "1: unknown-folding"),
    "bomb-of-one-layer": MadePack(_bomb, "1: unfolds-too-far"),
    "archive-in-the-archive": MadePack(lambda: pack_of(Member("tides.pack", folded())), "1: bad-file-name"),
    "archive-called-a-block": MadePack(lambda: pack_of(Member("harbour.block", folded())), "1: not-text"),
    "comment-of-a-file": MadePack(_odd(comment=b"tide"), "1: hidden-words"),
    "extra-words-of-a-file": MadePack(_odd(extra=b"\x01\0\x02\0ab"), "1: hidden-words"),
    "name-of-another-file-in-the-extra-words": MadePack(_odd(extra=b"\x75\x70\x09\0\x01\0\0\0\0evil"), "1: hidden-words"),
    "link": MadePack(_odd(mode=0o120777), "1: not-a-file"),
    "device": MadePack(_odd(mode=0o020666), "1: not-a-file"),
    "pipe": MadePack(_odd(mode=0o010666), "1: not-a-file"),
    "folder-of-that-name": MadePack(_odd(mode=0o040755), "1: not-a-file"),
    "program-that-runs-as-its-owner": MadePack(_odd(mode=0o104755), "0: fine"),
    # names
    "name-up": MadePack(_named("../harbour.block"), "1: bad-file-name"),
    "name-up-inside": MadePack(_named("a/../../harbour.block"), "1: bad-file-name"),
    "name-from-the-root": MadePack(_named("/etc/harbour.block"), "1: bad-file-name"),
    "name-with-a-drive": MadePack(_named("C:harbour.block"), "1: bad-file-name"),
    "name-of-a-stream": MadePack(_named("harbour.block:x.block"), "1: bad-file-name"),
    "name-of-the-network": MadePack(_named("//server/harbour.block"), "1: bad-file-name"),
    "name-with-backslashes": MadePack(_named("..\\harbour.block"), "1: bad-file-name"),
    "name-of-the-home": MadePack(_named("~/harbour.block"), "0: fine"),
    "name-of-an-option": MadePack(_named("-rf.block"), "1: bad-file-name"),
    "name-of-nothing": MadePack(_named(".block"), "1: bad-file-name"),
    "name-with-a-dot-in-front": MadePack(_named(".git/harbour.block"), "1: bad-file-name"),
    "name-with-an-empty-part": MadePack(_named("a//harbour.block"), "1: bad-file-name"),
    "name-that-ends-in-a-dot": MadePack(_named("a./harbour.block"), "1: bad-file-name"),
    "name-with-a-line-end": MadePack(_named("har\nbour.block"), "1: bad-file-name"),
    "name-with-an-escape": MadePack(_named("har\x1b[31mbour.block"), "1: bad-file-name"),
    "name-turned-round": MadePack(_named("har\u202ekcolb.block"), "1: bad-file-name"),
    "name-with-nothing-wide": MadePack(_named("har\u200bbour.block"), "1: bad-file-name"),
    "name-of-a-pattern": MadePack(_named("*.block"), "1: bad-file-name"),
    "name-of-a-pipe": MadePack(_named("|id.block"), "1: bad-file-name"),
    "name-of-a-device": MadePack(_named("con.block"), "1: bad-file-name"),
    "name-of-a-device-in-a-folder": MadePack(_named("aux/harbour.block"), "1: bad-file-name"),
    "name-of-a-device-with-a-number": MadePack(_named("COM¹.block"), "1: bad-file-name"),
    "name-of-a-program": MadePack(_named("harbour.block.exe"), "1: bad-file-name"),
    "name-of-another-kind": MadePack(_named("harbour.py"), "1: bad-file-name"),
    "name-too-long": MadePack(_named("a" * 200 + ".block"), "1: bad-file-name"),
    "name-too-deep": MadePack(_named("a/b/c/d/e/f.block"), "1: bad-file-name"),
    "name-that-is-no-utf-8": MadePack(_both(30, 46, b"\xff"), "1: unusual-archive"),
    "names-that-differ-in-capitals": MadePack(_pair("harbour.block", "HARBOUR.block"), "1: twin-names"),
    "names-that-differ-in-composition": MadePack(_pair("caf\xe9.block", "cafe\u0301.block"), "1: twin-names"),
    "names-that-fold-alike": MadePack(_pair("stra\xdfe.block", "strasse.block"), "1: twin-names"),
    "names-of-one-block-in-two-folders": MadePack(_pair("a/harbour.block", "b/harbour.block"), "1: twin-names"),
    "a-file-and-a-folder-of-one-name": MadePack(_pair("a.block", "a.block/b.block"), "1: twin-names"),
    "a-folder-as-a-member": MadePack(lambda: pack_of(STEPS, Member("parts/", b"", mode=0o040755)), "1: not-a-file"),
    "a-second-manifest": MadePack(lambda: zipped([Member("manifest.json", manifest({})), Member("MANIFEST.json", b"{}")]), "1: bad-file-name"),
    # the manifest
    "no-manifest": MadePack(lambda: zipped([STEPS]), "1: no-manifest"),
    "manifest-of-nothing": MadePack(_written(lambda _: b""), "1: bad-manifest"),
    "manifest-of-five-megabytes-and-one": MadePack(lambda: zipped([Member("manifest.json", b" " * (MOST_MANIFEST_BYTES + 1)), STEPS]), "1: file-too-large"),
    "manifest-a-hundred-thousand-deep": MadePack(_written(lambda _: _deep(100_000)), "1: bad-manifest"),
    "manifest-in-utf-16": MadePack(_written(lambda data: data.decode().encode("utf-16")), "1: bad-manifest"),
    "manifest-with-a-mark-in-front": MadePack(_written(lambda data: b"\xef\xbb\xbf" + data), "1: bad-manifest"),
    "manifest-that-says-a-thing-twice": MadePack(_written(lambda data: data.replace(b'"language": 1,', b'"language": 1,\n "language": 1,', 1)), "1: bad-manifest"),
    "manifest-with-a-huge-number": MadePack(_written(lambda data: data.replace(b'"language": 1', b'"language": ' + b"9" * 5_000)), "1: bad-manifest"),
    "manifest-with-no-number": MadePack(_written(lambda data: data.replace(b'"language": 1', b'"language": NaN')), "1: bad-manifest"),
    "manifest-with-a-truth-for-a-number": MadePack(_told(_first({"language": True})), "1: bad-manifest"),
    "manifest-of-a-list": MadePack(_told(lambda told: [told]), "1: bad-manifest"),
    "manifest-of-null": MadePack(_written(lambda _: b"null\n"), "1: bad-manifest"),
    "manifest-of-a-newer-format": MadePack(_told(lambda told: told.update(format="blocklang.pack/2")), "1: bad-manifest"),
    "manifest-of-another-format": MadePack(_told(lambda told: told.update(format="tides")), "1: bad-manifest"),
    "manifest-with-more-to-say": MadePack(_told(lambda told: told.update(post_install="id")), "1: bad-manifest"),
    "manifest-without-blocks": MadePack(_told(lambda told: told.update(blocks=[])), "1: added-file"),
    "manifest-of-blocks-as-a-table": MadePack(_told(lambda told: told.update(blocks={"a": 1})), "1: bad-manifest"),
    "manifest-of-another-checksum": MadePack(_told(_first({"sha256": "0" * 64})), "1: altered-file"),
    "manifest-of-a-checksum-in-capitals": MadePack(_told(_first({"sha256": hashlib.sha256(text()).hexdigest().upper()})), "1: altered-file"),
    "manifest-of-a-file-that-is-not-there": MadePack(_told(_first({"file": "other.block"})), "1: missing-file"),
    "manifest-of-a-file-outside": MadePack(_told(_first({"file": "../harbour.block"})), "1: missing-file"),
    "manifest-that-lists-a-file-twice": MadePack(_told(lambda told: told["blocks"].append(told["blocks"][0])), "1: bad-manifest"),
    "manifest-that-needs-a-file-outside": MadePack(_told(_first({"places": ["../../x.block"]})), "1: bad-manifest"),
    "manifest-with-half-a-letter": MadePack(_told(_first({"file": "\ud800.block"})), "1: bad-manifest"),
    "manifest-of-a-file-with-an-escape": MadePack(_told(_first({"file": "\x1b[2J.block"})), "1: missing-file"),
    "manifest-that-needs-what-is-not-placed": MadePack(_told(_first({"places": ["harbour.block"]})), "1: listing-differs"),
    "manifest-that-credits-half-a-letter": MadePack(_told(lambda told: told["blocks"][0]["credits"][0].update(by="\ud800")), "1: bad-manifest"),
    "manifest-that-credits-another": MadePack(_told(lambda told: told["blocks"][0]["credits"][0].update(by="Maud Tidewell")), "1: credits-differ"),
    "manifest-without-credits": MadePack(_told(_first({"credits": []})), "1: bad-manifest"),
    "manifest-credits-with-an-escape": MadePack(_told(lambda told: told["blocks"][0]["credits"][0].update(by="\x1b[2J")), "1: credits-differ"),
    "manifest-of-a-language-to-come": MadePack(_told(lambda told: told.update(language=9) or told["blocks"][0].update(language=9)), "1: listing-differs"),
    # the signature
    "signature-of-nothing": MadePack(_signed(b""), "1: bad-signature"),
    "signature-a-thousand-deep": MadePack(_signed(_deep(1_900)), "1: bad-signature"),
    "signature-of-another-shape": MadePack(_signed(b'{"key": "", "signature": ""}\n'), "1: bad-signature"),
    "signature-too-large": MadePack(_signed(b" " * 5_000), "1: file-too-large"),
    "signature-in-capitals": MadePack(
        lambda: _signed(b'{\n "format": "blocklang.signature/1",\n "key": "' + b"AB" * 32 + b'",\n "signature": "' + b"CD" * 64 + b'"\n}\n')(),
        "1: bad-signature",
    ),
    # blocks that are sound files of a pack, and nothing else
    "block-of-bytes": MadePack(_block(b"\xff\xfe\x00"), "1: not-text"),
    "block-of-nothing": MadePack(_block(b""), "1: no-name, no-size"),
    "block-with-a-mistake": MadePack(_block(text().replace(b"deep fog deep", b"deap fog deep")), "1: unknown-fabric, unknown-fabric"),
    "block-with-a-zero-byte": MadePack(_block(text() + b"\0"), "1: not-text"),
    "block-that-places-itself": MadePack(_block(_placing("harbour")), "1: circle-of-files"),
    "blocks-that-place-each-other": MadePack(_block(_placing("wing"), wing=_placing("harbour")), "1: circle-of-files, circle-of-files"),
    "block-that-places-one-of-the-library": MadePack(_block(_placing("nine-patch")), "1: unknown-block"),
    "block-that-places-a-file-outside": MadePack(_block(_placing("../secret.block")), "1: outside-the-library"),
    "block-that-places-from-the-root": MadePack(_block(_placing("/etc/hostname.block")), "1: outside-the-library"),
    "block-that-places-the-pack-itself": MadePack(_block(_placing("../tides.pack/harbour.block")), "1: outside-the-library"),
    "empty-pack": MadePack(lambda: fold(Pack("tides.pack", ())), "0: fine"),
    "block-under-two-names": MadePack(lambda: fold(Pack("tides.pack", (packed("a.block"), packed("b.block")))), "0: fine"),
}  # fmt: skip
