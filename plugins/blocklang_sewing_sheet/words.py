"""Every sentence of the sewing sheet, in one place: present tense, one action a sentence, the trade's words."""

from typing import Final

from blocklang.assembly import Count

# Headings
CONTENTS: Final = {
    "fabrics": "Fabrics",
    "at_a_glance": "At a glance",
    "before": "Before you start",
    "cutting": "Cutting",
    "marks": "How to read the pictures",
    "steps": "Sewing",
    "pressing": "The back of the block",
    "finishing": "Finishing the block",
    "credits": "Credits and licence",
}

MARKS: Final = {
    "seam": "The seam line: sew here.",
    "stop": "Stop (or start) here, at the match point, a seam allowance short of the raw edge.",
    "raw edge": "Sew through to the raw edge.",
    "pivot": "Pivot: turn here with the needle down.",
    "quarter": "The middle and the quarters of a curve: pin them to the same marks of the other piece.",
    "press": "Press the seam allowance the way the arrow points.",
    "open": "Press the seam open.",
}
PICTURES_SHOW: Final = (
    "Every picture shows the right side up, and every raw edge.",
    "Dotted lines join the places that meet.",
)

CAUTIONS: Final = (
    "Close the blade of the rotary cutter every time you put it down, and cut away from yourself.",
    "Keep the hot iron out of the reach of children, and switch it off when you leave it.",
    "Count your pins and needles when you start and when you stop.",
    "Leave no pins or loose pieces near infants.",
    "For anything made for a baby or for sale, your local product-safety rules come first.",
)

MAP_SENTENCES: Final = (
    "This is the back of the block, so left and right are changed over.",
    "The seam allowances are a little darker than the patches; each arrow points to where its allowance lies.",
)
SPINS_SHOWN: Final = "A ring marks a junction that is spun: its allowances all lie the same way round."


def size_line(finished: str, unfinished: str) -> str:
    """Say both sizes of the block."""
    return f"Finished {finished}; unfinished {unfinished}."


def oblong(width: str, height: str) -> str:
    """Say two measures."""
    return f"{width} square" if width == height else f"{width} by {height}"


def number_of(count: int, one: str, many: str) -> str:
    """Say how many there are of something."""
    return f"{count} {one if count == 1 else many}"


def pivots_line(count: Count) -> str:
    """Say how many set-in pivots there are, and that they are the fewest only when that is proven."""
    if count.count == 0:
        return "No set-in seams."
    proven = ", proven the fewest possible" if count.proven else ""
    return f"{number_of(count.count, 'set-in pivot', 'set-in pivots')}{proven}."


def partials_line(count: Count) -> str:
    """Say how many partial seams there are."""
    if count.count == 0:
        return "No partial seams."
    proven = ", proven the fewest possible" if count.proven else ""
    return f"{number_of(count.count, 'partial seam', 'partial seams')}{proven}."


def curves_line(count: int) -> str:
    """Say how many curved seams there are."""
    return f"{number_of(count, 'curved seam', 'curved seams')}." if count else "No curved seams."


def pieces_line(patches: int, steps: int) -> str:
    """Say how many patches and steps there are."""
    return f"{number_of(patches, 'patch', 'patches')}, {number_of(steps, 'step', 'steps')}."


def allowance_line(allowance: str) -> str:
    """Say what the seam allowance is."""
    return f"The seam allowance is {allowance} everywhere."


OTHER_WAYS: Final = "Some units can be made several at once; the cutting list tells how under other ways to cut."
TEST_STRIP_OFF: Final = (
    "If the test strips measure less, sew a thread's width nearer the raw edge.",
    "If they measure more, sew a thread's width further in.",
)


def make_line(times: int, copies: int) -> str:
    """Say how often a step is made."""
    if copies == 1:
        return f"Make {times}"
    return f"Make {times * copies} ({times} for each of {copies} blocks)"


def made_from(times: int, parts: str) -> str:
    """Say how many units are made of which parts, where equal ones are made of different parts."""
    return f"{times} from {parts}"


def techniques_line(names: tuple[str, ...]) -> str:
    """Say which techniques the pressing follows."""
    return f"Pressed for {' and '.join(names)}."


def copies_line(copies: int) -> str:
    """Say that counts are for several blocks."""
    return f"The counts on this sheet are for {copies} blocks."


# Steps
LAY_OUT_IN_ORDER: Final = "Lay the pieces out in the order of the picture."
JOIN_IN_ORDER: Final = "Join them one after the other, right sides together."
MATCH_EDGES: Final = "Match the raw edges and pin."
MATCH_SEAMS: Final = "Match the seams that meet and pin."
LOCK_SEAMS: Final = "Match the seams that meet, so that their allowances lock."
MARK_MATCH_POINTS: Final = "Mark the match points on the wrong side."
RAW_TO_RAW: Final = "Sew from raw edge to raw edge."
START_AT_RAW: Final = "Start at the raw edge."
START_AT_DOT: Final = "Start at the dot, with a backstitch."
STOP_AT_DOT: Final = "Stop at the dot, with a backstitch."
END_AT_RAW: Final = "Sew on to the raw edge."
TO_PIVOT: Final = "Sew to the pivot and stop with the needle down."
TURN_AT_PIVOT: Final = "Lift the foot, turn the work and bring the next two edges together."
KEEP_CLEAR: Final = "Keep the other allowances out of the way."
EACH_PIVOT: Final = "Do the same at every pivot."
SET_IN_EACH: Final = "Set the next piece in the same way until all are in."
MARK_QUARTERS: Final = "Mark the middle and the quarter points of both curved edges."
PIN_CURVE: Final = "Pin the middles together, then the ends, then the quarter points."
SEW_CURVE: Final = "Sew slowly, easing the fuller edge along the curve."
PART_ONLY: Final = "Sew only the part of the seam that is marked."
LEAVE_OPEN: Final = "Leave the rest of the seam open."
FINISH_PART: Final = "Fold the rest of the open seam right sides together."
CLOSE_RING: Final = "Bring the two ends of the ring right sides together."
SEW_ON: Final = "Start where the stitches stopped, with a backstitch."
CHAIN_PIECE: Final = "Chain-piece them: feed one after the other without cutting the thread."
PRESS_ARROWS: Final = "Press each seam the way its arrow points."
PRESS_OPEN: Final = "Press the seam open."
WORK_SO_FAR: Final = "the work so far"


