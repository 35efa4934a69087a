"""Every example of docs/plugins.md is a module that blocklang loads, and does what the page says."""

import importlib
import json
import re
import sys
import tomllib
from pathlib import Path

import pytest

from blocklang import route
from blocklang.diagnostics import Severity, SourceText
from blocklang.geometry import TICKS_PER_INCH
from blocklang.hooks import OutputOptions
from blocklang.language import Overrides
from blocklang.library import Library
from blocklang.testing import Workbench
from blocklang.wording import find_language

PAGE = Path(__file__).resolve().parents[2] / "docs" / "plugins.md"
EXAMPLES = re.findall(r"^```python\n(.*?)^```", PAGE.read_text(encoding="utf-8"), re.DOTALL | re.MULTILINE)
PLUGINS = [text for text in EXAMPLES if "@hookimpl" in text]
pytest_plugins = ["pytester"]


def title_of(text: str) -> str:
    """Return what an example is called: what its first line names in backticks, else its first hook."""
    return (re.search(r'^"""[^`\n]*`([\w-]+)`', text) or re.search(r"def blocklang_(\w+)\(", text))[1]


BY_TITLE = {title_of(text): text for text in PLUGINS}


@pytest.fixture(scope="module")
def bench() -> Workbench:
    """Plan once, so that what is heavy is loaded before `pytester` notes which modules there are."""
    bench = Workbench()
    bench.plan("nine-patch")
    return bench


@pytest.fixture(scope="module")
def example(tmp_path_factory):
    """Write an example as the module that its reader would write, and import it."""
    folder = tmp_path_factory.mktemp("examples")
    with pytest.MonkeyPatch.context() as patch:
        patch.syspath_prepend(folder)

        def load(title: str):
            name = "told_" + title.replace("-", "_")
            path = folder / name / "__init__.py"
            if not path.exists():
                path.parent.mkdir()
                path.write_text(BY_TITLE[title], encoding="utf-8")
                importlib.invalidate_caches()
            return importlib.import_module(name)

        yield load
        for name in [name for name in sys.modules if name.startswith("told_")]:
            del sys.modules[name]


def test_page_has_these_examples() -> None:
    assert list(BY_TITLE) == [
        "fabric-count", "seam-lengths", "album", "narrow-patches", "roomy-square", "toward-larger", "kite-corner",
        "library_folders", "greeting",
    ]  # fmt: skip
    assert len(EXAMPLES) == len(PLUGINS) + 1  # and a test module


@pytest.mark.parametrize("title", BY_TITLE)
def test_example_is_a_sound_plugin(bench, example, title) -> None:
    bench.plugin(example(title))


@pytest.mark.parametrize("title", BY_TITLE)
def test_example_imports_public_names_only(title) -> None:
    public = public_modules()
    for module, names in re.findall(r"^from (blocklang[\w.]*) import (\([^)]*\)|.*)$", BY_TITLE[title], re.MULTILINE):
        assert module in public
        listed = getattr(importlib.import_module(module), "__all__", None)
        assert listed is None or set(re.findall(r"\w+", names)) <= set(listed)


def public_modules() -> set[str]:
    text = (PAGE.parents[1] / ".ci" / "check_plugin_imports.py").read_text(encoding="utf-8")
    return set(re.findall(r'"(blocklang[\w.]*)"', re.search(r"PUBLIC = \{(.*?)\}", text, re.DOTALL)[1]))


def test_count_of_fabrics(bench, example) -> None:
    (output,) = example("fabric-count").blocklang_outputs()
    assert bench.output(output, bench.plan("nine-patch", copies=2))[0].data == b"fog: 8\nharbour: 10\n"
    bench.output(output, bench.plan("drunkards-path"), honours=("copies",))
    (entry,) = re.findall(r"^```toml\n(.*?)^```", PAGE.read_text(encoding="utf-8"), re.DOTALL | re.MULTILINE)
    assert list(tomllib.loads(entry)["project"]["entry-points"]["blocklang"]) == [output.name]


def test_seam_lengths_add_up_to_those_of_the_block(bench, example) -> None:
    (output,) = example("seam-lengths").blocklang_outputs()
    plan = bench.plan("orange-peel")
    bench.output(output, plan, honours=("unit",), settings={"longer-than": ["3", "many"]})
    told = json.loads(output.make(plan, OutputOptions("json"))[0].data)
    seams = sum(seam.edge.length() for seam in plan.graph.seams) / TICKS_PER_INCH
    assert sum(inches for _, inches in told["Orange Peel"]) == pytest.approx(seams, abs=0.01 * len(plan.steps))
    both = json.loads(output.make_several((plan, bench.plan("whirl")), OutputOptions("json"))[0].data)
    assert list(both) == ["Orange Peel", "Whirl"]


def test_setting_leaves_out_short_seams(bench, example) -> None:
    (output,) = example("seam-lengths").blocklang_outputs()
    plan = bench.plan("nine-patch")
    # Twice a row of two seams of 3 in, once another such row (6 in, left out), and two seams of 9 in.
    long = output.make(plan, OutputOptions("json", settings=(("longer-than", "9"),)))[0].data
    assert [inches for _, inches in json.loads(long)["Nine Patch"]] == [12.0, 18.0]


