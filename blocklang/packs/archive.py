"""Opening the zip archive that a pack is: every member in memory, or one reason why not.

Only the plainest zip is read, the kind that `folding` writes (members may be deflated, because archive programs do
that): one member after the other from the first byte on, then the list of contents, then the end, and nothing else.
So there is no byte that one program reads and another does not, and no member whose size is a surprise.
"""

import io
import stat
import struct
import zipfile
import zlib
from collections.abc import Sequence
from typing import NamedTuple

from blocklang.diagnostics import Diagnostic
from blocklang.limits import (
    MOST_BYTES,
    MOST_KEY_BYTES,
    MOST_MANIFEST_BYTES,
    MOST_PACK_BLOCKS,
    MOST_PACK_BYTES,
    MOST_PACK_TEXT,
    MOST_UNFOLDING,
)
from blocklang.packs.faults import broken
from blocklang.packs.file_names import composed, fault_of_name, fault_of_twins
from blocklang.packs.values import MANIFEST, SIGNATURE

#: The end record of a zip archive (APPNOTE 4.3.16): signature, disks, counts, size and place of the list, comment.
_END = struct.Struct("<4s4H2LH")
#: The header before each member (APPNOTE 4.3.7).
_LOCAL = struct.Struct("<4s5H3L2H")
#: The size of an entry in the list of contents beside its name (APPNOTE 4.3.12).
_LISTED = 46
#: Flags that say how hard a member was deflated, and that its name is UTF-8.
_HARMLESS = 0b110 | 0x800
_ENCRYPTED = 0x1 | 0x40 | 0x2000
_BOUNDS = {MANIFEST: MOST_MANIFEST_BYTES, SIGNATURE: MOST_KEY_BYTES}


class Refusal(NamedTuple):
    """Why an archive is not read: the code and one sentence."""

    code: str
    found: str


Members = dict[str, bytes]


def open_archive(name: str, data: bytes) -> Members | Diagnostic:
    """Return the members of an archive by name, or why it is refused."""
    read = _fault_of_frame(data) or _read(data)
    return broken(name, *read) if isinstance(read, Refusal) else read


def _fault_of_frame(data: bytes) -> Refusal | None:
    """Look at both ends of the archive before anything in it is believed."""
    if len(data) > MOST_PACK_BYTES:
        return Refusal("pack-too-large", f"A pack has at most {MOST_PACK_BYTES:,} bytes.")
    if data[:4] != b"PK\x03\x04":
        return Refusal("no-archive", "It is not a zip archive, or something stands before its beginning.")
    if len(data) < _END.size or data[-_END.size :][:4] != b"PK\x05\x06":
        return Refusal("pack-end", "Something stands after its end, or the end is missing.")
    _, disk, list_disk, here, entries, size, start, comment = _END.unpack(data[-_END.size :])
    if comment or disk or list_disk or here != entries or start + size + _END.size != len(data):
        return Refusal("pack-end", "Its end does not fit the rest of it.")
    if entries > MOST_PACK_BLOCKS + len(_BOUNDS):
        return Refusal("too-many-files", f"A pack holds at most {MOST_PACK_BLOCKS:,} block files.")
    return None


def _read(data: bytes) -> Members | Refusal:
    try:
        with zipfile.ZipFile(io.BytesIO(data)) as archive:
            infos = archive.infolist()
            fault = _fault_of_members(infos) or _fault_of_places(data, infos)
            return fault or {_name(info): _content(data, info) for info in infos}
    except (zipfile.BadZipFile, zlib.error, ValueError, NotImplementedError, RuntimeError, struct.error, EOFError):
        return Refusal("damaged-pack", "It is damaged: what it holds does not fit its list of contents.")


def _fault_of_members(infos: Sequence[zipfile.ZipInfo]) -> Refusal | None:
    for info in infos:
        fault = _fault_of_kind(info) or _fault_of_size(info)
        if fault is not None:
            return fault
        if info.orig_filename not in _BOUNDS and (found := fault_of_name(info.orig_filename)):
            return Refusal("bad-file-name", found)
    if sum(info.file_size for info in infos) > MOST_PACK_TEXT:
        return Refusal("too-much-text", f"Its files have more than {MOST_PACK_TEXT:,} bytes together when unfolded.")
    found = fault_of_twins(info.orig_filename for info in infos)
    return Refusal("twin-names", found) if found else None


