"""Making the one file of a pack: the same bytes for the same blocks, on every machine and every day."""

import io
import stat
import zipfile

from blocklang.packs.manifest import manifest_bytes, signature_bytes
from blocklang.packs.values import MANIFEST, SIGNATURE, Pack

#: The first moment that a zip archive can name; a pack has no date of its own.
_NO_DATE = (1980, 1, 1, 0, 0, 0)


def fold(pack: Pack) -> bytes:
    """Return a pack as the bytes of its file: the manifest, the signature if there is one, the blocks in order."""
    members = {MANIFEST: manifest_bytes(pack.blocks)}
    if pack.signature is not None:
        members[SIGNATURE] = signature_bytes(pack.signature)
    members |= {block.file: block.data for block in pack.blocks}
    held = io.BytesIO()
    # Stored, not deflated: what zlib makes of the same text differs between its versions.
    with zipfile.ZipFile(held, "w", zipfile.ZIP_STORED) as archive:
        for name, data in members.items():
            archive.writestr(_plain_file(name), data)
    return held.getvalue()


def _plain_file(name: str) -> zipfile.ZipInfo:
    info = zipfile.ZipInfo(name, _NO_DATE)
    info.create_system = 3
    info.external_attr = (stat.S_IFREG | 0o644) << 16
    return info
