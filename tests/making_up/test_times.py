"""The times of the demo projects: counted a seam, with its corners and copies, and adding up to the whole."""

from __future__ import annotations

from fractions import Fraction

import pytest

from generator.calculation.making.timing import operation_minutes
from generator.calculation.making_up.acts import Act
from generator.calculation.making_up.book import book_of
from generator.calculation.making_up.joining import Joiner
from generator.calculation.pieces.openings import turning_opening
from generator.calculation.worksheet.making import acts_taken, methods_of, thing_of
from generator.calculation.worksheet.pieces.piece import worked_piece
from generator.calculation.worksheet.recipes import taken_steps
from generator.calculation.worksheet.scope import Scope
from generator.calculation.worksheet.sheet import worked_sheet
from generator.calculation.worksheet.step_context import StepContext
from generator.calculation.worksheet.times import WORK
from generator.calculation.worksheet.work import SewnStretch, Work, work_of
from generator.definitions.project import load_project
from generator.definitions.room_file import DEFAULT_RATES
from tests.making_up.demo_recipes import PROJECTS, ROOT, room


def work(project_name: str, technique: str, *on: str) -> Work:
    """What a standard step is done to, in the first size in inches."""
    shared = room()
    others = ROOT / "tests" / "making_up" / "projects"
    path = next(path for path in (*PROJECTS, *others.glob("*.yaml")) if path.stem == project_name)
    project = load_project(path, shared.room, ROOT)
    edition = shared.room.edition("inch")
    scope = Scope(project, next(iter(project.sizes)), edition, shared.room, worked_piece)
    pieces = {name: scope.piece(name) for name in project.pieces}
    thing, methods = thing_of(scope, pieces), methods_of(shared.techniques)
    acts = acts_taken(scope, taken_steps(scope, thing, methods), methods)
    book = book_of(thing, methods, acts)
    joiner = Joiner(book, lambda part: turning_opening(part.across, part.along, edition))
    context = StepContext(scope, pieces, {}, (), (), shared.techniques, joiner, tuple(acts))
    edges = tuple((name, edge) for name, _, edge in (one.partition(".") for one in on))
    return work_of(context, [Act(technique, edges)], [name for name, _ in edges])


def stretch(length: str, corners: int = 0, times: int = 1) -> SewnStretch:
    return SewnStretch(sum((Fraction(part) for part in length.split()), Fraction(0)), corners, times)


@pytest.mark.parametrize(
    ("project", "technique", "on", "seams"),
    [
        # 4 x 12 round the cushion, with four corners.
        ("awning-cushion", "join pieces", ["front", "back"], [stretch("48", 4)]),
        # Both sides of the bag and its bottom: 11 + 10 + 11, two corners.
        ("customs-tote", "bag", ["front", "back"], [stretch("32", 2)]),
        # Four mats: 2 x (16 + 12) round each.
        ("tide-table-mats", "bind", ["binding"], [stretch("56", 4, 4)]),
        # A panel to either end of the middle, 12 long each.
        ("ferry-runner", "join pieces", ["end panel", "plain middle"], [stretch("12"), stretch("12")]),
        # The lining all round in its four seams: 36, 36, 12, 12.
        ("ferry-runner", "line and turn", ["lining"], [stretch("36"), stretch("36"), stretch("12"), stretch("12")]),
        # Both faces of the cushion, 4 x 14 each.
        ("bosun-seat-pad", "make boxing", ["boxing", "top", "bottom"], [stretch("56", 4), stretch("56", 4)]),
        # A binding at the top and one at the bottom of the sleeve, each 18 round.
        ("lantern-sleeve", "bind", ["binding"], [stretch("18"), stretch("18")]),
        # Two yokes of 12 with their skirts, and the skirt's two side seams of 12.
        # Two panels, each the other's like: 14 + 12 + 14 once, not once a panel.
        ("oyster-bag", "bag", ["panel"], [stretch("40", 2)]),
        ("net-loft-pinafore", "join pieces", ["skirt", "yoke"], [stretch("12", 0, 2), stretch("12", 0, 2)]),
    ],
)
def test_a_seam_has_its_length_corners_and_copies(
    project: str, technique: str, on: list[str], seams: list[SewnStretch]
) -> None:
    found = work(project, technique, *on).seams
    assert [SewnStretch(Fraction(round(one.length)), one.corners, one.times) for one in found] == seams


