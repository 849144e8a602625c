"""Every diagram is drawn by its key, and the keys name what a worksheet has."""

import pytest
from panels import LINKED, panel_of, piece_of, row_set_of, tuck_set_of, worksheet_of

from generator.calculation.worked import End, Panel, Turn
from generator.definitions.technique_names import TECHNIQUES
from generator.definitions.techniques import load_techniques
from generator.drawing.assembly import ASSEMBLIES
from generator.drawing.catalogue import DIAGRAMS, SIZED, draw, figure_keys
from generator.drawing.style import Style

OWN = ("fold marks", "hem section", "checking", "turns", "ruled rows", "quarter turn", "repeat", "marking strip")


def own_keys(worksheet):
    return [key for key in figure_keys(worksheet) if key.startswith(OWN)]


def test_a_panel_with_rows_has_all_its_diagrams():
    worksheet = worksheet_of(piece_of(panel_of(7), "end panel"))
    assert set(own_keys(worksheet)) == {f"{kind} end panel" for kind in OWN if kind != "hem section"}


def test_a_plain_panel_has_none():
    assert own_keys(worksheet_of(piece_of(Panel(tuck_set_of(0))))) == []


def test_every_key_draws_at_least_one_picture_with_words():
    caught = Panel(tuck_set_of(5, ends=(End("caught hem"), End("caught hem"))), rows=row_set_of(5, 2, LINKED))
    upright = Panel(tuck_set_of(3), rows=row_set_of(3, 1, ((Turn.UPRIGHT,),)))
    worksheet = worksheet_of(piece_of(panel_of(7)), piece_of(caught, "back"), piece_of(upright, "side"))
    keys = own_keys(worksheet)
    assert "hem section back" in keys
    seen = []
    for key in keys:
        pictures = draw(worksheet, key, Style())
        assert pictures[0].key.startswith(key)
        assert all(picture.alt for picture in pictures)
        seen += [picture.key for picture in pictures]
    assert len(seen) == len(set(seen))


def test_an_unknown_kind_is_refused_with_the_kinds_there_are():
    with pytest.raises(
        KeyError, match="no diagram is called 'portrait front'; kinds are marking strip, cross marking strip"
    ):
        draw(worksheet_of(piece_of(panel_of(1))), "portrait front", Style())


def test_no_kind_hides_behind_another():
    kinds = {*DIAGRAMS, *SIZED}
    assert not [(kind, other) for kind in kinds for other in kinds if other.startswith(f"{kind} ")]


def test_every_picture_that_a_standard_step_names_is_one_that_can_be_drawn():
    named = {kind for technique in load_techniques([TECHNIQUES]).values() for kind in technique.figures}
    assert named <= {*DIAGRAMS, *SIZED, *(f"assembly {kind}" for kind in ASSEMBLIES)}
    assert {f"assembly {kind}" for kind in ASSEMBLIES} <= named
