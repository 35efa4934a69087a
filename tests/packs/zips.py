"""Packs made by hand, byte by byte where need be, as a stranger might."""

import hashlib
import io
import json
import stat
import zipfile
from collections.abc import Iterable
from typing import NamedTuple

from blocklang.block import Credit
from blocklang.packs.folding import fold
from blocklang.packs.values import Pack, PackedBlock

TEXT = """\
block "{title}" language 1
by "Odile Fenwick" licence CC-BY-4.0
size 9 in
fabric fog  background light #e8eef2
fabric deep accent     dark  #1f3a5f
rows
  deep fog deep
  fog deep fog
  deep fog deep
end
"""


class Member(NamedTuple):
    """One member of an archive, and whatever is odd about it."""

    name: str
    data: bytes = b"x"
    method: int = zipfile.ZIP_STORED
    mode: int = stat.S_IFREG | 0o644
    comment: bytes = b""
    extra: bytes = b""


def text(title: str = "Harbour Steps") -> bytes:
    return TEXT.format(title=title).encode()


def packed(file: str, title: str = "Harbour Steps", **more: object) -> PackedBlock:
    return PackedBlock(file, text(title), 1, (Credit(title, "Odile Fenwick", "CC-BY-4.0"),), **more)  # type: ignore[arg-type]


def a_pack(*files: str) -> Pack:
    """Return a sound pack."""
    return Pack("tides.pack", tuple(packed(file) for file in sorted(files or ("harbour.block",))))


def manifest(blocks: dict[str, bytes]) -> bytes:
    """Return the manifest that these files would have, from nothing but the format's description."""
    listed = [
        {
            "file": file,
            "sha256": hashlib.sha256(data).hexdigest(),
            "language": 1,
            "credits": [{"block": "Harbour Steps", "by": "Odile Fenwick", "licence": "CC-BY-4.0", "source": ""}],
            "places": [],
        }
        for file, data in sorted(blocks.items())
    ]
    return (json.dumps({"format": "blocklang.pack/1", "language": 1, "blocks": listed}, indent=1) + "\n").encode()


def zipped(members: Iterable[Member], comment: bytes = b"") -> bytes:
    """Return an archive of these members."""
    held = io.BytesIO()
    with zipfile.ZipFile(held, "w") as archive:
        archive.comment = comment
        for member in members:
            info = zipfile.ZipInfo(member.name, (1980, 1, 1, 0, 0, 0))
            info.create_system, info.external_attr = 3, member.mode << 16
            info.compress_type, info.comment, info.extra = member.method, member.comment, member.extra
            archive.writestr(info, member.data, compresslevel=1)
    return held.getvalue()


def pack_of(*members: Member) -> bytes:
    """Return an archive with the manifest that fits its block files, and these members."""
    blocks = {member.name: member.data for member in members}
    return zipped([Member("manifest.json", manifest(blocks)), *members])


def folded(*files: str) -> bytes:
    return fold(a_pack(*files))
