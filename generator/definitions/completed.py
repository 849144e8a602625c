"""What a short project file leaves out: its tree comes in, the tree with all that follows from the rest goes out.

A panel has the first lengths of its sizes; a piece that says no size goes with the panel, and meets it all round. What
is written is never changed, and every completion is told in a note with the lines that it stands for.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from types import MappingProxyType

from generator.definitions.keyed import name_fault
from generator.definitions.nodes import Group, Key, Listing, Node, Scalar
from generator.definitions.sizes import ABOUT_SIZE
from generator.errors import Place
from generator.listed import listed

Written = str | dict[str, "Written"] | list["Written"]
"""What stands behind a key: a value, keys with values, a list."""
_STAND_IN = "12 in or 30 cm"
_LENGTH = re.compile(r"[\d½¼¾⅛⅜⅝⅞]\s*(in|ft|yd|mm|cm|m)\b")
_PANEL = "tucked panel"
# How a piece is told by its kind and its name: a tucked front.
_SORTS: Mapping[str, str] = MappingProxyType(
    {
        _PANEL: "tucked",
        "rectangle": "plain",
        "circle": "round",
        "envelope back": "lapped",
        "gathered strip": "gathered",
        "pleated strip": "pleated",
    }
)
# From row to row and the fullness of a frill where nobody says them; common practice, no source.
_ROWS: dict[str, Written] = {"spacing": "3 in or 8 cm"}
_AFTER: dict[str, Written] = {"cut": "after the panel"}
_FRILL: dict[str, Written] = {"top": "seam", "left": "seam", "right": "seam", "bottom": "hem 1/4 in or 6 mm"}


@dataclass(frozen=True)
class Completion:
    """Keys that were put into a group: where that stands, what it is called, the keys with their values."""

    place: Place
    name: str
    added: Mapping[str, Written]

    @property
    def told(self) -> str:
        """The words of its note, with the lines that a person could have written."""
        lines = "\n".join(_lines(self.added))
        of = f" of '{self.name}'" if self.name else ""
        return f"left out{of}, so it is taken as if it said:\n{lines}"


def completed(tree: Group) -> tuple[Group, tuple[Completion, ...]]:
    """Return a project with everything that follows from what it says, and what was added to it."""
    tree = replace(tree, entries={key: (named, _short(key, node)) for key, (named, node) in tree.entries.items()})
    pieces = tree.get("pieces")
    if not isinstance(pieces, Group):
        return tree, ()
    panel = next((name for name, (_, node) in pieces.entries.items() if _kind(node) == _PANEL), "")
    found: list[Completion] = []
    lengths = _size_lengths(tree)
    faulty = [name for name in (*pieces.entries, *lengths) if name_fault(name)]
    sized: list[str] = []
    for name, (key, node) in pieces.entries.items():
        added = _told_of(faulty, _of_piece(node, panel, lengths)) if isinstance(node, Group) else {}
        if added and isinstance(node, Group):
            found.append(Completion(key.place, name, added))
            pieces.entries[name] = (key, _with(node, added, key.place))
            sized += [name] if {"finished across", "edge", "length"} & added.keys() and name != panel else []
    whole = _told_of(faulty, _of_project(tree, pieces, panel, sized)) if sized else {}
    if whole:
        place = next((key.place for key, _ in tree.entries.values()), tree.place)
        found.insert(0, Completion(place, "", whole))
        tree = _with(tree, whole, place)
    return tree, tuple(found)


def _told_of(faulty: Sequence[str], added: Iterable[tuple[str, Written]]) -> dict[str, Written]:
    """What is added, without a faulty name in it: that is told where it stands, and not once more where it is used."""
    told = dict(added)
    named = {key for key, value in told.items() if key != "rows" and any(name in str(value) for name in faulty)}
    return {
        key: _STAND_IN if key in named else value
        for key, value in told.items()
        if key not in named or isinstance(value, str)
    }


def _short(key: str, node: Node) -> Node:
    """The cloths of a project, where one is told by its width alone or has no label."""
    if key != "cloths" or not isinstance(node, Group):
        return replace(node, entries=dict(node.entries)) if isinstance(node, Group) else node
    cloths = {}
    for name, (named, cloth) in node.entries.items():
        label = Scalar(name, named.place)
        if isinstance(cloth, Scalar) and re.search(r"\d", cloth.text):
            width = (Key("width", named.place), cloth)
            cloth = Group({"label": (Key("label", named.place), label), "width": width}, cloth.place)
        elif isinstance(cloth, Group) and "label" not in cloth.entries:
            cloth = replace(cloth, entries={"label": (Key("label", named.place), label), **cloth.entries})
        cloths[name] = (named, cloth)
    return replace(node, entries=cloths)


def _size_lengths(tree: Group) -> list[str]:
    """The names of the lengths that the first size gives."""
    sizes = tree.get("sizes")
    first = next(iter(sizes.entries.values()), None) if isinstance(sizes, Group) else None
    given = first[1].entries if first is not None and isinstance(first[1], Group) else {}
    values = {name: node for name, (_, node) in given.items() if name not in ABOUT_SIZE}
    return [name for name, node in values.items() if isinstance(node, Scalar) and _LENGTH.search(node.text)]


def _kind(node: Node) -> str:
    kind = node.get("kind") if isinstance(node, Group) else None
    return kind.text.strip() if isinstance(kind, Scalar) else ""


def _of_piece(node: Group, panel: str, lengths: list[str]) -> Iterator[tuple[str, Written]]:
    """The keys that a piece leaves out, with what they are by themselves."""
    kind = _kind(node)
    if kind == _PANEL:
        if lengths and "outline" not in node.entries:
            yield from _left_out(
                node, {"finished across": lengths[0], "finished along": lengths[min(1, len(lengths) - 1)]}
            )
        rows = node.get("rows")
        if isinstance(rows, Scalar) and rows.text.strip():
            yield "rows", {"plan": rows.text.strip(), **_ROWS}
    elif panel and kind in _GOES_WITH and "outline" not in node.entries:
        yield from _left_out(node, _GOES_WITH[kind](panel, node))


def _left_out(node: Group, keys: Mapping[str, Written]) -> Iterator[tuple[str, Written]]:
    return ((key, value) for key, value in keys.items() if key not in node.entries)


def _flat(panel: str, node: Group) -> dict[str, Written]:
    size: dict[str, Written] = {"finished across": f"{panel}.across", "finished along": f"{panel}.along"}
    return {**size, **(_AFTER if size.keys() - node.entries.keys() else {})}


def _envelope(panel: str, node: Group) -> dict[str, Written]:
    quarter = f"{panel}.across / 4"
    lap = f"larger({quarter}, 3 in) or larger({quarter}, 8 cm)"
    return {**_flat(panel, node), "overlap": lap, "hem": "1 in or 2.5 cm"}


def _frill(panel: str, node: Group) -> dict[str, Written]:
    edge: dict[str, Written] = {"edge": f"{panel}.edge", "fullness": "1 1/2"}
    return {**edge, **({"edges": dict(_FRILL)} if "edge" not in node.entries else {})}


# What a piece is made to where it says no size: the panel, or the way round it.
_GOES_WITH: Mapping[str, Callable[[str, Group], dict[str, Written]]] = MappingProxyType(
    {
        "envelope back": _envelope,
        "rectangle": _flat,
        "facing": _flat,
        "gathered strip": _frill,
        "boxing": lambda panel, node: {"edge": f"{panel}.edge"},
        "piping": lambda panel, node: {"length": f"{panel}.edge"},
        "binding": lambda panel, node: {"length": f"{panel}.edge"},
    }
)


def _of_project(tree: Group, pieces: Group, panel: str, sized: list[str]) -> Iterator[tuple[str, Written]]:
    """What a project leaves out in which pieces go with the panel."""
    kinds = {name: _kind(node) for name, (_, node) in pieces.entries.items()}
    kind = tree.get("kind")
    what = kind.text.strip() if isinstance(kind, Scalar) else ""
    if "summary" not in tree.entries:
        worded = (f"{_SORTS.get(of, '')} {name}".strip() for name, of in kinds.items())
        told = [f"{'an' if one[:1] in 'aeiou' else 'a'} {one}" for one in worded]
        yield "summary", f"A {what} with {listed(told)}." if what and what != "other" else f"Made of {listed(told)}."
    if what == "cushion" and "cautions" not in tree.entries:
        yield "cautions", "pillows near babies"
    if what == "cushion" and "supplies" not in tree.entries:
        across, along = (f"{{{{ {panel}.{way} + 1 in or {panel}.{way} + 2 cm }}}}" for way in ("across", "along"))
        note = "A pad a little larger than the cover keeps the corners full."
        yield "supplies", [{"item": f"Cushion pad, {across} by {along}", "note": note}]
    met: list[Written] = [{"join": join, "to": to} for join, to in _seams(kinds, panel, sized)]
    if met and "edges that meet" not in tree.entries:
        yield "edges that meet", met


def _seams(kinds: Mapping[str, str], panel: str, sized: list[str]) -> Iterator[tuple[str, str]]:
    """What meets: first what later seams catch, then what closes the thing."""
    of = {kind: [name for name in sized if kinds[name] == kind] for kind in _GOES_WITH}
    bands = of["boxing"][:1]
    yield from ((f"{name}.left", f"{name}.right") for name in of["gathered strip"])
    yield from ((f"{panel}.all", f"{name}.top") for name in of["gathered strip"])
    yield from ((f"{panel}.all", f"{name}.edge") for name in (*of["piping"], *bands))
    for name in (*of["rectangle"], *of["facing"], *of["envelope back"]):
        yield (f"{name}.all", f"{bands[0]}.edge") if bands else (f"{panel}.all", f"{name}.all")
    yield from ((f"{panel}.all", f"{name}.edge") for name in of["binding"])


def _with(node: Group, added: Mapping[str, Written], place: Place) -> Group:
    return replace(
        node, entries={**node.entries, **{key: (Key(key, place), _node(value, place)) for key, value in added.items()}}
    )


def _node(written: Written, place: Place) -> Node:
    if isinstance(written, str):
        return Scalar(written, place)
    if isinstance(written, list):
        return Listing(tuple(_node(one, place) for one in written), place)
    return Group({key: (Key(key, place), _node(value, place)) for key, value in written.items()}, place)


def _lines(written: Mapping[str, Written]) -> Iterator[str]:
    """Keys and values as they stand in a file."""
    for key, value in written.items():
        if isinstance(value, str):
            yield f"{key}: {value}"
            continue
        yield f"{key}:"
        for one in value if isinstance(value, list) else ():
            inner = list(_lines(one)) if isinstance(one, dict) else []
            yield from (f"  {'- ' if number == 0 else '  '}{line}" for number, line in enumerate(inner))
        if isinstance(value, dict):
            yield from (f"  {line}" for line in _lines(value))