def test_album_has_a_page_a_block_and_a_list(bench, example) -> None:
    (output,) = example("album").blocklang_outputs()
    files = bench.folder(output, ["whirl", "nine-patch"])
    assert [file.name for file in files] == ["blocks/whirl.svg", "blocks/nine-patch.svg", "list.txt"]
    assert files[-1].data == b"whirl: Whirl, 5 patches\nnine-patch: Nine Patch, 9 patches\n"


def test_narrow_patches_are_found_where_there_are_some(bench, example) -> None:
    (check,) = example("narrow-patches").blocklang_checks()
    assert bench.check(check, bench.plan("nine-patch")) == ()
    said = bench.check(check, bench.plan("nine-patch", size="1in"))
    assert len(said) == 9
    assert {one.severity for one in said} == {Severity.WARNING}
    assert all(one.span is not None for one in said)


def test_roomy_squares_are_cut_half_an_inch_larger(bench, example) -> None:
    (method,) = example("roomy-square").blocklang_cutting_methods()
    cutting = bench.cutting_method(method, bench.plan("four-patch", size="9in"))
    assert {(piece.method, piece.cut[0].exact) for piece in cutting.pieces} == {("roomy-square", 5.5)}
    cutting = bench.cutting_method(method, bench.plan("nine-patch", size="9in"))
    assert "roomy-square" not in {piece.method for piece in cutting.pieces}
    bench.cutting_method(method, bench.plan("orange-peel"))


def test_preference_presses_toward_the_larger_patch(bench, example) -> None:
    (preference,) = example("toward-larger").blocklang_pressing_preferences()
    assert preference.technique == "flat"
    assert set(bench.pressing_preference(preference, bench.plan("nine-patch"))) == {0.0}
    plan = bench.plan("economy")
    weights = bench.pressing_preference(preference, plan)
    for seam, weight in zip(plan.graph.seams, weights, strict=True):
        left, right = (plan.block.patches[side].outline.area() for side in seam.patches)
        assert (weight > 0) == (left > right * 1.01)


def test_cell_is_drawn_in_a_block(bench, example) -> None:
    (cell,) = example("kite-corner").blocklang_cells()
    bench.cell(cell)
    fabrics = "fabric fog sky light #e8eef2\nfabric deep kite dark #1f3a5f\n"
    text = f'block "Kites"\nlanguage 1\nsize 6 in\n{fabrics}rows\n  kite-corner(deep fog 3/4) fog\n  fog kite-corner(deep fog)\nend\n'
    drafted = route.draft(SourceText("kites", text), Overrides(None, ()), Library(), lambda: (cell,))
    checked = route.check(drafted)
    assert checked.diagnostics == ()
    assert len(checked.graph.block.patches) == 8


def test_folder_of_blocks_is_found(bench, example) -> None:
    module = example("library_folders")
    (folder,) = module.blocklang_library_folders()
    folder.mkdir()
    (folder / "tide-pool.block").write_text('block "Tide Pool"\n', encoding="utf-8")
    library = Library(more_folders=lambda: (("guild", folder),))
    assert library.entry("tide-pool").shelf.origin == "plugin guild"


def test_greeting_comes_from_a_catalogue_beside_the_module(bench, example) -> None:
    module = example("greeting")
    (output,) = module.blocklang_outputs()
    plan = bench.plan("whirl")
    assert bench.output(output, plan)[0].data == b"This is Whirl.\n"
    write_catalogue(Path(module.__file__).with_name("es.mo"), {"This is {block}.": "Esto es {block}."})
    from blocklang.wording import language

    language._catalogue.cache_clear()
    language._language.cache_clear()
    try:
        assert output.make(plan, OutputOptions("txt", language=find_language("es")))[0].data == b"Esto es Whirl.\n"
    finally:
        language._catalogue.cache_clear()
        language._language.cache_clear()


def write_catalogue(path: Path, texts: dict[str, str]) -> None:
    """Write a catalogue as gettext reads it (GNU gettext manual, the format of MO files)."""
    import struct

    pairs = sorted({"": "Content-Type: text/plain; charset=UTF-8\n", **texts}.items())
    at, tables, data = 28 + 16 * len(pairs), ([], []), b""
    for side in (0, 1):
        for pair in pairs:
            word = pair[side].encode()
            tables[side].extend((len(word), at + len(data)))
            data += word + b"\0"
    header = (0x950412DE, 0, len(pairs), 28, 28 + 8 * len(pairs), 0, 0)
    path.write_bytes(struct.pack(f"<{7 + 4 * len(pairs)}I", *header, *tables[0], *tables[1]) + data)


def test_tests_on_the_page_pass(bench, pytester, monkeypatch) -> None:
    """The page's own tests, run by pytest beside the page's first plugin."""
    tests = next(text for text in EXAMPLES if "@hookimpl" not in text)
    pytester.makepyfile(saltmarsh_fabric_count=BY_TITLE["fabric-count"], test_count=tests)
    pytester.syspathinsert()
    monkeypatch.setenv("PYTEST_DISABLE_PLUGIN_AUTOLOAD", "1")
    ran = pytester.runpytest_inprocess("-p", "blocklang_pytest", "--strict-markers")
    ran.assert_outcomes(passed=5)
