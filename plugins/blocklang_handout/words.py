"""Every sentence of a handout that is not about one cut or one seam."""

from typing import Final

from blocklang.block import Credit

TITLE: Final = "Class handout"
CONTENTS: Final = "Contents"
CUTTING: Final = "Cutting one block"
SEWING: Final = "Sewing order"


def blocks(count: int) -> str:
    """Say how many blocks there are."""
    return "1 block" if count == 1 else f"{count} blocks"


def entry(name: str, size: str, page: int) -> str:
    """Say where a block is found."""
    return f"{name}, {size}: page {page}"


def size(width: str, height: str) -> str:
    """Say the finished size."""
    return f"{width} by {height} finished"


def piece(name: str, fabric: str, cut: str) -> str:
    """Say how the patches of a line are cut."""
    return f"{name}, {fabric}: {cut}"


def step(number: int, title: str, times: int, measures: str) -> str:
    """Say a step in short."""
    often = f", {times} times" if times > 1 else ""
    return f"{number}. {title}{often}." + (f" It measures {measures}." if measures else "")


def credit(given: Credit) -> str:
    """Say who made a block and under which licence."""
    parts = [f"“{given.name}”"]
    parts += [f"by {given.author}"] if given.author else []
    parts += [f"licence {given.licence}"] if given.licence else []
    parts += [given.source] if given.source else []
    return ", ".join(parts) + "."