def _fault_of_kind(info: zipfile.ZipInfo) -> Refusal | None:
    """Refuse what is no plain file, stored or deflated, with a plain name."""
    shown = ascii(info.orig_filename[:80])[1:-1]
    if info.flag_bits & _ENCRYPTED:
        return Refusal("encrypted", f"`{shown}` in it is encrypted.")
    if info.compress_type not in (zipfile.ZIP_STORED, zipfile.ZIP_DEFLATED):
        return Refusal("unknown-folding", f"`{shown}` in it is compressed in a way that packs do not use.")
    mode = info.external_attr >> 16
    if stat.S_IFMT(mode) not in (0, stat.S_IFREG):
        what = "a link" if stat.S_ISLNK(mode) else "no plain file"
        return Refusal("not-a-file", f"`{shown}` in it is {what}, and a pack holds only files.")
    if info.comment or info.extra:
        return Refusal("hidden-words", f"`{shown}` in it carries a comment or other data that packs do not have.")
    if info.flag_bits & ~_HARMLESS or not (info.flag_bits & 0x800 or info.orig_filename.isascii()):
        return Refusal("unusual-archive", f"`{shown}` in it is written in a way that packs do not use.")
    return None


def _fault_of_size(info: zipfile.ZipInfo) -> Refusal | None:
    most = _BOUNDS.get(info.orig_filename, MOST_BYTES)
    shown = ascii(info.orig_filename[:80])[1:-1]
    if info.file_size > most:
        return Refusal("file-too-large", f"`{shown}` in it has {info.file_size:,} bytes; at most {most:,} are allowed.")
    if info.file_size > MOST_UNFOLDING * max(info.compress_size, 1):
        times = f"more than {MOST_UNFOLDING} times"
        return Refusal("unfolds-too-far", f"`{shown}` in it grows to {times} its size when it is unfolded.")
    return None


def _fault_of_places(data: bytes, infos: Sequence[zipfile.ZipInfo]) -> Refusal | None:
    """See that the members lie one after the other without a gap, each described alike in both places."""
    *_, entries, size, end, _ = _END.unpack(data[-_END.size :])
    if len(infos) != entries or size != sum(_LISTED + len(_name_bytes(info)) for info in infos):
        return Refusal("pack-end", "Its end does not fit its list of contents.")
    at = 0
    for info in sorted(infos, key=lambda info: info.header_offset):
        if info.header_offset != at or at + _LOCAL.size > end:
            return Refusal("gap-in-pack", "Its files overlap, or something is hidden between them.")
        header = _LOCAL.unpack_from(data, at)
        name = data[at + _LOCAL.size :][: header[9]]
        told = (b"PK\x03\x04", info.flag_bits, info.compress_type, info.CRC, info.compress_size, info.file_size, 0)
        if (header[0], header[2], header[3], *header[6:9], header[10]) != told or name != _name_bytes(info):
            return Refusal(
                "two-stories", "It says one thing in its list of contents and another beside the file itself."
            )
        at += _LOCAL.size + len(name) + info.compress_size
    return (
        None if at == end else Refusal("gap-in-pack", "Something is hidden between its files and its list of contents.")
    )


def _content(data: bytes, info: zipfile.ZipInfo) -> bytes:
    """Return what a member holds, once all of its bytes belong to it; raises what a damaged archive raises.

    A general reader stops at the end of a deflated stream, and would pass over whatever is hidden behind it.
    """
    at = info.header_offset + _LOCAL.size + len(_name_bytes(info))
    content = data[at : at + info.compress_size]
    if info.compress_type == zipfile.ZIP_DEFLATED:
        unfolding = zlib.decompressobj(-zlib.MAX_WBITS)
        content = unfolding.decompress(content, info.file_size + 1)
        if not unfolding.eof or unfolding.unused_data:
            raise zipfile.BadZipFile("the stream ends elsewhere")
    if len(content) != info.file_size or zlib.crc32(content) != info.CRC:
        raise zipfile.BadZipFile("size or checksum differ")
    return content


def _name_bytes(info: zipfile.ZipInfo) -> bytes:
    return info.orig_filename.encode("utf-8" if info.flag_bits & 0x800 else "ascii")


def _name(info: zipfile.ZipInfo) -> str:
    return composed(info.orig_filename)
