"""What the author wants of the sewing: who and where is meant."""

from blocklang.language.drawing import DrawnWish
from blocklang.language.scope import Scope
from blocklang.language.syntax import WishLine, Word
from blocklang.limits import MOST_NAMES


def draw_wish(scope: Scope, line: WishLine) -> None:
    """Note one wish, once all that it can be about has been drawn."""
    verb, names = line.verb, line.names
    if len(names) > MOST_NAMES:
        found = f"One line names at most {MOST_NAMES} patches, and this one names {len(names)}."
        scope.draft.error("too-many-names", "This line names too much", found, "", line[-2:])
        return
    span = scope.draft.span(line.start, line.end)
    if verb in ("press away", "press toward"):
        fabric = scope.draft.fabric(names[0])
        wish = None if fabric is None else DrawnWish(verb, (), None, fabric, span)
    elif verb == "sew in":
        wish = DrawnWish(verb, (), None, names[0].text, span)
    elif verb == "spin":
        at = scope.point(names[0])
        wish = None if at is None else DrawnWish(verb, (), at, names[1].text, span)
    elif verb == "stop":
        patches, at = _patches(scope, names[:2]), scope.point(names[2])
        wish = None if at is None or patches is None else DrawnWish(verb, patches, at, "", span)
    elif verb == "first":
        wish = _first(scope, line)
    else:
        wish = _about_patches(scope, line)
    if wish is not None and scope.has_room(0, line[-2:], wishes=1):
        scope.drawing.wishes.append(wish)


def _about_patches(scope: Scope, line: WishLine) -> DrawnWish | None:
    patches = _patches(scope, line.names)
    if patches is None:
        return None
    if line.verb == "press" and line.names[2].text not in (line.names[0].text, line.names[1].text):
        found = (
            f"The seam lies between `{patches[0]}` and `{patches[1]}`, so it cannot be pressed toward `{patches[2]}`."
        )
        scope.draft.error("press-elsewhere", "This seam cannot be pressed there", found, "", line.names[2][1:])
        return None
    return DrawnWish(line.verb, patches, None, "", scope.draft.span(line.start, line.end))


def _first(scope: Scope, line: WishLine) -> DrawnWish | None:
    """Note a unit; its parts are patches, placed blocks and units named before."""
    *parts, name = line.names
    patches: list[str] = []
    for part in parts:
        unit = next((outer.units[part.text] for outer in scope.chain() if part.text in outer.units), None)
        found = unit or _patches(scope, (part,), several=True)
        if found is None:
            return None
        patches += found
    if len(set(patches)) < 2 or len(set(patches)) < len(patches):
        found_text = "A unit is sewn from two patches or more, each named once."
        scope.draft.error("not-a-unit", "This is not a unit", found_text, "", line[-2:])
        return None
    if not scope.declare(name, "unit"):
        return None
    scope.units[name.text] = tuple(patches)
    return DrawnWish("first", tuple(patches), None, name.text, scope.draft.span(line.start, line.end))


def _patches(scope: Scope, words: tuple[Word, ...], several: bool = False) -> tuple[str, ...] | None:
    known = True
    for word in words:
        if not scope.find_patch(word.text):
            known = False
            if not scope.is_broken():
                _unknown_patch(scope, word)
    if known and not several and len({word.text for word in words[:2]}) < len(words[:2]):
        found = f"`{words[0].text}` is named twice, and a seam lies between two patches."
        scope.draft.error("same-patch", "This is one patch, not two", found, "", (words[0].start, words[1].end))
        return None
    return tuple(word.text for word in words) if known else None


def _unknown_patch(scope: Scope, word: Word) -> None:
    from blocklang.language.suggesting import did_you_mean
    from blocklang.limits import MOST_COMPARED

    known = [name for name, _ in zip(scope.all_patch_ids(), range(MOST_COMPARED), strict=False)]
    advice = did_you_mean(word.text, known, "Patches in a group are numbered: the first `corner` is `corner.1`.")
    found = f"No patch is called `{word.text}`."
    scope.draft.error("unknown-patch", "This patch is not known", found, advice, word[1:])
