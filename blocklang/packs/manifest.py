"""The manifest of a pack and its signature as JSON, and back; only what we would have written ourselves is read."""

import json
import re
from typing import Any, NamedTuple

from blocklang.block import Credit
from blocklang.packs.values import PackedBlock, Signature

FORMAT = "blocklang.pack/1"
SIGNATURE_FORMAT = "blocklang.signature/1"
_ANY_FORMAT = re.compile(r"blocklang\.pack/\d{1,6}")


class Listing(NamedTuple):
    """What a manifest says of one file."""

    file: str
    sha256: str
    language: int
    credits: tuple[Credit, ...]
    places: tuple[str, ...]


def manifest_bytes(blocks: tuple[PackedBlock, ...]) -> bytes:
    """Return the manifest of these blocks."""
    return _encoded([Listing(b.file, b.sha256, b.language, b.credits, b.places) for b in blocks])


def read_manifest(data: bytes) -> list[Listing] | str:
    """Return what a manifest lists, or one sentence that says why it cannot be used."""
    told = _values(data)
    form = told.get("format") if isinstance(told, dict) else None
    if isinstance(form, str) and form != FORMAT and _ANY_FORMAT.fullmatch(form):
        return f"It is packed as {form}, and this program reads {FORMAT}; a newer blocklang may read it."
    try:
        listings = [_listing(block) for block in told["blocks"]]
    except (KeyError, TypeError, ValueError):
        return "Its manifest cannot be read."
    # Writing it again must give the same bytes: so nothing is said twice, left over or understood in two ways.
    return listings if _encoded(listings) == data else "Its manifest is not written as this program writes it."


def signature_bytes(signature: Signature) -> bytes:
    """Return a signature as it lies in a pack."""
    return _json({"format": SIGNATURE_FORMAT, "key": signature.key, "signature": signature.signature})


def read_signature(data: bytes) -> Signature | None:
    """Return the signature that lies in a pack, or None when it cannot be read."""
    told = _values(data)
    if not isinstance(told, dict) or not all(isinstance(told.get(name), str) for name in ("key", "signature")):
        return None
    signature = Signature(told["key"], told["signature"])
    right = re.fullmatch("[0-9a-f]{64}", signature.key) and re.fullmatch("[0-9a-f]{128}", signature.signature)
    return signature if right and signature_bytes(signature) == data else None


def _encoded(listings: list[Listing]) -> bytes:
    blocks = [
        {
            "file": one.file,
            "sha256": one.sha256,
            "language": one.language,
            "credits": [
                {"block": c.name, "by": c.author, "licence": c.licence, "source": c.source} for c in one.credits
            ],
            "places": list(one.places),
        }
        for one in listings
    ]
    language = max((one.language for one in listings), default=1)
    return _json({"format": FORMAT, "language": language, "blocks": blocks})


def _listing(block: Any) -> Listing:
    texts = (block["file"], block["sha256"], *block["places"])
    credit_texts = [[credit[key] for key in ("block", "by", "licence", "source")] for credit in block["credits"]]
    if not all(isinstance(text, str) for text in (*texts, *(text for credit in credit_texts for text in credit))):
        raise TypeError("every name is a text")
    for text in (*texts, *(text for credit in credit_texts for text in credit)):
        text.encode()  # half a letter, which JSON can say and no file can hold, is a ValueError
    if type(block["language"]) is not int:
        raise TypeError("the language version is a number")
    given = tuple(Credit(*credit) for credit in credit_texts)
    if not given:
        raise ValueError("a block has a credit of its own, even when it names nobody")
    return Listing(block["file"], block["sha256"], block["language"], given, tuple(block["places"]))


def _values(data: bytes) -> Any:
    try:
        return json.loads(data)
    except (ValueError, RecursionError):
        return None


def _json(values: dict[str, Any]) -> bytes:
    return (json.dumps(values, indent=1, ensure_ascii=True) + "\n").encode()
