"""The output `thread`: how many stitches a block takes and about how much thread, step by step."""

from blocklang.hooks import CannotMakeError, Output, OutputFile, OutputOptions, Setting, hookimpl
from blocklang.plan import SewingPlan

STITCH = Setting("stitch-length", "How long a stitch is, in millimetres: 2 when nothing is said.")
FACTOR = Setting("thread-factor", "Thread for an inch of seam, needle and bobbin together: 3 when nothing is said.")
STITCHES, FACTORS = (0.5, 6.0), (2.0, 6.0)  # the least and the greatest


@hookimpl
def blocklang_outputs() -> tuple[Output, ...]:
    """Offer the estimate."""
    return (
        Output(
            name="thread",
            formats=("text", "csv", "json"),
            default_format="text",
            summary="About how many stitches and how much thread, step by step: an estimate.",
            make=make_thread,
            settings=(STITCH, FACTOR),
        ),
    )


def make_thread(plan: SewingPlan, options: OutputOptions) -> tuple[OutputFile, ...]:
    """Return the estimate as one file."""
    from blocklang_thread import as_csv, as_json, as_text
    from blocklang_thread.estimating import Sewing, estimate

    stitch = _number(options, STITCH, "2", STITCHES, "--set stitch-length=2.2")
    factor = _number(options, FACTOR, "3", FACTORS, "--set thread-factor=2.5")
    found = estimate(plan, Sewing(stitch, factor), options.copies)
    write = {"csv": as_csv.write_csv, "json": as_json.write_json}.get(options.format, as_text.write_text)
    return (OutputFile("", write(plan, found, options).encode()),)


def _number(options: OutputOptions, setting: Setting, usual: str, bounds: tuple[float, float], example: str) -> float:
    """Read a setting; whatever is not a plain number within its bounds is refused."""
    text = options.setting(setting.name, usual).strip().removesuffix("mm").rstrip()
    plain = len(text) <= 6 and text.isascii() and text.replace(".", "", 1).isdigit()
    least, greatest = bounds
    if not plain or not least <= float(text) <= greatest:
        raise CannotMakeError(f"Write a number from {least:g} to {greatest:g}, such as {example}.")
    return float(text)
