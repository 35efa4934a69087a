"""Making a choice better bit by bit, where a part is too large to be searched as a whole."""

from blocklang.pressing.costs import costs_of, kept
from blocklang.pressing.nearby import Nearby, near, rules_beside
from blocklang.pressing.ranks import Rank
from blocklang.pressing.rules import Question
from blocklang.pressing.search import Answer, all_of

#: So many places are looked at, whatever the size of the part.
_MOST_PLACES = 240


def polish(question: Question, answer: Answer) -> Answer:
    """Press the seams round every broken rule about clips and locks anew, as long as that makes anything better.

    How much better still could exist is not known then.
    """
    better, places, changed, beside = list(answer.left), 0, True, rules_beside(question)
    while changed and places < _MOST_PLACES:
        changed = False
        for rule in (rule for rule in question.rules if rule.rank <= Rank.LOCKS):
            if places < _MOST_PLACES and not kept(rule, better):
                places += 1
                changed |= _press_near(better, near(question, rule, better, beside))
    left = tuple(better)
    return answer if left == answer.left else Answer(left, all_of(question, left))


def _press_near(left: list[bool], nearby: Nearby) -> bool:
    """Take over what is best near by, all else held; return whether it is better than before."""
    pressed = nearby.pressed()
    if pressed is None:
        return False
    trial = list(left)
    for seam in nearby.free:
        trial[seam] = pressed[seam]
    if costs_of(nearby.question, trial, nearby.question.seams) >= costs_of(
        nearby.question, left, nearby.question.seams
    ):
        return False
    left[:] = trial
    return True
