"""Every sentence of the sewing sheet, in one place: present tense, one action a sentence, the trade's words."""

from typing import Final

from blocklang.assembly import Count
from blocklang.wording import Saying, joined, listed, say, say_number

# Headings
CONTENTS: Final = {
    "fabrics": say("Fabrics"),
    "at_a_glance": say("At a glance"),
    "before": say("Before you start"),
    "cutting": say("Cutting"),
    "marks": say("How to read the pictures"),
    "steps": say("Sewing"),
    "pressing": say("The back of the block"),
    "finishing": say("Finishing the block"),
    "credits": say("Credits and licence"),
}

MARKS: Final = {
    "seam": say("The seam line: sew here."),
    "stop": say("Stop (or start) here, at the match point, a seam allowance short of the raw edge."),
    "raw edge": say("Sew through to the raw edge."),
    "pivot": say("Pivot: turn here with the needle down."),
    "quarter": say("The middle and the quarters of a curve: pin them to the same marks of the other piece."),
    "press": say("Press the seam allowance the way the arrow points."),
    "open": say("Press the seam open."),
}
PICTURES_SHOW: Final = (
    say("Every picture shows the right side up, and every raw edge."),
    say("Dotted lines join the places that meet."),
)

CAUTIONS: Final = (
    say("Close the blade of the rotary cutter every time you put it down, and cut away from yourself."),
    say("Keep the hot iron out of the reach of children, and switch it off when you leave it."),
    say("Count your pins and needles when you start and when you stop."),
    say("Leave no pins or loose pieces near infants."),
    say("For anything made for a baby or for sale, your local product-safety rules come first."),
)

MAP_SENTENCES: Final = (
    say("This is the back of the block, so left and right are changed over."),
    say("The seam allowances are a little darker than the patches; each arrow points to where its allowance lies."),
)
SPINS_SHOWN: Final = say("A ring marks a junction that is spun: its allowances all lie the same way round.")


def title(name: str) -> Saying:
    """Say what the page is."""
    return say("{name}: sewing sheet", name=name)


def byline(author: str) -> Saying:
    """Say who made the block."""
    return say("by {author}", author=author)


def size_line(finished: str, unfinished: str) -> Saying:
    """Say both sizes of the block."""
    return say("Finished {finished}; unfinished {unfinished}.", finished=finished, unfinished=unfinished)


def oblong(width: str, height: str) -> Saying:
    """Say two measures."""
    if width == height:
        return say("{width} square", width=width)
    return say("{width} by {height}", width=width, height=height)


def cut_line(name: str, how: str) -> Saying:
    """Say how the patches of one name are cut."""
    return say("{name}: {how}", name=name, how=how)


def pivots_line(count: Count) -> Saying:
    """Say how many set-in pivots there are, and that they are the fewest only when that is proven."""
    if count.count == 0:
        return say("No set-in seams.")
    if count.proven:
        return say_number(
            "{count} set-in pivot, proven the fewest possible.",
            "{count} set-in pivots, proven the fewest possible.",
            count.count,
        )
    return say_number("{count} set-in pivot.", "{count} set-in pivots.", count.count)


def partials_line(count: Count) -> Saying:
    """Say how many partial seams there are."""
    if count.count == 0:
        return say("No partial seams.")
    if count.proven:
        return say_number(
            "{count} partial seam, proven the fewest possible.",
            "{count} partial seams, proven the fewest possible.",
            count.count,
        )
    return say_number("{count} partial seam.", "{count} partial seams.", count.count)


def curves_line(count: int) -> Saying:
    """Say how many curved seams there are."""
    return say_number("{count} curved seam.", "{count} curved seams.", count) if count else say("No curved seams.")


def pieces_line(patches: int, steps: int) -> Saying:
    """Say how many patches and steps there are."""
    return say(
        "{patches}, {steps}.",
        patches=say_number("{count} patch", "{count} patches", patches),
        steps=say_number("{count} step", "{count} steps", steps),
    )


def allowance_line(allowance: str) -> Saying:
    """Say what the seam allowance is."""
    return say("The seam allowance is {length} everywhere.", length=allowance)


OTHER_WAYS: Final = say("Some units can be made several at once; the cutting list tells how under other ways to cut.")
TEST_STRIP_OFF: Final = (
    say("If the test strips measure less, sew a thread's width nearer the raw edge."),
    say("If they measure more, sew a thread's width further in."),
)


def make_line(times: int, copies: int) -> Saying:
    """Say how often a step is made."""
    if copies == 1:
        return say_number("Make {count}", "Make {count}", times)
    return say("Make {count} ({times} for each of {copies} blocks)", count=times * copies, times=times, copies=copies)


