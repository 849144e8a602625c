"""The lists that stand in square brackets in technique texts: worked values come in, Markdown goes out."""

from __future__ import annotations

from collections.abc import Callable, Container, Mapping, Sequence
from fractions import Fraction

from generator.calculation.laid import CutItem
from generator.calculation.turning.facing import even_facing, facing_words, panel_gaps
from generator.calculation.turning.turns import spoken_row
from generator.calculation.worked import Panel, TuckSet
from generator.calculation.worked_checks import Checks
from generator.calculation.worked_piece import EdgeWork, Lengths, Part, Piece
from generator.calculation.worked_project import ClosureWork, MeetingWork
from generator.calculation.worksheet.followed import edges_of
from generator.lengths import Edition, on_ruler, round_down, say_length
from generator.listed import listed


def sample_words(tucks: TuckSet, edition: Edition) -> str:
    """Return how much more or less the tucks take up, as a sample says, than twice their depths."""
    more = tucks.take_up - 2 * sum(tucks.depths, Fraction(0))
    if not more:
        return f"The {tucks.count} tucks take up just twice their depth."
    word = "more" if more > 0 else "less"
    return f"On it the {tucks.count} tucks take up {say_length(abs(more), edition)} {word} than twice their depth."


def mark_list(tucks: TuckSet, edition: Edition) -> str:
    """Return every fold mark with its number, in one running line: '1: 1 5/8 · 2: 3 1/8 ...'."""
    marks = " · ".join(f"{number}: {on_ruler(mark, edition)}" for number, mark in enumerate(tucks.marks, 1))
    return f"Marks ({edition.unit}, from the cut edge): {marks}"


def depth_list(tucks: TuckSet, edition: Edition) -> str:
    """Return the depths of unequal tucks, neighbours of one depth told together."""
    lines: list[str] = []
    first = 0
    for number in range(1, tucks.count + 1):
        if number == tucks.count or tucks.depths[number] != tucks.depths[first]:
            which = f"Tuck {first + 1}" if number == first + 1 else f"Tucks {first + 1} to {number}"
            lines.append(f"- {which}: {say_length(tucks.depths[first], edition)} deep")
            first = number
    return "\n".join(lines)


def checkpoint_list(checks: Checks, edition: Edition) -> str:
    """Return what to measure after which tuck."""
    return "\n".join(
        f"- After tuck {point.after}: from {point.start} to {point.end}, **{say_length(point.expect, edition)}**, "
        f"right within {say_length(point.within, edition)}."
        for point in checks.points
    )


def ruled_list(panel: Panel, edition: Edition) -> str:
    """Return where to rule each row."""
    rows = panel.rows.rows if panel.rows else ()
    lines = " · ".join(f"row {row.number}: {on_ruler(row.ruled, edition)}" for row in rows)
    return f"Rows ({edition.unit}, from the top cut edge): {lines}"


def row_list(panel: Panel) -> str:
    """Return each row with its starting end and its turns in words."""
    rows = panel.rows.rows if panel.rows else ()
    return "\n".join(f"- **Row {row.number}**, start at the {row.start}: {spoken_row(row.words)}." for row in rows)


def facing_list(panel: Panel, edition: Edition) -> str:
    """Return what lies between the folds of facing pairs: a sentence where it is alike, else pair by pair."""
    gaps = panel_gaps(panel)
    if even_facing(gaps, edition):
        return f"In each facing pair {facing_words(min(gaps.values()), edition)}."
    pairs: dict[str, list[str]] = {}
    for (left, right), gap in gaps.items():
        pairs.setdefault(facing_words(gap, edition), []).append(f"{left} and {right}")
    return "\n".join(f"- Tucks {', '.join(told)}: {words}." for words, told in pairs.items())


def join_list(panel: Panel, edition: Edition) -> str:
    """Return the breadths to cut and where their seams fall."""
    breadths = ", ".join(say_length(breadth, edition) for breadth in panel.breadths)
    allowance = say_length(panel.join_allowance, edition)
    seams = [f"- Seam {say_length(join.at, edition)} from the left cut edge. {join.text}" for join in panel.joins]
    return "\n".join([f"- Breadths, from the left: {breadths}. Sew them with {allowance} seams.", *seams])


def cut_list(items: Sequence[CutItem], cloth: Callable[[str], str], edition: Edition) -> str:
    """Return what to cut: how many of what, how large, from which cloth."""
    return "\n".join(
        f"- {item.label}: cut {item.quantity}, {say_length(item.across, edition)} across the cloth by "
        f"{say_length(item.along, edition)} along it, from the {cloth(item.piece)}"
        for item in items
    )


