"""The page on which blocks are found."""

from collections import Counter

from blocklang.hooks import OutputOptions
from blocklang_gallery import words
from blocklang_gallery.asking import Choices
from blocklang_gallery.cards import Card
from blocklang_gallery.filters import family_order, filters_for
from blocklang_gallery.page_setting import set_page


def write_first_page(cards: tuple[Card, ...], options: OutputOptions, choices: Choices) -> str:
    """Return the page: a card for each block, family by family, in the order of their titles."""
    facts = tuple(card.facts for card in cards)
    filters = filters_for(facts, options.unit)
    return set_page(
        "first.html.j2",
        "finding.js",
        options,
        words=words.FIRST,
        title=choices.title,
        count=words.blocks(len(cards)),
        filters=tuple((one, one.among(facts)) for one in filters),
        families=_families(cards),
        family_title=words.family_title,
        on_card=words.on_card,
        found_by=lambda card: card.words_in(options.language),
        credits=_credits(cards),
    )


def _families(cards: tuple[Card, ...]) -> tuple[tuple[str, tuple[Card, ...]], ...]:
    found: dict[str, list[Card]] = {}
    for card in sorted(cards, key=lambda card: (card.facts.title.casefold(), card.page)):
        found.setdefault(card.facts.family, []).append(card)
    return tuple((family, tuple(found[family])) for family in sorted(found, key=family_order))


def _credits(cards: tuple[Card, ...]) -> tuple[str, ...]:
    """Say how many blocks are by whom, under which licence: the most first."""
    counted = Counter((card.facts.author, card.facts.licence) for card in cards)
    ordered = sorted(counted.items(), key=lambda entry: (-entry[1], entry[0]))
    return tuple(words.made_by(author, licence, count) for (author, licence), count in ordered)
