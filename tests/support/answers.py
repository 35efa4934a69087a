"""What a document shows of a command's answer, held against the answer."""

import re


def holds(answer: str, shown: str) -> bool:
    """Say whether an answer is what is shown, where `...` on a line of its own stands for lines that are left out."""
    parts = [re.escape(part) for part in f"\n{shown.strip()}\n".split("\n...\n")]
    pattern = r"\n(?:.*\n)*".join(parts)
    return re.fullmatch(pattern, f"\n{answer.strip()}\n") is not None
