"""How blocks are dealt out on pages: every height worked by hand."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.drawing.sizes import Heights
from generator.rendering.handout.blocks import Block
from generator.rendering.handout.breaking import PageCut, head, tail
from generator.rendering.handout.planning import (
    FEWEST_PAGES,
    GREATEST_GAP,
    LEAST_GAP,
    LEAST_NOTES,
    PlannedPage,
    planned,
)

ROOM = 250.0


def room(page: int, pages: int) -> float:
    return ROOM


def plain(*heights: float) -> list[Block]:
    return [Block(f"act-{number}", height) for number, height in enumerate(heights, 1)]


def names(pages: tuple[PlannedPage, ...]) -> list[list[str]]:
    return [[block.name for block in page.blocks] for page in pages]


def filled(page: PlannedPage) -> float:
    return sum(block.high for block in page.blocks) + page.gap * (len(page.blocks) - 1) + page.notes


def test_a_block_is_as_high_as_its_words_or_its_pictures_and_what_stands_below() -> None:
    # Paragraphs of 30, 30 and 40 mm beside pictures of 50: two stand beside them, 60; the third below takes 20: 80.
    # All beside would be 100, one 50 + 15 + 20 = 85.
    block = Block("act", 10, narrow=(30, 30, 40), wide=(15, 15, 20), pictures=(Heights(50, 50, 50),))
    assert (block.beside(50), block.at(0)) == (2, 10 + 80)
    assert Block("act", 10, narrow=(30, 30, 40), wide=(15, 15, 20)).at(0) == 10 + 50


def test_a_picture_below_the_words_keeps_them_all_beside_the_others() -> None:
    # Words of 30 and 20 with a picture of 25 and 1.5 mm below them: 76.5, more than the picture of 60 beside them.
    block = Block("act", 10, (30, 20), (15, 10), (Heights(60, 60, 60),), under=(Heights(25, 30, 40),))
    assert (block.at(0), block.at(1)) == (10 + 76.5, 10 + 81.5)
    assert block.placed(0).beside == 2
    assert block.placed(1).under == (30,)


def test_pictures_stand_below_each_other_with_a_gap_between() -> None:
    block = Block("act", 10, pictures=(Heights(20, 30, 40), Heights(10, 10, 10)))
    assert (block.at(0), block.at(1), block.at(2)) == (10 + 31.5, 10 + 41.5, 10 + 51.5)
    assert block.placed(0.5).pictures == (25, 10)
    assert block.placed(1.5).pictures == (35, 10)


def test_stages_that_run_across_the_page_stand_below_the_words() -> None:
    # 10, words of 20 and a picture of 50 with 1.5 above it.
    block = Block("act", 10, narrow=(45,), wide=(20,), spread=(Heights(50, 60, 70),))
    assert (block.at(0), block.at(1)) == (10 + 20 + 51.5, 10 + 20 + 61.5)


def test_little_takes_one_folded_sheet() -> None:
    assert names(planned(plain(100, 100, 100, 100), room).pages) == [["act-1"], ["act-2"], ["act-3"], ["act-4"]]
    assert FEWEST_PAGES == 4


def test_blocks_are_cut_between_pages_so_that_white_is_even() -> None:
    # 100 each, two to a page of 250: eight blocks fill four pages, ten need a fifth and so a sixth.
    assert names(planned(plain(*(100,) * 8), room).pages) == [[f"act-{n}", f"act-{n + 1}"] for n in (1, 3, 5, 7)]
    ten = planned(plain(*(100,) * 10), room).pages
    assert len(ten) == 6
    assert max(len(page.blocks) for page in ten) == 2


def test_a_picture_shrinks_before_a_page_is_added() -> None:
    # 200, and a picture of 80 that may shrink to 40, with 0.6 between them: 49.4 are left for it.
    blocks = [*plain(200), Block("act-2", 0, pictures=(Heights(40, 80, 120),))] * 4
    pages = planned(blocks, room).pages
    assert names(pages) == [["act-1", "act-2"]] * 4
    assert pages[0].blocks[1].pictures[0] == pytest.approx(250 - 200 - LEAST_GAP, abs=1e-3)


def test_room_that_is_left_goes_to_pictures_then_to_gaps_then_to_notes() -> None:
    # 250 - 100 - 50 = 100: the picture grows from 50 to 60, the gap to 7, and 250 - 167 = 83 stay for notes.
    blocks = [Block("a", 100), Block("b", 0, pictures=(Heights(40, 50, 60),)), *plain(200, 200, 200)]
    page = planned(blocks, room).pages[0]
    assert page.blocks[1].pictures == (pytest.approx(60, abs=1e-3),)
    assert page.gap == GREATEST_GAP
    assert page.notes == pytest.approx(83, abs=1e-3)


def test_a_heading_that_leads_is_never_the_last_on_its_page() -> None:
    blocks = [Block("a", 150), Block("head", 50, leads=True), Block("b", 60), *plain(200, 200)]
    assert ["head", "b"] in names(planned(blocks, room).pages)


def test_tables_stand_with_their_act_unless_that_takes_more_pages() -> None:
    # Four acts of 150 and tables of 60 fit four pages of 250. An act of 130 and its table of 130 do not stand on one:
    # kept together nothing holds them, apart the table stands with the next act, 130 + 110.
    together = [Block("act", 150, rather=True), Block("table", 60)] * 4
    assert names(planned(together, room).pages) == [["act", "table"]] * 4
    tight = [Block("act", 130, rather=True), Block("table", 130), Block("next", 110), *plain(200, 240)]
    assert names(planned(tight, room).pages) == [["act"], ["table", "next"], ["act-1"], ["act-2"]]


def test_an_act_goes_on_over_the_page_only_where_that_saves_pages() -> None:
    # 150 and an act of 60 beside its picture with 90 below: 300 is more than a page of 250. Broken, 210 stand on the
    # first; the second has the line that tells what goes on, 5, then 90 and 0.6 and 100.
    act = Block("act", 0, (60, 180), (30, 90), (Heights(60, 60, 60),))
    plan = planned([*plain(150), act, Block("last", 100), *plain(250, 250)], room, 5)
    assert names(plan.pages) == [["act-1", "act"], ["act-c", "last"], ["act-1"], ["act-2"]]
    assert dict(plan.broken) == {"act": PageCut(1, words=1, pictures=1)}
    assert plan.pages[1].blocks[0].high == 5 + 90
    roomy = planned([*plain(150), act, Block("last", 90), *plain(200)], room, 5)
    assert roomy.broken == ()
    assert names(roomy.pages) == [["act-1"], ["act"], ["last"], ["act-1"]]


def test_pictures_are_parted_with_the_words_beside_them() -> None:
    # Paragraphs of 40, 40 and 30 beside pictures of 38, 40 and 30: after two of them two pictures have been shown,
    # which are 79.5 high with their gap, less than the words.
    pictures = tuple(Heights(high, high, high) for high in (38, 40))
    act = Block("act", 8, (40, 40, 30), (20, 20, 15), pictures, under=(Heights(30, 30, 30),))
    first, rest = head(act, PageCut(0, 2, 2)), tail(act, PageCut(0, 2, 2), 5)
    assert (first.narrow, first.pictures, first.at(0)) == ((40, 40), pictures, 8 + 80)
    assert (rest.narrow, rest.pictures, rest.under, rest.at(0)) == ((30,), act.under, (), 5 + 30)
    # 170 and the head stand on the first page only so: the act by itself is 8 + 110 + 1.5 + 30 high.
    plan = planned([*plain(160), act, *plain(200, 245, 240)], room, 5)
    assert dict(plan.broken) == {"act": PageCut(1, words=2, pictures=2)}


def test_a_picture_across_the_page_comes_with_the_last_words_of_an_act_that_goes_on() -> None:
    act = Block("act", 8, (80, 80), (50, 50), spread=(Heights(60, 60, 60),))
    assert head(act, PageCut(0, 1)).at(0) == 8 + 50
    assert tail(act, PageCut(0, 1), 5).at(0) == 5 + 50 + 1.5 + 60


def test_an_act_at_the_machine_and_one_of_a_single_paragraph_keep_their_page() -> None:
    whole = Block("act", 0, (60, 60), (60, 60), (Heights(60, 60, 60),), whole=True)
    for act in (whole, Block("act", 60, (60,), (60,))):
        assert planned([*plain(150), act, *plain(250, 250, 250, 250)], room, 5).broken == ()


def test_a_block_higher_than_its_page_is_told_by_no_plan() -> None:
    assert planned(plain(251, 10, 10, 10), room).pages == ()


def test_the_first_page_may_have_less_room() -> None:
    pages = planned(plain(*(120,) * 8), lambda page, pages: 130.0 if page == 1 else ROOM).pages
    assert len(pages[0].blocks) == 1


@given(
    st.lists(st.tuples(st.floats(5, 120), st.floats(5, 60), st.floats(0, 60)), min_size=6, max_size=24),
)
def test_pages_are_even_and_never_overfull_and_little_white_is_left(found: list[tuple[float, float, float]]) -> None:
    blocks = [
        Block(f"act-{number}", fixed, (least,), (least / 2,), (Heights(least, least + more, least + 2 * more),))
        for number, (fixed, least, more) in enumerate(found)
    ]
    pages = planned(blocks, room).pages
    assert len(pages) % 2 == 0
    assert [name for page in names(pages) for name in page] == [block.name for block in blocks]
    for page in pages:
        assert filled(page) <= ROOM + 1e-6
        assert ROOM - filled(page) <= LEAST_NOTES


def test_an_act_at_the_machine_goes_on_only_where_no_leaf_is_turned() -> None:
    # On the second page 100 stand before the act, on the third 100 behind it: it is parted where both lie open.
    act = Block("act", 0, (100, 100), (100, 100), faces=True)
    plan = planned([*plain(250), Block("a", 100), act, Block("b", 100), Block("c", 250)], room, 5)
    assert names(plan.pages) == [["act-1"], ["a", "act"], ["act-c", "b"], ["c"]]
    # The same between the first page and the second, where the leaf is turned: two pages more.
    turned = planned([Block("a", 100), act, Block("b", 100), *plain(250, 250)], room, 5)
    assert len(turned.pages) == 6
    assert dict(
        planned([Block("a", 100), replace(act, faces=False), Block("b", 100), *plain(250, 250)], room, 5).broken
    )
