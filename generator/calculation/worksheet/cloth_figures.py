"""The figures of a cloth: what it comes to goes in, plain nested values of exact text in the edition's unit go out."""

from __future__ import annotations

from typing import Any

from generator.calculation.laid import LaidStack, LaidStrip, PlacedItem
from generator.calculation.worked_project import ClothUse
from generator.lengths import Edition, round_down, write_length


def cloth_figures(use: ClothUse, edition: Edition) -> dict[str, Any]:
    """Return the numbers of one cloth, with the place of every piece.

    Strips begin at the straightened end, stacks at the left selvage, pieces at the top of their strip. A strip is cut
    as many ``times`` one below the other as it says; its pieces are the first copies.
    """
    layout = use.layout
    return {
        "label": use.label,
        "width": write_length(use.width, edition),
        "length": write_length(layout.length, edition),
        "buy": use.buy_text,
        "lower_bound": write_length(layout.lower_bound, edition),
        "narrowest_width": write_length(use.narrowest, edition),
        "proven_shortest": layout.proven == "shortest",
        "proven": layout.proven,
        "straighten": write_length(use.buying.straighten, edition),
        "pattern_repeat": write_length(use.pattern.repeat, edition) if use.pattern else "",
        "left_over": write_length(use.left_over, edition),
        "steps_above_bound": layout.steps_above,
        "later_apart_costs": layout.apart_costs,
        "bias": [
            {
                "piece": name,
                "rectangle": [write_length(way.long, edition), write_length(way.short, edition)],
                "strips": way.strips,
                "joins": way.strips - 1,
                "gives": write_length(round_down(way.gives, edition.mark), edition),
            }
            for name, way in use.pieced.items()
        ],
        "strips": [_strip(run[0], len(run), edition) for run in layout.runs],
    }


def _strip(strip: LaidStrip, times: int, edition: Edition) -> dict[str, Any]:
    return {
        "from": write_length(strip.top, edition),
        "height": write_length(strip.along, edition),
        "times": times,
        "stacks": [_stack(stack, strip, edition) for stack in strip.stacks],
    }


def _stack(stack: LaidStack, strip: LaidStrip, edition: Edition) -> dict[str, Any]:
    return {
        "from": write_length(stack.left, edition),
        "across": write_length(stack.across, edition),
        "later": stack.later,
        "pieces": [_piece(placed, strip, edition) for placed in stack.placed],
    }


def _piece(placed: PlacedItem, strip: LaidStrip, edition: Edition) -> dict[str, Any]:
    return {
        "piece": placed.piece,
        "copy": placed.copy,
        "kit": placed.kit,
        "from": write_length(placed.top - strip.top, edition),
        "across": write_length(placed.across, edition),
        "along": write_length(placed.along, edition),
    }
