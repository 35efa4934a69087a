"""Why a junction that could lock does not, in sentences for people who sew."""

from collections.abc import Sequence

from blocklang.pressing.rules import Question
from blocklang.pressing.values import Reason


def reasons_for(question: Question, left: Sequence[bool]) -> tuple[Reason, ...]:
    """Return a sentence for each junction that could lock and does not, and for each line that costs something."""
    return question.lines.clashes
