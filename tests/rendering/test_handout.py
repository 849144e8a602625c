from __future__ import annotations

import dataclasses
import io
import re
import shutil
from collections.abc import Iterator
from functools import cache
from pathlib import Path

import pdfplumber
import pikepdf
import pytest
from cushion_sheet import cushion
from opened_pdf import told_figures, whole_text
from PIL import Image
from room_setting import THEMES, setting
from shapes_room import shapes

from generator.definitions.theme import load_theme
from generator.errors import PublishError
from generator.lengths import INCH, METRIC
from generator.rendering.handout.sheet import render_handout, render_handouts
from generator.rendering.pdf import write_pdf
from generator.rendering.strip import render_strip


@cache
def letter() -> bytes:
    return render_handout(cushion(), setting(), "Letter")


@cache
def a4(theme: str) -> bytes:
    return render_handout(cushion(), setting(theme), "A4")


@cache
def metric_a4() -> bytes:
    return render_handout(cushion(METRIC), setting(), "A4")


def opened(pdf: bytes) -> pikepdf.Pdf:
    return pikepdf.open(io.BytesIO(pdf))


@cache
def opened_letter() -> pikepdf.Pdf:
    return opened(letter())


@cache
def texts(pdf: bytes) -> list[str]:
    with pdfplumber.open(io.BytesIO(pdf)) as read:
        return [page.extract_text() for page in read.pages]


def structure(node: pikepdf.Object) -> Iterator[pikepdf.Dictionary]:
    """Every element of the tree of tags."""
    if isinstance(node, pikepdf.Array):
        for child in node:
            yield from structure(child)
    elif isinstance(node, pikepdf.Dictionary):
        if "/S" in node:
            yield node
        if "/K" in node:
            yield from structure(node.K)


def fonts(pdf: pikepdf.Pdf) -> list[pikepdf.Dictionary]:
    return [
        item for item in pdf.objects if isinstance(item, pikepdf.Dictionary) and item.get("/Type") == "/FontDescriptor"
    ]


def test_the_pages_have_the_size_of_the_paper() -> None:
    # US Letter is 8 1/2 by 11 in of 72 pt; A4 (ISO 216) is 210 by 297 mm.
    metric = opened(metric_a4())
    for page in opened_letter().pages:
        left, low, right, high = map(float, page.mediabox)
        assert (right - left, high - low) == pytest.approx((612, 792))
    for page in metric.pages:
        left, low, right, high = map(float, page.mediabox)
        assert (right - left, high - low) == pytest.approx((595.28, 841.89), abs=0.01)


def test_only_sheets_that_there_are_for_a_size_are_offered_on_its_handout() -> None:
    assert "Ask for the rescue sheet or the marking strip of this size." in whole_text(letter())
    shaped = whole_text(render_handout(shapes("inch"), setting(), "Letter"))
    assert "Ask for the paper pattern of this size." in shaped


def test_both_papers_hold_the_same_and_keep_the_room_for_holes() -> None:
    sheets = render_handouts(cushion(), setting(), ("Letter", "A4"))
    assert texts(sheets["Letter"]) == texts(sheets["A4"])
    for sheet in sheets.values():
        with pdfplumber.open(io.BytesIO(sheet)) as read:
            edges = [list(map(float, page.mediabox)) for page in opened(sheet).pages]
            for number, (page, (left, _, right, _)) in enumerate(zip(read.pages, edges, strict=True), 1):
                # 20 mm of 25.4 mm an inch; a sheet is bound at the left of its first page.
                free = (
                    min(letter["x0"] for letter in page.chars) - left
                    if number % 2
                    else right - max(letter["x1"] for letter in page.chars)
                )
                assert free > 20 / 25.4 * 72 - 0.1


def test_the_first_page_says_what_it_is_what_to_buy_and_what_to_have_ready() -> None:
    first = texts(letter())[0]
    for words in ("Slack Tide cushion", "Pad of 14 in", "inch edition", "1 yd", "cushion pad", "Have ready:", "Name"):
        assert words in first


