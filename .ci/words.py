"""Gathers every sentence that is said through blocklang.wording, and brings the catalogues up to date.

Writes blocklang.pot (what there is to translate), every xx.po beside it (translations are kept, what is not said any
more is left out) and xx.mo, which is what the program reads. With --check it writes nothing and says what is stale.
"""

import ast
import io
import struct
import sys
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from pathlib import Path

from babel.messages.catalog import Catalog, Message
from babel.messages.pofile import read_po, write_po

from blocklang.wording import noun

ROOT = Path(__file__).resolve().parent.parent
HOME = ROOT / "blocklang" / "wording"
TEMPLATE = HOME / "blocklang.pot"
SAID = ("say", "say_number", "message", "noun")
HEADER = (
    '# The sentences of blocklang.\nmsgid ""\nmsgstr ""\n"Language: {code}\\n"\n"MIME-Version: 1.0\\n"\n'
    '"Content-Type: text/plain; charset=utf-8\\n"\n"Content-Transfer-Encoding: 8bit\\n"\n'
    '"Plural-Forms: {plurals}\\n"\n\n'
)


@dataclass(frozen=True, slots=True)
class Said:
    """A sentence where it is said; `fields` are the names that the call fills, None where a table leaves that open."""

    file: str
    line: int
    text: str
    plural: str
    context: str
    fields: frozenset[str] | None


class NotSaidPlainlyError(Exception):
    """Raised where a sentence is not written out, so that no translator can be shown it."""


@cache
def gather() -> tuple[Said, ...]:
    """Return every sentence in the order of the files."""
    files = [path for folder in ("blocklang", "plugins") for path in (ROOT / folder).rglob("*.py")]
    return tuple(said for path in sorted(files) for said in gather_from(path))


def gather_from(path: Path) -> Iterator[Said]:
    """Yield the sentences of a file that takes its words from blocklang.wording."""
    tree, file = ast.parse(path.read_text(encoding="utf-8")), path.relative_to(ROOT).as_posix()
    names = dict(_imported(tree))
    for node in ast.walk(tree):
        if isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id in names:
            kind = names[node.func.id]
            yield from _noun(node, file) if kind == "noun" else (_said(node, kind, file),)


def _imported(tree: ast.AST) -> Iterator[tuple[str, str]]:
    for node in ast.walk(tree):
        if isinstance(node, ast.ImportFrom) and (node.module or "").startswith("blocklang.wording"):
            yield from ((alias.asname or alias.name, alias.name) for alias in node.names if alias.name in SAID)


def _said(call: ast.Call, kind: str, file: str) -> Said:
    texts = call.args[: 1 if kind == "say" else 2]
    if not texts or not all(isinstance(t, ast.Constant) and isinstance(t.value, str) for t in texts):
        raise NotSaidPlainlyError(f"{file}:{call.lineno}: write the sentence out in the call of {kind}")
    text, plural = (*(t.value for t in texts), "")[:2]
    given = {word.arg: word.value for word in call.keywords}
    context = given.pop("context", ast.Constant(""))
    filled = frozenset(name or "" for name in given) | frozenset(["count"] if kind == "say_number" else [])
    return Said(file, call.lineno, text, plural, context.value, None if kind == "message" else filled)


def _noun(call: ast.Call, file: str) -> Iterator[Said]:
    one, many = (ast.literal_eval(text) for text in call.args)
    named = {word.arg: ast.literal_eval(word.value) for word in call.keywords}
    for each in noun(one, many, **named).messages():
        yield Said(file, call.lineno, each.text, each.plural, each.context, frozenset())


def template_of(sentences: tuple[Said, ...]) -> Catalog:
    """Return the sentences as a catalogue without translations."""
    catalogue = Catalog(charset="utf-8")
    for said in sentences:
        text = (said.text, said.plural) if said.plural else said.text
        catalogue.add(text, locations=[(said.file, 0)], context=said.context or None)
    return catalogue


def updated(path: Path, template: Catalog) -> Catalog:
    """Return a language's catalogue with what the template has, and its own translations."""
    with path.open("rb") as file:
        catalogue = read_po(file, locale=path.stem)
    catalogue.update(template, no_fuzzy_matching=True)
    return catalogue


def as_po(catalogue: Catalog, code: str) -> bytes:
    """Return a catalogue as translators have it, by file, without dates."""
    written = io.BytesIO()
    write_po(
        written, catalogue, width=0, omit_header=True, sort_by_file=True, ignore_obsolete=True, include_lineno=False
    )
    plurals = catalogue.plural_forms if code else "nplurals=INTEGER; plural=EXPRESSION;"
    return HEADER.format(code=code, plurals=plurals).encode() + written.getvalue().lstrip(b"\n")


def as_mo(catalogue: Catalog, code: str) -> bytes:
    """Return a catalogue as gettext reads it: sorted, without what is not translated."""
    header = f"Language: {code}\nContent-Type: text/plain; charset=utf-8\nPlural-Forms: {catalogue.plural_forms}\n"
    entries = {"": header}
    for entry in catalogue:
        if entry.id and _is_translated(entry):
            context = f"{entry.context}\4" if entry.context else ""
            entries[context + "\0".join(_each(entry.id))] = "\0".join(_each(entry.string))
    return _packed(sorted((key.encode(), value.encode()) for key, value in entries.items()))


def _packed(entries: list[tuple[bytes, bytes]]) -> bytes:
    """Lay out the format that the GNU gettext manual describes: two tables of (length, place), then the texts."""
    first = 28 + 16 * len(entries)
    tables, texts = [b"", b""], b""
    for column in (0, 1):
        for entry in entries:
            tables[column] += struct.pack("<II", len(entry[column]), first + len(texts))
            texts += entry[column] + b"\0"
    head = struct.pack("<7I", 0x950412DE, 0, len(entries), 28, 28 + 8 * len(entries), 0, 0)
    return head + tables[0] + tables[1] + texts


def files() -> dict[Path, bytes]:
    """Return what every file of the catalogues must hold."""
    template = template_of(gather())
    wanted = {TEMPLATE: as_po(template, "")}
    for path in sorted(HOME.glob("*.po")):
        catalogue = updated(path, template)
        wanted[path] = as_po(catalogue, path.stem)
        wanted[path.with_suffix(".mo")] = as_mo(catalogue, path.stem)
    return wanted


def untranslated(path: Path) -> tuple[str, ...]:
    """Return the sentences that a catalogue leaves out, or is not sure of."""
    with path.open("rb") as file:
        entries = [entry for entry in read_po(file, locale=path.stem) if entry.id]
    return tuple(_each(entry.id)[0] for entry in entries if not _is_translated(entry))


def _is_translated(entry: Message) -> bool:
    return not entry.fuzzy and all(_each(entry.string))


def _each(text: str | list[str] | tuple[str, ...] | None) -> tuple[str, ...]:
    return (text or "",) if isinstance(text, str | None) else tuple(text)


def main() -> int:
    """Write the catalogues, or check them."""
    wanted = files()
    stale = [path for path, data in wanted.items() if not path.exists() or path.read_bytes() != data]
    if "--check" in sys.argv[1:]:
        for path in stale:
            print(f"{path.relative_to(ROOT)} is not up to date: run python3 dev.py words")
        return 1 if stale else 0
    for path in stale:
        path.write_bytes(wanted[path])
        print(f"Wrote {path.relative_to(ROOT)}")
    for path in sorted(HOME.glob("*.po")):
        print(f"{path.relative_to(ROOT)}: {len(untranslated(path))} sentences are not translated yet")
    return 0


if __name__ == "__main__":
    sys.exit(main())
