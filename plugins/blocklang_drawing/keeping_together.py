"""What no line of a page ends inside of: "3 1/2 in", "step 4", "unit A" and "× 2" are one thing each."""

import re
from typing import Final

from blocklang.wording import Language, message

_MEASURES: Final = message("in|cm|mm", context="names of lengths that stay beside the number before them")
_NUMBERED: Final = message("step", context="words that stay beside the number behind them, with | between them")
_LETTERED: Final = message("unit|patch", context="words that stay beside the letter behind them, with | between them")


def kept_together(language: Language) -> re.Pattern[str]:
    """Return what finds the spaces in a text at which no line ends."""
    measures, numbered, lettered = (language.say(kept.say()) for kept in (_MEASURES, _NUMBERED, _LETTERED))
    spaces = [
        rf"(?<=\d) (?=\d+/\d|(?:{measures})\b)",
        *(rf"(?<=\b{word}) (?=\d)" for word in numbered.split("|")),
        *(rf"(?<=\b{word}) (?=[A-Z]\b)" for word in lettered.split("|")),
        r"(?<=×) (?=\d)",
    ]
    return re.compile("|".join(spaces))
