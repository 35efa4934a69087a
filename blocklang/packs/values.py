"""A pack as frozen values."""

import hashlib
from dataclasses import dataclass
from functools import cached_property

from blocklang.block import Credit

SUFFIX = ".pack"
BLOCK_SUFFIX = ".block"
MANIFEST = "manifest.json"
SIGNATURE = "signature.json"


@dataclass(frozen=True, slots=True)
class PackedBlock:
    """One block file in a pack.

    `file` is its path in the pack, `data` its text with plain line ends in UTF-8, `credits` its own credit first, then
    those of the blocks that it places; `places` are the files in the pack that it is drawn with.
    """

    file: str
    data: bytes
    language: int
    credits: tuple[Credit, ...]
    places: tuple[str, ...] = ()

    @property
    def name(self) -> str:
        """What the block is placed and found by."""
        return self.file.rpartition("/")[2].removesuffix(BLOCK_SUFFIX)

    @property
    def sha256(self) -> str:
        """The checksum of the file."""
        return hashlib.sha256(self.data).hexdigest()


@dataclass(frozen=True, slots=True)
class Signature:
    """Who signed a manifest: the public key (32 bytes) and the signature (64 bytes), both as hexadecimal digits."""

    key: str
    signature: str


@dataclass(frozen=True)
class Pack:
    """A whole pack; `name` is what people call it, usually its path. Blocks are in the order of their files."""

    name: str
    blocks: tuple[PackedBlock, ...]
    signature: Signature | None = None

    @cached_property
    def by_name(self) -> dict[str, PackedBlock]:
        """The blocks by name."""
        return {block.name: block for block in reversed(self.blocks)}

    @cached_property
    def by_file(self) -> dict[str, PackedBlock]:
        """The blocks by their path in the pack."""
        return {block.file: block for block in self.blocks}

    def shown(self, block: PackedBlock) -> str:
        """Return what messages call a file of the pack, as if the pack were a folder."""
        return f"{self.name}/{block.file}"
