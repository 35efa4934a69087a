"""Reading a pack: its archive opened, its manifest understood, every checksum compared."""

from pathlib import Path

from blocklang.diagnostics import Diagnostic
from blocklang.limits import MOST_PACK_BYTES
from blocklang.packs.archive import Members, open_archive
from blocklang.packs.faults import broken, refused
from blocklang.packs.manifest import Listing, read_manifest, read_signature
from blocklang.packs.values import MANIFEST, SIGNATURE, Pack, PackedBlock, Signature


def read_pack(path: Path) -> Pack | Diagnostic:
    """Return the pack in a file, or what is wrong with it."""
    name = path.as_posix()
    try:
        with path.open("rb") as file:
            data = file.read(MOST_PACK_BYTES + 1)
    except (OSError, ValueError) as problem:
        reason = getattr(problem, "strerror", None) or "the name cannot be used"
        return refused("cannot-read", f"`{name}` cannot be read", f"The system says: {reason}.")
    return unfold(name, data)


def unfold(name: str, data: bytes) -> Pack | Diagnostic:
    """Return the pack that these bytes are, or what is wrong with it."""
    members = open_archive(name, data)
    if isinstance(members, Diagnostic):
        return members
    if MANIFEST not in members:
        return broken(name, "no-manifest", f"It has no `{MANIFEST}`.", "Make packs with `blocklang pack`.")
    listings = read_manifest(members.pop(MANIFEST))
    if isinstance(listings, str):
        return broken(name, "bad-manifest", listings)
    signature: Signature | None = None
    if SIGNATURE in members:
        signature = read_signature(members.pop(SIGNATURE))
        if signature is None:
            return broken(name, "bad-signature", "Its signature cannot be read.")
    fault = _fault_of_contents(members, listings)
    if fault is not None:
        return broken(name, *fault)
    return Pack(name, tuple(_block(listing, members) for listing in listings), signature)


def _block(listing: Listing, members: Members) -> PackedBlock:
    return PackedBlock(listing.file, members[listing.file], listing.language, listing.credits, listing.places)


def _fault_of_contents(members: Members, listings: list[Listing]) -> tuple[str, str] | None:
    """Hold the manifest against the files: each listed once, in order, with its checksum."""
    listed = [listing.file for listing in listings]
    if listed != sorted(set(listed)):
        return "bad-manifest", "Its manifest lists its files twice or out of order."
    missing = next((file for file in listed if file not in members), None)
    if missing is not None:
        return "missing-file", f"Its manifest lists `{missing}`, which is not there."
    added = next((file for file in members if file not in set(listed)), None)
    if added is not None:
        return "added-file", f"It holds `{added}`, which its manifest does not list."
    for listing in listings:
        block = _block(listing, members)
        if block.sha256 != listing.sha256:
            return "altered-file", f"`{listing.file}` in it was changed after it was packed."
        if any(place not in members for place in listing.places):
            return "bad-manifest", f"Its manifest says that `{listing.file}` needs a file that is not there."
    return _fault_of_names(Pack("", tuple(_block(listing, members) for listing in listings)))


def _fault_of_names(pack: Pack) -> tuple[str, str] | None:
    """Refuse two different blocks of one name: which of them is placed would be chance."""
    for block in pack.blocks:
        if pack.by_name[block.name].data != block.data:
            return "twin-names", f"It holds two different blocks called `{block.name}`."
    return None
