"""The library's blocks, planned as the commands plan them."""

import json
from functools import cache
from pathlib import Path
from typing import Any

from blocklang import route
from blocklang.assembly import Assembly, assemble
from blocklang.cli.plugged import Plugged
from blocklang.cli.walking import Walk
from blocklang.diagnostics import Severity
from blocklang.graph import PatchGraph
from blocklang.language import Overrides
from blocklang.plan import PlanOptions, SewingPlan
from blocklang.plan_json import plan_to_json

BLOCKS = Path(__file__).parents[2] / "blocks"
NAMES = tuple(sorted(path.stem for path in BLOCKS.glob("*/*.block")))


@cache
def graph_of(name: str) -> PatchGraph:
    """Return the patch graph of a library block."""
    checked = Walk().check(name, Overrides())
    assert checked.graph is not None
    assert not checked.diagnostics, [one.found for one in checked.diagnostics]
    return checked.graph


@cache
def assembly_of(name: str) -> Assembly:
    """Return its sewing order."""
    assembled = assemble(graph_of(name))
    assert assembled.assembly is not None, assembled.diagnostics
    return assembled.assembly


@cache
def plan_of(name: str) -> SewingPlan:
    """Return the plan of a library block."""
    planned = route.plan(route.Checked(graph_of(name), ()), PlanOptions(), Plugged().techniques())
    assert planned.plan is not None
    assert not [one for one in planned.diagnostics if one.severity is Severity.ERROR]
    return planned.plan


@cache
def json_of(name: str) -> dict[str, Any]:
    """Return its JSON, read back."""
    values: dict[str, Any] = json.loads(plan_to_json(plan_of(name)))
    return values
