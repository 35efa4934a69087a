"""The pages of the map: the whole back with its key, enlarged parts where it is fine, and what is on the bias."""

from functools import lru_cache

from blocklang_drawing import (
    Drawing,
    Section,
    Theme,
    Written,
    draw_pressing_map,
    fold_back_of,
    lies_of,
    theme_for,
    write_all,
)

from blocklang.hooks import OutputOptions
from blocklang.plan import SewingPlan
from blocklang.wording import joined
from blocklang_pressing_map import words
from blocklang_pressing_map.bias_lines import bias_lines
from blocklang_pressing_map.close_ups import part_of, parts_each_way
from blocklang_pressing_map.key import key_of


class Back:
    """The back of one block, folded once and drawn in any size."""

    def __init__(self, plan: SewingPlan, theme: Theme) -> None:
        """Fold the block."""
        folded = fold_back_of(plan)

        @lru_cache(maxsize=2)
        def draw(width: float, height: float) -> Drawing:
            return draw_pressing_map(plan, theme, width=width, height=height, folded=folded)

        self.plan, self.draw = plan, draw

    @property
    def allowance(self) -> float:
        """How wide an allowance comes out on a page, in points."""
        whole, (wide, high) = self.draw(520.0, 450.0), self.plan.block.size
        more = 2 * self.plan.block.seam_allowance
        return self.plan.block.seam_allowance * min(whole.width / (wide + more), whole.height / (high + more))


def draw_pages(plan: SewingPlan, options: OutputOptions) -> tuple[Drawing, ...]:
    """Return the pages, as large as the paper."""
    theme = theme_for(plan.block.fabrics, options.black_and_white, options.language)
    back = Back(plan, theme)
    parts = parts_each_way(back.allowance)
    made = [_overview(back, theme, options, parts > 1)]
    for row in range(parts if parts > 1 else 0):
        made.extend(_part(back, row, column, parts) for column in range(parts))
    return write_all(made, options.paper, theme, large_print=options.large_print)


def _overview(back: Back, theme: Theme, options: OutputOptions, enlarged: bool) -> Written:
    plan, pressing = back.plan, back.plan.pressing
    side = words.WRONG_SIDE_GREY if options.black_and_white else words.WRONG_SIDE
    return Written(
        plan.block.name,
        words.SUBJECT,
        (
            joined((words.BACK, side, *((words.ENLARGED,) if enlarged else ()))),
            words.locks(len(pressing.lockable), len(pressing.locked), len(lies_of(plan).spun)),
        ),
        back.draw,
        key_of(plan, theme),
        (Section(words.BIAS, bias_lines(plan)),),
    )


def _part(back: Back, row: int, column: int, count: int) -> Written:
    def draw(width: float, height: float) -> Drawing:
        return part_of(back.draw(width * count, height * count), row, column, count)

    return Written(back.plan.block.name, words.part(row, column, count), (words.BACK,), draw)
