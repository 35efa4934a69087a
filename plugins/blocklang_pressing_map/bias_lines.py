"""What the map says about edges on the bias."""

from blocklang.bias import find_bias
from blocklang.plan import SewingPlan
from blocklang_pressing_map import words


def bias_lines(plan: SewingPlan) -> tuple[str, ...]:
    """Return a sentence or two for each kind of patch with edges on the bias, the outside of the block first."""
    found = find_bias(plan.graph, plan.cutting).warnings
    return tuple(warning.sentence for warning in found) or (words.NO_BIAS,)
