"""The words that only a screen needs, where steps can be ticked off."""

from typing import Final

from blocklang.wording import say

#: `{done}` and `{all}` are numbers that change while the page is read.
SCREEN: Final = {
    "contents": say("On this sheet"),
    "step": say("Step"),
    "done": say("Done"),
    "count": say("{done} of {all} steps done"),
    "clear_all": say("Clear all ticks"),
}
