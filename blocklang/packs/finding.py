"""Finding what a block in a pack places: in the pack, and nowhere else."""

import posixpath
from dataclasses import dataclass

from blocklang.diagnostics import Diagnostic, SourceText
from blocklang.language import decode_source
from blocklang.packs.faults import refused
from blocklang.packs.file_names import composed
from blocklang.packs.values import BLOCK_SUFFIX, Pack, PackedBlock


@dataclass(frozen=True, slots=True)
class PackFinder:
    """Where the blocks of a pack find what they place."""

    pack: Pack

    def find(self, name: str, placing: SourceText) -> "SourceText | Diagnostic | None":
        """Return the text of a block placed by name, or by its path from the file that places it."""
        if not name.endswith(BLOCK_SUFFIX):
            return self._text(self.pack.by_name.get(composed(name)))
        beside = posixpath.dirname(placing.name.removeprefix(f"{self.pack.name}/"))
        path = posixpath.normpath(posixpath.join(beside, name))
        if path.startswith(("../", "/")):
            found = f"`{name}` lies outside the pack `{self.pack.name}`."
            return refused("outside-the-library", "This file may not be placed", found, "A pack holds all it places.")
        return self._text(self.pack.by_file.get(composed(path)))

    def names(self) -> tuple[str, ...]:
        """Return the names that the pack has."""
        return tuple(sorted(self.pack.by_name))

    def _text(self, block: PackedBlock | None) -> "SourceText | Diagnostic | None":
        return None if block is None else text_of(self.pack, block)


def text_of(pack: Pack, block: PackedBlock) -> SourceText | Diagnostic:
    """Return the text of a block in a pack, or where it stops being text."""
    decoded = decode_source(pack.shown(block), block.data)
    return decoded if isinstance(decoded, SourceText) else decoded[0]


def text_in(pack: Pack, file: str) -> SourceText | Diagnostic:
    """Return the text of a pack's file, or of its block of that name; why there is none, otherwise."""
    block = pack.by_file.get(file) or pack.by_file.get(file + BLOCK_SUFFIX) or pack.by_name.get(file)
    if block is not None:
        return text_of(pack, block)
    from difflib import get_close_matches

    near = get_close_matches(file, pack.by_name, n=1)
    advice = f"Did you mean `{pack.name}/{near[0]}`?" if near else f"`blocklang verify {pack.name}` lists its blocks."
    return refused("no-such-file", f"There is no `{file}` in this pack", f"`{pack.name}` has no such block.", advice)
