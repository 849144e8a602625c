"""The fixed words of the project language: kinds of project, levels, tools, conditions, finishes; nothing comes in.

A new tool or condition is one entry here; kinds of piece stand in ``pieces``.
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
Start = Literal["left", "right", "by bulk"]
Held = Literal["as the next row", "left", "right", "free"]
LoneEdgeTucks = Literal["out", "in", "upright"]
Pressed = Literal["left", "right", "up", "down", "outward", "inward", "standing"]
StitchingEnds = Literal["tied", "sewn back"]
MeetsHow = Literal["flat", "eased", "gathered", "pleated"]
PleatsLie = Literal["left", "right", "outward", "inward"]
Hangs = Literal["top", "left", "right", "bottom"]
PleatStyle = Literal["knife", "box", "inverted"]
Neatening = Literal["zigzag", "overlock", "pinked", "none"]

# What the making up asks of a kind of project, in place of its name.
OF_THINGS: Mapping[str, str] = MappingProxyType(
    {
        "filled": "something is put in before it is closed",
        "measured": "its panel is measured before it is turned",
        "two sided": "of pieces that meet by like edges one is seen from the front and one from the back",
        "on a frame": "it is tried on its frame before its edges are finished, and fitted at last",
        "hung": "it hangs from a rod, and is tried there before it is hemmed below",
    }
)
KINDS: Mapping[str, frozenset[str]] = MappingProxyType(
    {
        "cushion": frozenset({"filled", "two sided"}),
        "bolster": frozenset({"filled", "two sided"}),
        "runner": frozenset(),
        "mats": frozenset(),
        "bag": frozenset({"two sided"}),
        "sleeve": frozenset({"two sided"}),
        "lampshade": frozenset({"on a frame", "two sided"}),
        "garment": frozenset({"two sided"}),
        "curtain": frozenset({"hung"}),
        "headboard": frozenset(),
        "sample": frozenset({"filled", "measured"}),
        "other": frozenset(),
    }
)
"""The kinds of project, each with what is true of it, words of ``OF_THINGS``."""
LEVELS = ("first project", "some practice", "experienced")
EDITION_NAMES = ("inch", "metric")
PAPERS = ("Letter", "A4")
# Sheets beside the handout, by what they are about.
SHEETS_OF_ROOM = ("wall card", "buying table", "sample form")
SHEETS_OF_PROJECT = ("teacher's copy", "measuring guide", "machine card", "sign up form", "care sheet")
SHEETS_OF_SIZE = ("paper pattern", "marking strip", "rescue sheet")
SHEETS_BESIDE = (*SHEETS_OF_ROOM, *SHEETS_OF_PROJECT, *SHEETS_OF_SIZE)
# Those that a room publishes where its file says nothing; the others are made when somebody asks for them.
USUAL_SHEETS = (*SHEETS_OF_ROOM, "measuring guide", "sign up form", "care sheet", "paper pattern")
CAUTIONS = (
    "furniture",
    "small children",
    "small parts",
    "lamp",
    "stove",
    "magnets",
    "blind cords",
    "sold",
    "pillows near babies",
)
GRAINS: tuple[str, ...] = get_args(Grain)
WEIGHTS: tuple[str, ...] = get_args(Weight)
CUT_TIMES: tuple[str, ...] = get_args(CutTime)
GIVES: tuple[str, ...] = get_args(Gives)
HANDS: tuple[str, ...] = get_args(Hand)
STARTS: tuple[str, ...] = get_args(Start)
HELD: tuple[str, ...] = get_args(Held)
LONE_EDGE_TUCKS: tuple[str, ...] = get_args(LoneEdgeTucks)
PRESSED: tuple[str, ...] = get_args(Pressed)
# Ways to press tucks in which all lie alike.
ONE_WAY = ("left", "right", "up", "down")
STITCHING_ENDS: tuple[str, ...] = get_args(StitchingEnds)
MEETS_HOW: tuple[str, ...] = get_args(MeetsHow)
PLEATS_LIE: tuple[str, ...] = get_args(PleatsLie)
HANGS: tuple[str, ...] = get_args(Hangs)
PLEAT_STYLES: tuple[str, ...] = get_args(PleatStyle)
# What cords may hang on; nothing else carries any.
HEADRAILS = ("bought with all its safety parts",)
NEATENINGS: tuple[str, ...] = get_args(Neatening)
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
# What the making up asks of a kind of closing, in place of its name.
OF_CLOSINGS: Mapping[str, str] = MappingProxyType(
    {
        "holed": "it goes through holes that are made for it",
        "set flat": "it is set on both edges before these are shut in",
        "opens a seam": "it lies in a seam, which opens by it",
        "runs in a hem": "it is drawn through a hem",
        "knotted": "it is tied",
    }
)
CLOSURES: Mapping[str, frozenset[str]] = MappingProxyType(
    {
        "buttons": frozenset({"holed"}),
        "snaps": frozenset({"set flat"}),
        "magnet": frozenset({"set flat"}),
        "ties": frozenset({"knotted"}),
        "loops": frozenset(),
        "zip": frozenset({"set flat", "opens a seam"}),
        "hook and loop": frozenset({"set flat"}),
        "elastic": frozenset({"runs in a hem"}),
    }
)
"""The kinds of closing, each with what is true of it, words of ``OF_CLOSINGS``."""
TURN_SIGNS = "<>."
# Each finish with the least and the most widths that may follow it.
FINISHES: Mapping[str, tuple[int, int]] = MappingProxyType(
    {
        "seam": (0, 1),
        "french seam": (1, 1),
        "felled seam": (1, 1),
        "faced": (1, 1),
        "stitched and trimmed": (1, 1),
        "sealed and trimmed": (1, 1),
        "hem": (1, 2),
        "rolled hem": (0, 0),
        "casing": (1, 2),
        "caught hem": (0, 0),
        "bound": (0, 1),
        "turnover": (1, 1),
        "fold": (0, 0),
        "selvage": (0, 0),
        "raw": (0, 0),
    }
)
# Each tool with what the sheet calls it; what stands in brackets helps to find it, and is told once.
TOOLS: Mapping[str, str] = MappingProxyType(
    {
        "iron": "iron",
        "scissors": "scissors",
        "pinking shears": "pinking shears",
        "rotary cutter": "rotary cutter (with its mat)",
        "starch": "spray starch",
        "sealant": "fray sealant",
        "hot knife": "hot knife (a tool with a heated blade that cuts and seals cloth)",
        "awl": "awl (or a stiletto)",
        "stapler": "stapler",
        "staple lifter": "staple lifter",
        "drill": "drill",
        "hammer": "hammer",
        "needle": "hand needle",
        "machine": "sewing machine",
        "overlock machine": "overlock machine",
        "zip foot": "zip foot",
        "guide": "seam guide (or a strip of tape to stick on the machine)",
        "ruler": "ruler",
        "tape": "measuring tape",
        "marking pen": "marking pen (one whose lines come out again)",
        "pins": "pins",
        "safety pin": "safety pin",
        "unpicker": "unpicker",
        "blunt point": "blunt point (such as a knitting needle)",
    }
)


def tool_name(tool: str, *, whole: bool = False) -> str:
    """Return what a sheet calls a tool; the whole of it says how to find it."""
    name = TOOLS.get(tool, tool)
    return name if whole else name.partition(" (")[0]


# What a part of a technique may ask before it is told; 'not ' may stand before each.
# Where a part of a technique is told: in a text on a page, or on the handout, whose tables and pictures tell its lists.
MEDIA = ("screen", "paper")

CONDITIONS = frozenset(
    {
        "caught hem",
        "caught hem left",
        "caught hem right",
        "hem",
        "seam",
        "bound",
        "rows",
        "on its side",
        "evenly spaced",
        "rods",
        "rings",
        "hems cross tucks",
        "upright edges",
        "upright",
        "one way",
        "one way now",
        "one way later",
        "hems meet",
        "raw inside",
        "zigzagged",
        "overlocked",
        "pinked",
        "neat",
        "turns corners",
        "round outline",
        "square",
        "two faces",
        "hangs near",
        "gathers",
        "thick",
        "catches",
        "piped",
        "zipped",
        "on a hem",
        "over tucks",
        "for a small child",
        "loops",
        "piped zip",
        "shortened",
        "elastic",
        "ring done",
        "tucks inside",
        "cross tucks done",
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
        "sheer",
        "stripes",
        "shapes",
        "own shape",
        "caught tucks",
        "released",
        "stops alike",
        "ends tied",
        "hems free",
        "in the seam",
        "on a fold",
        "on tucks",
        "on tucked blocks",
        "turned under",
        "turned blocks",
        "bands",
        "open edge",
        "corners",
        "round",
        "straight",
        "several",
        "others wait",
        "pair",
        *("stitched edge", "sealed edge", "several ways"),
        *("hollow edge", "outward edge", "inner corner", "outer corner", "ends joined"),
        "toward",
        "away",
        "crosses tucks",
        "along tucks",
        "wide margin",
        "end allowances",
        "under the arm",
        "by bulk",
        "round ends",
        "slanting",
        "pieced",
    }
)
# Rates of work in the room's file: those told for each thing, and those told for a length of work.
RATES_EACH = (
    *("cut a piece", "mark a fold", "turn a tuck", "start a seam", "turn a corner", "turn out", "join a length"),
    *("rule a row", "buttonhole", "sew a button"),
)
RATES_LENGTH = (
    *("crease", "stitch", "gather", "sew by hand", "press", "pin", "baste", "turn a hem", "cut along a line"),
)
