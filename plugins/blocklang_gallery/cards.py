"""What the first page knows of a block."""

import unicodedata
from dataclasses import dataclass

from blocklang.catalogue.facts import Facts


@dataclass(frozen=True, slots=True)
class Card:
    """A block on the first page: its page, its picture as SVG, facts about it, and its finished size in words."""

    page: str
    picture: str
    facts: Facts
    size: str

    @property
    def words(self) -> str:
        """The words it is found by, in lower case and without accents, as the page's script makes those typed."""
        facts = self.facts
        told = f"{facts.title} {facts.family.replace('-', ' ')} {facts.author} {facts.difficulty} {facts.shape}"
        plain = "".join(sign for sign in unicodedata.normalize("NFD", told) if unicodedata.category(sign) != "Mn")
        return plain.lower()
