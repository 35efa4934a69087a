"""Words that would be code somewhere stay words: every text of a block, in every format of every output that there is.

The texts are in the block, in its fabrics, and in a block that it places. Whatever output is added is held to this too.
"""

import csv
import io
import json
import re
from collections.abc import Iterator
from functools import cache
from html.parser import HTMLParser
from pathlib import Path
from typing import Any, NamedTuple
from xml.etree import ElementTree

import pytest
from pypdf import PdfReader

from blocklang import extensions
from blocklang.cli.walking import Walk
from blocklang.hooks import CannotMakeError, Output, OutputFile, OutputOptions
from blocklang.language import Overrides
from blocklang.plan import SewingPlan
from blocklang.plan_json import plan_to_json
from tests.hostile.answering import typed
from tests.support.marking import marks_of

MARKUP = (
    "</title></style></svg><script>alert(1)</script><img src=x onerror=alert(1)>' onload='alert(1)]]><!-- &lt;b&gt;"
)
SETTING = r"#eval(`1+1`) #read(`/etc/passwd`) $x^2$ *bold* _slant_ @label <label> // gone /* gone \ ~ `raw` = head"
FORMULA = "=cmd|calc!A1"
EVIL = {
    "title": f"{FORMULA} title {MARKUP}",
    "author": f"+1+{FORMULA} author {MARKUP}",
    "licence": f"@SUM(1) licence {SETTING}",
    "source": f"-1+{FORMULA} source javascript:alert(1) {MARKUP}",
    "note": f"{{{{ 7*7 }}}} {{% raw %}} note {SETTING} {MARKUP}",
    "fog": f"{FORMULA} fog {MARKUP}",
    "deep": f"{SETTING} deep",
    "placed": f"{FORMULA} placed {MARKUP} {SETTING}",
}
PLAIN = {name: f"{name} {'tide mill ' * (len(text) // 10)}".strip() for name, text in EVIL.items()}
BLOCK = """block "{title}"
language 1
size 6 in
by "{author}" licence "{licence}" source "{source}"
note "{note}"
fabric fog as F background light #e8eef2 "{fog}"
fabric deep as D accent dark #1f3a5f "{deep}"
rows
  F/D "placed"
  F   D\\F
end
"""
PLACED = """block "{placed}"
language 1
size 3 in
by "{author}" licence "{licence}" source "{source}"
note "{note}"
fabric fog as F background light #e8eef2 "{fog}"
fabric deep as D accent dark #1f3a5f "{deep}"
rows
  F D
  D F
end
"""
SVG = {
    "svg",
    "title",
    "desc",
    "g",
    "path",
    "text",
    "tspan",
    "circle",
    "defs",
    "clipPath",
    "rect",
    "line",
    "use",
    "pattern",
    "style",
}


class Elements(HTMLParser):
    """What a browser would take a page for: its elements, attributes and scripts, and where its links lead."""

    def __init__(self, page: str) -> None:
        super().__init__()
        self.names: set[str] = set()
        self.attributes: set[str] = set()
        self.links: set[str] = set()
        self.scripts: list[str] = []
        self.words = ""
        self.inside = ""
        self.feed(page)
        self.close()

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.names.add(tag)
        self.attributes |= {name for name, _ in attrs}
        self.links |= {value or "" for name, value in attrs if name in ("href", "src", "action", "xlink:href")}
        self.inside = tag

    def handle_endtag(self, tag: str) -> None:
        self.inside = ""

    def handle_data(self, data: str) -> None:
        if self.inside == "script":
            self.scripts.append(data)
        self.words += data


class Case(NamedTuple):
    """An output, a format of it, and one choice of a setting."""

    output: Output
    form: str
    settings: tuple[tuple[str, str], ...] = ()

    def __str__(self) -> str:
        return "-".join([self.output.name, self.form, *(value for _, value in self.settings)])


def cases() -> Iterator[Case]:
    """Return every format of every output, and for pictures every choice of every setting."""
    for output in extensions.outputs(extensions.load_plugins()).items:
        if output.make_folder is not None:
            continue
        for form in output.formats:
            yield Case(output, form, NEEDED.get(output.name, ()))
            for setting in output.settings if form in ("svg", "html") else ():
                for choice in setting.choices:
                    yield Case(output, form, (*NEEDED.get(output.name, ()), (setting.name, choice)))


#: No patch of the block needs a template, so that all are asked for.
NEEDED = {"templates": (("which", "all"),)}


@cache
def plan_of(evil: bool, folder: Path) -> SewingPlan:
    return written_plan(EVIL if evil else PLAIN, folder / ("evil" if evil else "plain"))


