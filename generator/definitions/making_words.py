"""The fixed words of making up: sorts of seam, what a technique may need, what it may be for. Nothing comes in."""

from __future__ import annotations

# Which sorts of seam there are, in the order in which they are sewn; which one a seam is follows from its pieces.
SORTS = (
    "piping",
    "laid",
    "ring",
    "ring of a panel",
    "french",
    "felled",
    "plain",
    "box",
    "all round",
    "three sides",
    "shaped facing",
    "facing",
    "tops",
    "lining",
    "binding",
)
# What a technique may need beside the states that come before its own.
NEEDS = (
    "its panels",
    "its piece",
    "its tabs",
    "ready",
    "ends",
    "its edge",
    "its facing",
    "joined ends",
    "caught",
    "laid",
    "outside",
    "all",
    "its seam",
    "open",
    "holed",
    "filled",
)
# What a technique may be for, beside the kinds of pieces.
FOR = (
    "cut with the rest",
    "cut after the panel",
    "bias",
    "not bias",
    "broad hem",
    "sewn on",
    "at an edge",
    "embroidered",
    "gathered edge",
    "pleated edge",
    "ties",
    "buttons",
    "fasteners",
    "elastic",
    "zip",
    "lined zip",
    "fused",
    "sewn in",
    "quilted",
)
# What a technique gives that only looks.
NOTHING = "nothing"
AS_USUAL = "as usual"
