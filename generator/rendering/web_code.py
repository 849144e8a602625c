"""Where a sheet lies on the web: the path of its page comes in, its whole address and a code for the phone go out.

The code is a QR code (ISO/IEC 18004) of error correction level M or better, with the quiet zone of four modules that
the standard asks for.
"""

from __future__ import annotations

import io
from dataclasses import dataclass

import segno

from generator.drawing.picture import Picture
from generator.rendering import addresses
from generator.rendering.setting import Setting
from generator.rendering.sharing import absolute

# With its quiet zone, 25 mm: what an old phone still reads from a photocopy.
_SIDE = 25 / 25.4
_QUIET = 4


@dataclass(frozen=True, slots=True)
class WebPlace:
    """The whole address of a page, how it is printed, and its code."""

    address: str
    shown: str
    code: Picture


def web_place(page: str, setting: Setting) -> WebPlace | None:
    """Return where a page lies on the web; None where nobody knows the address of the site."""
    address = absolute(page, setting)
    if not address:
        return None
    # The code also tells the mark: the page then says at once what is otherwise on a sheet with it.
    kept = setting.edition_mark and setting.standing == "kept"
    told = f"{address}#{addresses.mark_anchor(setting.edition_mark)}" if kept else address
    return WebPlace(address, address.split("://", 1)[1], _code(told))


def _code(address: str) -> Picture:
    svg = io.BytesIO()
    code = segno.make(address, error="m", micro=False)
    code.save(svg, kind="svg", border=_QUIET, light="white", omitsize=True, xmldecl=False, nl=False)
    alt = f"Code to point a phone at: it opens {address}"
    return Picture("web code", svg.getvalue().decode(), _SIDE, _SIDE, alt, "")
