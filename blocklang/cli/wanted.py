"""The outputs that were asked for, each with its format and its settings."""

from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

import click

from blocklang.cli.asked import Settings
from blocklang.cli.choices import output_named, split_pair
from blocklang.cli.writing import STDOUT

if TYPE_CHECKING:
    from blocklang.hooks import Output

#: Formats that some call by another name.
_SAME = {"txt": "text", "text": "txt", "htm": "html"}
#: Formats whose files end otherwise than they are called.
_ENDINGS = {"text": "txt"}


@dataclass(frozen=True, slots=True)
class Named:
    """An output as it was typed, with the format behind its dot if there is one."""

    output: "Output"
    form: str = ""


@dataclass(frozen=True, slots=True)
class Wish:
    """A wanted output without its functions, so that it can be handed to another process."""

    name: str
    form: str
    settings: Settings

    def granted(self, outputs: "tuple[Output, ...]") -> "Wanted":
        """Return it with its functions."""
        return Wanted(next(one for one in outputs if one.name == self.name), self.form, self.settings)


@dataclass(frozen=True, slots=True)
class Wanted:
    """An output that is asked for, in one format and with those of the settings that it has."""

    output: "Output"
    form: str
    settings: Settings = ()

    @property
    def name(self) -> str:
        """Return the output's name."""
        return self.output.name

    @property
    def wish(self) -> Wish:
        """Return it without its functions."""
        return Wish(self.name, self.form, self.settings)

    @property
    def ending(self) -> str:
        """Return how names of its files end, without the dot."""
        return _ENDINGS.get(self.form, self.form)


def named(words: str, outputs: "tuple[Output, ...]") -> tuple[Named, ...]:
    """Return the outputs named in one word, with commas between them: `sewing-sheet.pdf,cutting-list`."""
    parts = [part.strip().partition(".") for part in words.split(",")]
    return tuple(dict.fromkeys(Named(output_named(name, outputs), form.lower()) for name, _, form in parts))


def wanted(names: tuple[Named, ...], file: Path | None, form: str | None, given: tuple[str, ...]) -> tuple[Wanted, ...]:
    """Return the outputs with their formats and settings; `file` is where the one result goes, if it is one file."""
    settings = settings_for(tuple(dict.fromkeys(one.output for one in names)), given)
    found = dict.fromkeys(
        Wanted(one.output, format_for(one.output, file, one.form or form), _its_own(one.output, settings))
        for one in names
    )
    return tuple(found)


def format_for(output: "Output", file: Path | None, form: str | None) -> str:
    """Return the format asked for, or what the file's ending says, or the output's own."""
    ending = file.suffix.removeprefix(".").lower() if file is not None and file != STDOUT else ""
    asked = form.lower() if form else ending or output.default_format
    for name in (asked, _SAME.get(asked, asked)):
        if name in output.formats:
            return name
    raise click.UsageError(f"`{output.name}` cannot be made as {asked}; it can be {' or '.join(output.formats)}.")


def settings_for(outputs: "tuple[Output, ...]", given: tuple[str, ...]) -> Settings:
    """Return the settings as typed, once each is one that an output has."""
    pairs = tuple(split_pair(text, "--set", "name=value") for text in given)
    for name, value in pairs:
        having = [(one, setting) for one in outputs for setting in one.settings if setting.name == name]
        if not having:
            raise click.UsageError(_no_setting(name, outputs))
        for output, setting in having:
            if setting.choices and value not in setting.choices:
                raise click.UsageError(f"`{name}` of `{output.name}` is one of {', '.join(setting.choices)}.")
    return pairs


def _no_setting(name: str, outputs: "tuple[Output, ...]") -> str:
    if len(outputs) > 1:
        return f"None of {', '.join(f'`{one.name}`' for one in outputs)} has a setting `{name}`."
    known = outputs[0].settings
    has = f"it has {', '.join(f'`{one.name}`' for one in known)}" if known else "it has none"
    return f"`{outputs[0].name}` has no setting `{name}`; {has}."


def _its_own(output: "Output", settings: Settings) -> Settings:
    names = {setting.name for setting in output.settings}
    return tuple(pair for pair in settings if pair[0] in names)