def middle_words(panel: Panel) -> str:
    """Return where the middle line of a shape lies on its tucks: on the middle one, or between two."""
    number = panel.across.count
    if number % 2:
        return f"on the stitching of tuck {number // 2 + 1}"
    return f"in the middle between tucks {number // 2} and {number // 2 + 1}" if number else "on that of the panel"


def caught_list(panel: Panel, edition: Edition) -> str:
    """Return the ends of tucks that are caught by hand before a panel is cut to its shape."""
    lines = []
    for one in panel.shaped_ends:
        ends = [where for where, caught in (("upper", one.catch_top), ("lower", one.catch_bottom)) if caught]
        if ends:
            told = "both ends" if len(ends) > 1 else f"its {ends[0]} end"
            lines.append(f"- Tuck {one.tuck}, {say_length(one.length, edition)} long: {told}.")
    return "\n".join(lines)


def edge_words(run: str, pieces: Mapping[str, Piece]) -> str:
    """Return a run of edges as a person says it: 'wrap.top and frill.rim' is the top edge of the wrap and so on."""
    said = []
    for piece, side in edges_of(run):
        hung, bracket, table = pieces[piece].said(side).partition(" (")
        named = {"all": "all edges", "edge": "the long edge", "rim": "the rim"}.get(side, f"the {hung} edge")
        said.append(f"{named} of the {pieces[piece].label}{bracket}{table}")
    return ", then ".join(said)


def meeting_list(meetings: Sequence[MeetingWork], pieces: Mapping[str, Piece], edition: Edition) -> str:
    """Return which edges are sewn to each other, and how long both are."""
    return "\n".join(_meeting(meeting, pieces, edition) for meeting in meetings)


def _meeting(meeting: MeetingWork, pieces: Mapping[str, Piece], edition: Edition) -> str:
    edges = _two_edges(meeting, pieces)
    note = f". {meeting.note}" if meeting.note else ""
    if meeting.drawn is not None:
        to = say_length(meeting.to_length, edition)
        return f"- {edges}: {meeting.drawn.way} to {to} between the seam lines{note}"
    return f"- {edges}: {_both(meeting.join_length, meeting.to_length, edition)}{note}"


def _two_edges(meeting: MeetingWork, pieces: Mapping[str, Piece]) -> str:
    """Which edge is sewn to which; of two copies of one piece the same edge is that of one and of the other."""
    own = edge_words(meeting.join, pieces)
    if meeting.join == meeting.to and " of the " in own and ", then " not in own:
        return f"{' of one '.join(own.split(' of the ', 1))}, to that of the other"
    return f"{own}, to {edge_words(meeting.to, pieces)}"


def _both(join: Fraction, to: Fraction, edition: Edition) -> str:
    if say_length(join, edition) == say_length(to, edition):
        return f"{say_length(join, edition)} between the seam lines"
    return f"{say_length(join, edition)} and {say_length(to, edition)} between the seam lines; ease the longer in"


def hem_list(pieces: Sequence[Piece], edition: Edition, sides: Mapping[str, Container[str]]) -> str:
    """Return the hems of some sides of pieces in the order of sewing; sides alike are told together."""
    lines = []
    for piece in pieces:
        finishes: dict[str, list[str]] = {}
        for edge in sorted(
            piece.edges.values(), key=lambda edge: piece.said(edge.name).split()[0] not in ("left", "right")
        ):
            if edge.end.kind == "hem" and edge.name in sides.get(piece.name, ()):
                finishes.setdefault(_hem(edge, edition), []).append(piece.said(edge.name))
        lines += [f"- {piece.label}, {listed(names)}: {hem}" for hem, names in finishes.items()]
    return "\n".join(lines) or "- These pieces have no hems of their own."


def length_words(piece: Piece, edition: Edition) -> str:
    """Return how a strip is put together: from a square on the bias, or from several lengths; one needs no words."""
    if piece.pieced is not None:
        sides = " by ".join(say_length(side, edition) for side in (piece.pieced.long, piece.pieced.short))
        gives = say_length(round_down(piece.pieced.gives, edition.mark), edition)
        longest = f"Its {piece.pieced.strips} longest strips give {gives} when they are joined."
        return f"The strip is cut on the bias, from a rectangle of {sides}. {longest}"
    if piece.square:
        return f"The strip is cut on the bias, from a square of {say_length(piece.square, edition)} each way."
    if piece.lengths is None:
        return ""
    lengths, edges, told = piece.lengths, "end to end", ""
    if lengths.side_by_side:
        edges, told = "along their long edges", _WHERE[len(lengths.others)]
    elif lengths.others:
        edges, told = "end to end in this order from the left", _HIDDEN
    seam = say_length(lengths.allowance, edition)
    how = f"Join them {edges}, right sides together, with seams of {seam}, and press the seams open.{told}"
    if lengths.slanting:
        how = (
            "Join them with slanting seams, which make no lump at the edge: lay two ends across each other at a right "
            "angle, right sides together, and sew from corner to corner of the square in which they cross, so that "
            f"they open to one straight strip. Trim each seam to {seam} and press it open."
        )
    whole = f"{say_length(piece.cut_across, edition)} {'wide' if lengths.side_by_side else 'long'}"
    return f"The {piece.label} is cut in {each_length(lengths, edition)}. {how} It should then be {whole}."