def test_hems_are_those_that_the_step_makes() -> None:
    # Two frills, each with two ends of 2 1/2 and a lower edge one and a half times 18 1/4 long.
    hems = work("pier-bolster", "hem", "frill").hems
    assert sorted((one.length, one.times) for one in hems) == [(2.5, 2), (2.5, 2), (27.375, 2)]
    # Named by its edge, it is that one alone.
    assert [one.length for one in work("gull-window-curtain", "hem", "curtain.top").hems] == [18]


def test_an_opening_is_as_long_as_it_is_left() -> None:
    # Half of 15 3/4 round, up to the next half inch; the back edge of a box; by the rule for a lining of 12 by 36.
    assert [one.length for one in work("pier-bolster", "close opening", "inner").openings] == [8]
    assert [one.length for one in work("bosun-seat-pad", "close opening", "boxing").openings] == [14]
    (opening,) = work("breakwater-runner", "close opening", "lining").openings
    assert opening.length == turning_opening(Fraction(12), Fraction(36), room().room.edition("inch"))


@pytest.mark.parametrize("path", PROJECTS, ids=lambda path: path.stem)
@pytest.mark.parametrize("edition", ["inch", "metric"])
def test_times_of_steps_add_up_to_the_whole(path: object, edition: str) -> None:
    project = load_project(path, room().room, ROOT)  # type: ignore[arg-type]
    for size in project.sizes:
        sheet = worked_sheet(project, size, room().room.edition(edition), room())
        assert sum(step.minutes for step in sheet.steps) == sheet.minutes > 0


def test_times_are_those_that_a_hand_takes() -> None:
    """Told by hand for the largest sizes at the room's rates, with what a person takes who has done it before."""
    least = {
        ("quay-cushion", "envelope back"): 10,  # two hems 20 in long
        ("tide-table-mats", "bind"): 100,  # 4 x 68 in, sewn down by hand
        ("bosun-seat-pad", "cut bias"): 25,  # two squares to tubes, 148 in of strip
        ("tide-table-mats", "join lengths"): 10,
        ("customs-tote", "make straps"): 15,
        ("bosun-seat-pad", "make boxing"): 20,
    }
    for (name, standard), minutes in least.items():
        project = load_project(next(path for path in PROJECTS if path.stem == name), room().room, ROOT)
        sheet = worked_sheet(project, list(project.sizes)[-1], room().room.edition("inch"), room())
        (step,) = (step for step in sheet.steps if step.standard == standard)
        assert minutes <= step.minutes <= 2 * minutes, (name, standard)


def test_one_tuck_takes_what_a_sewer_tells_of_it() -> None:
    """A sewer got her time "down to about 6-7 minutes to pin and sew one row" of tucks, on cloth 24 in wide.

    So an even hand is a little quicker than her and a beginner slower. Source: the-littlest-thistle.com, December 2011.
    """
    tuck = {"mark a fold": Fraction(1), "crease": Fraction(24), "stitch": Fraction(24), "start a seam": Fraction(1)}
    practised = operation_minutes(tuck, DEFAULT_RATES)
    assert 4 <= practised <= 6 < 7 <= 2 * practised
    assert operation_minutes(tuck, room().room.rates) == practised


def test_what_is_done_twice_is_counted_twice() -> None:
    # Two halves, each with a hem 12 in long; two squares for two pipings, each joined to a tube in two seams.
    halves = WORK["hem halves"](work("quay-cushion", "envelope back", "back"))
    assert (halves["turn a hem"], halves["stitch"]) == (48, 24)
    assert WORK["cut bias"](work("bosun-seat-pad", "cut bias", "piping"))["join a length"] == 4
    # Round four mats of 16 by 12: sewn on by machine, then down by hand.
    bound = WORK["bind edges"](work("tide-table-mats", "bind", "binding"))
    assert (bound["stitch"], bound["sew by hand"]) == (224, 224)
