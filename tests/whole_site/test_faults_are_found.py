"""What looks at the site finds what it looks for: good pages and sheets are spoilt, one thing at a time."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pikepdf
import pytest
from handout_checks import on_the_ruler
from links import faulty_links, unreachable
from page_checks import faults
from page_reading import ReadPage
from pikepdf import Array, Dictionary, Name, Pdf
from sheet_checks import faults_of
from sheet_reading import ReadSheet

from tests.built_site import BuiltSite

PAGE = "projects/quay-cushion/small/inch.html"
SHEET = "projects/quay-cushion/small/quay-cushion-small-inch-letter.pdf"
ADDRESS = "https://sewing.example/room/"
SPOILT_PAGES = {
    "<p>": ("<p>The the ", "says a word twice: 'The the'"),
    "<!DOCTYPE html>\n": ("", "does not begin with the doctype"),
    "</main>": ("</div></main>", "is no valid HTML"),
    '<html lang="en">': ("<html>", "does not say its language"),
    '<meta name="description"': ('<meta name="told"', "has no description"),
    "initial-scale=1": ("initial-scale=1, user-scalable=no", "hinders zooming"),
    "</title>": ("</title><title>Twice</title>", "has the titles"),
    "default-src 'none'": ("default-src 'self'", "its policy allows what it does not name"),
    "font-src 'self'": ("font-src 'self' https://fonts.example", "its policy allows font-src"),
    '<meta http-equiv="Content-Security-Policy"': ('<meta name="policy"', "has no policy before its first link"),
    '<main id="main"': ('<main id="main" onclick="go()"', "<main> has ['onclick']"),
    '<main id="main" ': ('<main style="color: red" id="main" ', "<main> has ['style']"),
    "</head>": ("<script>go()</script></head>", "holds an inline <script>"),
    "<h1>": ("<h1>Another</h1><h1>", "has 2 headings of the first rank"),
    "<h2": ("<h4>Sunk</h4><h2", "a heading of rank 4 follows one of rank 1"),
    "<footer>": ("<h2></h2><footer>", "has an empty <h2>"),
    "<footer": ("<footer></footer><footer", "has 2 <footer>"),
    '<nav aria-label="Site">': ("<nav>", "has no <nav>, or one without a name"),
    'href="#main"': ('href="#start"', "does not begin with a link past the navigation"),
    "</body>": ('<p id="main">x</p></body>', "has the id 'main' 2 times"),
    "<article": ('<article aria-labelledby="nobody"', "names 'nobody', which is not there"),
    "</article>": ('<img src="x.svg" width="1" height="1"></article>', "has no alternative text"),
    "</article": ('<img src="x.svg" alt=""></article', "a picture has no width and height"),
    ' role="img" aria-label': (" aria-label", "a drawing is not told in words"),
    "</h1>": ("<div>x</div></h1>", "<div> stands in running text"),
    "</figcaption>": ("</figcaption><p>x</p>", "the caption of a figure stands between"),
    "<table": ('<table role="table"', "<table> says its own role again"),
    ' scope="col"': ("", "a table does not say what its heads are for"),
    '<table class="marks" aria-label': ('<table class="marks" title', "a table has neither heads nor a name"),
    "<footer>\n": ('<input type="text"><footer>', "<input> has no label"),
    "<footer>\n<p>": ('<footer><p><a href="x.html"></a>', "<a> has no words"),
    '"@type": "HowTo"': ('"@type": "Recipe"', "its JSON-LD is of type ['Recipe']"),
    '"@context"': ("@context", "its JSON-LD cannot be read"),
    '"totalTime"': ('"time"', "its JSON-LD lacks ['totalTime']"),
}


@pytest.mark.parametrize("good", SPOILT_PAGES)
def test_a_spoilt_page_is_found_out(good: str, demo_site: BuiltSite) -> None:
    text = (demo_site.folder / PAGE).read_text(encoding="utf-8")
    bad, told = SPOILT_PAGES[good]
    assert good in text
    assert any(told in fault for fault in faults(ReadPage(text.replace(good, bad, 1))))


@pytest.mark.parametrize(
    ("good", "bad"),
    [('"28.50"', '"£28.50"'), ('"GBP"', '"pounds"'), ('"Offer"', '"Price"'), ('"name": "Small", ', "")],
)
def test_an_offer_without_a_price_is_found_out(good: str, bad: str, demo_site: BuiltSite) -> None:
    offer = '{"@type": "Offer", "name": "Small", "price": "28.50", "priceCurrency": "GBP"}'
    text = (
        (demo_site.folder / PAGE)
        .read_text(encoding="utf-8")
        .replace('"@type": "HowTo"', f'"offers": [{offer}], "@type": "HowTo"')
    )
    told = "without a price in a money"
    assert not any(told in fault for fault in faults(ReadPage(text)))
    assert any(told in fault for fault in faults(ReadPage(text.replace(good, bad))))


@pytest.mark.parametrize(
    ("link", "told"),
    [
        ('<a href="gone.html">x</a>', "leads to no file"),
        ('<a href="other.html#gone">x</a>', "leads to no such place on that page"),
        ('<a href="/other.html">x</a>', "is not relative"),
        ('<a href="https://elsewhere.example/">x</a>', "is not relative"),
        ('<img src="//elsewhere.example/x.png">', "is not relative"),
        ('<img srcset="other.html 1x, gone.png 2x">', "leads to no file"),
        ('<script src="data:text/javascript,go()"></script>', "is data"),
        ('<link rel="canonical" href="https://elsewhere.example/">', "is not below the site's own address"),
    ],
)
def test_a_dead_link_is_found_out(link: str, told: str, tmp_path: Path) -> None:
    site = small_site(tmp_path, f'<a href="other.html#here">x</a> <a href="#top" id="top">x</a> {link}')
    assert [fault.endswith(told) for fault in faulty_links(site, "index.html", ADDRESS)] == [True]


def test_a_file_that_nothing_leads_to_is_found_out(tmp_path: Path) -> None:
    site = small_site(tmp_path, '<link href="look.css"> <a href="other.html">x</a>')
    (tmp_path / "look.css").write_text('@font-face { src: url("letters.woff2") }', encoding="utf-8")
    (tmp_path / "letters.woff2").touch()
    (tmp_path / "left-over.pdf").touch()
    assert list(faulty_links(site, "look.css", "")) == []
    assert unreachable(site) == ["left-over.pdf"]


def small_site(folder: Path, home: str) -> BuiltSite:
    (folder / "index.html").write_text(home, encoding="utf-8")
    (folder / "other.html").write_text('<p id="here">x</p>', encoding="utf-8")
    return BuiltSite(folder)


def first(pdf: Pdf, key: str, value: str) -> Dictionary:
    """The first dictionary of a file in which a key has a value."""
    return next(found for found in pdf.objects if isinstance(found, Dictionary) and found.get(key) == Name(value))


def cut_last_page(pdf: Pdf) -> None:
    del pdf.pages[-1]


def widen_first_page(pdf: Pdf) -> None:
    pdf.pages[0].MediaBox = Array([0, 0, 700, 792])


def untag(pdf: Pdf) -> None:
    del pdf.Root.MarkInfo


def forget_standard(pdf: Pdf) -> None:
    del pdf.Root.Metadata


def untag_first_page(pdf: Pdf) -> None:
    del pdf.pages[0].StructParents


def forget_language(pdf: Pdf) -> None:
    del pdf.Root.Lang


def forget_title(pdf: Pdf) -> None:
    del pdf.docinfo.Title


def show_file_name(pdf: Pdf) -> None:
    del pdf.Root.ViewerPreferences


def cut_outline(pdf: Pdf) -> None:
    del pdf.Root.Outlines


def mislead_bookmark(pdf: Pdf) -> None:
    del pdf.Root.Outlines.First[pikepdf.Name("/Dest" if "/Dest" in pdf.Root.Outlines.First else "/A")]


def take_font_out(pdf: Pdf) -> None:
    inside = first(pdf, "/Type", "/FontDescriptor")
    for key in ("/FontFile2", "/FontFile3"):
        if key in inside:
            del inside[key]


def name_font_whole(pdf: Pdf) -> None:
    first(pdf, "/Subtype", "/CIDFontType2").BaseFont = Name("/Whole")


def silence_figure(pdf: Pdf) -> None:
    del first(pdf, "/S", "/Figure").Alt


def move_figure(pdf: Pdf) -> None:
    """The last figure of the sheet, which stands in an act, is told to be on the first page."""
    figures = [one for one in pdf.objects if isinstance(one, Dictionary) and one.get("/S") == "/Figure"]
    figures[-1].Pg = pdf.pages[0].obj


def sink_heading(pdf: Pdf) -> None:
    first(pdf, "/S", "/H2").S = Name.H4


def begin_with_a_second_rank(pdf: Pdf) -> None:
    first(pdf, "/S", "/H1").S = Name.H2


def empty_heading(pdf: Pdf) -> None:
    del first(pdf, "/S", "/H1").K


def behead_cells(pdf: Pdf) -> None:
    for found in pdf.objects:
        if isinstance(found, Dictionary) and found.get("/S") == Name.TD and "/A" in found:
            del found.A


def empty_head(pdf: Pdf) -> None:
    del first(pdf, "/S", "/TH").K


def scatter_list(pdf: Pdf) -> None:
    first(pdf, "/S", "/L").S = Name.Div


def link_with(pdf: Pdf, **leading: object) -> None:
    annotation = Dictionary(Type=Name.Annot, Subtype=Name.Link, Rect=[0, 0, 9, 9], StructParent=0, **leading)
    pdf.pages[0].Annots = Array([*pdf.pages[0].get("/Annots", Array()), pdf.make_indirect(annotation)])


def link_to_nowhere(pdf: Pdf) -> None:
    link_with(pdf, Dest=pikepdf.String("nowhere"))


def link_elsewhere(pdf: Pdf) -> None:
    link_with(pdf, A=Dictionary(S=Name.URI, URI=pikepdf.String("https://elsewhere.example/")))


def leave_an_odd_page(pdf: Pdf) -> None:
    del pdf.pages[2]


def tell_page_one_again(pdf: Pdf) -> None:
    pdf.pages[1].Contents, pdf.pages[1].Resources = pdf.pages[0].Contents, pdf.pages[0].Resources


def empty_third_page(pdf: Pdf) -> None:
    pdf.pages[2].Contents = pdf.make_stream(b"")


def run_something(pdf: Pdf) -> None:
    pdf.Root.OpenAction = Dictionary(S=Name.JavaScript, JS=pikepdf.String("go()"))


def attach_something(pdf: Pdf) -> None:
    pdf.attachments["x.txt"] = b"x"


SPOILERS: dict[Callable[[Pdf], None], str] = {
    cut_last_page: "calls itself",
    widen_first_page: "page 1 is (700.0, 792.0)",
    untag: "is not tagged",
    forget_standard: "does not say that it is PDF/UA",
    untag_first_page: "nothing on page 1 is tagged",
    forget_language: "says that its language is None",
    forget_title: "has no title",
    show_file_name: "does not ask for its title to be shown",
    cut_outline: "has no outline",
    mislead_bookmark: "leads nowhere",
    take_font_out: "is not inside",
    name_font_whole: "is inside whole",
    silence_figure: "figures are not told in words",
    move_figure: "stands on page 1",
    sink_heading: "a heading of rank 4 follows one of rank 1",
    begin_with_a_second_rank: "does not begin with a heading of the first rank",
    empty_heading: "has an empty heading",
    behead_cells: "a cell of a table has no head",
    empty_head: "the head of a table is empty",
    scatter_list: "LI stands in Div",
    link_to_nowhere: "a link leads nowhere",
    link_elsewhere: "a link leads to https://elsewhere.example/",
    leave_an_odd_page: "a handout has 3 pages",
    tell_page_one_again: "'To buy' is told 2 times",
    empty_third_page: "page 3 is white for 259 mm",
    run_something: "holds /JS",
    attach_something: "/EmbeddedFiles",
}


@pytest.mark.parametrize("spoil", SPOILERS, ids=lambda spoil: spoil.__name__)
def test_a_spoilt_sheet_is_found_out(spoil: Callable[[Pdf], None], demo_site: BuiltSite, tmp_path: Path) -> None:
    spoilt = tmp_path / Path(SHEET).name
    with pikepdf.open(demo_site.folder / SHEET) as pdf:
        spoil(pdf)
        pdf.save(spoilt)
    assert any(SPOILERS[spoil] in fault for fault in faults_of(spoilt, demo_site))


def test_a_length_finer_than_the_ruler_is_found_out(demo_site: BuiltSite) -> None:
    with pikepdf.open(demo_site.folder / SHEET) as pdf:
        sheet = ReadSheet(demo_site.folder / SHEET, pdf, demo_site)
        assert list(on_the_ruler(sheet)) == []
        sheet.texts.append("10 9\N{FRACTION SLASH}32")
        assert list(on_the_ruler(sheet)) == ["9\N{FRACTION SLASH}32 is finer than a ruler"]


def test_a_damaged_sheet_is_found_out(demo_site: BuiltSite, tmp_path: Path) -> None:
    spoilt, whole = tmp_path / Path(SHEET).name, (demo_site.folder / SHEET).read_bytes()
    spoilt.write_bytes(whole.replace(b"startxref", b"startwhat"))
    assert any("qpdf finds fault with it" in fault for fault in faults_of(spoilt, demo_site))
