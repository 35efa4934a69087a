"""The stages from a block to its plan, for tests that start after the language."""

import json
from typing import Any

from blocklang.assembly import Assembly, assemble
from blocklang.block import Block
from blocklang.cutting import cut
from blocklang.graph import PatchGraph, build_graph
from blocklang.plan import SewingPlan, make_plan
from blocklang.plan_json import plan_to_json
from blocklang.pressing import press


def graph_of(block: Block) -> PatchGraph:
    """Return the graph of a block that is known to be sound."""
    graphed = build_graph(block)
    assert graphed.graph is not None, [(fault.code, fault.found) for fault in graphed.diagnostics]
    return graphed.graph


def assembly_of(block: Block) -> Assembly:
    """Return the sewing order of a block that is known to have one."""
    assembled = assemble(graph_of(block))
    assert assembled.assembly is not None, assembled.diagnostics
    return assembled.assembly


def plan_of(block: Block) -> SewingPlan:
    """Return the whole plan."""
    assembly = assembly_of(block)
    return make_plan(assembly, press(assembly), cut(assembly.graph), ())


def json_of(block: Block) -> dict[str, Any]:
    """Return the whole plan as JSON values, read back from text."""
    values: dict[str, Any] = json.loads(plan_to_json(plan_of(block)))
    return values
