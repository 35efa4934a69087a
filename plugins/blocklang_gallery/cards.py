"""What the first page knows of a block."""

import unicodedata
from dataclasses import dataclass

from blocklang.catalogue.facts import Facts
from blocklang.wording import Language
from blocklang_gallery import words


@dataclass(frozen=True, slots=True)
class Card:
    """A block on the first page: its page, its picture as SVG, facts about it, and its finished size in words."""

    page: str
    picture: str
    facts: Facts
    size: str

    def words_in(self, language: Language) -> str:
        """Return what it is found by, in lower case and without accents, as the page's script makes what is typed."""
        facts, hard = self.facts, language.say(words.difficulty(self.facts.difficulty))
        family = language.say(words.family_title(self.facts.family)) if self.facts.family else ""
        told = f"{facts.title} {family} {facts.author} {hard} {facts.shape}"
        plain = "".join(sign for sign in unicodedata.normalize("NFD", told) if unicodedata.category(sign) != "Mn")
        return plain.lower()
