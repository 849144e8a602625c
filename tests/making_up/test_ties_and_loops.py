"""Ties and loops at places of an edge: how many, where, which step sews them on, and what is refused."""

from __future__ import annotations

from pathlib import Path

import pytest

from generator.calculation.worked_project import Worksheet
from generator.calculation.worksheet.sheet import worked_sheet
from generator.definitions.project import load_project
from generator.errors import FaultyFileError
from generator.lengths import CENTIMETRE
from tests.making_up.demo_recipes import room
from tests.room import put

BLIND = """\
title: Tied cloth
kind: other
summary: A lined cloth with ties along its top.
sizes:
  one:
    wide: 20 in or 50 cm
    high: 12 in or 30 cm
cloths:
  face:
    label: cotton
    width: 44 in or 112 cm
pieces:
  front:
    kind: rectangle
    finished across: wide
    finished along: high
  back:
    kind: rectangle
    finished across: wide
    finished along: high
  tie:
    kind: tie
    quantity: 6
    length: 8 in or 20 cm
    width: 1/2 in or 1.2 cm
edges that meet:
  - join: front.all
    to: back.all
closures:
  - kind: ties
    strips: tie
    each: 2
    at: 2 in, 10 in, 18 in or 5 cm, 25 cm, 45 cm
    on: front.top
    onto: back.top
steps:
  - use: as usual
"""
HEMMED = put(
    BLIND,
    ("    finished along: high\n  back", "    finished along: high\n    edges: hem 1/2 in or 1.5 cm\n  back"),
    ("  back:\n    kind: rectangle\n    finished across: wide\n    finished along: high\n", ""),
    ("edges that meet:\n  - join: front.all\n    to: back.all\n", ""),
    ("  - kind: ties\n", "  - kind: loops\n"),
    ("    onto: back.top\n", ""),
)


def sheet(folder: Path, text: str, edition: str = "inch") -> Worksheet:
    path = folder / "cloth.yaml"
    path.write_text(text, encoding="utf-8")
    return worked_sheet(load_project(path, room().room, folder), "one", room().room.edition(edition), room())


def sewn(worksheet: Worksheet) -> str:
    return next(step.text for step in worksheet.steps if step.standard == "set ties")


def refused(folder: Path, *changes: tuple[str, str]) -> str:
    with pytest.raises(FaultyFileError) as fault:
        sheet(folder, put(BLIND, *changes))
    return str(fault.value)


def warned(folder: Path, *changes: tuple[str, str]) -> list[str]:
    return [one.text for one in sheet(folder, put(BLIND, *changes)).findings if one.level == "warning"]


def test_ties_lie_at_the_places_that_are_told(tmp_path: Path) -> None:
    (inch,), (metric,) = sheet(tmp_path, BLIND).closures, sheet(tmp_path, BLIND, "metric").closures
    assert (inch.number, inch.each, inch.positions) == (3, 2, (2, 10, 18))
    assert [place / CENTIMETRE for place in metric.positions] == [5, 25, 45]
    assert "the top edge of the front: their middles 2 side by side at 2, 10, 18 in from its start" in sewn(
        sheet(tmp_path, BLIND)
    )


def test_a_number_and_a_distance_from_the_ends_divide_the_edge(tmp_path: Path) -> None:
    """20 in less 2 in at both ends are 16 in; four ties leave 3 spaces of 5 1/3 in: 2, 7 1/3, 12 2/3, 18.

    To the nearest mark of 1/16 in: 7 5/16 and 12 11/16.
    """
    text = put(
        BLIND,
        ("    at: 2 in, 10 in, 18 in or 5 cm, 25 cm, 45 cm\n", "    number: 4\n    from ends: 2 in or 5 cm\n"),
        ("quantity: 6", "quantity: 8"),
    )
    assert "at 2, 7 5/16, 12 11/16, 18 in from its start" in sewn(sheet(tmp_path, text))


def test_as_usual_makes_the_ties_and_bastes_them_on_before_the_seam_that_catches_them(tmp_path: Path) -> None:
    names = [step.standard for step in sheet(tmp_path, BLIND).steps]
    assert names.index("make ties") < names.index("set ties") < names.index("sew and turn")
    assert "Baste it inside the allowance" in sewn(sheet(tmp_path, BLIND))
    assert "each loop" not in sewn(sheet(tmp_path, BLIND))
    line = next(step.text for step in sheet(tmp_path, BLIND).steps if step.standard == "sew and turn")
    assert "every tie" in line
    assert warned(tmp_path) == []


def test_loops_on_a_hem_are_sewn_on_when_it_is_hemmed(tmp_path: Path) -> None:
    found = sheet(tmp_path, HEMMED)
    names = [step.standard for step in found.steps]
    assert names.index("hem") < names.index("set ties")
    assert "Fold each loop in half" in sewn(found)
    assert "Lay it on the hem" in sewn(found)
    assert "Baste it" not in sewn(found)


def test_ties_and_loops_are_sewn_and_not_bought(tmp_path: Path) -> None:
    assert sheet(tmp_path, BLIND).notions == sheet(tmp_path, HEMMED).notions == ()


@pytest.mark.parametrize(
    ("old", "new", "told"),
    [
        ("quantity: 6", "quantity: 4", "6 of 'tie' are sewn on, and 4 are cut; write quantity: 6"),
        (
            "18 in or",
            "21 in or",
            "21 in lies beyond 'front.top', which is 20 in long; the places after 'at'",
        ),
        ("10 in, 18 in", "18 in, 10 in", "10 in stands behind 18 in; write the places after 'at' in their order"),
        ("    each: 2\n", "    number: 3\n", "'number' does not go with 'at', which tells every place"),
        (
            "strips: tie",
            "strips: back",
            "'back' is a rectangle; ties and loops are a piece of the kind 'tie'",
        ),
        ("kind: ties", "kind: snaps", "'strips' goes with ties and loops; take it out"),
        ("kind: ties", "kind: loops", "loops are sewn to one edge, the one after 'on'; take 'onto' out"),
    ],
)
def test_what_cannot_be_sewn_on_is_refused(tmp_path: Path, old: str, new: str, told: str) -> None:
    assert told in refused(tmp_path, (old, new))


def test_ties_that_lie_over_each_other_or_over_the_end_are_told(tmp_path: Path) -> None:
    """Two ties of 1/2 in are 1 in wide: at 2 and 2 3/4 in they overlap; at 1/4 in they reach 1/4 in over the end."""
    close = warned(tmp_path, ("2 in, 10 in, 18 in", "2 in, 2 3/4 in, 18 in"))
    assert [one.split(";")[0] for one in close] == [
        "the ties on 'front.top' lie over each other: at a place they are 1 in wide"
    ]
    over = warned(tmp_path, ("at: 2 in, 10", "at: 1/4 in, 10"))
    assert [one.split(";")[0] for one in over] == ["the ties at the end of 'front.top' reach over it by 1/4 in"]


def test_ties_at_the_neck_of_a_small_child_are_refused_wherever_they_lie(tmp_path: Path) -> None:
    neck = ("front", "neck band")
    text = BLIND.replace(*neck).replace("summary:", "cautions: small children\nsummary:")
    with pytest.raises(FaultyFileError, match="a tie at a child's neck can strangle"):
        sheet(tmp_path, text)
