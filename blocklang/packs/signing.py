"""Signing a pack's manifest with an Ed25519 key (RFC 8032) and checking the signature; keys are PEM files.

The package `cryptography` does it; it is optional, because most packs pass from hand to hand in a guild.
"""

import os
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING, NamedTuple

from blocklang.diagnostics import Diagnostic, Severity
from blocklang.limits import MOST_KEY_BYTES
from blocklang.packs.faults import distrusted, refused
from blocklang.packs.manifest import manifest_bytes
from blocklang.packs.values import Pack, Signature

if TYPE_CHECKING:
    from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey, Ed25519PublicKey

#: Names the file of a public key; the library then reads only packs that are signed with it.
VARIABLE = "BLOCKLANG_KEY"


class KeyPair(NamedTuple):
    """A new pair of keys as PEM files."""

    private: bytes
    public: bytes


def make_keys() -> KeyPair | Diagnostic:
    """Return a new pair of keys."""
    try:
        from cryptography.hazmat.primitives import serialization as form
        from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey
    except ImportError:
        return _missing()
    key = Ed25519PrivateKey.generate()
    private = key.private_bytes(form.Encoding.PEM, form.PrivateFormat.PKCS8, form.NoEncryption())
    public = key.public_key().public_bytes(form.Encoding.PEM, form.PublicFormat.SubjectPublicKeyInfo)
    return KeyPair(private, public)


def signed(pack: Pack, path: Path) -> Pack | Diagnostic:
    """Return a pack signed with the private key in a file."""
    data = _read(path)
    if isinstance(data, Diagnostic):
        return data
    key = _private(path, data)
    if isinstance(key, Diagnostic):
        return key
    public = key.public_key().public_bytes_raw()
    return replace(pack, signature=Signature(public.hex(), key.sign(manifest_bytes(pack.blocks)).hex()))


def fault_of_signature(pack: Pack, path: Path) -> Diagnostic | None:
    """Return why a pack is not signed with the key whose public half is in a file, or None when it is."""
    data = _read(path)
    if isinstance(data, Diagnostic):
        return data
    key = _public(path, data)
    if isinstance(key, Diagnostic):
        return key
    if pack.signature is None:
        return distrusted(pack.name, "not-signed", "It is not signed.", "Ask its maker for a signed one.")
    from cryptography.exceptions import InvalidSignature

    try:
        key.verify(bytes.fromhex(pack.signature.signature), manifest_bytes(pack.blocks))
    except InvalidSignature:
        if pack.signature.key == key.public_bytes_raw().hex():
            return distrusted(pack.name, "altered-pack", "It was changed after it was signed.")
        found = f"It is signed with another key ({short(pack.signature.key)}) than `{path}` ({short(key.public_bytes_raw().hex())})."
        return distrusted(pack.name, "other-key", found, "Ask its maker which key is theirs.")
    return None


def required_fault(pack: Pack) -> Diagnostic | None:
    """Hold a pack against the key that BLOCKLANG_KEY names, if it names one."""
    wanted = os.environ.get(VARIABLE, "")
    return fault_of_signature(pack, Path(wanted)) if wanted else None


def short(key: str) -> str:
    """Return enough of a public key to compare it by eye."""
    return " ".join(key[at : at + 4] for at in range(0, 16, 4))


def _private(path: Path, data: bytes) -> "Ed25519PrivateKey | Diagnostic":
    try:
        from cryptography.exceptions import UnsupportedAlgorithm
        from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey
        from cryptography.hazmat.primitives.serialization import load_pem_private_key
    except ImportError:
        return _missing()
    try:
        key = load_pem_private_key(data, password=None)
    except TypeError:
        return _no_key(path, "It is locked with a password, and blocklang reads unlocked keys only.")
    except (ValueError, UnsupportedAlgorithm):
        return _no_key(path, "It holds no private key.")
    return key if isinstance(key, Ed25519PrivateKey) else _no_key(path, "It is not an Ed25519 key.")


def _public(path: Path, data: bytes) -> "Ed25519PublicKey | Diagnostic":
    try:
        from cryptography.exceptions import UnsupportedAlgorithm
        from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PublicKey
        from cryptography.hazmat.primitives.serialization import load_pem_public_key
    except ImportError:
        return _missing()
    try:
        key = load_pem_public_key(data)
    except (ValueError, UnsupportedAlgorithm):
        return _no_key(path, "It holds no public key.")
    return key if isinstance(key, Ed25519PublicKey) else _no_key(path, "It is not an Ed25519 key.")


def _read(path: Path) -> bytes | Diagnostic:
    try:
        with path.open("rb") as file:
            return file.read(MOST_KEY_BYTES)
    except (OSError, ValueError) as problem:
        reason = getattr(problem, "strerror", None) or "the name cannot be used"
        return refused("cannot-read", f"`{path}` cannot be read", f"The system says: {reason}.")


def _no_key(path: Path, found: str) -> Diagnostic:
    return refused(
        "no-key", f"`{path}` cannot be used as a key", found, "`blocklang pack --new-key NAME` makes a pair."
    )


def _missing() -> Diagnostic:
    found = "Signing and checking signatures need the package `cryptography`, which is not installed."
    return Diagnostic(
        "no-signing", Severity.ERROR, "Signatures cannot be used here", found, "Install `blocklang[signing]`."
    )
