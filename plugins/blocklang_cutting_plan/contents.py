"""The cutting plan as words, fabric by fabric: what the formats have in common."""

from dataclasses import dataclass

from blocklang_drawing import say_role

from blocklang.block import LengthUnit
from blocklang.cloth import ClothOptions, ClothPlan, CutStock, FabricPlan, PlannedStrip, plan_cloth
from blocklang.cutting import describe_piece, format_measure
from blocklang.hooks import OutputOptions
from blocklang.plan import SewingPlan
from blocklang_cutting_plan import stock_words, words
from blocklang_cutting_plan.choices import STOCK, Chosen
from blocklang_cutting_plan.stock_setting import read_stock


@dataclass(frozen=True, slots=True)
class StripWords:
    """Strips that are cut alike: which ones, how many, how wide, and what is cut from each."""

    numbers: str
    wide: str
    cuts: tuple[str, ...]
    left: str


@dataclass(frozen=True, slots=True)
class StockWords:
    """Pieces of stock that are cut alike: which ones, how large, and the strips that are cut from each."""

    numbers: str
    size: str
    strips: tuple[StripWords, ...]
    below: str


@dataclass(frozen=True, slots=True)
class FabricWords:
    """One fabric; `letters` pairs the letter of a piece with its sentence."""

    id: str
    title: str
    role: str
    buy: str
    and_buy: str
    facts: tuple[str, ...]
    letters: tuple[tuple[str, str], ...]
    stock: tuple[StockWords, ...]
    strips: tuple[StripWords, ...]


@dataclass(frozen=True, slots=True)
class Headings:
    """What stands above the parts."""

    title: str = words.TITLE
    pieces: str = words.PIECES
    strips: str = words.STRIPS
    stock: str = words.STOCK
    notes: str = words.NOTES
    whole: str = words.WHOLE


@dataclass(frozen=True, slots=True)
class PlanWords:
    """The whole plan in words."""

    name: str
    headings: Headings
    made_for: str
    reading: tuple[str, ...]
    fabrics: tuple[FabricWords, ...]
    notes: tuple[str, ...]


def cloth_of(plan: SewingPlan, options: OutputOptions) -> ClothPlan:
    """Return the cutting plan of a sewing plan, as it was asked for."""
    chosen = Chosen(options)
    shrinkage = chosen.shrinkage or plan.cutting.options.shrinkage
    usable = plan.cutting.options.usable_width
    stock = read_stock(options.setting(STOCK), plan.block.fabrics, usable)
    wishes = ClothOptions(shrinkage, chosen.reserve, chosen.turning, stock)
    return plan_cloth(plan.block, plan.cutting, wishes)


def write_words(plan: SewingPlan, cloth: ClothPlan, options: OutputOptions) -> PlanWords:
    """Return the plan in words, in the language that is asked for."""
    unit, cutting = options.unit, plan.cutting
    too_large = (cutting.pieces[index] for index in cloth.too_large)
    said = PlanWords(
        plan.block.name,
        Headings(),
        words.for_copies(cutting.options.copies, format_measure(cutting.options.usable_width, unit)),
        words.READING,
        tuple(_fabric(plan, cloth, fabric, unit) for fabric in cloth.fabrics),
        (
            *(words.too_large(piece.name, piece.fabric) for piece in too_large),
            *((stock_words.HOW_IT_LIES,) if any(fabric.cut_stock for fabric in cloth.fabrics) else ()),
            words.added(cloth.options, unit),
            words.BLADE,
        ),
    )
    return options.language.tell(said)


def letters_of(fabric: FabricPlan) -> dict[int, str]:
    """Return the letter of each piece that is cut from a fabric, in the order of the cutting list."""
    from_stock = (strip for piece in fabric.cut_stock for strip in piece.strips)
    pieces = sorted({cut.piece for strip in (*fabric.strips, *from_stock) for cut in strip.cuts})
    return {piece: _letter(place) for place, piece in enumerate(pieces)}


def _letter(place: int) -> str:
    before, last = divmod(place, 26)
    return (_letter(before - 1) if before else "") + chr(ord("A") + last)


def _fabric(plan: SewingPlan, cloth: ClothPlan, fabric: FabricPlan, unit: LengthUnit) -> FabricWords:
    drawn = plan.block.fabric(fabric.fabric)
    letters = letters_of(fabric)
    pieces = cloth.cutting.pieces
    return FabricWords(
        id=drawn.id,
        title=drawn.title or drawn.id,
        role=say_role(drawn),
        buy=words.buy(fabric, unit),
        and_buy=words.and_buy(fabric, unit),
        facts=(*stock_words.facts(fabric, unit), *(_yardage_facts(fabric, unit) if fabric.strips else ())),
        letters=tuple(
            (letter, words.letter(pieces[i].name, describe_piece(pieces[i], unit))) for i, letter in letters.items()
        ),
        stock=tuple(_stock(cloth, piece, letters, unit) for piece in fabric.cut_stock),
        strips=tuple(_strip(cloth, strip, letters, unit) for strip in fabric.strips),
    )


def _yardage_facts(fabric: FabricPlan, unit: LengthUnit) -> tuple[str, ...]:
    return words.length(fabric, unit), words.proof(fabric, unit), words.area(fabric, unit)


def _stock(cloth: ClothPlan, cut: CutStock, letters: dict[int, str], unit: LengthUnit) -> StockWords:
    return StockWords(
        stock_words.numbers(cut),
        stock_words.size(cut.stock, unit),
        tuple(_strip(cloth, strip, letters, unit) for strip in cut.strips),
        words.below(words.left_over(cut.left, unit)),
    )


def _strip(cloth: ClothPlan, strip: PlannedStrip, letters: dict[int, str], unit: LengthUnit) -> StripWords:
    if strip.strip_set is not None:
        number = strip.strip_set + 1 if len(cloth.cutting.strip_sets) > 1 else 0
        return StripWords(words.numbers(strip), words.wide(strip, unit), (words.whole(strip.count, number),), "")
    cuts = tuple(words.cut(cloth.cutting.pieces[cut.piece], cut, strip, letters[cut.piece], unit) for cut in strip.cuts)
    return StripWords(words.numbers(strip), words.wide(strip, unit), cuts, words.left_over(strip.offcut, unit))
