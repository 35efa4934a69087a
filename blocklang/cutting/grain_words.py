"""Which side of a patch lies on the straight grain, in the words that follow "cut with the template"."""

from typing import Final

from blocklang.wording import say

SHORT_SIDES: Final = say("the two short sides on the straight grain")
LONG_SIDE: Final = say("the long side on the straight grain")
ONE_SIDE: Final = say("one side on the straight grain")
TWO_SIDES: Final = say("two sides on the straight grain")
SIDES: Final = say("the sides on the straight grain")
ALONG_THE_STRIP: Final = say("the sides along the strip on the straight grain")
OF_THE_SQUARE: Final = say("the sides of the square on the straight grain")
BASE: Final = say("the base on the straight grain")
MIDDLE_LINE: Final = say("the middle line on the straight grain")
ARROW: Final = say("the arrow on the straight grain")
OUTER_EDGE: Final = say("the outer edge on the straight grain")
LONGEST_EDGE: Final = say("the longest straight edge on the straight grain")
UP_THE_FABRIC: Final = say("the arrow up the fabric")
MOTIF_IN_EACH: Final = say("a motif in the middle of each")
