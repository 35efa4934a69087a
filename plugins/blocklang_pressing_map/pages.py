"""The pages of the map: the whole back with its key, enlarged parts where it is fine, and what is on the bias."""

from blocklang_drawing import Drawing, Section, Theme, Written, draw_pressing_map, lies_of, theme_for, write_page

from blocklang.hooks import OutputOptions
from blocklang.plan import SewingPlan
from blocklang_pressing_map import words
from blocklang_pressing_map.bias_lines import bias_lines
from blocklang_pressing_map.close_ups import part_of, parts_each_way
from blocklang_pressing_map.key import key_of


def draw_pages(plan: SewingPlan, options: OutputOptions) -> tuple[Drawing, ...]:
    """Return the pages, as large as the paper."""
    theme = theme_for(plan.block.fabrics, options.black_and_white)
    parts = parts_each_way(_allowance(plan, theme))
    made = [_overview(plan, theme, options, parts > 1)]
    for row in range(parts if parts > 1 else 0):
        made.extend(_part(plan, theme, row, column, parts) for column in range(parts))
    return tuple(
        page for each in made for page in write_page(each, options.paper, theme, large_print=options.large_print)
    )


def _allowance(plan: SewingPlan, theme: Theme) -> float:
    """Return how wide an allowance comes out on a page, in points."""
    whole = draw_pressing_map(plan, theme, width=520.0, height=450.0)
    wide, high = plan.block.size
    more = 2 * plan.block.seam_allowance
    return plan.block.seam_allowance * min(whole.width / (wide + more), whole.height / (high + more))


def _overview(plan: SewingPlan, theme: Theme, options: OutputOptions, enlarged: bool) -> Written:
    pressing = plan.pressing
    side = words.WRONG_SIDE_GREY if options.black_and_white else words.WRONG_SIDE
    return Written(
        plan.block.name,
        words.SUBJECT,
        (
            f"{words.BACK} {side}" + (f" {words.ENLARGED}" if enlarged else ""),
            words.locks(len(pressing.lockable), len(pressing.locked), len(lies_of(plan).spun)),
        ),
        lambda width, height: draw_pressing_map(plan, theme, width=width, height=height),
        key_of(plan, theme),
        (Section(words.BIAS, bias_lines(plan)),),
    )


def _part(plan: SewingPlan, theme: Theme, row: int, column: int, count: int) -> Written:
    def draw(width: float, height: float) -> Drawing:
        whole = draw_pressing_map(plan, theme, width=width * count, height=height * count)
        return part_of(whole, row, column, count)

    return Written(plan.block.name, words.part(row, column, count), (words.BACK,), draw)
