"""Words in square brackets in a technique text: the text comes in, the same with names and lists filled in goes out.

``[piece]`` is a name, ``[marks]`` a list: what a formula between braces cannot say. A new word is one entry.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping, Sequence
from types import MappingProxyType

from generator.calculation.making.needles import sewn_with
from generator.calculation.marked_edges import marked_edges
from generator.calculation.pieces.openings import turning_opening
from generator.calculation.turning.pressed import pressed_words
from generator.calculation.turning.trimming import trim_words, trimming
from generator.calculation.worked import Panel
from generator.calculation.worked_piece import Piece
from generator.calculation.worked_project import MeetingWork
from generator.calculation.worksheet import drawn_lists, lie_lists, lists, released_lists
from generator.calculation.worksheet.cloths import cut_items
from generator.calculation.worksheet.copies_told import copy_list
from generator.calculation.worksheet.cut_order import cut_order
from generator.calculation.worksheet.elastic import elastic_words
from generator.calculation.worksheet.moment import Moment
from generator.calculation.worksheet.moments import MOMENT_BRACKETS
from generator.calculation.worksheet.new_cuts import new_cuts
from generator.calculation.worksheet.own_measure import own_measure_words
from generator.calculation.worksheet.panel_stripes import start_words, stripe_words
from generator.calculation.worksheet.pieces.placed import mouth, place_words, turned_under
from generator.calculation.worksheet.row_bulk import bulk_words, row_runs
from generator.calculation.worksheet.step_context import StepContext
from generator.calculation.worksheet.zips import zip_words
from generator.lengths import Edition, say_length
from generator.listed import listed

Filler = Callable[[StepContext, Sequence[Piece]], str]
_WORD = re.compile(r"\[([a-z ]+)\]")
_LISTED = ("- ", "1.", "|")
_LONGEST_PARAGRAPH = 80  # words
# What the handout shows as a table or a picture of its own.
SHOWN = frozenset(
    (
        *("cuts", "cut list", "list for later", "own measure", "marks", "cross marks", "depths"),
        *("check points", "cross check points", "ruled rows", "rows"),
    )
)


def filled_brackets(text: str, context: StepContext, pieces: Sequence[Piece], moment: Moment | None = None) -> str:
    """Return a text with every bracket that the tool knows filled; other brackets stay as they are."""

    def fill(found: re.Match[str]) -> str:
        if found[1] in MOMENT_BRACKETS:
            return MOMENT_BRACKETS[found[1]](moment) if moment is not None else ""
        filler = BRACKETS.get(found[1])
        return filler(context, pieces) if filler else found[0]

    return _WORD.sub(fill, text)


def printed_brackets(
    text: str, context: StepContext, pieces: Sequence[Piece], moment: Moment | None = None
) -> tuple[str, tuple[str, ...]]:
    """Return a text for the handout without the lists that it shows by themselves, and the words of those lists."""
    shown = dict.fromkeys(found[1] for found in _WORD.finditer(text) if found[1] in SHOWN)
    left = _WORD.sub(lambda found: "" if found[1] in shown else found[0], text)
    words = filled_brackets(left, context, pieces, moment)
    if "own measure" in shown:
        words = f"{words}\n\n{_without_a_sum(context, pieces)}"
    return run_on("\n\n".join(paragraph.strip() for paragraph in words.split("\n\n"))), tuple(shown)


def _without_a_sum(context: StepContext, pieces: Sequence[Piece]) -> str:
    """The table of new cuts of the waiting pieces that no sum in words tells; nothing where there are none."""
    cuts = new_cuts(context.scope, context.pieces)
    uneven = {cut.piece for cut in cuts if cut.follows and not cut.words}
    left = [piece for piece in pieces if piece.after_panel and piece.label in uneven]
    return own_measure_words(context.scope, left) if left else ""


def run_on(text: str) -> str:
    r"""Return a text for paper: short paragraphs run on in one, lists and bold beginnings start anew.

    Examples
    --------
    >>> run_on("Sew.\n\nLook.\n\n**Right when** it is even.")
    'Sew. Look.\n\n**Right when** it is even.'
    """
    paragraphs: list[str] = []
    for paragraph in (one for one in text.split("\n\n") if one.strip()):
        before = paragraphs[-1] if paragraphs else ""
        apart = not before or paragraph.startswith(("**", *_LISTED)) or before.startswith(_LISTED)
        if apart or len(before.split()) + len(paragraph.split()) > _LONGEST_PARAGRAPH:
            paragraphs.append(paragraph)
        else:
            paragraphs[-1] = f"{before} {paragraph}"
    return "\n\n".join(paragraphs)


def _names(pieces: Sequence[Piece]) -> str:
    labels = list(dict.fromkeys(piece.label for piece in pieces))
    return listed(labels)


def _panel(make: Callable[[StepContext, Panel], str]) -> Filler:
    def fill(context: StepContext, pieces: Sequence[Piece]) -> str:
        panels = [piece.panel for piece in pieces if piece.panel is not None]
        return make(context, panels[0]) if panels else ""

    return fill


def _cut_list(*, later: bool) -> Filler:
    """The pieces that are cut at once, or those that wait until the sewn panel has been measured."""

    def fill(context: StepContext, pieces: Sequence[Piece]) -> str:
        items = [item for piece in pieces if piece.after_panel is later for item in cut_items(piece)]
        return lists.cut_list(items, lambda name: _cloth(context, name), context.scope.edition)

    return fill


def _cuts(context: StepContext, pieces: Sequence[Piece]) -> str:
    """The order of cutting, cloth by cloth."""
    names = {piece.cloth for piece in pieces}
    uses = [use for name, use in context.cloths.items() if name in names]
    headed = len(uses) > 1
    orders = [cut_order(use, context.scope.edition) for use in uses]
    return "\n\n".join(
        f"The {use.label}:\n\n{order}" if headed else order for use, order in zip(uses, orders, strict=True)
    )


def _hem(side: str) -> Filler:
    return lambda context, pieces: lists.hem_turns(pieces[0], side, context.scope.edition) if pieces else ""


def _cloth(context: StepContext, piece: str) -> str:
    return context.scope.project.cloths[context.pieces[piece].cloth].label


def _trim(context: StepContext, pieces: Sequence[Piece]) -> str:
    """How long to leave a panel after its rows, and how much falls off at either end."""
    rowed = [piece for piece in pieces if piece.panel is not None and piece.panel.rows is not None]
    if not rowed or rowed[0].panel is None or rowed[0].panel.rows is None:
        return ""
    trimmed = trimming(rowed[0].panel.rows, rowed[0].measures["sewn along"], context.scope.edition)
    return trim_words(trimmed, context.scope.edition)


def _pressed(pieces: Sequence[Piece]) -> str:
    pressed = [piece for piece in pieces if piece.panel is not None and piece.panel.pressed]
    panel = pressed[0].panel if pressed else None
    return pressed_words(panel.pressed, pressed[0].hangs_by) if panel is not None else ""


def _drawn(make: Callable[[Sequence[Piece], Sequence[MeetingWork], Mapping[str, Piece], Edition], str]) -> Filler:
    """Edges of the pieces that are drawn up to what they meet."""
    return lambda context, pieces: make(pieces, context.meetings, context.pieces, context.scope.edition)


def _closures(kinds: Sequence[str], *, holes: bool = False) -> Filler:
    """The places of buttons or their holes, or of whatever else closes; ties are pieces and have none."""

    def fill(context: StepContext, _pieces: Sequence[Piece]) -> str:
        closures = [one for one in context.closures if one.kind in kinds]
        return lists.closure_list(closures, context.pieces, context.scope.edition, holes=holes)

    return fill


def _stripe(context: StepContext, pieces: Sequence[Piece]) -> str:
    cloths = (context.scope.project.cloths[piece.cloth] for piece in pieces if piece.cloth)
    return next((f"the {cloth.fold_on} stripe" for cloth in cloths if cloth.fold_on), "the same stripe")


def _stripe_colours(context: StepContext, pieces: Sequence[Piece]) -> str:
    panels = [piece.panel for piece in pieces if piece.panel is not None and piece.panel.stripes is not None]
    stripes = panels[0].stripes if panels else None
    return stripe_words(stripes) if stripes else ""


def _stripe_starts(context: StepContext, pieces: Sequence[Piece]) -> str:
    told = (start_words(context.scope, piece) for piece in pieces)
    return "\n".join(f"- {words}" for words in told if words)


def _opening(context: StepContext, pieces: Sequence[Piece]) -> str:
    if not pieces:
        return ""
    edition = context.scope.edition
    return say_length(turning_opening(pieces[0].finished_across, pieces[0].finished_along, edition), edition)


def _needle_and_stitch(context: StepContext, pieces: Sequence[Piece]) -> str:
    cloth = next((piece.cloth for piece in pieces if piece.cloth), "")
    return sewn_with(context.scope.project.cloths[cloth].weight, context.scope.edition) if cloth else ""


def _lengths(context: StepContext, pieces: Sequence[Piece]) -> str:
    """How the first piece is joined, and what to match on cloth with a pattern."""
    if not pieces:
        return ""
    told = lists.length_words(pieces[0], context.scope.edition)
    pattern = context.cloths[pieces[0].cloth].pattern if pieces[0].cloth in context.cloths else None
    if pattern is None or pieces[0].lengths is None or not pieces[0].lengths.side_by_side:
        return told
    half = ": a width that was cut half a repeat on lies between two that were not" if pattern.half_drop else ""
    return f"{told} Lay the edges so that the pattern goes on across the seam{half}."


BRACKETS: Mapping[str, Filler] = MappingProxyType(
    {
        "piece": lambda _context, pieces: _names(pieces[:1]),
        "other": lambda _context, pieces: _names(pieces[1:2]),
        "pieces": lambda _context, pieces: _names(pieces),
        "boxing": lambda _context, pieces: _names([one for one in pieces if one.made.goes_round == "faces"]),
        "cut list": _cut_list(later=False),
        "cuts": _cuts,
        "shape middle": _panel(lambda _context, panel: lists.middle_words(panel)),
        "caught tucks": _panel(lambda context, panel: lists.caught_list(panel, context.scope.edition)),
        "folded": lambda _context, pieces: _names([one for one in pieces if one.on_fold]),
        "shapes": lambda _context, pieces: _names([one for one in pieces if any(part.shape for part in one.parts)]),
        "list for later": _cut_list(later=True),
        "stripe": _stripe,
        "stripe colours": _stripe_colours,
        "stripe starts": _stripe_starts,
        "copies": lambda context, pieces: copy_list(pieces, context.pieces, context.scope.edition),
        "under": lambda context, pieces: _names(
            [context.pieces[on.piece] for one in pieces[:1] for on in (one.on_piece,) if on]
        ),
        "place": lambda context, pieces: place_words(pieces, context.pieces.values(), context.scope.edition),
        "turned under": lambda context, pieces: turned_under(pieces[0], context.scope.edition) if pieces else "",
        "mouth": lambda _context, pieces: mouth(pieces[0]) if pieces else "",
        "cut later": lambda _context, pieces: _names([piece for piece in pieces if piece.after_panel]),
        "marked edges": _panel(lambda context, panel: marked_edges(panel, context.scope.edition)),
        "cross marked edges": _panel(lambda context, panel: marked_edges(panel, context.scope.edition, cross=True)),
        "marks": _panel(lambda context, panel: lists.mark_list(panel.across, context.scope.edition)),
        "cross marks": _panel(
            lambda context, panel: lists.mark_list(panel.cross, context.scope.edition) if panel.cross else ""
        ),
        "sample": _panel(lambda context, panel: lists.sample_words(panel.across, context.scope.edition)),
        "depths": _panel(lambda context, panel: lists.depth_list(panel.across, context.scope.edition)),
        "check points": _panel(lambda context, panel: lists.checkpoint_list(panel.checks, context.scope.edition)),
        "cross check points": _panel(
            lambda context, panel: lists.checkpoint_list(panel.cross_checks, context.scope.edition)
        ),
        "ruled rows": _panel(lambda context, panel: lists.ruled_list(panel, context.scope.edition)),
        "rows": _panel(lambda _context, panel: lists.row_list(panel)),
        "tucks lie": _panel(lambda _context, panel: "it is pressed" if panel.pressed else "in the row next to it"),
        "rods": _panel(lambda context, panel: lie_lists.rod_words(panel, context.scope.edition)),
        "rings": _panel(lambda context, panel: lie_lists.ring_words(panel, context.scope.edition)),
        "top lies": lambda _context, pieces: next((piece.hangs_by for piece in pieces if piece.quarters), "top"),
        "hanging": lambda _context, pieces: lie_lists.hanging_list(pieces),
        "pressed ways": lambda _context, pieces: _pressed(pieces),
        "pressed spaces": _panel(lambda context, panel: lie_lists.pressed_list(panel, context.scope.edition)),
        "stop lines": _panel(lambda context, panel: released_lists.stop_lines(panel, context.scope.edition)),
        "stops": _panel(lambda context, panel: released_lists.stop_list(panel, context.scope.edition)),
        "stitched way": _panel(lambda _context, panel: released_lists.stitched_way(panel)),
        "free edges": lambda _context, pieces: released_lists.free_edges(pieces),
        "free widths": lambda context, pieces: released_lists.free_widths(pieces, context.scope.edition),
        "held edges": _panel(lambda _context, panel: released_lists.held_edges(panel)),
        "facing gaps": _panel(lambda context, panel: lists.facing_list(panel, context.scope.edition)),
        "joins": _panel(lambda context, panel: lists.join_list(panel, context.scope.edition)),
        "lengths": _lengths,
        "halves": lambda context, pieces: lists.half_list(pieces[0], context.scope.edition) if pieces else "",
        "own measure": lambda context, pieces: own_measure_words(context.scope, pieces),
        "trim": _trim,
        "gathered edges": _drawn(drawn_lists.gathered_list),
        "pleated edges": _drawn(drawn_lists.pleated_list),
        "pleats": lambda context, pieces: lists.pleat_list(pieces[0], context.scope.edition) if pieces else "",
        "left hem": _hem("left"),
        "top hem": _hem("top"),
        "opening": _opening,
        "needle and stitch": _needle_and_stitch,
        "bulky rows": lambda context, pieces: bulk_words(pieces[0], context.scope.edition) if pieces else "",
        "row ends": lambda _context, pieces: row_runs(pieces[0]) if pieces else "",
        "buttonholes": _closures(("buttons",), holes=True),
        "buttons": _closures(("buttons",)),
        "elastic": lambda context, pieces: elastic_words(
            context.closures, context.pieces, context.scope.edition, {piece.name for piece in pieces}
        ),
        "zips": lambda context, pieces: zip_words(
            context.closures, context.pieces, context.scope.edition, {piece.name for piece in pieces}
        ),
        "fasteners": _closures(("snaps", "magnet", "hook and loop")),
    }
)