def test_the_cut_sizes_stand_in_the_cut_table_and_nowhere_else() -> None:
    told = " ".join(" ".join(texts(letter())).split())
    assert told.count("27 1/4 × 16 1/4") == 1


def test_every_page_says_what_it_belongs_to() -> None:
    pages = texts(metric_a4())
    for number, text in enumerate(pages, 1):
        assert "Slack Tide cushion, Pad of 35 cm · metric edition" in text
        assert "Edition mark 2031-03 b" in text
        assert f"page {number} of {len(pages)}" in text


def test_the_metric_sheet_has_no_inches() -> None:
    told = " ".join(" ".join(texts(metric_a4())).split())
    assert re.search(r"\d in\b", told) is None
    assert "73 × 41.5" in told


def test_the_file_is_tagged_and_says_its_language_and_title() -> None:
    pdf = opened_letter()
    assert bool(pdf.Root.MarkInfo.Marked)
    assert str(pdf.Root.Lang) == "en"
    assert str(pdf.docinfo.Title) == "Slack Tide cushion, Pad of 14 in, inch edition"
    assert bool(pdf.Root.ViewerPreferences.DisplayDocTitle)
    with pdf.open_metadata() as described:
        assert described["pdfuaid:part"] == "1"


def test_every_figure_is_told_in_words() -> None:
    told = told_figures(letter())
    assert len(told) >= 4
    assert all(told)
    assert any("Every turn as you see it at the machine" in words for words in told)


def test_the_logo_of_a_theme_stands_on_its_sheets_and_is_told_as_the_name_of_the_room() -> None:
    harbour = told_figures(a4("harbour"))
    assert harbour.count("The Ropewalk Sewing Room") == 1
    assert len(harbour) == len(told_figures(metric_a4())) + 1


def test_a_logo_may_be_a_png(tmp_path: Path) -> None:
    shutil.copytree(THEMES / "plain", tmp_path / "plain")
    (tmp_path / "quay").mkdir()
    (tmp_path / "quay" / "theme.yaml").write_text("title: Quay\nbased on: plain\nlogo: m.png\n", encoding="utf-8")
    Image.new("L", (8, 8), 0).save(tmp_path / "quay" / "m.png")
    quay = dataclasses.replace(setting(), theme=load_theme(tmp_path / "quay"))
    pdf = opened(render_handout(cushion(), quay, "Letter"))
    pictures = [item for item in pdf.objects if isinstance(item, pikepdf.Stream) and item.get("/Subtype") == "/Image"]
    assert 8 in [picture.Width for picture in pictures]


def test_every_act_is_in_the_outline() -> None:
    with opened_letter().open_outline() as outline:
        top = outline.root[0]
        assert top.title == "Slack Tide cushion"
        acts = [item.title for item in top.children]
    assert [title for title in acts if title[0].isdigit()] == [
        f"{step.number} {step.title}" for step in cushion().steps
    ]


def test_all_fonts_are_inside_the_file() -> None:
    found = fonts(opened_letter())
    assert {str(font.FontName).split("+")[1].split("-")[0] for font in found} == {"Fira"}
    assert all("/FontFile2" in font or "/FontFile3" in font for font in found)


def test_the_same_sheet_has_the_same_bytes() -> None:
    assert render_handout(cushion(), setting(), "Letter") == letter()


@pytest.mark.parametrize(
    ("theme", "paper", "count"), [("plain", "A4", 1), ("plain", "Letter", 28), ("large-print", "A4", 40)]
)
def test_nothing_runs_over_the_edge_of_the_paper(theme: str, paper: str, count: int) -> None:
    sheet = cushion(INCH, count=count, title="A cushion with a rather long name for a harbour in the evening")
    with pdfplumber.open(io.BytesIO(render_handout(sheet, setting(theme), paper))) as read:
        for page in read.pages:
            edge = 0.4 * 72
            words = page.extract_words()
            assert words
            assert min(word["x0"] for word in words) >= edge
            assert max(word["x1"] for word in words) <= float(page.width) - edge
            assert max(word["bottom"] for word in words) <= float(page.height) - edge / 2


