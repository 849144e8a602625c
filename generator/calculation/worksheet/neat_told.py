"""What the steps that neaten tell of their edges: a moment comes in, conditions and words go out."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from types import MappingProxyType

from generator.calculation.worksheet.lists import edge_words
from generator.calculation.worksheet.moment import Moment

_WORDS = {"none": "left raw", "zigzag": "zigzag", "overlock": "overlock machine", "pinked": "pinking shears"}


def _ways(moment: Moment) -> Mapping[str, str]:
    """How each edge of the step is neatened, as its pieces say: of a seam the edge that the file names first."""
    if moment.book is None:
        return {}
    edges = [pair[0] for seam in moment.seams for pair in seam.pairs]
    named = (item.on.rpartition(".") for item in moment.gives if item.state == "edged")
    edges += [(piece, side) for piece, _, side in named]
    return {".".join(edge): moment.book.thing.parts[edge[0]].neat_way(edge[1]) for edge in edges}


def _told(moment: Moment) -> str:
    """Which edges are neatened how."""
    edges: dict[str, list[str]] = {}
    for edge, way in _ways(moment).items():
        edges.setdefault(way, []).append(edge_words(edge, moment.context.pieces))
    return "\n".join(f"- {_WORDS[way]}: {', '.join(names)}" for way, names in edges.items())


NEAT_CONDITIONS: Mapping[str, Callable[[Moment], bool]] = MappingProxyType(
    {
        "zigzagged": lambda moment: "zigzag" in _ways(moment).values(),
        "overlocked": lambda moment: "overlock" in _ways(moment).values(),
        "pinked": lambda moment: "pinked" in _ways(moment).values(),
        "several ways": lambda moment: len(set(_ways(moment).values())) > 1,
    }
)
NEAT_BRACKETS: Mapping[str, Callable[[Moment], str]] = MappingProxyType({"neat ways": _told})
