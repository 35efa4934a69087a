"""The plan as JSON, schema `blocklang.plan/1`: what other programs, and checks from outside, stand on."""

import json
from collections.abc import Iterable
from dataclasses import asdict

from blocklang.assembly.values import Count
from blocklang.block import Fabric, SpinSense
from blocklang.geometry import TICKS_PER_INCH, Edge, Point
from blocklang.plan import PlanJoin, PlanStep, SewingPlan
from blocklang.pressing.values import PlacedVersions, Pressing

SCHEMA = "blocklang.plan/1"

Json = dict[str, object]


def plan_to_json(plan: SewingPlan) -> str:
    """Return the plan as JSON text with a final newline; lengths in the file's unit, origin lower left, y up."""
    return json.dumps(plan_to_values(plan), indent=1, ensure_ascii=False) + "\n"


def plan_to_values(plan: SewingPlan) -> Json:
    """Return the plan as plain values, ready for JSON."""
    write = _Writer(plan)
    return {
        "schema": SCHEMA,
        "block": write.block(),
        "seam_allowance": write.length(plan.block.seam_allowance),
        "fabrics": [_fabric(fabric) for fabric in plan.block.fabrics],
        "patches": write.patches(),
        "junctions": write.junctions(),
        "steps": [write.step(step) for step in plan.steps],
        "set_in": _count("pivots", plan.assembly.pivots),
        "partial": _count("count", plan.assembly.partials),
        "order": asdict(plan.order),
        "pressing": _pressing(plan.pressing),
    }


def _fabric(fabric: Fabric) -> Json:
    title = fabric.title or fabric.id
    return {"id": fabric.id, "role": fabric.role, "value": str(fabric.value), "colour": fabric.colour, "title": title}


def _count(name: str, count: Count) -> Json:
    return {name: count.count, "minimum": count.minimum, "proven": count.proven}


def _pressing(pressing: Pressing) -> Json:
    return {
        "lockable": len(pressing.lockable),
        "locked": len(pressing.locked),
        "proven": pressing.proven,
        "reasons": [reason.text for reason in pressing.reasons],
        "versions": [_versions(placed) for placed in pressing.versions],
    }


def _versions(placed: PlacedVersions) -> Json:
    return {
        "block": placed.block,
        "text": placed.text,
        "fewest": placed.fewest,
        "versions": [{"letter": version.letter, "copies": len(version.copies)} for version in placed.versions],
        "could_be_turned": len(placed.turned),
    }


class _Writer:
    """Turns ticks into the file's unit, and indices into names."""

    def __init__(self, plan: SewingPlan) -> None:
        self.plan = plan
        self.scale = plan.block.unit.per_inch / TICKS_PER_INCH

    def length(self, ticks: float) -> float:
        return round(ticks * self.scale, 6) + 0.0

    def point(self, point: Point) -> list[float]:
        return [self.length(point.x), self.length(point.y)]

    def points(self, points: Iterable[Point]) -> list[list[float]]:
        return [self.point(point) for point in points]

    def edges(self, edges: Iterable[Edge]) -> list[Json]:
        return [self.edge(edge) for edge in edges]

    def edge(self, edge: Edge) -> Json:
        value: Json = {"from": self.point(edge.start), "to": self.point(edge.end)}
        if edge.arc is not None:
            value |= {"centre": self.point(edge.arc.centre), "clockwise": edge.arc.clockwise}
        return value

    def block(self) -> Json:
        block = self.plan.block
        return {
            "name": block.name,
            "finished": [self.length(side) for side in block.size],
            "outline": self.points(block.outline.chords()),
            "edges": self.edges(block.outline.edges),
            "unit": str(block.unit),
            "credits": [
                {"name": c.name, "author": c.author, "licence": c.licence, "source": c.source} for c in block.credits
            ],
        }

    def patches(self) -> list[Json]:
        return [
            {
                "id": patch.id,
                "fabric": patch.fabric,
                "stripes": list(patch.stripes.fabrics) if patch.stripes else [],
                "outline": self.points(patch.outline.chords()),
                "edges": self.edges(patch.outline.edges),
            }
            for patch in self.plan.block.patches
        ]

    def junctions(self) -> list[Json]:
        pressing = self.plan.pressing
        lockable, locked = set(pressing.lockable), set(pressing.locked)
        spins = {spun.junction: spun.sense for spun in pressing.spins}
        return [
            {
                "id": self.plan.junction_names[junction.index],
                "at": self.point(junction.at),
                "kind": str(junction.kind),
                "lockable": junction.index in lockable,
                "locked": junction.index in locked,
                "spin": str(spins.get(junction.index, SpinSense.NONE)),
            }
            for junction in self.plan.graph.junctions
        ]

    def step(self, step: PlanStep) -> Json:
        return {
            "number": step.number,
            "title": step.title,
            "kind": str(step.kind),
            "times": step.times,
            "joins": [self.join(join) for join in step.joins],
            "makes": list(step.makes),
            "measures": [self.length(side) for side in step.measures] if step.measures else None,
            "chain_pieced": step.chained,
            "largest": {
                "unit": step.needle.unit,
                "patches": step.needle.patches,
                "size": [self.length(side) for side in step.needle.size],
            },
            "why": str(step.why),
            "versions": [
                {
                    "letter": one.letter,
                    "makes": list(one.makes),
                    "as_first": one.as_first,
                    "opposite": one.opposite,
                }
                for one in step.versions
            ],
        }

    def join(self, join: PlanJoin) -> Json:
        path = self.plan.assembly.joins[join.index].path
        segments = self.plan.graph.segments
        edges = [segments[t.segment].edge if t.forward else segments[t.segment].edge.reversed() for t in path]
        patches = self.plan.block.patches
        return {
            "units": list(join.units),
            "makes": join.makes,
            "path": self.points(join.path),
            "edges": self.edges(edges),
            "start": "stop" if join.start_stops else "raw-edge",
            "end": "stop" if join.end_stops else "raw-edge",
            "stops": [
                {"at": self.point(stop.at), "step": stop.step, "unit": stop.unit or None, "resumes": stop.resumes}
                for stop in join.stops
            ],
            "locks": [{"at": self.point(lock.at), "step": lock.step} for lock in join.locks],
            "spins": [
                {"at": self.point(spin.at), "sense": str(spin.sense), "undone": list(spin.undone)}
                for spin in join.spins
            ],
            "pivots": self.points(join.pivots),
            "curve": {
                "convex": join.curve.convex,
                "concave": join.curve.concave,
                "marks": self.points(join.curve.marks),
            }
            if join.curve
            else None,
            "press": [
                {
                    "path": self.points(edge.chords()),
                    "toward": "open" if pressed.toward is None else patches[pressed.toward].id,
                }
                for edge, pressed in zip(edges, join.press, strict=True)
            ],
        }
