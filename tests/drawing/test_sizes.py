"""Pictures that are drawn at any size: as large as they are wanted, at every height that they say they can have."""

import pytest
from panels import panel_of, piece_of, worksheet_of

from generator.drawing.catalogue import draw, draw_sized, heights, sized_keys
from generator.drawing.sizes import MILLIMETRES, DrawnSize, Heights
from generator.drawing.style import Style, read_style

WORKSHEET = worksheet_of(piece_of(panel_of(17)))
LARGE = read_style({"small": 16, "text": 17, "strong": 20})


def test_a_size_is_told_in_millimetres_and_drawn_in_inches():
    assert DrawnSize(50.8, 25.4).inches == (2, 1)
    assert Heights.of_inches(1, 2) == Heights(25.4, 50.8, 50.8)
    assert Heights.of_inches(1) == Heights(25.4, 25.4, 25.4)


@pytest.mark.parametrize("key", sized_keys(WORKSHEET))
@pytest.mark.parametrize(("style", "width"), [(Style(), 93.0), (Style(), 80.0), (LARGE, 180.0)], ids=str)
def test_a_picture_is_as_large_as_it_is_wanted(key, style, width):
    found = heights(WORKSHEET, key, style, width)
    assert 0 < found.least <= found.natural <= found.greatest
    for height in (found.least, found.natural, found.greatest):
        picture = draw_sized(WORKSHEET, key, style, DrawnSize(width, height))
        assert (picture.width, picture.height) == pytest.approx((width / MILLIMETRES, height / MILLIMETRES))
        assert picture.key == key
        assert picture.alt


def test_a_page_gets_such_a_picture_as_wide_as_a_sheet_does():
    # On a screen of 360 px, 93 mm are 351 px: letters of 9 pt are 12 px there.
    assert all(picture.width <= 7.5 for key in sized_keys(WORKSHEET) for picture in draw(WORKSHEET, key, Style()))


def test_an_unknown_kind_is_refused():
    with pytest.raises(KeyError, match="no diagram is called 'portrait front'"):
        heights(WORKSHEET, "portrait front", Style(), 93)
