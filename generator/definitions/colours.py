"""The colours of cloth by name: a colour in words or as #rrggbb comes in, its #rrggbb goes out.

``colours.txt`` has the names of CSS Color Module Level 4, those of a public survey of what people call colours (xkcd,
2010, given to the public domain) and some of undyed cloth; where two tell of one name, CSS counts, but for cloth.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from functools import lru_cache
from pathlib import Path


@lru_cache(maxsize=1)
def colours() -> Mapping[str, str]:
    """Return every colour that has a name."""
    lines = Path(__file__).with_name("colours.txt").read_text(encoding="utf-8").splitlines()
    return {name: value for name, _, value in (line.rpartition(" ") for line in lines)}


def colour_of(words: str) -> str | None:
    """Return the #rrggbb of a colour; None where no ending of its words names one.

    Examples
    --------
    >>> colour_of("quite red"), colour_of("sea blue"), colour_of("#A0b1c2"), colour_of("who knows")
    ('#ff0000', '#047495', '#a0b1c2', None)
    """
    told = words.lower().strip()
    if re.fullmatch(r"#[0-9a-f]{6}", told):
        return told
    known, parts = colours(), told.split()
    for start in range(len(parts)):
        ending = parts[start:]
        for name in (" ".join(ending), "".join(ending)):
            if name in known:
                return known[name]
    return None
