"""The languages that sheets can be made in, and saying sentences in one of them."""

import re
from dataclasses import dataclass, fields, is_dataclass, replace
from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING, Any, Final, TypeVar

from blocklang.wording.sayings import SEAM, LookUp, Message, Saying, message

if TYPE_CHECKING:
    from gettext import NullTranslations

Value = TypeVar("Value")

#: Pairs such as "de el=del", with bars between them; three dots stand for the rest of a word: "y i...=e i...". They
#: hold where a part of a sentence begins, and never inside what an author wrote.
_RUN_TOGETHER: Final = message("-", context="what runs together")


@dataclass(frozen=True, slots=True)
class Language:
    """A language by its code; `look_up` returns the text of a message in it, None for English, which needs none."""

    code: str
    look_up: LookUp | None = None

    def say(self, text: str) -> str:
        """Return a saying in this language, any other text as it is."""
        if self.look_up is None or not isinstance(text, Saying):
            return text
        return _run_together(text.said(self.look_up), self.look_up(_RUN_TOGETHER, None)).replace(SEAM, "")

    def tell(self, value: Value) -> Value:
        """Return a value with every saying in it said in this language, through dataclasses, tuples, lists and dicts."""
        told: Value = value if self.look_up is None else self._told(value)
        return told

    def _told(self, value: Any) -> Any:
        if isinstance(value, str):
            return self.say(value)
        if isinstance(value, dict):
            return {key: self._told(inner) for key, inner in value.items()}
        if isinstance(value, list):
            return [self._told(inner) for inner in value]
        if isinstance(value, tuple):
            told = tuple(map(self._told, value))
            if all(new is old for new, old in zip(told, value, strict=True)):
                return value
            return type(value)(*told) if hasattr(value, "_fields") else told
        if is_dataclass(value) and not isinstance(value, type):
            return self._told_again(value)
        return value

    def _told_again(self, value: Any) -> Any:
        old = {field.name: getattr(value, field.name) for field in fields(value) if field.init}
        new = {name: self._told(inner) for name, inner in old.items()}
        return replace(value, **new) if any(new[name] is not old[name] for name in old) else value


ENGLISH: Final = Language("en")


def find_language(code: str) -> Language | None:
    """Return the language of a code, None when there is no catalogue of it."""
    if code == ENGLISH.code:
        return ENGLISH
    return _language(code) if code in languages() else None


def languages() -> tuple[str, ...]:
    """Return the codes of all languages there are catalogues of, English first."""
    return (ENGLISH.code, *sorted(path.stem for path in Path(message("").home).glob("*.mo")))


@cache
def _language(code: str) -> Language:
    return Language(code, _look_up_in(code))


def _look_up_in(code: str) -> LookUp:
    @cache
    def look_up(wanted: Message, count: int | None) -> str:
        catalogue = _catalogue(wanted.home, code)
        if count is None:
            return catalogue.pgettext(wanted.context, wanted.text) if wanted.context else catalogue.gettext(wanted.text)
        if wanted.context:
            return catalogue.npgettext(wanted.context, wanted.text, wanted.plural, count)
        return catalogue.ngettext(wanted.text, wanted.plural, count)

    return look_up


@cache
def _catalogue(home: str, code: str) -> "NullTranslations":
    """Return a catalogue, an empty one (which says all in English) where there is none."""
    from gettext import GNUTranslations, NullTranslations

    path = Path(home) / f"{code}.mo"
    if not path.is_file():
        return NullTranslations()
    with path.open("rb") as file:
        return GNUTranslations(file)


def _run_together(text: str, rules: str) -> str:
    for found, put in _rules(rules):
        text = found.sub(put, text)
    return text


@cache
def _rules(text: str) -> tuple[tuple[re.Pattern[str], str], ...]:
    pairs = (rule.split("=") for rule in text.split("|") if "=" in rule)
    return tuple((_pattern(found), put.removesuffix("...")) for found, put in pairs)


def _pattern(text: str) -> re.Pattern[str]:
    end = "" if text.endswith("...") else r"\b"
    words = map(re.escape, text.removesuffix("...").split(" "))
    return re.compile(rf"\b{f' {SEAM}+'.join(words)}{end}")