def written_plan(words: dict[str, str], folder: Path) -> SewingPlan:
    folder.mkdir(exist_ok=True)
    (folder / "block.block").write_text(BLOCK.format(**words), encoding="utf-8")
    (folder / "placed.block").write_text(PLACED.format(**words), encoding="utf-8")
    planned = Walk().plan(str(folder / "block.block"), Overrides(), 1)
    assert planned.plan is not None, planned.diagnostics
    return planned.plan


@pytest.fixture(scope="module")
def folder(tmp_path_factory) -> Path:
    return tmp_path_factory.mktemp("texts")


def made(case: Case, plan: SewingPlan) -> tuple[OutputFile, ...]:
    return case.output.make(plan, OutputOptions(case.form, settings=case.settings))


CASES = [case for case in cases() if case.settings[-1:] != (("which", "needed"),)]


def timed(case: Case) -> Any:
    """Mark what takes long."""
    return pytest.param(case, marks=marks_of(case.form in ("pdf", "png"), 1, 1))


@pytest.mark.parametrize("case", [timed(case) for case in CASES], ids=str)
def test_words_stay_words(case, folder) -> None:
    evil, plain = (made(case, plan_of(which, folder)) for which in (True, False))
    assert [file.name for file in evil] == [file.name for file in plain]
    for file, other in zip(evil, plain, strict=True):
        form = file.name.rpartition(".")[2] or case.form
        LOOKS[form](file.data, other.data)


def looks_like_a_picture(data: bytes, plain: bytes) -> None:
    """An SVG drawing: only elements that draw, no attribute that acts, no link out of it."""
    elements = list(ElementTree.fromstring(data).iter())
    names = {element.tag.rpartition("}")[2] for element in elements}
    assert names <= SVG
    assert names == {element.tag.rpartition("}")[2] for element in ElementTree.fromstring(plain).iter()}
    for element in elements:
        for name, value in element.attrib.items():
            assert not name.lower().startswith("on")
            assert not name.endswith("href") or value.startswith("#"), value


def looks_like_a_page(data: bytes, plain: bytes) -> None:
    """An HTML page: the elements, attributes, scripts and links that it has with harmless words, and no other."""
    page, other = (Elements(one.decode()) for one in (data, plain))
    assert page.names == other.names
    assert page.attributes == other.attributes
    assert not [name for name in page.attributes if name.startswith("on")]
    assert page.scripts == other.scripts
    assert page.links == other.links
    assert EVIL["title"] in page.words


def looks_like_a_table(data: bytes, _: bytes) -> None:
    """A table: no cell that a table program would work out; and the words are there."""
    rows = list(csv.reader(io.StringIO(data.decode("utf-8-sig"))))
    assert rows
    assert not [cell for row in rows for cell in row if re.match(r"[=+\-@\t\r]", cell)]
    assert len({len(row) for row in rows if row}) == 1


def looks_like_values(data: bytes, plain: bytes) -> None:
    """JSON: the same keys, with the words as they stand."""
    told, other = json.loads(data), json.loads(plain)
    assert _keys(told) == _keys(other)
    assert {*EVIL.values()} & {*_texts(told)}


def looks_like_text(data: bytes, _: bytes) -> None:
    """Plain text: nothing in it that a terminal would obey."""
    assert all(line.isprintable() for line in data.decode().splitlines())


def looks_like_pages(data: bytes, plain: bytes) -> None:
    """PDF: nothing that acts, nothing worked out, nothing read from the disk, the words as they stand."""
    reader, other = PdfReader(io.BytesIO(data)), PdfReader(io.BytesIO(plain))
    for one in (b"/JavaScript", b"/JS", b"/Launch", b"/EmbeddedFile", b"/SubmitForm", b"/AA ", b"/RichMedia"):
        assert one not in data, one
    words = " ".join(page.extract_text() for page in reader.pages)
    assert "root:" not in words
    for annotations in (page.get("/Annots", []) for page in reader.pages):
        for annotation in annotations:
            assert "/URI" not in annotation.get_object().get("/A", {}), "a link out of the document"
    assert bool(words.strip()) == bool(" ".join(page.extract_text() for page in other.pages).strip())


def looks_like_dots(data: bytes, _: bytes) -> None:
    assert data.startswith(b"\x89PNG\r\n\x1a\n")


def looks_like_pairs(data: bytes, plain: bytes) -> None:
    """DXF: a number line and a value line in turn, and the same numbers in the same order as with harmless words."""
    lines, others = (one.decode("utf-8").splitlines() for one in (data, plain))
    assert len(lines) % 2 == 0
    assert [int(line) for line in lines[::2]] == [int(line) for line in others[::2]]