def lay_out(order: tuple[str, ...]) -> str:
    """Say in which order pieces lie beside each other; () where the list of parts tells it, or the picture alone."""
    return f"{LAY_OUT_IN_ORDER[:-1]}: {', '.join(order)}." if order else LAY_OUT_IN_ORDER


def goes_in(what: str, step: int) -> str:
    """Say why a seam stops short."""
    return f"Leave it open there: {what} goes in at step {step}."


def finished_at(step: int) -> str:
    """Say when the rest of a partial seam is sewn."""
    return f"You finish this seam at step {step}."


def will_lock(steps: tuple[int, ...]) -> str:
    """Say what the pressing is for."""
    return f"Pressed so, it locks at {_steps(steps)}."


def spin_junctions(undone: tuple[int, ...], turning: str, several: bool) -> tuple[str, ...]:
    """Say which stitches to undo, and which way round the allowances go; seen from the back, where they are pressed."""
    where = "every place where seams cross" if several else "the place where the seams cross"
    return (
        f"At {where}, undo the few stitches of {_steps(undone)} that lie inside the allowance.",
        f"Spin the allowances {turning}, seen from the back, and press the little patch in the middle flat.",
    )


def _steps(numbers: tuple[int, ...]) -> str:
    said = [str(number) for number in numbers]
    return f"step {said[0]}" if len(said) == 1 else f"steps {', '.join(said[:-1])} and {said[-1]}"


TURNING_BACK: Final = {"clockwise": "counterclockwise", "counterclockwise": "clockwise"}
TURNING_BOTH: Final = "by turns clockwise and counterclockwise"


def seam_finished_at(step: int) -> str:
    """Say why a seam stops where a partial seam passes."""
    return f"Leave it open there: the partial seam is finished at step {step}."


def press_version(letter: str, count: int, as_drawn: bool, opposite: bool, order: str) -> str:
    """Say how many units are laid out and pressed as one version, and how they are marked."""
    which = f"{count} of them" if count > 1 else "one of them"
    them = "them" if count > 1 else "it"
    way = "so" if as_drawn else "the other way at every seam" if opposite else "as the map of the back shows"
    if order:
        return f"Make {which} {order}, press {them} {way}, and mark {them} {letter}."
    return f"Press {which} {way}, and mark {them} {letter}."


def only_marked(letter: str) -> str:
    """Say which of the marked units are taken."""
    return f"from what is marked {letter}"


def marked(what: str, letter: str) -> str:
    """Say which of the marked units lies among others."""
    return f"{what} marked {letter}"


def in_order(order: str) -> str:
    """Say in which order marked units lie."""
    return f"in the order {order}"


def lay_versions(order: str, times: int, of: int) -> str:
    """Say what some of the units of a step are made of."""
    many = "them" if times == of else f"{times} of the {of}" if times > 1 else f"one of the {of}"
    return f"Make {'it' if of == 1 else many} {order}."


def largest_piece(what: str, measures: str) -> str:
    """Say how much cloth is under the needle."""
    return f"The largest piece under the needle is {what}, about {measures}."


def curve_sides(convex: str, concave: str) -> str:
    """Say which side of a curved seam is which."""
    return f"The edge of {convex} curves outward, the edge of {concave} inward."


def take(first: str, second: str) -> str:
    """Say what is joined to what."""
    return f"Place {first} and {second} right sides together."


def take_two(pair: str) -> str:
    """Say that two equal things are joined."""
    return f"Place {pair} right sides together."


def press_toward(what: str, seams: int) -> str:
    """Say where the allowances of a step lie."""
    return f"Press the {'seam' if seams == 1 else 'seams'} toward {what}."


def comes_out(what: str) -> str:
    """Say what a step makes, where there is nothing to measure."""
    return f"This makes {what}."


def must_measure(measures: str, what: str) -> str:
    """Say what comes out."""
    return f"Check: {what} measures {measures}."


def finishing(unfinished: str, finished: str) -> tuple[str, ...]:
    """Say how to square up the block."""
    return (
        "Press the block well from the back, then from the front, without sliding the iron.",
        f"The block measures {unfinished}, raw edge to raw edge.",
        "Square up: line a ruler up with the seams and the middle, and trim only what sticks out.",
        "Keep a full seam allowance beyond every point.",
        f"Sewn to its neighbours, the block measures {finished}.",
    )


def credit_line(name: str, author: str, licence: str, source: str) -> str:
    """Say who made a block, under which licence, and where it comes from."""
    parts = [f"“{name}”"]
    parts += [f"by {author}"] if author else []
    parts += [f"licence {licence}"] if licence else []
    parts += [source] if source else []
    return ", ".join(parts) + "."
