"""Paper: finished HTML, style sheets and pictures in memory come in, the bytes of a PDF go out.

The PDF is tagged (PDF/UA-1), has its fonts inside and is the same bytes every time. Nothing is fetched but the fonts
of the theme and the pictures of the sheet. Whatever the setting only grumbles about stops the work here: a sheet with a
missing letter or picture is not printed for twenty people.
"""

from __future__ import annotations

import gc
import logging
import os
import re
from collections.abc import Callable, Iterable, Iterator, Mapping
from contextlib import contextmanager, suppress
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path
from urllib.parse import urlsplit
from urllib.request import url2pathname

import pydyf

from generator.definitions.theme import Theme
from generator.errors import PublishError
from generator.rendering import painting  # noqa: F401 -- it has the library paint as it says
from generator.rendering.logo import with_logo
from generator.rendering.setter import (
    CSS,
    HTML,
    Document,
    FatalURLFetchingError,
    FontConfiguration,
    URLFetcher,
    URLFetcherResponse,
    no_fonts,
)
from generator.rendering.styles import paper_fonts, style_place

_LONGEST = 160
_HOUR = "SOURCE_DATE_EPOCH"
Finisher = Callable[[Document, pydyf.PDF], None]


class SheetFetcher(URLFetcher):  # type: ignore[misc]  # the library has no types
    """Gives out the pictures of one sheet and the files in the theme's font folders, and refuses everything else."""

    def __init__(self, folders: tuple[Path, ...], memory: Mapping[str, str]) -> None:
        super().__init__(timeout=1, allowed_protocols=("file", "data"), allow_redirects=False)
        self._folders = tuple(folder.resolve() for folder in folders)
        self._memory = memory
        self.refused: list[str] = []

    def fetch(self, url: str, headers: Mapping[str, str] | None = None) -> URLFetcherResponse:
        """Return what an address stands for; a refusal is remembered, for inside pictures it would be swallowed."""
        scheme, _, rest = url.partition(":")
        if scheme == "mem" and rest in self._memory:
            return URLFetcherResponse(url, self._memory[rest].encode(), {"Content-Type": "image/svg+xml"})
        if scheme == "data" and rest.startswith(("image/png;", "image/jpeg;")):
            return super().fetch(url, headers)
        if scheme == "file" and not urlsplit(url).netloc:
            path = Path(url2pathname(urlsplit(url).path)).resolve()
            if path.is_file() and any(path.is_relative_to(folder) for folder in self._folders):
                return URLFetcherResponse(path.as_uri(), path.read_bytes(), {"Content-Type": "font/ttf"})
        self.refused.append(url[:_LONGEST])
        raise FatalURLFetchingError(f"a sheet may not fetch {url[:_LONGEST]}")


@dataclass(frozen=True, slots=True)
class SheetResources:
    """What a sheet is set with: its style sheet, the theme whose fonts may be read, and pictures by name."""

    style: str
    theme: Theme
    memory: Mapping[str, str]


def write_pdf(
    html: str, style: str, theme: Theme, memory: Mapping[str, str] | None = None, *, true_size: bool = False
) -> bytes:
    """Return a sheet as PDF.

    Parameters
    ----------
    html, style : str
        The finished page and the text of its style sheet.
    theme : Theme
        Its fonts may be read.
    memory : Mapping of str to str, optional
        SVG text by the name that the page uses after ``mem:``.
    true_size : bool
        Whether to ask the print dialogue for the true size instead of a size that fits.

    Returns
    -------
    bytes
        The same for the same input.

    Raises
    ------
    PublishError
        If anything is missing or refused; the message names it.
    """
    finisher = _ask_for_true_size if true_size else None
    return _written((html,), _any_will_do, SheetResources(style, theme, memory or {}), finisher)


def write_fitting_pdf(versions: Iterable[str], fits: Callable[[Document], bool], paper: SheetResources) -> bytes:
    """Return the first version of a sheet that fits, as PDF; the last one where none does.

    Parameters
    ----------
    versions : iterable of str
        Finished pages, the roomiest first; a version is asked for only when those before it did not fit.
    fits : function of a Document
        Whether a version as set is well placed on its pages.
    paper : SheetResources
        Style sheet, theme and pictures.

    Returns
    -------
    bytes
        The same for the same input.

    Raises
    ------
    PublishError
        If anything is missing or refused; the message names it.
    """
    return _written(versions, fits, paper, None)


def page_of(document: Document, anchor: str) -> int:
    """Return the number of the page on which an element with an id begins, 0 where there is none."""
    return next((number for number, page in enumerate(document.pages, 1) if anchor in page.anchors), 0)


def _any_will_do(document: Document) -> bool:
    return True


def _written(
    versions: Iterable[str], fits: Callable[[Document], bool], paper: SheetResources, finisher: Finisher | None
) -> bytes:
    setter = SheetSetter(paper)
    for html in versions:
        document = setter.set_on_pages(html)
        if fits(document):
            break
    return setter.written(document, finisher)


