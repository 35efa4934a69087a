"""Guess what a misspelt name was meant to be."""

from collections.abc import Iterable

from blocklang.limits import MOST_COMPARED


def did_you_mean(name: str, known: Iterable[str], otherwise: str = "") -> str:
    """Return one sentence of advice: the nearest names, or what else to say."""
    near = nearest(name, known)
    if not near:
        return otherwise
    return f"Did you mean {' or '.join(f'`{found}`' for found in near)}?"


def nearest(name: str, known: Iterable[str]) -> list[str]:
    """Return at most two known names that look like this one, the nearest first."""
    names = sorted(known)[:MOST_COMPARED]
    folded = name.casefold()
    same = [found for found in names if found.casefold() == folded]
    if same:
        return same[:2]
    numbered = [found for found in names if found.partition(".")[0] == name]
    if numbered:
        return numbered[:1]
    from difflib import get_close_matches

    return get_close_matches(name, names, n=2, cutoff=0.72)