def times(name: str, count: int) -> Saying:
    """Say how many of one kind a step takes."""
    return say("{name} × {count}", name=name, count=count)


def made_from(times: int, parts: str) -> Saying:
    """Say how many units are made of which parts, where equal ones are made of different parts."""
    return say("{times} from {parts}", times=times, parts=parts)


def techniques_line(names: tuple[str, ...]) -> Saying:
    """Say which techniques the pressing follows."""
    return say("Pressed for {techniques}.", techniques=joined(names, say(" and ", context="between two techniques")))


def copies_line(copies: int) -> Saying:
    """Say that counts are for several blocks."""
    return say_number(
        "The counts on this sheet are for {count} block.", "The counts on this sheet are for {count} blocks.", copies
    )


# Steps
LAY_OUT_IN_ORDER: Final = say("Lay the pieces out in the order of the picture.")
JOIN_IN_ORDER: Final = say("Join them one after the other, right sides together.")
MATCH_EDGES: Final = say("Match the raw edges and pin.")
MATCH_SEAMS: Final = say("Match the seams that meet and pin.")
LOCK_SEAMS: Final = say("Match the seams that meet, so that their allowances lock.")
MARK_MATCH_POINTS: Final = say("Mark the match points on the wrong side.")
RAW_TO_RAW: Final = say("Sew from raw edge to raw edge.")
START_AT_RAW: Final = say("Start at the raw edge.")
START_AT_DOT: Final = say("Start at the dot, with a backstitch.")
STOP_AT_DOT: Final = say("Stop at the dot, with a backstitch.")
END_AT_RAW: Final = say("Sew on to the raw edge.")
TO_PIVOT: Final = say("Sew to the pivot and stop with the needle down.")
TURN_AT_PIVOT: Final = say("Lift the foot, turn the work and bring the next two edges together.")
KEEP_CLEAR: Final = say("Keep the other allowances out of the way.")
EACH_PIVOT: Final = say("Do the same at every pivot.")
SET_IN_EACH: Final = say("Set the next piece in the same way until all are in.")
MARK_QUARTERS: Final = say("Mark the middle and the quarter points of both curved edges.")
PIN_CURVE: Final = say("Pin the middles together, then the ends, then the quarter points.")
SEW_CURVE: Final = say("Sew slowly, easing the fuller edge along the curve.")
PART_ONLY: Final = say("Sew only the part of the seam that is marked.")
LEAVE_OPEN: Final = say("Leave the rest of the seam open.")
FINISH_PART: Final = say("Fold the rest of the open seam right sides together.")
CLOSE_RING: Final = say("Bring the two ends of the ring right sides together.")
SEW_ON: Final = say("Start where the stitches stopped, with a backstitch.")
CHAIN_PIECE: Final = say("Chain-piece them: feed one after the other without cutting the thread.")
PRESS_ARROWS: Final = say("Press each seam the way its arrow points.")
PRESS_OPEN: Final = say("Press the seam open.")
WORK_SO_FAR: Final = say("the work so far")


def lay_out(order: tuple[str, ...]) -> Saying:
    """Say in which order pieces lie beside each other; () where the list of parts tells it, or the picture alone."""
    if not order:
        return LAY_OUT_IN_ORDER
    return say("Lay the pieces out in the order of the picture: {pieces}.", pieces=joined(order, ", "))


def goes_in(what: str, step: int) -> Saying:
    """Say why a seam stops short."""
    return say("Leave it open there: {what} goes in at step {step}.", what=what, step=step)


def finished_at(step: int) -> Saying:
    """Say when the rest of a partial seam is sewn."""
    return say("You finish this seam at step {step}.", step=step)


def will_lock(steps: tuple[int, ...]) -> Saying:
    """Say what the pressing is for."""
    return say("Pressed so, it locks at {steps}.", steps=_steps(steps))


def spin_junctions(undone: tuple[int, ...], turning: str, several: bool) -> tuple[str, ...]:
    """Say which stitches to undo, and which way round the allowances go; seen from the back, where they are pressed."""
    at = _steps(undone)
    undo = (
        say(
            "At every place where seams cross, undo the few stitches of {steps} that lie inside the allowance.",
            steps=at,
        )
        if several
        else say(
            "At the place where the seams cross, undo the few stitches of {steps} that lie inside the allowance.",
            steps=at,
        )
    )
    spin = say(
        "Spin the allowances {turning}, seen from the back, and press the little patch in the middle flat.",
        turning=turning,
    )
    return undo, spin


