"""The table of type widths, held against a wide face that many systems have: no text comes out wider than it says."""

from pathlib import Path

import pytest
from blocklang_drawing import text_width
from PIL import ImageFont

FACES = Path("/usr/share/fonts/truetype/dejavu")
#: What an alphabetical language of western Europe and our own sheets write.
CHARACTERS = [chr(code) for code in (*range(0x20, 0x7F), *range(0xA1, 0x180)) if code != 0xAD] + list("–—“”‘’…•×″′→←")


@pytest.mark.parametrize(("face", "bold"), [("DejaVuSans.ttf", False), ("DejaVuSans-Bold.ttf", True)])
def test_no_character_is_wider_than_the_table_says(face: str, bold: bool) -> None:
    if not (FACES / face).exists():
        pytest.skip("this machine has not got the face")
    font = ImageFont.truetype(FACES / face, 1000, layout_engine=ImageFont.Layout.BASIC)
    wider = {
        character: (text_width(character, 1000, bold), font.getlength(character))
        for character in CHARACTERS
        if font.getlength(character) > text_width(character, 1000, bold) + 1
    }
    assert wider == {}