_HIDDEN = " Each seam lies at an inner fold of the pleats, where it does not show."
_WHERE = (
    "",
    " The narrow one lies at the outer edge: where two hang side by side, at the left of the left one and at the right "
    "of the right one.",
    " A narrow one lies at each side, so that no seam runs through the middle.",
)


def length_word(lengths: Lengths) -> str:
    """Return what the parts of a joined piece are called."""
    return "widths" if lengths.side_by_side else "lengths"


def each_length(lengths: Lengths, edition: Edition) -> str:
    """Return how many lengths or widths a piece is joined from, and how long or wide each is."""
    others = [say_length(other, edition) for other in lengths.others]
    first = say_length(lengths.across, edition)
    if others and not lengths.side_by_side:
        return f"lengths of {', '.join([first, *others[:-1]])} and {others[-1]}"
    more = f" and {len(others)} of {others[0]}" if others else ""
    word = length_word(lengths)
    return f"{lengths.number} {word.removesuffix('s') if lengths.number == 1 else word} of {first}{more}"


def half_list(piece: Piece, edition: Edition) -> str:
    """Return how wide each part of a piece is when its own edge is hemmed; parts alike are told together."""
    widths = {part.name: say_length(_hemmed(piece, part), edition) for part in piece.parts}
    if len(set(widths.values())) == 1:
        return f"Each half now measures {next(iter(widths.values()))} from its raw edge to its hemmed edge."
    (first, width), *others = widths.items()
    rest = "".join(f", the {name} {other}" for name, other in others)
    told = f"The {first} now measures {width} from its raw edge to its hemmed edge{rest}."
    seen = f"Left and right are seen on their own right side: face down on the front, the {first} lies at the right."
    return f"{told} {seen}"


def _hemmed(piece: Piece, part: Part) -> Fraction:
    """The width of a part without the hem of the edge that it shares with no other piece [in]."""
    own = (edge.allowance for side, edge in part.edges.items() if edge != piece.edges.get(side))
    return part.cut_across - sum(own, Fraction(0))


def pleat_list(piece: Piece, edition: Edition) -> str:
    """Return the folds of a pleated strip: each line to crease and the line it is laid on, in one running line."""
    left = piece.edges["left"]
    # Once hemmed, the strip is measured from the edge that is there to be measured from.
    start, edge = (left.allowance, "hemmed") if left.end.kind in ("hem", "turnover") else (Fraction(0), "cut")
    folds = ([on_ruler(line - start, edition) for line in fold] for fold in piece.made.pleats)
    told = " · ".join(f"{number}: {fold} on {onto}" for number, (fold, onto) in enumerate(folds, 1))
    return f"Folds ({edition.unit}, from the left {edge} edge): {told}"


def hem_turns(piece: Piece, side: str, edition: Edition) -> str:
    """Return how the hem of one edge is turned; an edge without a hem says so."""
    edge = piece.edges.get(side)
    return _hem(edge, edition) if edge is not None and edge.end.kind == "hem" else f"no hem at the {side}"


def _hem(edge: EdgeWork, edition: Edition) -> str:
    first, second = say_length(edge.end.first, edition), say_length(edge.end.second, edition)
    return f"turn {first}, and {first} again" if first == second else f"turn {first}, then {second}"


def _closes(closure: ClosureWork) -> str:
    """The kind of a closure where the heading does not tell it."""
    if closure.kind == "buttons":
        return ""
    return f" {closure.kind.removesuffix('s') if closure.number == 1 else closure.kind}"


def closure_list(closures: Sequence[ClosureWork], pieces: Mapping[str, Piece], edition: Edition, *, holes: bool) -> str:
    """Return the places of buttonholes, or of buttons and other closures."""
    lines = []
    for closure in closures:
        if holes and closure.kind != "buttons":
            continue
        edge = edge_words(closure.on if holes else closure.onto, pieces)
        places = ", ".join(on_ruler(place, edition) for place in closure.positions)
        what = f"each {say_length(closure.buttonhole, edition)} long, " if holes else ""
        where = f"{what}at {places} {edition.unit} along the finished edge"
        lines.append(f"- {closure.number}{_closes(closure)} on {edge}: {where}. {closure.text}")
    return "\n".join(line.rstrip() for line in lines)
