"""Body measures of a room: a project that takes its sizes from a table comes in, the same with these sizes goes out.

A table lies in ``site/body`` and has a row for each size and a column for each measure. Its rows are put where the
project would have its own sizes, so formulas name the columns, and every fault stands at its line of the table.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import field, replace
from pathlib import Path
from typing import Annotated, Self

from generator.definitions.faults import Faults, SilentFault, meant
from generator.definitions.fields import LABEL, WORDS, Label, WordList
from generator.definitions.keyed import Keyed, Located
from generator.definitions.nodes import Group, Key, Node, Scalar, fold
from generator.definitions.readers import LeafGroup, Parts, Schema
from generator.definitions.reading import Reading
from generator.definitions.series import with_series
from generator.definitions.sizes import ABOUT_SIZE
from generator.definitions.yaml_text import read_yaml, shown_path
from generator.errors import FaultyFileError

FOLDER = "site/body"


class SizesFrom(Located):
    """The table that the sizes of a project come from, and which of its rows and columns; without a list all."""

    table: Label
    sizes: WordList = ()
    measures: WordList = ()

    @classmethod
    def value(cls, found: Node, reading: Reading) -> Self:
        """Return the table and what is taken of it; its name alone will do."""
        if isinstance(found, Scalar):
            found = Group({"table": (Key("table", found.place), found)}, found.place)
        return super().value(found, reading)

    @classmethod
    def schema(cls, parts: Parts) -> Schema:
        """Return the JSON Schema: a name, or its keys."""
        return {"anyOf": [WORDS, super().schema(parts)]}


class _Rows:
    """The sizes of a table, for the project to read."""

    def value(self, found: Node, reading: Reading) -> Group:
        """Return the group of rows."""
        if not isinstance(found, Group):
            reading.faults.refuse(found.place, "sizes are wanted here, each a name with its measures below it")
        return found

    def schema(self, parts: Parts) -> Schema:
        """Return the JSON Schema of the rows."""
        return {"type": "object"}


class BodyTable(Keyed):
    """A table of body measures: where they come from, how each is taken, and a row for each size."""

    title: Label
    source: Label
    taken: Annotated[Mapping[str, str], LeafGroup(LABEL)] = field(default_factory=dict)
    sizes: Annotated[Group, _Rows()]


def with_body_table(tree: Group, faults: Faults, root: Path | None) -> tuple[Group, bool]:
    """Return a project with the sizes of its table in place, and whether it has one."""
    named = tree.get("sizes from")
    if named is None:
        return tree, False
    try:
        wanted = SizesFrom.value(named, Reading(faults))
        table, rows = _read(wanted, named, faults, root)
        sizes = _merged(_chosen(rows, wanted, named, faults), tree, table, faults)
    except SilentFault:
        table, sizes = None, Group({}, named.place)
    except FaultyFileError as fault:
        faults.extend(fault.findings)
        table, sizes = None, Group({}, named.place)
    key = tree.entries["sizes from"][0]
    tree = replace(tree, entries={**tree.entries, "sizes": (Key("sizes", key.place), sizes)})
    return _with_how(tree, table, sizes) if table else tree, True


def _read(wanted: SizesFrom, named: Node, faults: Faults, root: Path | None) -> tuple[BodyTable, Group]:
    """Return a table and its rows, each written out."""
    folder = root / FOLDER if root else None
    known = sorted(path.stem for path in folder.glob("*.yaml")) if folder and folder.is_dir() else []
    if folder is None or wanted.table not in known or not re.fullmatch(r"[\w -]+", wanted.table):
        told = f"'sizes from: NAME' reads {FOLDER}/NAME.yaml, and there is no '{wanted.table}'"
        faults.refuse(named.place, f"{told}{meant(wanted.table, known)}")
    path = folder / f"{wanted.table}.yaml"
    tree = read_yaml(path, shown_path(path, root), root)
    if isinstance(tree, Group):
        tree, _ = with_series(tree, faults)
    table = BodyTable.value(tree, Reading(faults))
    if not table.sizes.entries:
        raise SilentFault
    return table, table.sizes


def _chosen(rows: Group, wanted: SizesFrom, named: Node, faults: Faults) -> Group:
    """Return the rows and columns that a project takes, in its own order of the rows."""
    sizes = {name: fold(name) for name in wanted.sizes} or {key.text: name for name, (key, _) in rows.entries.items()}
    columns = {
        name: None
        for _, row in rows.entries.values()
        for name in (row.entries if isinstance(row, Group) else ())
        if name not in ABOUT_SIZE
    }
    lacking = [("size", name, [*rows.entries]) for name, folded in sizes.items() if folded not in rows.entries]
    lacking += [("measure", name, [*columns]) for name in wanted.measures if fold(name) not in columns]
    for sort, name, known in lacking:
        faults.add(named.place, f"the table '{wanted.table}' has no {sort} '{name}'{meant(name, known)}")
    if lacking:
        raise SilentFault
    kept = set(map(fold, wanted.measures)) or set(columns)
    return Group({folded: _row(rows.entries[folded], kept) for folded in sizes.values()}, rows.place)


def _row(row: tuple[Key, Node], kept: set[str]) -> tuple[Key, Node]:
    key, node = row
    if not isinstance(node, Group):
        return key, node
    return key, replace(
        node, entries={name: one for name, one in node.entries.items() if name in kept or name in ABOUT_SIZE}
    )


def _merged(rows: Group, tree: Group, table: BodyTable, faults: Faults) -> Group:
    """Return the rows with where they come from, and with what the project says of these sizes itself."""
    own = tree.get("sizes")
    told = own.entries if isinstance(own, Group) else {}
    for name, (key, _) in told.items():
        if name not in rows.entries:
            faults.add(key.place, f"the table has no size '{key.text}'{meant(key.text, rows.entries)}")
    entries = {}
    for name, (key, row) in rows.entries.items():
        source = (Key("source", row.place), Scalar(f"{table.title}: {table.source}", row.place))
        mine = told[name][1] if name in told else None
        more = mine.entries if isinstance(mine, Group) else {}
        node = replace(row, entries={**row.entries, "source": source, **more}) if isinstance(row, Group) else row
        entries[name] = (key, node)
    return Group(entries, rows.place)


def _with_how(tree: Group, table: BodyTable, sizes: Group) -> Group:
    """Return a project whose deciding measure is told with how the table says that it is taken."""
    said, between = tree.get("measured by"), tree.get("between")
    first = next(iter(sizes.entries.values()))[1]
    columns = [name for name in first.entries if name not in ABOUT_SIZE] if isinstance(first, Group) else []
    shown = said.get("shown") if isinstance(said, Group) else between.get("of") if isinstance(between, Group) else None
    name = fold(shown.text) if isinstance(shown, Scalar) else next(iter(columns), "")
    how = table.taken.get(name)
    if how is None or (isinstance(said, Group) and "how" in said.entries):
        return tree
    place = said.place if isinstance(said, Group) else sizes.place
    keys: dict[str, tuple[Key, Node]] = {"shown": (Key("shown", place), Scalar(name, place))}
    keys |= said.entries if isinstance(said, Group) else {}
    keys["how"] = (Key("how", place), Scalar(how, place))
    return replace(tree, entries={**tree.entries, "measured by": (Key("measured by", place), Group(keys, place))})
