"""The setting library without the machine's fonts: it is loaded with an empty list of fonts, and its names go out.

A sheet is set with the fonts of its theme alone. Otherwise a letter that they lack would be taken from whatever fonts
the machine has, and rules for fonts that its owner made would bend the page.
"""

from __future__ import annotations

import os
import warnings
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

_NAMED_IN = "FONTCONFIG_FILE"
_VERSIONS = 100
_NO_FONTS = Path(__file__).with_name("fonts.conf")


@contextmanager
def _without_the_machines_fonts() -> Iterator[None]:
    before = os.environ.get(_NAMED_IN)
    os.environ[_NAMED_IN] = str(_NO_FONTS)
    try:
        yield
    finally:
        del os.environ[_NAMED_IN]
        os.environ.update({} if before is None else {_NAMED_IN: before})


with _without_the_machines_fonts(), warnings.catch_warnings():
    # The library warns of a machine without fonts; here that is meant.
    warnings.simplefilter("ignore", UserWarning)
    from weasyprint import CSS, HTML, Document, images
    from weasyprint.css.properties import INITIAL_VALUES
    from weasyprint.draw.text import draw_first_line
    from weasyprint.formatting_structure import boxes
    from weasyprint.matrix import Matrix
    from weasyprint.svg import SVG, TAGS
    from weasyprint.text.ffi import harfbuzz, pango
    from weasyprint.text.fonts import FontConfiguration
    from weasyprint.text.line_break import split_first_line
    from weasyprint.urls import FatalURLFetchingError, URLFetcher, URLFetcherResponse


def no_fonts() -> FontConfiguration:
    """Return a list of fonts without any, for those of a theme; text that is set with none at all crashes."""
    with _without_the_machines_fonts():
        return FontConfiguration()


def setting_libraries() -> str:
    """Return the versions of the libraries of the system that letters are set with."""
    newest = max(number for number in range(_VERSIONS) if harfbuzz.hb_version_atleast(number, 0, 0))
    minor = max(number for number in range(_VERSIONS) if harfbuzz.hb_version_atleast(newest, number, 0))
    return f"Pango {pango.pango_version()}, HarfBuzz {newest}.{minor}"


__all__ = [
    "CSS",
    "HTML",
    "INITIAL_VALUES",
    "SVG",
    "TAGS",
    "Document",
    "FatalURLFetchingError",
    "FontConfiguration",
    "Matrix",
    "URLFetcher",
    "URLFetcherResponse",
    "boxes",
    "draw_first_line",
    "images",
    "no_fonts",
    "setting_libraries",
    "split_first_line",
]