LOOKS = {
    "svg": looks_like_a_picture,
    "html": looks_like_a_page,
    "csv": looks_like_a_table,
    "json": looks_like_values,
    "text": looks_like_text,
    "txt": looks_like_text,
    "pdf": looks_like_pages,
    "png": looks_like_dots,
    "dxf": looks_like_pairs,
}


def _keys(told: object) -> object:
    if isinstance(told, dict):
        return {key: _keys(value) for key, value in told.items()}
    return [_keys(one) for one in told] if isinstance(told, list) else type(told)


def _texts(told: object) -> list[str]:
    if isinstance(told, dict | list):
        return [text for one in (told.values() if isinstance(told, dict) else told) for text in _texts(one)]
    return [told] if isinstance(told, str) else []


def test_plan_as_json_holds_the_words_as_they_stand(folder) -> None:
    texts = _texts(json.loads(plan_to_json(plan_of(True, folder))))
    assert {EVIL[name] for name in ("title", "author", "licence", "source", "fog", "deep", "placed")} <= set(texts)


@pytest.mark.slow
@pytest.mark.sweep
def test_gallery_is_pages_of_words(folder, monkeypatch) -> None:
    """The pages of a whole library: the same elements, attributes, scripts and links as with harmless words."""
    written: dict[str, dict[str, bytes]] = {}
    for which in ("evil", "plain"):
        plan_of(which == "evil", folder)
        monkeypatch.chdir(folder / which)
        title = MARKUP if which == "evil" else "tides"
        code, _, said = typed(
            "make", "gallery", "block.block", "placed.block", "-o", "pages", "--set", f"title={title}"
        )
        assert code == 0, said
        pages = folder / which / "pages"
        written[which] = {str(p.relative_to(pages)): p.read_bytes() for p in sorted(pages.rglob("*")) if p.is_file()}
    assert list(written["evil"]) == list(written["plain"])
    for name, data in written["evil"].items():
        form = name.rpartition(".")[2]
        if form == "html":
            page, other = Elements(data.decode()), Elements(written["plain"][name].decode())
            assert (page.names, page.attributes, page.links) == (other.names, other.attributes, other.links)
            assert not [one for one in page.attributes if one.startswith("on")]
            assert len(page.scripts) == len(other.scripts)
        elif form in LOOKS and form != "json":
            LOOKS[form](data, written["plain"][name])


FREE = [
    Case(output, form, ((setting.name, f"{FORMULA} {SETTING} {MARKUP}"),))
    for output in sorted({case.output.name: case.output for case in CASES}.values(), key=lambda output: output.name)
    for setting in output.settings
    if not setting.choices
    for form in output.formats
    if form in ("svg", "html", "csv", "json", "text", "dxf")
]


@pytest.mark.parametrize("case", FREE, ids=lambda case: f"{case.output.name}-{case.form}-{case.settings[0][0]}")
def test_words_of_a_setting_stay_words_or_are_refused(case, folder) -> None:
    plan = plan_of(False, folder)
    plain = made(Case(case.output, case.form), plan)
    try:
        files = made(case, plan)
    except CannotMakeError as refused:
        assert str(refused)
        return
    for file, other in zip(files, plain, strict=True):
        elements = LOOKS[file.name.rpartition(".")[2] or case.form]
        if elements is not looks_like_a_page:
            elements(file.data, other.data)
        assert b"<script>alert" not in file.data
        assert b"<img src=x" not in file.data


def test_file_name_stays_a_name(folder, monkeypatch) -> None:
    """A block's file may be called almost anything; the gallery has it in links, the messages in sentences."""
    monkeypatch.chdir(folder)
    name = "a\"><img src=x onerror=alert(1)>'&#x3c;\x1b[2J.block"
    Path(name).write_text(BLOCK.replace('"placed"', "F").format(**PLAIN), encoding="utf-8")
    code, _, said = typed("make", "gallery", name, "-o", "odd", "--set", "sheets=no")
    assert code == 0, said
    pages = [path for path in sorted(Path("odd").rglob("*")) if path.suffix == ".html"]
    assert pages
    for path in pages:
        page = Elements(path.read_text(encoding="utf-8"))
        assert not [one for one in page.attributes if one.startswith("on")]
        assert "img" not in page.names or "x" not in page.links
    Path(name).write_text("pacth\n", encoding="utf-8")
    code, _, said = typed("check", name)
    assert (code, "\x1b" in said) == (1, False)
