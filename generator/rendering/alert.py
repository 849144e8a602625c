"""The alert symbol of safety messages, a triangle with an exclamation mark (ANSI Z535.4), as pictures."""

from __future__ import annotations

_TRIANGLE = (
    '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 36 32">'
    '<path d="M18 1.5 L35 31 H1 Z" fill="{ground}" stroke="{ground}" stroke-width="2" stroke-linejoin="round"/>'
    '<path d="M16.2 11 h3.6 l-0.7 10.5 h-2.2 Z M16.3 24 h3.4 v3.4 h-3.4 Z" fill="{sign}"/></svg>'
)
ALERTS = {
    "alert.svg": _TRIANGLE.format(ground="#000000", sign="#ffffff"),
    "alert-white.svg": _TRIANGLE.format(ground="#ffffff", sign="#000000"),
}
