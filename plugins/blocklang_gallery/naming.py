"""What files in a gallery are called: plain names that every system and every address has room for."""

import re
from hashlib import sha256

from blocklang.block import Block

_PLAIN = re.compile(r"[a-z0-9]+(?:-[a-z0-9]+)*")
#: Names that stand for devices on some systems, whatever follows the first dot.
_DEVICES = frozenset(["con", "prn", "aux", "nul", *(f"{port}{n}" for port in ("com", "lpt") for n in range(10))])
#: A name stands twice in the path of a file, which has 120 characters at most.
_LONGEST = 40


def file_stem(name: str) -> str:
    """Return a block's name where it is plain, otherwise what is plain of it and a digest that keeps names apart."""
    if len(name) <= _LONGEST and _PLAIN.fullmatch(name) and name not in _DEVICES:
        return name
    plain = "-".join(re.findall(r"[a-z0-9]+", name.lower()))[: _LONGEST - 10].rstrip("-")
    return f"{plain or 'block'}-{_digest(name)}"


def keeping_name(stem: str, block: Block) -> str:
    """Return under which name a browser keeps the colours of a block: other fabrics, other colours."""
    told = "\n".join(f"{fabric.id} {fabric.colour}" for fabric in block.fabrics)
    return f"blocklang gallery {stem} {_digest(told)}"


def _digest(text: str) -> str:
    return sha256(text.encode("utf-8", "backslashreplace")).hexdigest()[:8]
