"""The output `templates`: every shape that is cut round a template, at full size, with a square to measure first."""

from blocklang.hooks import CannotMakeError, Output, OutputFile, OutputOptions, Setting, hookimpl
from blocklang.plan import SewingPlan

WHICH, NEEDED, ALL = "which", "needed", "all"
WINDOW, YES, NO = "window", "yes", "no"


@hookimpl
def blocklang_outputs() -> tuple[Output, ...]:
    """Offer the templates."""
    return (
        Output(
            name="templates",
            formats=("pdf", "svg"),
            default_format="pdf",
            summary="Templates at full size: cutting and sewing lines, straight grain, dots to match, how many to cut.",
            make=make_templates,
            settings=(
                Setting(WHICH, "Only the templates that no ruler replaces, or those of all patches.", (NEEDED, ALL)),
                Setting(WINDOW, "A window as large as the finished patch, to choose a motif through.", (NO, YES)),
            ),
        ),
    )


def make_templates(plan: SewingPlan, options: OutputOptions) -> tuple[OutputFile, ...]:
    """Return the pages."""
    from blocklang_drawing import write_pages

    from blocklang_templates.choosing import choose_templates
    from blocklang_templates.pages import draw_pages
    from blocklang_templates.words import NO_TEMPLATES

    chosen = choose_templates(plan, everything=options.setting(WHICH, NEEDED) == ALL)
    if not chosen:
        raise CannotMakeError(NO_TEMPLATES)
    return write_pages(draw_pages(plan, chosen, options, window=options.setting(WINDOW, NO) == YES), options)
