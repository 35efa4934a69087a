"""The words that only a screen needs, where steps can be ticked off."""

from typing import Final

#: `{done}` and `{all}` are numbers that change while the page is read.
SCREEN: Final = {
    "contents": "On this sheet",
    "step": "Step",
    "done": "Done",
    "count": "{done} of {all} steps done",
    "clear_all": "Clear all ticks",
}
