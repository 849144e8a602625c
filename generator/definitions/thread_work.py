"""Work that may have thread of its own, and the standard steps that do it; nothing comes in."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

# ``rest`` is all that has no other.
REST = "rest"
THREAD_WORK: Mapping[str, tuple[str, ...]] = MappingProxyType(
    {
        "tucks": ("stitch tucks", "stitch cross tucks"),
        "rows": ("sew rows",),
        "seams": (
            "join breadths",
            "join lengths",
            "join pieces",
            "join grid",
            "close ring",
            "make boxing",
            "french seam",
            "felled seam",
            "line and turn",
            "line bag",
            "line flat",
            "bag",
            "set zip",
            "set lined zip",
            "make zip tabs",
            "make piping",
            "sew on piping",
            "underline",
            "close opening",
        ),
        "topstitching": (
            "hem",
            "casing",
            "bind",
            "make straps",
            "make ties",
            "set ties",
            "sew on",
            "face edge",
            "face along",
            "envelope back",
        ),
        "gathering": ("gather", "gather edge"),
        "quilting": ("quilt",),
        "neatening": ("neaten", "neaten edge"),
        "buttonholes": ("buttonholes",),
        REST: ("sew buttons", "pleat", "pleat edge", "fasten"),
    }
)
