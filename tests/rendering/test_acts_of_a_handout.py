"""What the acts of a handout hold."""

from __future__ import annotations

from room_setting import setting

from generator.drawing.style import style_of
from generator.rendering.handout.acts import acts_of
from generator.rendering.handout.pictures import Drawer
from tests.room import demo_room


def test_the_picture_of_gathering_stands_once_and_the_next_strip_is_sent_to_it() -> None:
    # The pinafore is gathered at its frills, and later at its skirt: the two pictures differ by their lengths only.
    sheet = demo_room().worksheet("net-loft-pinafore", "4 to 5", "metric")
    first, second = (act for act in acts_of(sheet, Drawer(sheet, style_of(setting().theme))) if "Gather" in act.title)
    assert first.pictures == ("assembly frill shoulder frill",)
    assert second.pictures == ()
    assert second.text.endswith(f"The picture stands at step {first.number}.")
    assert "until the edge measures 33 cm" in second.text