class SheetSetter:
    """Sets pages of one sheet, as often as needed, and writes one of them; whatever was grumbled about stops it."""

    def __init__(self, paper: SheetResources) -> None:
        folders = tuple(folder / "fonts" for folder in paper.theme.folders)
        times = tuple(face.print.stat().st_mtime_ns for face in paper.theme.faces)
        self._fetcher = SheetFetcher(folders, with_logo(paper.memory, paper.theme))
        self._sheet = read_style_sheet(paper.style)
        self._fonts = _fonts(paper_fonts(paper.theme), folders, times)
        self._grumbled: list[str] = []

    def set_on_pages(self, html: str, style: str = "") -> Document:
        """Return a page as set, under one more style sheet where that is given.

        Raises
        ------
        PublishError
            If it asks for what it may not fetch.
        """
        # The boxes of the sheet before point at each other; let them go before as many come to lie beside them.
        gc.collect(1)
        sheets = [self._sheet, *([read_style_sheet(style)] if style else [])]
        with _grumbles() as grumbles, _refusing():
            page = HTML(string=html, url_fetcher=self._fetcher)
            document = page.render(stylesheets=sheets, font_config=self._fonts, pdf_variant="pdf/ua-1")
        self._grumbled = list(grumbles)
        return document

    def written(self, document: Document, finisher: Finisher | None = None) -> bytes:
        """Return the page that was set last as PDF.

        Raises
        ------
        PublishError
            If anything is missing or refused; the message names it.
        """
        with _grumbles() as grumbles, _refusing(), _same_hour():
            written = document.write_pdf(finisher=finisher, pdf_variant="pdf/ua-1")
        _stop_on(self._fetcher.refused + self._grumbled + grumbles)
        return bytes(written)


@contextmanager
def _refusing() -> Iterator[None]:
    try:
        yield
    except FatalURLFetchingError as error:
        raise PublishError(f"the sheet could not be set: {error}") from None


@contextmanager
def _same_hour() -> Iterator[None]:
    """Have fonts that are cut down stamped with the same hour always; the library that does it asks the environment."""
    before = os.environ.get(_HOUR)
    os.environ[_HOUR] = "0"
    try:
        yield
    finally:
        del os.environ[_HOUR]
        os.environ.update({} if before is None else {_HOUR: before})


@lru_cache(maxsize=8)
def read_style_sheet(style: str) -> CSS:
    """Return a style sheet, read once for all sheets that share it.

    Raises
    ------
    PublishError
        If it is not understood, or names fonts itself.
    """
    if "@font-face" in style:
        raise PublishError("a style sheet of a sheet names a font with @font-face; name fonts in theme.yaml instead")
    return _read_css(style, (), None)


@lru_cache(maxsize=2)
def _fonts(faces: str, folders: tuple[Path, ...], font_times: tuple[int, ...]) -> FontConfiguration:
    """Return the fonts of a theme, loaded once for all its sheets.

    ``font_times`` tell when the font files were last changed: other times, other fonts.
    """
    fonts = no_fonts()
    _read_css(faces, folders, fonts)
    return fonts


def _read_css(text: str, folders: tuple[Path, ...], fonts: FontConfiguration | None) -> CSS:
    fetcher = SheetFetcher(folders, {})
    with _grumbles() as grumbles, suppress(FatalURLFetchingError):
        css = CSS(string=text, url_fetcher=fetcher, font_config=fonts)
    _stop_on(fetcher.refused + [_in_its_file(grumble, text) for grumble in grumbles])
    return css


def _in_its_file(grumble: str, style: str) -> str:
    """Return a message about a style sheet with the file and line that it is about in front."""
    told = re.search(r" at (\d+):(\d+)", grumble)
    place = style_place(style, int(told[1]), int(told[2])) if told else None
    return f"{place}: {grumble.replace(told[0], '', 1)}" if told and place else grumble


def _stop_on(faults: Iterable[str]) -> None:
    """Refuse to print a sheet with faults."""
    found = list(dict.fromkeys(faults))
    if found:
        raise PublishError("the sheet could not be set: " + "; ".join(found[:5]))


def _plainly(grumble: str) -> str:
    """Return a message as a person can use it; a missing letter is by far the likeliest."""
    letter = re.search(r'unsupported by fonts: "(.+)" \((U\+\w+)\)', grumble)
    if letter is None:
        return grumble[:_LONGEST]
    return f"no font of the theme has the letter '{letter[1]}' ({letter[2]}); write it otherwise or add a font"


@contextmanager
def _grumbles() -> Iterator[list[str]]:
    """Gather what the setting logs as a warning or worse."""
    told: list[str] = []

    class Listener(logging.Handler):
        def emit(self, record: logging.LogRecord) -> None:
            told.append(_plainly(record.getMessage()))

    logger = logging.getLogger("weasyprint")
    listener = Listener(logging.WARNING)
    logger.addHandler(listener)
    passed_on, logger.propagate = logger.propagate, False
    try:
        yield told
    finally:
        logger.removeHandler(listener)
        logger.propagate = passed_on


def _ask_for_true_size(document: Document, pdf: pydyf.PDF) -> None:
    wishes = pdf.catalog.get("ViewerPreferences") or pydyf.Dictionary()
    wishes["PrintScaling"] = "/None"
    pdf.catalog["ViewerPreferences"] = wishes
