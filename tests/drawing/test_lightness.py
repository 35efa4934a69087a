"""Luminance and lightness of colours, held against a library of colour science."""

import pytest
from blocklang_drawing.textures import LOOKS, lightness, luminance
from coloraide import Color

COLOURS = ("#000000", "#ffffff", "#1f3a5f", "#d9643a", "#e8eef2", "#6b8f71", "#0a0a0a", "#010203", "#7f7f7f", "#ff0000")


@pytest.mark.parametrize("colour", COLOURS)
def test_luminance_is_that_of_wcag(colour: str) -> None:
    assert luminance(colour) == pytest.approx(Color(colour).luminance(), abs=2e-4)


@pytest.mark.parametrize("colour", COLOURS)
def test_lightness_is_that_of_cie(colour: str) -> None:
    assert lightness(luminance(colour)) == pytest.approx(Color(colour).convert("lab-d65")["l"], abs=0.05)


def test_looks_without_colour_grow_darker_step_by_step() -> None:
    tones = [Color(look.tone).convert("lab-d65")["l"] for look in LOOKS]
    assert all(light > dark for light, dark in zip(tones, tones[1:], strict=False))


def test_black_and_white_contrast_equally_where_ink_changes() -> None:
    from blocklang_drawing.theme import EVEN

    white, black = 1.05 / (EVEN + 0.05), (EVEN + 0.05) / 0.05  # WCAG 2.2, contrast ratio
    assert white == pytest.approx(black, rel=0.02)
