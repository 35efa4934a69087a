"""Which patches stay together: units that the author names (always), and placed blocks (while it costs nothing)."""

from collections.abc import Iterable

from blocklang.assembly.demands import Demands
from blocklang.assembly.regions import Region
from blocklang.graph.values import PatchGraph

Chain = tuple[str, ...]


class Wholes:
    """Numbers the patches of a region so that patches of one number stay together."""

    def __init__(self, graph: PatchGraph, demands: Demands) -> None:
        """Note what each patch belongs to, the largest first."""
        named = [tuple(name for name, patches in demands.wholes if p in patches) for p in range(len(graph.sides))]
        self._named: tuple[Chain, ...] = tuple(named)
        self._all = _all_chains(graph, demands)
        self._places: dict[str, int] = {}
        for patch, chain in enumerate(self._all):
            if chain:
                self._places.setdefault(chain[0], patch)

    def named(self, region: Region) -> dict[int, int]:
        """Number the patches by the author's units alone; empty when nothing has to stay together."""
        return _labels(self._named, region)

    def all(self, region: Region) -> dict[int, int]:
        """Number the patches by the author's units and placed blocks; empty when nothing stays together."""
        return _labels(self._all, region)

    def group_of(self, patch: int) -> str:
        """Return the outermost placed block or named unit that a patch belongs to; "" when none."""
        return self._all[patch][0] if self._all[patch] else ""

    def group_place(self, name: str) -> int:
        """Return where a placed block comes in the file; what belongs to none comes after all of them."""
        return self._places.get(name, len(self._all))


def runs_between(graph: PatchGraph, labels: dict[int, int], seams: Iterable[int]) -> bool:
    """Tell whether seams run between patches of different numbers all along; with no numbers anything may be parted."""
    sides = (graph.segments[index].patches for index in seams)
    return not labels or all(labels[left] != labels[right] for left, right in sides)


def _all_chains(graph: PatchGraph, demands: Demands) -> tuple[Chain, ...]:
    """Return, for each patch, the placed blocks and named units round it, the largest first."""
    members: dict[str, set[int]] = {}
    for index, patch in enumerate(graph.block.patches):
        for depth in range(len(patch.group)):
            members.setdefault("/".join(patch.group[: depth + 1]), set()).add(index)
    for name, patches in demands.wholes:
        members.setdefault(f"{name} ", set()).update(patches)
    chains: list[list[str]] = [[] for _ in graph.block.patches]
    for name in sorted(members, key=lambda name: -len(members[name])):
        for member in members[name]:
            chains[member].append(name)
    return tuple(tuple(chain) for chain in chains)


def _labels(chains: tuple[Chain, ...], region: Region) -> dict[int, int]:
    names = [chains[patch] for patch in region.patches]
    depth = _shared_depth(names)
    keys = [n[: depth + 1] if len(n) > depth else (p,) for n, p in zip(names, region.patches, strict=True)]
    numbers: dict[object, int] = {}
    labels = {p: numbers.setdefault(key, len(numbers)) for p, key in zip(region.patches, keys, strict=True)}
    return labels if 1 < len(numbers) < len(keys) else {}


def _shared_depth(names: list[Chain]) -> int:
    first, depth = names[0], 0
    while depth < len(first) and all(len(name) > depth and name[depth] == first[depth] for name in names):
        depth += 1
    return depth
