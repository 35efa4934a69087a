"""From what was typed, and what is asked at a terminal, to the answers that a new block is made from."""

from collections.abc import Callable
from dataclasses import dataclass, replace

from blocklang.cli.failing import CommandFault
from blocklang.cli.starting.answers import Answers, fault_of, read_size
from blocklang.cli.starting.designs import DESIGNS, FEWEST_FABRICS, MOST_FABRICS, design_named
from blocklang.cli.starting.fabrics import PALETTE, VALUES, read_cloth

#: Asks one question with the answer that counts when nothing is typed, and returns what was typed.
Ask = Callable[[str, str], str]
#: Takes one answer in, or returns one sentence that says why it cannot.
Take = Callable[[Answers, str], Answers | str]


@dataclass(frozen=True, slots=True)
class Typed:
    """What the options say; None, or no fabrics, where an option was not given."""

    title: str | None = None
    start: str | None = None
    size: str | None = None
    fabrics: tuple[str, ...] = ()
    author: str | None = None
    licence: str | None = None


def choose(first: Answers, typed: Typed, ask: Ask | None, tell: Callable[[str], None]) -> Answers:
    """Return the answers: those typed as options, then those asked for when there is somebody to ask."""
    chooser = _Chooser(ask, tell)
    answers = chooser.settle(first, typed.title, take_title, "Title", first.title)
    if ask and typed.start is None:
        tell(_list_of_designs())
    answers = chooser.settle(answers, typed.start, take_start, "Start from", answers.design.name)
    question = "Finished size, such as 12 in or 30 cm"
    answers = chooser.settle(answers, typed.size, take_size, question, answers.design.size)
    answers = chooser.fabrics(answers, typed.fabrics)
    answers = chooser.settle(answers, typed.author, take_author, "Who drafted it, for the credit (or nothing)", "")
    if not answers.author and typed.licence is None:
        return answers  # nobody to credit, so nothing to allow
    return chooser.settle(answers, typed.licence, take_licence, "Licence (a dash for none)", "CC-BY-4.0")


@dataclass(frozen=True, slots=True)
class _Chooser:
    ask: Ask | None
    tell: Callable[[str], None]

    def settle(self, answers: Answers, typed: str | None, take: Take, question: str, usual: str) -> Answers:
        """Take in what was typed, or ask until an answer can be taken in; nobody asked means nothing changes."""
        if typed is not None:
            taken = _taken(answers, typed, take)
            if isinstance(taken, str):
                raise CommandFault(taken)
            return taken
        while self.ask is not None:
            taken = _taken(answers, self.ask(question, usual), take)
            if isinstance(taken, Answers):
                return taken
            self.tell(taken)
        return answers

    def fabrics(self, answers: Answers, typed: tuple[str, ...]) -> Answers:
        """Settle the fabrics, one after the other."""
        if typed or self.ask is None:
            for text in typed:
                answers = self.settle(answers, text, take_cloth, "", "")
            return answers
        self.tell(_list_of_cloths())
        count = self._count(answers.design.usual)
        for number in range(count):
            usual = next(cloth.name for cloth in PALETTE if cloth.name not in {c.name for c in answers.cloths})
            question = f"Fabric {number + 1} of {count}, the {answers.design.roles[number]}"
            answers = self.settle(answers, None, take_cloth, question, usual)
        return answers

    def _count(self, usual: int) -> int:
        assert self.ask is not None
        while True:
            text = self.ask(f"How many fabrics, {FEWEST_FABRICS} to {MOST_FABRICS}", str(usual)).strip()
            if text in [str(number) for number in range(FEWEST_FABRICS, MOST_FABRICS + 1)]:
                return int(text)
            self.tell(f"Write a number from {FEWEST_FABRICS} to {MOST_FABRICS}.")


def take_title(answers: Answers, text: str) -> Answers | str:
    """Take in the title."""
    return replace(answers, title=text.strip())


def take_start(answers: Answers, text: str) -> Answers | str:
    """Take in the design to start from, by name or number."""
    design = design_named(text)
    if design is None:
        return f"There is no start `{text}`; it is one of {', '.join(one.name for one in DESIGNS)}."
    return replace(answers, design=design)


def take_size(answers: Answers, text: str) -> Answers | str:
    """Take in the finished size."""
    size = read_size(text)
    if size is None:
        return f"`{text}` is not a size; write one like `12 in`, `7 1/2 in` or `30 cm`."
    return replace(answers, size=size)


def take_cloth(answers: Answers, text: str) -> Answers | str:
    """Take in one more fabric."""
    cloth = read_cloth(text)
    if isinstance(cloth, str):
        return cloth
    if any(cloth.name == other.name for other in answers.cloths):
        return f"There is a fabric `{cloth.name}` already; give this one another name."
    return replace(answers, cloths=(*answers.cloths, cloth))


def take_author(answers: Answers, text: str) -> Answers | str:
    """Take in whom the block is from."""
    return replace(answers, author=text.strip())


def take_licence(answers: Answers, text: str) -> Answers | str:
    """Take in the licence; a dash stands for none, since an empty answer means the usual one."""
    return replace(answers, licence="" if text.strip() == "-" else text.strip())


def _taken(answers: Answers, text: str, take: Take) -> Answers | str:
    taken = take(answers, text)
    return taken if isinstance(taken, str) else fault_of(taken) or taken


def _list_of_designs() -> str:
    width = max(len(design.name) for design in DESIGNS)
    return "\n".join(f"  {n}  {one.name.ljust(width)}  {one.summary}" for n, one in enumerate(DESIGNS, 1))


def _list_of_cloths() -> str:
    shades = (f"  {value}: {', '.join(c.name for c in PALETTE if c.value == value)}" for value in VALUES)
    return "\n".join([*shades, "  Or a name and a colour of your own, such as moss #4f6b4a"])
