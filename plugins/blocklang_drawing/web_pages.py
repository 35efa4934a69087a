"""Pages of HTML: set from the templates of a plugin, every text of a block escaped, and said in one language."""

from collections.abc import Callable
from functools import cache
from typing import TYPE_CHECKING, Any

from blocklang.wording import Language
from blocklang_drawing.keeping_together import kept_together
from blocklang_drawing.type_widths import clean_text

if TYPE_CHECKING:
    from jinja2 import Environment


@cache  # one process sets many pages, and compiling the templates takes longer than filling them
def pages_of(package: str, language: Language) -> "Environment":
    """Return what sets the pages of a plugin from its folder `templates`, by its name."""
    from jinja2 import Environment, PackageLoader, StrictUndefined

    return Environment(
        loader=PackageLoader(package),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        finalize=_finishing(language),
    )


def _finishing(language: Language) -> Callable[[Any], Any]:
    """Return what every value goes through on its way into a page."""
    one_thing = kept_together(language)

    def finished(value: Any) -> Any:
        """Return a text without what a page cannot hold; what is markup already stays as it is."""
        if not isinstance(value, str) or hasattr(value, "__html__"):
            return value
        return one_thing.sub("\N{NO-BREAK SPACE}", clean_text(language.say(value)))

    return finished