@pytest.mark.parametrize(("theme", "least"), [("plain", 9), ("harbour", 9), ("large-print", 16)])
def test_no_letter_is_smaller_than_can_be_read(theme: str, least: float) -> None:
    # 9 pt is what a tired copier still keeps; large print is commonly 16 to 18 pt: common practice, no source. The
    # digits of built fractions are smaller, and the numbers in the code of the web are none.
    with pdfplumber.open(io.BytesIO(a4(theme))) as read:
        sizes = [
            char["size"] for page in read.pages for char in page.chars if char["text"].isalpha() and char["upright"]
        ]
    assert min(sizes) >= least - 0.01


def test_a_letter_that_no_font_has_is_named() -> None:
    sheet = cushion(title="Cushion \N{EGYPTIAN HIEROGLYPH A001}")
    with pytest.raises(PublishError) as refused:
        render_handout(sheet, setting(), "A4")
    told = (
        "no font of the theme has the letter '\N{EGYPTIAN HIEROGLYPH A001}' (U+13000); write it otherwise or add a font"
    )
    assert str(refused.value) == f"the sheet could not be set: {told}"


def test_a_missing_picture_stops_the_work() -> None:
    with pytest.raises(PublishError, match="the sheet could not be set"):
        write_pdf("<html lang=en><title>x</title><h1>x</h1><img src='mem:lost.svg' alt='x'>", "", setting().theme, {})


@pytest.mark.parametrize(
    "address", ["file:///etc/passwd", "http://127.0.0.1:9/x.png", "data:text/html,x", "file://elsewhere/x.svg"]
)
def test_a_sheet_fetches_nothing_of_its_own_will(address: str) -> None:
    for html in (f"<img src='{address}' alt='x'>", f"<a rel=attachment href='{address}'>x</a>"):
        with pytest.raises(PublishError, match="the sheet could not be set"):
            write_pdf(f"<html lang=en><title>x</title><h1>x</h1>{html}", "", setting().theme)


def test_a_picture_fetches_nothing_either() -> None:
    image = '<image href="file:///etc/passwd" width="9" height="9"/>'
    spy = f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9">{image}</svg>'
    with pytest.raises(PublishError, match="/etc/passwd"):
        write_pdf(
            "<html lang=en><title>x</title><h1>x</h1><img src='mem:spy.svg' alt='x'>",
            "",
            setting().theme,
            {"spy.svg": spy},
        )


@pytest.mark.parametrize("theme", ["plain", "harbour", "large-print"])
def test_marking_strips_keep_their_true_size(theme: str) -> None:
    pdf = render_strip(cushion(), setting(theme), "A4")
    assert opened(pdf).Root.ViewerPreferences.PrintScaling == "/None"
    with pdfplumber.open(io.BytesIO(pdf)) as read:
        level = [line["width"] for line in (*read.pages[0].lines, *read.pages[0].curves) if line["height"] < 0.01]
    # The control measure: six inches of 72 points.
    assert any(abs(width - 6 * 72) < 0.1 for width in level)


def test_a_marking_strip_tells_the_edges_it_is_laid_along_by_where_they_lie() -> None:
    # 17 tucks of 3/8 in every 1 1/2 in, margins of 3/4 and seams of 1/2: 27 1/4 in from left to right.
    with pdfplumber.open(io.BytesIO(render_strip(cushion(), setting(), "A4"))) as read:
        told = " ".join((read.pages[0].extract_text() or "").split())
    assert "lay the strip along the top and the bottom edge, 27" in told
    assert "long edge" not in told
