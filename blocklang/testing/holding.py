"""How something that does not hold is told: as a failed assertion with a plain sentence."""


class NotHeldError(AssertionError):
    """Something that a plugin offers does not do what it should; the text says what, and for which block."""


def hold(condition: object, sentence: str) -> None:
    """Raise when a condition is not met."""
    if not condition:
        raise NotHeldError(sentence)
