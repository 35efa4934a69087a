"""The output `cutting-plan`: how the strips and sub-cuts of every fabric lie on the cloth, to scale."""

from blocklang.hooks import Output, OutputFile, OutputOptions, Setting, hookimpl
from blocklang.plan import SewingPlan
from blocklang_cutting_plan.choices import CHOICES


@hookimpl
def blocklang_outputs() -> tuple[Output, ...]:
    """Offer the plan."""
    return (
        Output(
            name="cutting-plan",
            formats=("pdf", "svg", "text"),
            default_format="pdf",
            summary="How to lay out and cut each fabric: strips and sub-cuts to scale, what to buy, what is left.",
            make=make_cutting_plan,
            settings=tuple(Setting(name, summary, choices) for name, summary, choices in CHOICES),
        ),
    )


def make_cutting_plan(plan: SewingPlan, options: OutputOptions) -> tuple[OutputFile, ...]:
    """Return the plan as one file."""
    if options.format == "text":
        from blocklang_cutting_plan.as_text import write_text

        return (OutputFile("", write_text(plan, options).encode()),)
    if options.format == "svg":
        from blocklang_cutting_plan.as_svg import write_svg

        return (OutputFile("", write_svg(plan, options).encode()),)
    from blocklang_cutting_plan.as_pdf import write_pdf

    return (OutputFile("", write_pdf(plan, options)),)
