"""Patches to what is cut: sizes that a ruler has, methods, strips, strip sets and yardage.

May import geometry, diagnostics, block, graph and assembly; nothing later on the route.
"""

from blocklang.cutting.buying import describe_need, describe_yards
from blocklang.cutting.equal_units import equal_units, with_offers
from blocklang.cutting.listing import cut
from blocklang.cutting.methods import METHODS, Claim, CuttingMethod
from blocklang.cutting.notes import describe_test_strip
from blocklang.cutting.offer_words import compare_work, describe_offer
from blocklang.cutting.offers import EqualUnits, Offer, StartPiece, UnitPatch, Work
from blocklang.cutting.one_way import FALLING, RISING
from blocklang.cutting.rounding import measure
from blocklang.cutting.sensitivity import Sensitivity, describe_sensitivity, sensitive_steps, sensitivities
from blocklang.cutting.template_values import Template, TemplatePlace, TemplateUse
from blocklang.cutting.templates import templates_of
from blocklang.cutting.values import (
    Cutting,
    CuttingOptions,
    FabricNeed,
    Lay,
    Measure,
    Piece,
    Rounding,
    Run,
    Strip,
    StripLayout,
    StripSet,
)
from blocklang.cutting.words import (
    describe_layout,
    describe_piece,
    describe_strip,
    describe_strip_set,
    format_measure,
    format_number,
)

__all__ = [
    "FALLING",
    "METHODS",
    "RISING",
    "Claim",
    "Cutting",
    "CuttingMethod",
    "CuttingOptions",
    "EqualUnits",
    "FabricNeed",
    "Lay",
    "Measure",
    "Offer",
    "Piece",
    "Rounding",
    "Run",
    "Sensitivity",
    "StartPiece",
    "Strip",
    "StripLayout",
    "StripSet",
    "Template",
    "TemplatePlace",
    "TemplateUse",
    "UnitPatch",
    "Work",
    "compare_work",
    "cut",
    "describe_layout",
    "describe_need",
    "describe_offer",
    "describe_piece",
    "describe_sensitivity",
    "describe_strip",
    "describe_strip_set",
    "describe_test_strip",
    "describe_yards",
    "equal_units",
    "format_measure",
    "format_number",
    "measure",
    "sensitive_steps",
    "sensitivities",
    "templates_of",
    "with_offers",
]
