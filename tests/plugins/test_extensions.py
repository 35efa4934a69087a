"""Plugins are found in one order, asked once, and a broken one is named and skipped."""

import pytest

from blocklang import extensions
from blocklang.diagnostics import Severity
from blocklang.extensions import load_plugins
from tests.plugins import strangers
from tests.plugins.strangers import entry

BROKEN_ON_LOADING = [
    (entry("sunk", module="tests.plugins.broken_on_import"), "ModuleNotFoundError: No module named"),
    (entry("sunk", module="tests.plugins.exits_on_import"), "SystemExit: goodbye"),
    (entry("sunk", module="tests.plugins.not_there_at_all"), "ModuleNotFoundError"),
    (entry("sunk", "NoSuchThing"), "AttributeError"),
    (entry("sunk", "Misspelt"), "unknown hook 'blocklang_output'"),
    (entry("sunk", "WrongArguments"), "a hook that does not fit"),
]
BROKEN_WHEN_ASKED = [
    ("Raises", "Its hook blocklang_outputs fails: RuntimeError: the tide is out."),
    ("Exits", "Its hook blocklang_outputs fails: SystemExit: 3."),
    ("GivesNothing", "Its hook blocklang_outputs should give a sequence of Output, but gives nothing."),
    ("GivesText", "Its hook blocklang_outputs should give a sequence of Output, but gives a sequence that holds str."),
    ("GivesOne", "Its hook blocklang_outputs should give a sequence of Output, but gives a Output."),
    ("BadName", "It offers Output with the name 'Tide Table'; write names in lower case, with hyphens."),
    ("BadDefault", "Its output `tide-table` has the default format 'pdf', which it does not offer."),
    ("NoFormats", "Its output `tide-table` names no formats."),
    ("NothingToCall", "Its output `tide-table` has nothing to call as `make`."),
]


def names_of(offered: extensions.Offered) -> list[str]:
    return [item.name for item in offered.items]


def test_what_plugins_offer_is_sorted_by_name_whatever_the_order_of_entry_points() -> None:
    found = [entry("harbour", "Harbour"), entry("marsh", "Marsh")]
    for order in (found, found[::-1]):
        assert names_of(extensions.outputs(load_plugins(order))) == ["buoy-list", "reed-count", "tide-table"]


def test_transcript_of_which_hook_is_called_when() -> None:
    strangers.calls.clear()
    plugins = load_plugins([entry("marsh", "Marsh"), entry("harbour", "Harbour")])
    assert strangers.calls == []
    extensions.outputs(plugins)
    extensions.checks(plugins)
    folders = extensions.library_folders(plugins)
    assert strangers.calls == [
        "harbour: outputs",
        "marsh: outputs",
        "harbour: checks",
        "harbour: library folders",
    ]
    assert [(plugin, str(folder)) for plugin, folder in folders.items] == [("harbour", "/nowhere/harbour")]


@pytest.mark.parametrize(("broken", "found"), BROKEN_ON_LOADING, ids=lambda given: getattr(given, "value", None))
def test_plugin_that_cannot_be_loaded_is_named_and_skipped(broken, found) -> None:
    plugins = load_plugins([broken, entry("marsh", "Marsh")])
    (diagnostic,) = plugins.diagnostics
    assert diagnostic.severity is Severity.WARNING
    assert diagnostic.title == "The plugin `sunk` is broken"
    assert found in diagnostic.found
    assert names_of(extensions.outputs(plugins)) == ["reed-count"]


@pytest.mark.parametrize(("broken", "found"), BROKEN_WHEN_ASKED)
def test_plugin_that_answers_wrongly_is_named_and_skipped(broken, found) -> None:
    offered = extensions.outputs(load_plugins([entry("adrift", broken), entry("marsh", "Marsh")]))
    (diagnostic,) = offered.diagnostics
    assert (diagnostic.severity, diagnostic.title) == (Severity.WARNING, "The plugin `adrift` is broken")
    assert diagnostic.found == found
    assert names_of(offered) == ["reed-count"]


def test_check_that_cannot_be_called_is_named_and_skipped() -> None:
    offered = extensions.checks(load_plugins([entry("adrift", "NothingToCall")]))
    assert offered.items == ()
    assert [one.found for one in offered.diagnostics] == ["Its check `low-water` has nothing to call as `run`."]


def test_first_plugin_by_name_keeps_a_name_that_two_want() -> None:
    offered = extensions.outputs(load_plugins([entry("zostera", "Clashes"), entry("harbour", "Harbour")]))
    assert names_of(offered) == ["buoy-list", "sail-plan", "tide-table"]
    assert offered.items[2].summary == "A text."
    (diagnostic,) = offered.diagnostics
    assert diagnostic.title == "The plugin `zostera` is broken"
    assert diagnostic.found == (
        "It offers `tide-table` (blocklang_outputs), which the plugin `harbour` offers already."
    )


def test_one_plugin_listed_twice_is_loaded_once() -> None:
    assert len(load_plugins([entry("marsh", "Marsh"), entry("marsh", "Marsh")]).plugins) == 1


def test_everything_that_ships_loads_and_answers_every_hook() -> None:
    plugins = load_plugins()
    offers = (
        extensions.outputs(plugins),
        extensions.checks(plugins),
        extensions.cells(plugins),
        extensions.library_folders(plugins),
        extensions.cutting_methods(plugins),
        extensions.pressing_preferences(plugins),
    )
    assert plugins.diagnostics == ()
    assert [offered.diagnostics for offered in offers] == [()] * len(offers)
    assert {"diagram"} <= set(names_of(offers[0]))
