"""The cutting plan as one drawing: every fabric below the one before."""

from collections.abc import Iterator

from blocklang_drawing import Arrow, Dot, Drawing, Group, LineTo, Path, Place, Shape, Text, Theme, Trail, draw_swatch, theme_for, to_svg

from blocklang.hooks import OutputOptions
from blocklang.plan import SewingPlan