def _steps(numbers: tuple[int, ...]) -> Saying:
    if len(numbers) == 1:
        return say("step {number}", number=numbers[0])
    return say("steps {numbers}", numbers=listed(map(str, numbers)))


TURNING_BACK: Final = {"clockwise": say("counterclockwise"), "counterclockwise": say("clockwise")}
TURNING_BOTH: Final = say("by turns clockwise and counterclockwise")


def seam_finished_at(step: int) -> Saying:
    """Say why a seam stops where a partial seam passes."""
    return say("Leave it open there: the partial seam is finished at step {step}.", step=step)


AS_DRAWN: Final = say("so", context="how units are pressed: as the picture shows")
OTHER_WAY: Final = say("the other way at every seam", context="how units are pressed")
AS_ON_THE_MAP: Final = say("as the map of the back shows", context="how units are pressed")


def press_version(letter: str, count: int, as_drawn: bool, opposite: bool, order: str) -> Saying:
    """Say how many units are laid out and pressed as one version, and how they are marked."""
    way = AS_DRAWN if as_drawn else OTHER_WAY if opposite else AS_ON_THE_MAP
    if order:
        return say_number(
            "Make one of them {order}, press it {way}, and mark it {letter}.",
            "Make {count} of them {order}, press them {way}, and mark them {letter}.",
            count,
            order=order,
            way=way,
            letter=letter,
        )
    return say_number(
        "Press one of them {way}, and mark it {letter}.",
        "Press {count} of them {way}, and mark them {letter}.",
        count,
        way=way,
        letter=letter,
    )


def only_marked(letter: str) -> Saying:
    """Say which of the marked units are taken."""
    return say("from what is marked {letter}", letter=letter)


def marked(what: str, letter: str) -> Saying:
    """Say which of the marked units lies among others."""
    return say("{what} marked {letter}", what=what, letter=letter)


def in_order(order: str) -> Saying:
    """Say in which order marked units lie."""
    return say("in the order {order}", order=order)


def lay_versions(order: str, times: int, of: int) -> Saying:
    """Say what some of the units of a step are made of."""
    if of == 1:
        return say("Make it {order}.", order=order)
    if times == of:
        return say("Make them {order}.", order=order)
    return say_number(
        "Make one of the {all} {order}.", "Make {count} of the {all} {order}.", times, all=of, order=order
    )


def largest_piece(what: str, measures: str) -> Saying:
    """Say how much cloth is under the needle."""
    return say("The largest piece under the needle is {what}, about {measures}.", what=what, measures=measures)


def curve_sides(convex: str, concave: str) -> Saying:
    """Say which side of a curved seam is which."""
    return say("The edge of {convex} curves outward, the edge of {concave} inward.", convex=convex, concave=concave)


def take(first: str, second: str) -> Saying:
    """Say what is joined to what."""
    return say("Place {first} and {second} right sides together.", first=first, second=second)


def take_two(pair: str) -> Saying:
    """Say that two equal things are joined."""
    return say("Place {pair} right sides together.", pair=pair)


def press_toward(what: str, seams: int) -> Saying:
    """Say where the allowances of a step lie."""
    return say_number("Press the seam toward {what}.", "Press the seams toward {what}.", seams, what=what)


def the_fabric(name: str) -> Saying:
    """Say what seams are pressed toward when it is all of one fabric."""
    return say("the {fabric} fabric", fabric=name)


def comes_out(what: str) -> Saying:
    """Say what a step makes, where there is nothing to measure."""
    return say("This makes {what}.", what=what)


def must_measure(measures: str, what: str) -> Saying:
    """Say what comes out."""
    return say("Check: {what} measures {measures}.", what=what, measures=measures)


def finishing(unfinished: str, finished: str) -> tuple[str, ...]:
    """Say how to square up the block."""
    return (
        say("Press the block well from the back, then from the front, without sliding the iron."),
        say("The block measures {measures}, raw edge to raw edge.", measures=unfinished),
        say("Square up: line a ruler up with the seams and the middle, and trim only what sticks out."),
        say("Keep a full seam allowance beyond every point."),
        say("Sewn to its neighbours, the block measures {measures}.", measures=finished),
    )


def credit_line(name: str, author: str, licence: str, source: str) -> Saying:
    """Say who made a block, under which licence, and where it comes from."""
    parts: list[str] = [say("“{name}”", name=name)]
    parts += [byline(author)] if author else []
    parts += [say("licence {licence}", licence=licence)] if licence else []
    parts += [source] if source else []
    return joined((joined(parts, ", "), "."), "")
