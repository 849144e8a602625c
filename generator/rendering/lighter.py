"""Styles and scripts as pages load them: their texts come in, and go out without remarks and needless white space.

A page that is opened from a folder loads them as they are; nothing is renamed, so that a browser's tools can be read.
"""

from __future__ import annotations

import re

_SAID = re.compile(r'("(?:[^"\\\n]|\\.)*"|\'(?:[^\'\\\n]|\\.)*\')|/\*.*?\*/', re.S)
_WHITE, _BESIDE, _BEFORE_VALUE, _LAST = re.compile(r"\s+"), re.compile(r" ?([{};,]) ?"), ": ", ";}"


def lighter_style(style: str) -> str:
    """Return a style sheet that says the same in fewer bytes; what stands in quotation marks stays as it is.

    One with a quotation that does not end on its line stays as it is altogether.
    """
    kept: list[str] = []

    def put_away(found: re.Match[str]) -> str:
        if found[1] is None:
            return " "
        kept.append(found[1])
        return f"\0{len(kept) - 1}\0"

    parted = _SAID.sub(put_away, style.replace("\0", ""))
    if '"' in parted or "'" in parted:
        return style
    short = _WHITE.sub(" ", parted)
    short = _BESIDE.sub(r"\1", short).replace(_BEFORE_VALUE, ":").replace(_LAST, "}").strip()
    return re.sub("\0(\\d+)\0", lambda found: kept[int(found[1])], short)


def lighter_script(script: str) -> str:
    """Return a script without the lines that are remarks and without indents; one with a template stays as it is."""
    if "`" in script:
        return script
    return re.sub(r"(?m)^[ \t]+", "", re.sub(r"(?m)^[ \t]*//.*\n", "", script))
