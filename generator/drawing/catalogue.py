"""Every kind of diagram by name: a worksheet and a key such as 'fold marks front' come in, pictures go out.

What a sheet shows beside its words is drawn at the width and height that the sheet has for it, never scaled.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass

from generator.calculation.worked import Panel
from generator.calculation.worked_project import Worksheet
from generator.drawing.assembly import assembly_names, draw_assembly, heights_of_assembly
from generator.drawing.check_picture import draw_check, draw_cross_check, heights_of_check
from generator.drawing.creasing import draw_creasing, heights_of_creasing
from generator.drawing.drawn_edge import draw_drawn_edges, drawn_edges, heights_of_drawn_edge
from generator.drawing.finished import draw_thing, heights_of_thing, thing_names
from generator.drawing.fold_guide import draw_cross_fold_marks, draw_fold_marks, heights_of_fold_marks
from generator.drawing.grid import draw_grid, grids, heights_of_grid
from generator.drawing.hem_picture import caught_side, draw_hem_section, heights_of_hem_section
from generator.drawing.layout import draw_layout
from generator.drawing.layout_sized import draw_sized_layout, heights_of_layout
from generator.drawing.marking_strip import draw_cross_marking_strip, draw_marking_strip
from generator.drawing.picture import Picture
from generator.drawing.piece import draw_piece, draw_sized_piece, heights_of_piece, plain_pieces, shaped_pieces
from generator.drawing.placed import draw_placed, heights_of_placed, placed_pieces
from generator.drawing.quarter_turn import draw_quarter_turn, heights_of_quarter_turn
from generator.drawing.released import draw_released, heights_of_released
from generator.drawing.repeat_section import (
    draw_pressing,
    draw_repeat,
    has_pressed,
    has_repeat,
    heights_of_pressing,
    heights_of_repeat,
)
from generator.drawing.ruled_rows import draw_ruled_rows, heights_of_ruled_rows
from generator.drawing.ruling import draw_ruling, heights_of_ruling
from generator.drawing.seam import draw_seam, heights_of_seam, seam_names
from generator.drawing.sizes import PAGE_WIDTH, DrawnSize, Heights
from generator.drawing.stitching import draw_cross_stitching, draw_stitching, heights_of_stitching
from generator.drawing.style import Style, on_screen
from generator.drawing.surface import draw_sized_surface, draw_surface, heights_of_surface
from generator.drawing.trimming import draw_trimming, heights_of_trimming
from generator.drawing.turn_picture import draw_turns, heights_of_turns
from generator.drawing.turning_picture import draw_turning, has_turns, heights_of_turning


@dataclass(frozen=True, slots=True)
class Diagram:
    """A kind of diagram: its function, and the names in a worksheet for which it has something to show."""

    draw: Callable[[Worksheet, str, Style], tuple[Picture, ...]]
    names: Callable[[Worksheet], Iterable[str]]


@dataclass(frozen=True, slots=True)
class SizedDiagram:
    """A kind of diagram drawn at any size: its function, how high it can be at a width [mm], its names."""

    draw: Callable[[Worksheet, str, Style, DrawnSize], Picture]
    heights: Callable[[Worksheet, str, Style, float], Heights]
    names: Callable[[Worksheet], Iterable[str]]


def panels_with(shows: Callable[[Panel], object]) -> Callable[[Worksheet], Iterable[str]]:
    """Return a function that names the panels of a worksheet for which there is something to show."""
    return lambda worksheet: [name for name, panel in worksheet.panels.items() if shows(panel)]


def _trimmed_panels(worksheet: Worksheet) -> list[str]:
    """What is cut to a shape loses its ends there, and is not trimmed before."""
    names = panels_with(lambda panel: panel.trim_along)(worksheet)
    return [name for name in names if not worksheet.pieces[name].shaped]


def _has_tucks(panel: Panel) -> bool:
    return panel.across.count > 0


def _has_cross_tucks(panel: Panel) -> bool:
    return panel.cross is not None and panel.cross.count > 0


def _has_turned_tucks(panel: Panel) -> bool:
    return _has_tucks(panel) and panel.rows is not None


# One line a kind, in the order in which the pictures are wanted.
DIAGRAMS: dict[str, Diagram] = {
    "marking strip": Diagram(draw_marking_strip, panels_with(_has_tucks)),
    "cross marking strip": Diagram(draw_cross_marking_strip, panels_with(_has_cross_tucks)),
    "surface": Diagram(draw_surface, panels_with(_has_tucks)),
    "piece": Diagram(draw_piece, plain_pieces),
    "layout": Diagram(draw_layout, lambda worksheet: worksheet.cloths),
}


# What can be drawn at any size, one picture a key, in the order in which the pictures are wanted.
SIZED: dict[str, SizedDiagram] = {
    "fold marks": SizedDiagram(draw_fold_marks, heights_of_fold_marks, panels_with(_has_tucks)),
    "cross fold marks": SizedDiagram(draw_cross_fold_marks, heights_of_fold_marks, panels_with(_has_cross_tucks)),
    "creasing": SizedDiagram(draw_creasing, heights_of_creasing, panels_with(_has_tucks)),
    "hem section": SizedDiagram(draw_hem_section, heights_of_hem_section, panels_with(caught_side)),
    "stitching": SizedDiagram(draw_stitching, heights_of_stitching, panels_with(_has_tucks)),
    "cross stitching": SizedDiagram(draw_cross_stitching, heights_of_stitching, panels_with(_has_cross_tucks)),
    "checking": SizedDiagram(draw_check, heights_of_check, panels_with(lambda panel: panel.checks.points)),
    "cross checking": SizedDiagram(
        draw_cross_check, heights_of_check, panels_with(lambda panel: panel.cross_checks.points)
    ),
    "pressing": SizedDiagram(draw_pressing, heights_of_pressing, panels_with(has_pressed)),
    "released": SizedDiagram(draw_released, heights_of_released, panels_with(lambda panel: panel.released)),
    "drawn edge": SizedDiagram(draw_drawn_edges, heights_of_drawn_edge, drawn_edges),
    "ruled rows": SizedDiagram(draw_ruled_rows, heights_of_ruled_rows, panels_with(_has_turned_tucks)),
    "ruling": SizedDiagram(draw_ruling, heights_of_ruling, panels_with(_has_turned_tucks)),
    "turning": SizedDiagram(draw_turning, heights_of_turning, panels_with(lambda panel: has_turns(panel.rows))),
    "quarter turn": SizedDiagram(draw_quarter_turn, heights_of_quarter_turn, panels_with(_has_turned_tucks)),
    "repeat": SizedDiagram(draw_repeat, heights_of_repeat, panels_with(has_repeat)),
    "turns": SizedDiagram(draw_turns, heights_of_turns, panels_with(_has_turned_tucks)),
    "layout": SizedDiagram(draw_sized_layout, heights_of_layout, lambda worksheet: worksheet.cloths),
    "trimming": SizedDiagram(draw_trimming, heights_of_trimming, _trimmed_panels),
    "blocks": SizedDiagram(draw_grid, heights_of_grid, grids),
    "placed": SizedDiagram(draw_placed, heights_of_placed, placed_pieces),
    "piece": SizedDiagram(draw_sized_piece, heights_of_piece, shaped_pieces),
    "surface": SizedDiagram(draw_sized_surface, heights_of_surface, panels_with(_has_tucks)),
    "assembly": SizedDiagram(draw_assembly, heights_of_assembly, assembly_names),
    "seam": SizedDiagram(draw_seam, heights_of_seam, seam_names),
    "thing": SizedDiagram(draw_thing, heights_of_thing, thing_names),
}


def figure_keys(worksheet: Worksheet) -> tuple[str, ...]:
    """Return the key of every diagram that a worksheet has something to show for."""
    own = [f"{kind} {name}" for kind, diagram in DIAGRAMS.items() for name in diagram.names(worksheet)]
    return tuple(dict.fromkeys((*own, *sized_keys(worksheet))))


def draw(worksheet: Worksheet, key: str, style: Style) -> tuple[Picture, ...]:
    """Return the pictures of a key, a kind of diagram and a name; more than one where it takes several pages.

    Raises
    ------
    KeyError
        If there is no such kind of diagram, or the worksheet has nothing of that name.
    """
    for kind, diagram in DIAGRAMS.items():
        if key.startswith(f"{kind} "):
            return diagram.draw(worksheet, key.removeprefix(f"{kind} "), style)
    return (_at_page_width(worksheet, key, style),)


def draw_for_page(worksheet: Worksheet, key: str, style: Style) -> Picture:
    """Return the picture of a key that can be drawn at any size, as a page shows it."""
    return _at_page_width(worksheet, key, on_screen(style))


def _at_page_width(worksheet: Worksheet, key: str, style: Style) -> Picture:
    return draw_sized(worksheet, key, style, DrawnSize(PAGE_WIDTH, heights(worksheet, key, style, PAGE_WIDTH).natural))


def page_keys(keys: Iterable[str]) -> tuple[str, ...]:
    """Return those of some keys that stand for diagrams which can be drawn as a page shows them."""
    return tuple(key for key in keys if key.startswith(tuple(f"{kind} " for kind in SIZED)))


def sized_keys(worksheet: Worksheet) -> tuple[str, ...]:
    """Return the key of every diagram of a worksheet that can be drawn at any size."""
    return tuple(f"{kind} {name}" for kind, diagram in SIZED.items() for name in diagram.names(worksheet))


def heights(worksheet: Worksheet, key: str, style: Style, width: float) -> Heights:
    """Return how high the picture of a key can be at a width [mm].

    Raises
    ------
    KeyError
        If there is no such kind of diagram.
    """
    diagram, name = _sized(key)
    return diagram.heights(worksheet, name, style, width)


def draw_sized(worksheet: Worksheet, key: str, style: Style, size: DrawnSize) -> Picture:
    """Return the picture of a key, drawn anew at exactly a size [mm].

    Raises
    ------
    KeyError
        If there is no such kind of diagram.
    """
    diagram, name = _sized(key)
    return diagram.draw(worksheet, name, style, size)


def _sized(key: str) -> tuple[SizedDiagram, str]:
    for kind, diagram in SIZED.items():
        if key.startswith(f"{kind} "):
            return diagram, key.removeprefix(f"{kind} ")
    raise KeyError(f"no diagram is called '{key}'; kinds are {', '.join({**DIAGRAMS, **SIZED})}")
