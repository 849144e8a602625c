"""Words in square brackets in a technique text: the text comes in, the same with names and lists filled in goes out.

``[piece]`` is a name, ``[marks]`` a list: what a formula between braces cannot say. A new word is one entry.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping, Sequence
from types import MappingProxyType

from generator.calculation.turning.trimming import trim_words, trimming
from generator.calculation.worked import Panel, Piece
from generator.calculation.worksheet import lists
from generator.calculation.worksheet.bench import Bench
from generator.calculation.worksheet.cloths import cut_items
from generator.calculation.worksheet.panel_stripes import start_words, stripe_words

Filler = Callable[[Bench, Sequence[Piece]], str]
_WORD = re.compile(r"\[([a-z ]+)\]")


def filled_brackets(text: str, bench: Bench, pieces: Sequence[Piece]) -> str:
    """Return a text with every bracket that the tool knows filled; other brackets stay as they are."""

    def fill(found: re.Match[str]) -> str:
        filler = BRACKETS.get(found[1])
        return filler(bench, pieces) if filler else found[0]

    return _WORD.sub(fill, text)


def _names(pieces: Sequence[Piece]) -> str:
    labels = list(dict.fromkeys(piece.label for piece in pieces))
    return labels[0] if len(labels) == 1 else ", ".join(labels[:-1]) + " and " + labels[-1] if labels else ""


def _panel(make: Callable[[Bench, Panel], str]) -> Filler:
    def fill(bench: Bench, pieces: Sequence[Piece]) -> str:
        panels = [piece.panel for piece in pieces if piece.panel is not None]
        return make(bench, panels[0]) if panels else ""

    return fill


def _cut_list(*, later: bool) -> Filler:
    """The pieces that are cut at once, or those that wait until the sewn panel has been measured."""

    def fill(bench: Bench, pieces: Sequence[Piece]) -> str:
        items = [item for piece in pieces if piece.after_panel is later for item in cut_items(piece)]
        return lists.cut_list(items, lambda name: _cloth(bench, name), bench.scope.edition)

    return fill


def _hem(side: str) -> Filler:
    return lambda bench, pieces: lists.hem_turns(pieces[0], side, bench.scope.edition) if pieces else ""


def _cloth(bench: Bench, piece: str) -> str:
    return bench.scope.project.cloths[bench.pieces[piece].cloth].label


def _trim(bench: Bench, pieces: Sequence[Piece]) -> str:
    """How long to leave a panel after its rows, and how much falls off at either end."""
    rowed = [piece for piece in pieces if piece.panel is not None and piece.panel.rows is not None]
    if not rowed or rowed[0].panel is None or rowed[0].panel.rows is None:
        return ""
    trimmed = trimming(rowed[0].panel.rows, rowed[0].measures["sewn along"])
    return trim_words(trimmed, bench.scope.edition)


def _labels(bench: Bench) -> Callable[[str], str]:
    return lambda name: bench.pieces[name].label


def _closures(*, holes: bool) -> Filler:
    return lambda bench, _pieces: lists.closure_list(bench.closures, _labels(bench), bench.scope.edition, holes=holes)


def _stripe(bench: Bench, pieces: Sequence[Piece]) -> str:
    cloths = (bench.scope.project.cloths[piece.cloth] for piece in pieces if piece.cloth)
    return next((f"the {cloth.fold_on} stripe" for cloth in cloths if cloth.fold_on), "the same stripe")


def _stripe_colours(bench: Bench, pieces: Sequence[Piece]) -> str:
    panels = [piece.panel for piece in pieces if piece.panel is not None and piece.panel.stripes is not None]
    stripes = panels[0].stripes if panels else None
    return stripe_words(stripes) if stripes else ""


def _stripe_starts(bench: Bench, pieces: Sequence[Piece]) -> str:
    told = (start_words(bench.scope, piece) for piece in pieces)
    return "\n".join(f"- {words}" for words in told if words)


def _meetings(bench: Bench, pieces: Sequence[Piece]) -> str:
    names = {piece.name for piece in pieces}
    meeting = [
        one
        for one, model in zip(bench.meetings, bench.scope.project.edges_that_meet, strict=False)
        if {name for name, _ in (*model.join.edges, *model.to.edges)} <= names
    ]
    return lists.meeting_list(meeting or bench.meetings, _labels(bench), bench.scope.edition)


BRACKETS: Mapping[str, Filler] = MappingProxyType(
    {
        "piece": lambda _bench, pieces: _names(pieces[:1]),
        "other": lambda _bench, pieces: _names(pieces[1:2]),
        "pieces": lambda _bench, pieces: _names(pieces),
        "cut list": _cut_list(later=False),
        "list for later": _cut_list(later=True),
        "stripe": _stripe,
        "stripe colours": _stripe_colours,
        "stripe starts": _stripe_starts,
        "cut later": lambda _bench, pieces: _names([piece for piece in pieces if piece.after_panel]),
        "marks": _panel(lambda bench, panel: lists.mark_list(panel.across, bench.scope.edition)),
        "cross marks": _panel(
            lambda bench, panel: lists.mark_list(panel.cross, bench.scope.edition) if panel.cross else ""
        ),
        "sample": _panel(lambda bench, panel: lists.sample_words(panel.across, bench.scope.edition)),
        "depths": _panel(lambda bench, panel: lists.depth_list(panel.across, bench.scope.edition)),
        "check points": _panel(lambda bench, panel: lists.checkpoint_list(panel, bench.scope.edition)),
        "ruled rows": _panel(lambda bench, panel: lists.ruled_list(panel, bench.scope.edition)),
        "rows": _panel(lambda _bench, panel: lists.row_list(panel)),
        "facing gaps": _panel(lambda bench, panel: lists.facing_list(panel, bench.scope.edition)),
        "joins": _panel(lambda bench, panel: lists.join_list(panel, bench.scope.edition)),
        "meetings": _meetings,
        "lengths": lambda bench, pieces: lists.length_words(pieces[0], bench.scope.edition) if pieces else "",
        "trim": _trim,
        "pleats": lambda bench, pieces: lists.pleat_list(pieces[0], bench.scope.edition) if pieces else "",
        "left hem": _hem("left"),
        "top hem": _hem("top"),
        "hems": lambda bench, pieces: lists.hem_list(pieces, bench.scope.edition),
        "buttonholes": _closures(holes=True),
        "buttons": _closures(holes=False),
    }
)
