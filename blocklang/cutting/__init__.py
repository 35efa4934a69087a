"""Patches to what is cut: sizes that a ruler has, methods, strips, strip sets and yardage.

May import geometry, diagnostics, block and graph; nothing later on the route.
"""

from blocklang.cutting.listing import cut
from blocklang.cutting.methods import METHODS, Claim, CuttingMethod
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
from blocklang.cutting.words import describe_layout, describe_piece, describe_strip, describe_strip_set, format_measure

__all__ = [
    "METHODS",
    "Claim",
    "Cutting",
    "CuttingMethod",
    "CuttingOptions",
    "FabricNeed",
    "Lay",
    "Measure",
    "Piece",
    "Rounding",
    "Run",
    "Strip",
    "StripLayout",
    "StripSet",
    "Template",
    "TemplatePlace",
    "TemplateUse",
    "cut",
    "describe_layout",
    "describe_piece",
    "describe_strip",
    "describe_strip_set",
    "format_measure",
    "templates_of",
]
