"""Work out the arithmetic of a file."""

from fractions import Fraction

from blocklang.language.quantities import (
    INCHES,
    Exact,
    Quantity,
    Trouble,
    add,
    bounded,
    divide,
    magnitude,
    multiply,
    read_number,
    square_root,
    turned,
)
from blocklang.language.scope import Scope
from blocklang.language.syntax import Expression, Number, Operation, Word
from blocklang.limits import DEEPEST_ARITHMETIC, LARGEST_LENGTH

TITLE = "This cannot be worked out"


def work_out(scope: Scope, expression: Expression) -> Quantity | None:
    """Return the value of some arithmetic; None when a mistake in it has been reported."""
    if isinstance(expression, Operation):
        if expression.depth > DEEPEST_ARITHMETIC:
            found = f"This has more than {DEEPEST_ARITHMETIC} steps one inside the other."
            advice = "Split it over several `let` lines."
            scope.draft.error("too-deep", TITLE, found, advice, expression[-2:])
            return None
        return _operation(scope, expression)
    if isinstance(expression, Number):
        return _number(scope, expression)
    return _variable(scope, expression)


def _number(scope: Scope, number: Number) -> Quantity | None:
    value = read_number(number.text)
    if value is not None:
        return Quantity(value)
    scope.draft.error(
        "division-by-zero", TITLE, "This divides by zero.", "Check the number below the line.", number[1:]
    )
    return None


def _variable(scope: Scope, word: Word) -> Quantity | None:
    for outer in scope.chain():
        if word.text in outer.values:
            return outer.values[word.text]
    from blocklang.language.scope import FIXED_POINTS
    from blocklang.language.suggesting import did_you_mean

    if word.text in FIXED_POINTS or any(word.text in outer.points for outer in scope.chain()):
        found = f"`{word.text}` is a point, and here a length, a number or an angle is needed."
        scope.draft.error("point-as-value", TITLE, found, "", word[1:])
        return None
    known = [*(name for outer in scope.chain() for name in outer.values), "size", "width", "height"]
    parts = word.text.split("-")
    spaced = " - ".join(parts) if len(parts) > 1 and all(part in known for part in parts) else ""
    advice = f"To take one from the other write `{spaced}`." if spaced else ""
    advice = advice or did_you_mean(word.text, known, "Give it a value with a `let` line.")
    found = f"Nothing is called `{word.text}`."
    scope.draft.error("unknown-value", "This name has no value", found, advice, word[1:])
    return None


def _operation(scope: Scope, operation: Operation) -> Quantity | None:
    parts = [work_out(scope, part) for part in operation.parts]
    known = [part for part in parts if part is not None]
    if len(known) < len(parts):
        return None
    result = _combined(scope, operation.verb, known)
    if isinstance(result, Trouble):
        scope.draft.error(result.code, TITLE, result.found, result.advice, operation[-2:])
        return None
    return result


def _combined(scope: Scope, verb: str, parts: list[Quantity]) -> Quantity | Trouble:
    if verb in "+-":
        return add(parts[0], parts[1], 1 if verb == "+" else -1, scope.draft.inches)
    if verb == "*":
        return multiply(parts[0], parts[1])
    if verb == "/":
        return divide(parts[0], parts[1])
    if verb == "width":
        return scope.draft.width
    if verb == "height":
        return scope.draft.height
    return _on_one(verb, parts[0])


def _on_one(verb: str, part: Quantity) -> Quantity | Trouble:
    if verb == "negative":
        return Quantity(-part.value, part.lengths, part.angles)
    if verb == "sqrt":
        return square_root(part)
    if verb in ("sin", "cos", "tan"):
        return turned(verb, part)
    if part[1:] != (0, 0):
        return Trouble("mixed-kinds", f"This is {part.kind} already and gets another unit.", f"Leave `{verb}` out.")
    return bounded(Quantity(part.value, 0, 1) if verb == "deg" else Quantity(part.value * INCHES[verb], 1))


def length(scope: Scope, expression: Expression) -> Exact | None:
    """Return a length in inches; a bare number is in the file's unit."""
    quantity = work_out(scope, expression)
    if quantity is None:
        return None
    inches = quantity.value * scope.draft.inches if quantity.kind == "a number" else quantity.value
    if quantity.kind not in ("a number", "a length"):
        _wrong_kind(scope, expression, quantity, "a length", "Write it like `3 1/2 in`.")
        return None
    if magnitude(inches) > LARGEST_LENGTH:
        found = f"This is {float(inches):,.0f} in, and nothing is longer than {LARGEST_LENGTH:,} in."
        scope.draft.error("length-too-large", "This is too long", found, "", expression[-2:])
        return None
    return inches


def angle(scope: Scope, expression: Expression) -> Exact | None:
    """Return an angle in degrees; a bare number is in degrees too."""
    quantity = work_out(scope, expression)
    if quantity is None or quantity.kind in ("an angle", "a number"):
        return quantity and quantity.value
    _wrong_kind(scope, expression, quantity, "an angle", "Write it like `45 deg`.")
    return None


def share(scope: Scope, expression: Expression) -> Exact | None:
    """Return a plain number."""
    quantity = work_out(scope, expression)
    if quantity is None or quantity.kind == "a number":
        return quantity and quantity.value
    _wrong_kind(scope, expression, quantity, "a number", "Write it like `1/3`.")
    return None


def _wrong_kind(scope: Scope, expression: Expression, quantity: Quantity, needed: str, advice: str) -> None:
    found = f"Here {needed} is needed, but this is {quantity.kind}."
    scope.draft.error("wrong-kind", f"This is not {needed}", found, advice, expression[-2:])


def whole_number(scope: Scope, word: Word, least: int, most: int, what: str) -> int | None:
    """Return a whole number within bounds."""
    value = read_number(word.text) or Fraction(0)
    if value.denominator == 1 and least <= value <= most:
        return int(value)
    found = f"{what} a whole number of times, from {least} to {most}; this says {word.text}."
    scope.draft.error("number-out-of-range", "This number cannot be used here", found, "", word[1:])
    return None
