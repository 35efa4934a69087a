"""The page of one block."""

from blocklang_drawing import say_measure

from blocklang.block import Credit
from blocklang.catalogue.facts import Facts
from blocklang.catalogue.working_out import facts_of
from blocklang.hooks import BlockAtHand, OutputFile, OutputOptions, Share
from blocklang.plan import SewingPlan
from blocklang_gallery import words
from blocklang_gallery.asking import Choices
from blocklang_gallery.cards import Card
from blocklang_gallery.naming import file_stem, keeping_name
from blocklang_gallery.page_setting import set_page
from blocklang_gallery.pictures import draw_cloth, draw_for_page
from blocklang_gallery.sizes import say_size, tell_sizes
from blocklang_gallery.taking import Taken, take_all

FOLDER = "blocks"
#: How large the block is drawn on its page and on its card, across and down (points).
ON_PAGE, ON_CARD = 380.0, 150.0


def make_page(block: BlockAtHand, options: OutputOptions, choices: Choices) -> Share | None:
    """Return the page of a block, its files and its card."""
    plan = block.plan()
    if plan is None:
        return None
    stem = file_stem(block.name)
    page, facts = f"{FOLDER}/{stem}.html", facts_of(plan.assembly)
    taken = take_all(block, plan, options, f"{FOLDER}/{stem}", choices.with_sheets)
    written = _write(block, plan, facts, taken, options, choices)
    card = Card(
        page, draw_for_page(plan.block, options, ON_CARD), facts, say_size(plan.block.size, facts.shape, options.unit)
    )
    return Share((OutputFile(page, written.encode()), *(one.file for one in taken)), card)


def _write(
    block: BlockAtHand,
    plan: SewingPlan,
    facts: Facts,
    taken: tuple[Taken, ...],
    options: OutputOptions,
    choices: Choices,
) -> str:
    stem, drawn = file_stem(block.name), plan.block
    return set_page(
        "block.html.j2",
        "colours.js",
        options,
        words=words.PAGE,
        role=words.role,
        gallery=choices.title,
        stem=stem,
        command=_command(stem, options),
        keeps=keeping_name(stem, drawn),
        block=drawn,
        byline=words.byline(drawn.credits[0]) if drawn.credits else "",
        family=words.family_title(drawn.family) if drawn.family else "",
        size=say_size(drawn.size, facts.shape, options.unit),
        picture=draw_for_page(drawn, options, ON_PAGE),
        swatches=tuple(draw_cloth(drawn, fabric, options) for fabric in drawn.fabrics),
        can_recolour=not options.black_and_white,
        glance=words.glance(facts, say_measure(facts.smallest, options.unit)),
        taken=taken,
        told=tell_sizes(block, plan, choices.sizes, options.unit),
        credits=tuple(words.credit_line(credit) for credit in _telling(drawn.credits)),
    )


def _command(stem: str, options: OutputOptions) -> str:
    """Return the command that makes the sewing sheet of the block file, to which colours, a size and a path are added."""
    language = options.language.code
    return f"blocklang make sewing-sheet {stem}.block" + ("" if language == "en" else f" --language {language}")


def _telling(given: tuple[Credit, ...]) -> tuple[Credit, ...]:
    """Return the credits that say something, each once."""
    return tuple(dict.fromkeys(credit for credit in given if credit.author or credit.licence or credit.source))
