"""The contact sheet shows every diagram of a worksheet, each at its own size."""

import xml.etree.ElementTree as ElementTree

from panels import panel_of, piece_of, worksheet_of

from generator.drawing.catalogue import draw, figure_keys
from generator.drawing.contact import OF_EACH, contact_sheet
from generator.drawing.style import Style

SVG = "{http://www.w3.org/2000/svg}"


def test_every_diagram_of_every_worksheet_is_on_the_sheet():
    worksheets = [worksheet_of(piece_of(panel_of(count))) for count in (2, 17)]
    expected = [
        (round(picture.width * 72, 2), round(picture.height * 72, 2))
        for worksheet in worksheets
        for key in figure_keys(worksheet)
        for picture in draw(worksheet, key, Style())[:OF_EACH]
    ]
    root = ElementTree.fromstring(contact_sheet(worksheets, Style()))  # noqa: S314
    placed = root.findall(f"{SVG}svg")
    assert [(round(float(one.get("width")), 2), round(float(one.get("height")), 2)) for one in placed] == expected


def test_nothing_on_the_sheet_lies_outside_it():
    root = ElementTree.fromstring(contact_sheet([worksheet_of(piece_of(panel_of(7)))], Style()))  # noqa: S314
    _, _, width, height = (float(number) for number in root.get("viewBox", "").split())
    for one in root.findall(f"{SVG}svg"):
        assert float(one.get("x")) + float(one.get("width")) <= width
        assert float(one.get("y")) + float(one.get("height")) <= height
