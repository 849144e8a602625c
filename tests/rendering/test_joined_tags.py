"""Sheets put together for printing are read aloud as they are by themselves, every copy of them."""

from __future__ import annotations

import io
from collections.abc import Iterator
from functools import cache

import pikepdf
import pytest
from cushion_sheet import cushion
from pikepdf import Array, Dictionary
from room_setting import setting

from generator.rendering.handout.sheet import render_handout
from generator.rendering.joined import joined
from generator.rendering.printed_paper import PrintedPaper
from generator.rendering.strip import render_strip


@cache
def handout() -> bytes:
    return render_handout(cushion(), setting(), "Letter")


@cache
def strip() -> bytes:
    return render_strip(cushion(), setting(), "Letter")


@pytest.fixture(scope="module")
def together() -> pikepdf.Pdf:
    papers = [
        PrintedPaper("Handout", handout(), "Small", "inch", copies=2),
        PrintedPaper("Marking strip", strip(), cut=True),
    ]
    return pikepdf.open(io.BytesIO(joined(papers, both_sides=True)))


def elements(found: object) -> Iterator[Dictionary]:
    """Every element below one, in the order of reading."""
    if isinstance(found, Array):
        for one in found:
            yield from elements(one)
    elif isinstance(found, Dictionary) and "/S" in found:
        yield found
        yield from elements(found.get("/K"))


def tags(pdf: pikepdf.Pdf) -> list[Dictionary]:
    return list(elements(pdf.Root.StructTreeRoot.K))


def told(pdf: pikepdf.Pdf) -> list[tuple[str, str]]:
    return [(str(tag.S), str(tag.get("/Alt", ""))) for tag in tags(pdf)]


def owners(pdf: pikepdf.Pdf) -> dict[int, object]:
    listed = list(pdf.Root.StructTreeRoot.ParentTree.Nums)
    return {int(number): owner for number, owner in zip(listed[::2], listed[1::2], strict=True)}


def test_every_copy_has_the_tags_of_its_own_file_in_their_order(together: pikepdf.Pdf) -> None:
    one, other = (told(pikepdf.open(io.BytesIO(sheet))) for sheet in (handout(), strip()))
    assert ("/H1", "") in one
    assert told(together) == [*one, *one, *other]


def test_what_is_marked_on_a_page_belongs_to_elements_of_that_page(together: pikepdf.Pdf) -> None:
    owner = owners(together)
    tagged = [page for page in together.pages if "/StructParents" in page]
    # Blank pages stand behind what is cut from its paper, and bear nothing.
    assert len(tagged) < len(together.pages)
    assert len({int(page.StructParents) for page in tagged}) == len(tagged)
    for page in tagged:
        for mark, element in enumerate(owner[int(page.StructParents)]):  # type: ignore[arg-type, var-annotated]
            assert element.Pg.objgen == page.objgen
            assert mark in [kid for kid in element.K if isinstance(kid, int)]


def test_a_cell_names_heads_of_its_own_copy(together: pikepdf.Pdf) -> None:
    found = tags(together)
    names = [str(tag.ID) for tag in found if "/ID" in tag]
    assert len(names) == len(set(names)) > 0
    heads = [str(head) for tag in found if "/A" in tag for head in tag.A.get("/Headers", ())]
    assert heads
    assert set(heads) <= set(names)


def test_a_link_of_each_copy_is_tagged_and_leads_to_the_web() -> None:
    web = setting(site_address="https://ropewalk-sewing.example/")
    sheet = render_handout(cushion(), web, "Letter")
    pdf = pikepdf.open(io.BytesIO(joined([PrintedPaper("Handout", sheet, copies=2)], both_sides=False)))
    links = [link for page in pdf.pages for link in page.get("/Annots", ())]
    alone = [link for page in pikepdf.open(io.BytesIO(sheet)).pages for link in page.get("/Annots", ())]
    assert len(links) == 2 * len(alone) > 0
    for link in links:
        element = owners(pdf)[int(link.StructParent)]
        [named] = [kid for kid in element.K if isinstance(kid, Dictionary) and kid.get("/Type") == "/OBJR"]  # type: ignore[attr-defined]
        assert named.Obj.objgen == link.objgen


def test_the_file_is_whole_and_says_what_it_is(together: pikepdf.Pdf) -> None:
    root = together.Root
    assert bool(root.MarkInfo.Marked)
    assert str(root.Lang) == "en"
    assert bool(root.ViewerPreferences.DisplayDocTitle)
    with together.open_outline() as outline:
        assert [item.title for item in outline.root] == ["Handout, Small, inch"] * 2 + ["Marking strip"]
    assert together.check_pdf_syntax() == []
