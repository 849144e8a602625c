"""The fixed words of the project language: kinds, levels, tools, edges, and the measures that each piece has.

Nothing comes in. A new kind of piece, tool or condition is one entry here.
"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Literal, get_args

Grain = Literal["along", "across", "either", "bias"]
Weight = Literal["sheer", "light", "medium", "heavy"]
CutTime = Literal["with the rest", "after the panel"]
Gives = Literal["margin", "spacing", "depth"]
Hand = Literal["left", "right"]
Held = Literal["as the next row", "left", "right", "free"]
LoneEdgeTucks = Literal["out", "in", "upright"]
PleatStyle = Literal["knife", "box", "inverted"]

KINDS = (
    "cushion",
    "bolster",
    "runner",
    "mats",
    "bag",
    "sleeve",
    "lampshade",
    "garment",
    "curtain",
    "headboard",
    "sample",
    "other",
)
LEVELS = ("first project", "some practice", "experienced")
EDITION_NAMES = ("inch", "metric")
PAPERS = ("Letter", "A4")
CAUTIONS = ("furniture", "small children", "lamp", "sold", "pillows near babies")
GRAINS: tuple[str, ...] = get_args(Grain)
WEIGHTS: tuple[str, ...] = get_args(Weight)
CUT_TIMES: tuple[str, ...] = get_args(CutTime)
GIVES: tuple[str, ...] = get_args(Gives)
HANDS: tuple[str, ...] = get_args(Hand)
HELD: tuple[str, ...] = get_args(Held)
LONE_EDGE_TUCKS: tuple[str, ...] = get_args(LoneEdgeTucks)
PLEAT_STYLES: tuple[str, ...] = get_args(PleatStyle)
PLANS = (
    "linked cells",
    "ripples",
    "bands",
    "diamonds",
    "slants",
    "zigzags",
    "scattered pairs",
    "one way",
)
CLOSURES = ("buttons", "snaps", "magnet", "ties", "zip", "hook and loop")
TURN_SIGNS = "<>."
# Each finish with the least and the most widths that may follow it.
FINISHES: Mapping[str, tuple[int, int]] = MappingProxyType(
    {
        "seam": (0, 1),
        "hem": (1, 2),
        "caught hem": (0, 0),
        "bound": (0, 1),
        "turnover": (1, 1),
        "fold": (0, 0),
        "selvage": (0, 0),
        "raw": (0, 0),
    }
)
TOOLS = (
    "iron",
    "scissors",
    "rotary cutter",
    "starch",
    "sealant",
    "awl",
    "stapler",
    "needle",
    "machine",
    "ruler",
    "marking pen",
    "pins",
)
# What a part of a technique may ask before it is told; 'not ' may stand before each.
CONDITIONS = frozenset(
    {
        "caught hem",
        "caught hem left",
        "caught hem right",
        "hem",
        "seam",
        "bound",
        "rows",
        "upright edges",
        "upright",
        "one way",
        "back and forth",
        "joined",
        "cross tucks",
        "sample",
        "ring",
        "unequal",
        "equal",
        "even facing",
        "facing",
        "draw in",
        "one tuck",
        "several tucks",
        "cut after the panel",
        "held",
        "cut to shape",
        "shrinkage",
        "stripes",
    }
)
# Rates of work in the room's file: those told for each thing, and those told for a length of work.
RATES_EACH = ("cut a piece", "mark a fold", "turn a tuck", "start a seam", "rule a row", "buttonhole", "sew a button")
RATES_LENGTH = ("crease", "stitch", "gather", "sew by hand", "press")

_SIDES = ("left", "right", "top", "bottom")
_RECTANGLE = (*_SIDES, "all")
# The edges that each kind of piece has; 'all' is the whole way round.
EDGES: Mapping[str, tuple[str, ...]] = MappingProxyType(
    {
        "tucked panel": _RECTANGLE,
        "rectangle": _RECTANGLE,
        "facing": _RECTANGLE,
        "envelope back": _RECTANGLE,
        "circle": ("rim",),
        "strip": (*_RECTANGLE, "edge"),
        "bias strip": ("edge",),
        "gathered strip": (*_SIDES, "edge"),
        "pleated strip": (*_SIDES, "edge"),
        "gathered end": ("rim",),
        "binding": ("edge",),
        "tie": ("edge",),
        "piping": ("edge",),
        "boxing": (*_SIDES, "edge"),
        "bought": (),
    }
)


def a_kind(kind: str) -> str:
    """Return a kind of piece with its article: 'a rectangle', 'an envelope back'."""
    return f"{'an' if kind[:1] in 'aeiou' else 'a'} {kind}"


_COUNTED = frozenset({"number", "rows", "breadths", "cross number", "fullness", "pleats", "quantity", "layers"})
_PLAIN = ("across", "along", "cut across", "cut along", "edge", "quantity")
_TUCKED = (
    "number,depth,least depth,greatest depth,spacing,pitch,visible space,margin,left margin,right margin,take up,"
    "first mark,last mark,rows,row spacing,first row,last row,draw in,extra,breadths,layers,sewn along,"
    "left hem,right hem"
)
_CROSS = (
    "cross number,cross depth,cross spacing,cross pitch,cross margin,cross first mark,cross last mark,cross take up"
)
_OWN: Mapping[str, str] = {
    "tucked panel": f"{_TUCKED},{_CROSS}",
    "envelope back": "overlap,hem,half across",
    "circle": "diameter,cut diameter",
    "strip": "length,width",
    "bias strip": "length,width,square",
    "gathered strip": "fullness,drop,length",
    "pleated strip": "pleats,pleat depth,drop,length,section",
    "gathered end": "radius,length,drop",
    "binding": "length,width",
    "tie": "length,width",
    "piping": "length,cord,width",
    "boxing": "depth,length",
}


def _measures(kind: str) -> Mapping[str, int]:
    own = tuple(_OWN[kind].split(",")) if kind in _OWN else ()
    sides = tuple(f"{side} allowance" for side in EDGES[kind] if side != "all")
    names = ("quantity",) if kind == "bought" else (*_PLAIN, *own, *sides)
    return MappingProxyType({name: 0 if name in _COUNTED else 1 for name in names})


# The measures that each kind of piece can be asked for, with their dimension: 0 a number, 1 a length.
MEASURES: Mapping[str, Mapping[str, int]] = MappingProxyType({kind: _measures(kind) for kind in EDGES})
