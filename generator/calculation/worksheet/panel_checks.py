"""What is measured while a panel is sewn: a panel and its project come in, check points and what to do go out."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from fractions import Fraction

from generator.calculation.panel.leeway import leeway_of
from generator.calculation.panel.rods import rod_depth
from generator.calculation.panel.tolerance import ACROSS, ALONG, MeasuredWords, check_points, corrections
from generator.calculation.turning.repeat import edge_lie
from generator.calculation.worked import BreadthJoin, Panel, Rods, TuckSet
from generator.calculation.worked_checks import Checks, Leeway, Others
from generator.calculation.worksheet.making import waits_for
from generator.calculation.worksheet.scope import Scope
from generator.definitions.pieces.flat import EnvelopeBack, Facing, Rectangle
from generator.definitions.pieces.model import PieceModel
from generator.definitions.pieces.panel import TuckedPanel
from generator.lengths import Edition, round_down

_EVERY = 6
# A strip is gathered anew, a circle has no side, a second panel is as hard to change as the first.
_TRIMMED = (Rectangle, Facing, EnvelopeBack)


def across_checks(scope: Scope, name: str, panel: Panel, joins: Iterable[BreadthJoin]) -> Checks:
    """Return the check points of the tucks across a panel."""
    tucks, turns = panel.across, panel.turned
    lies = (edge_lie(turns, at_left=True), edge_lie(turns, at_left=False))
    leeway = leeway_of(
        tucks,
        scope.edition,
        lies=lies if turns else ("out", "out"),
        joined=(join.tuck for join in joins),
        leaves_out=all(len(set(row)) <= 1 for row in turns),
        others=other_pieces(scope, name, ("top", "bottom")),
    )
    if panel.rods is not None:
        leeway = _with_rods(leeway, panel.rods, tucks, scope.edition)
        leeway = _as_hung(leeway, scope.project.pieces[name])
    return _checks(tucks, leeway, scope.edition, ACROSS)


def _with_rods(leeway: Leeway, rods: Rods, tucks: TuckSet, edition: Edition) -> Leeway:
    """What can give where a rod goes into each tuck: none is left out, nor so shallow that its rod sticks."""
    least = rod_depth(rods.thick, edition)
    spare = (round_down(depth - least, edition.mark) for depth in tucks.depths)
    changes = tuple(min(change, room) for change, room in zip(leeway.changes, spare, strict=True))
    return replace(leeway, changes=changes, leaves_out=False)


def _as_hung(leeway: Leeway, blind: PieceModel) -> Leeway:
    """What can give at the ends of a blind: hems hold what it hangs by, and over its first rod it needs its head."""
    top = blind.hangs_by if isinstance(blind, TuckedPanel) else ""
    left, right = (Fraction(0) if at == top else trim for at, trim in zip(leeway.sides, leeway.trims, strict=True))
    return replace(leeway, trims=(left, right), lets_out=Fraction(0))


def cross_checks(scope: Scope, name: str, tucks: TuckSet) -> Checks:
    """Return the check points of the tucks from side to side, which are measured from the top edge."""
    leeway = leeway_of(
        tucks,
        scope.edition,
        others=other_pieces(scope, name, ("left", "right")),
        sides=("top", "bottom"),
    )
    return _checks(tucks, leeway, scope.edition, ALONG)


def _checks(tucks: TuckSet, leeway: Leeway, edition: Edition, words: MeasuredWords) -> Checks:
    """All check points; what to do is told where the panel is off by more than is fine."""
    points = check_points(tucks, edition, _EVERY, leeway, words)
    told = tuple(
        step for point in points for step in corrections(tucks, point, edition, leeway) if abs(step.off) > point.within
    )
    return Checks(points, told, leeway)


def other_pieces(scope: Scope, panel: str, sides: tuple[str, str]) -> Others:
    """Return whether other pieces wait for a panel, or are cut already and sewn to these sides of it, to be trimmed."""
    others = {name: piece for name, piece in scope.project.pieces.items() if name != panel}
    if waits_for(scope, {f"{panel}.{'along' if 'left' in sides else 'across'}"}):
        return "wait"
    at = {*sides, "all"}
    for meeting in scope.project.edges_that_meet:
        for own, other in ((meeting.join.edges, meeting.to.edges), (meeting.to.edges, meeting.join.edges)):
            meets = any(name == panel and side in at for name, side in own)
            if meets and any(name in others and isinstance(others[name], _TRIMMED) for name, _ in other):
                return "cut"
    return "none"
