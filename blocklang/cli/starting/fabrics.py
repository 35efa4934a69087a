"""The fabrics of a new block: our own palette, and what a person writes about one."""

from dataclasses import dataclass

VALUES = ("light", "medium", "dark")


@dataclass(frozen=True, slots=True)
class Cloth:
    """A fabric as a file writes it; `role` is "" while the design decides what the fabric is for."""

    name: str
    role: str
    value: str
    colour: str

    def line(self, role: str) -> str:
        """Return the line of the file; `role` counts where the person gave none."""
        return f"fabric {self.name} {self.role or role} {self.value} {self.colour}"


#: Coast, harbour and marsh; the first four are what a design has when nothing is said.
PALETTE = (
    Cloth("fog", "", "light", "#e8eef2"),
    Cloth("deep", "", "dark", "#1f3a5f"),
    Cloth("coral", "", "medium", "#d9643a"),
    Cloth("reed", "", "medium", "#6b8f71"),
    Cloth("sand", "", "light", "#efe6d2"),
    Cloth("straw", "", "light", "#e3d5b0"),
    Cloth("tide", "", "medium", "#4d8296"),
    Cloth("heather", "", "medium", "#9a7aa0"),
    Cloth("kelp", "", "dark", "#2f4a3c"),
    Cloth("peat", "", "dark", "#3d2f2a"),
)
_BY_NAME = {cloth.name: cloth for cloth in PALETTE}


def read_cloth(text: str) -> Cloth | str:
    """Return the fabric that a person wrote as NAME [ROLE] [VALUE] [#COLOUR], or one sentence that says what is wrong.

    What is left out comes from the palette; a name that is not in it needs a colour, and the value follows from that.
    """
    words = text.split()
    if not words:
        return "Write the name of a fabric, such as `fog`."
    name, rest = words[0], words[1:]
    colours = [word for word in rest if word.startswith("#")]
    values = [word for word in rest if word in VALUES]
    roles = [word for word in rest if word not in colours and word not in values]
    for several, what in ((colours, "colours"), (values, "values"), (roles, "roles")):
        if len(several) > 1:
            return f"`{text}` has two {what}; write it like `fog background light #e8eef2`."
    known = _BY_NAME.get(name)
    if known is None and not colours:
        return f"`{name}` is not in the palette: give its colour too, such as `{name} #1f3a5f`."
    colour = colours[0] if colours else known.colour if known else ""
    value = values[0] if values else known.value if known and not colours else value_of(colour)
    return Cloth(name, roles[0] if roles else "", value, colour)


def value_of(colour: str) -> str:
    """Return how light a colour is beside others; medium where the text is no colour, which the language says better."""
    digits = colour.removeprefix("#")
    digits = "".join(digit * 2 for digit in digits) if len(digits) == 3 else digits
    try:
        channels = [int(digits[at : at + 2], 16) for at in (0, 2, 4)]
    except ValueError:
        return "medium"
    red, green, blue = channels
    brightness = (299 * red + 587 * green + 114 * blue) // 1000  # luma of ITU-R BT.601, good enough to sort by
    return "light" if brightness > 180 else "dark" if brightness < 90 else "medium"
