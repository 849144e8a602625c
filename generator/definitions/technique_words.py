"""The words that a technique may use: pictures, kinds of work, words in brackets; texts come in, faults go out.

The tables that give these words their meaning stand with the sums and the drawings; a test holds them to be the same.
"""

from __future__ import annotations

import re

from generator.definitions.faults import meant
from generator.definitions.nodes import Group, Listing, Node, Scalar
from generator.definitions.reading import Reading

WORK = (
    *("cut pieces", "cut later", "cut bias", "mark folds", "crease tucks", "stitch tucks", "measure", "rule rows"),
    *("turn tucks", "trim ends", "cut to shape", "join breadths", "join lengths", "join ends", "sew bands"),
    *(
        "hem halves",
        "hem edges",
        "gather edges",
        "lay pleats",
        "draw up edges",
        "sew seams",
        "sew linings",
        "baste seams",
        "baste pieces",
        "bind edges",
    ),
    *(
        "neaten seams",
        "face edges",
        "turn out",
        "close openings",
        "join blocks",
        "sew edges",
        "fasten edges",
        "sew by hand",
    ),
    *("fuse pieces", "underline pieces", "quilt pieces"),
    *(
        "make buttonholes",
        "sew buttons",
        "set fasteners",
        "set zip",
        "thread elastic",
        "press tucks",
        "put in rods",
        "let tucks go",
    ),
)
FIGURES = (
    *("marking strip", "cross marking strip", "surface", "piece", "layout", "assembly", "hem section"),
    *(
        "fold marks",
        "cross fold marks",
        "creasing",
        "stitching",
        "cross stitching",
        "checking",
        "cross checking",
        "pressing",
        "released",
        "drawn edge",
    ),
    *("ruled rows", "ruling", "turning", "quarter turn", "repeat", "turns", "trimming", "placed", "blocks"),
)
ASSEMBLIES = (
    *("bias", "binding", "binding corner", "board", "boxing", "breadths", "envelope back", "felled seam"),
    *("french seam", "frill", "gathered end", "lined zip"),
    *("pieced bias", "roll"),
)
BRACKETS = (
    *(
        "piece",
        "other",
        "pieces",
        "cut list",
        "cuts",
        "shapes",
        "folded",
        "shape middle",
        "caught tucks",
        "list for later",
        "own measure",
        "cut later",
        "copies",
        "under",
        "place",
        "turned under",
        "mouth",
        "marks",
        "cross marks",
        "depths",
    ),
    *("marked edges", "cross marked edges", "sample", "check points", "cross check points", "ruled rows", "rows"),
    *("row ends", "bulky rows", "rods", "rings", "hanging", "top lies", "pressed ways", "pressed spaces", "tucks lie"),
    *("stop lines", "stops", "stitched way", "free edges", "free widths", "held edges"),
    *(
        "facing gaps",
        "joins",
        "meetings",
        "lengths",
        "halves",
        "trim",
        "gathered edges",
        "pleated edges",
        "pleats",
        "hems",
        "left hem",
        "top hem",
    ),
    *(
        "opening",
        "needle and stitch",
        "casing place",
        "casing hem",
        "edge",
        "keep clear",
        "corner marks",
        "boxing",
        "boxing edges",
        "caught",
        "layers",
        "enclosed seams",
        "seam line",
        "trimmed edges",
        "neat ways",
        "buttonholes",
        "buttons",
        "fasteners",
        "elastic",
        "zips",
        "tie places",
        "embroidery",
        "zip layers",
        "piped side",
    ),
    *("stripe", "stripe colours", "stripe starts"),
)
# What follows the bracket of a link is its address.
_BRACKET = re.compile(r"\[([a-z][a-z ]*)\](?![(\[:])")


def report_brackets(found: Node, reading: Reading) -> None:
    """Report every word in brackets that the tool does not know, in any text of a technique."""
    if isinstance(found, Group):
        for _, value in found.entries.values():
            report_brackets(value, reading)
    elif isinstance(found, Listing):
        for item in found.items:
            report_brackets(item, reading)
    else:
        _report(found, reading)


def _report(words: Scalar, reading: Reading) -> None:
    for found in _BRACKET.finditer(words.text):
        if found[1] not in BRACKETS:
            hint = meant(found[1], BRACKETS) or "; the guide lists what there is."
            told = f"'[{found[1]}]' is nothing that can be put in{hint} For brackets of your own write ( )"
            reading.faults.add(words.at(found.start()), told)
