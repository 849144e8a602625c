from __future__ import annotations

import math

import pytest
from cushion_sheet import cushion
from room_setting import setting
from tinyhtml5.parser import HTMLParser

from generator.calculation.reference_rows import plan_draw_in
from generator.calculation.turning.plans import PLANS, turn_plan
from generator.rendering.addresses import plan_picture
from generator.rendering.cards import PageLink, SitePicture
from generator.rendering.gallery import plans_used, render_gallery

PICTURES = {name: SitePicture(plan_picture(name), 320, 443, f"The turn plan {name}.") for name in PLANS}
USED = {"linked cells": (PageLink("Slack Tide <cushion>", "projects/slack-tide-cushion/index.html"),)}
PARSER = HTMLParser(namespace_html_elements=False)
PAGE = PARSER.parse(render_gallery(PICTURES, USED, setting()))
PLAN = {
    section.get("aria-labelledby"): " ".join(" ".join(section.itertext()).split()) for section in PAGE.iter("section")
}


def test_every_plan_of_the_table_is_shown_with_its_picture() -> None:
    assert PARSER.errors == []
    assert set(PLAN) == {name.replace(" ", "-") for name in PLANS}
    shown = {image.get("src") for image in PAGE.iter("img")}
    assert shown == {picture.address for picture in PICTURES.values()}
    assert all(image.get("alt") for image in PAGE.iter("img"))


def test_a_chart_tells_each_row_as_it_lies_and_as_it_is_sewn_from_the_left() -> None:
    # Linked cells: > < then < >. Begun at the left, turned right is toward.
    assert "→ ← Lies right, left. Sewn: toward, away" in PLAN["linked-cells"]
    assert "← → Lies left, right. Sewn: away, toward" in PLAN["linked-cells"]
    assert "→ ← • • Lies 1 right, 1 left, 2 upright." in PLAN["scattered-pairs"]


def test_the_share_that_ripples_lose_is_that_of_the_triangles() -> None:
    # S = k d: at least 1 - sqrt(1 - (2/k)^2), to plan with 1 - sqrt(1 - (pi/k)^2).
    for depths in (6, 8, 12):
        least, most = (100 * (1 - math.sqrt(1 - (way / depths) ** 2)) for way in (2, math.pi))
        assert f"{depths} depths {least:.1f} to {most:.1f}".removesuffix(".0") in PLAN["ripples"]


def test_a_tuck_that_only_stands_up_loses_the_smaller_chord_and_a_quarter_turn() -> None:
    # From standing to one side the chord is sqrt(2) d, the arc pi d / 2: at 6 d 2.8 % to 3.5 %.
    least, most = (100 * (1 - math.sqrt(1 - (way / 6) ** 2)) for way in (math.sqrt(2), math.pi / 2))
    assert f"6 depths {least:.1f} to {most:.1f} %" in PLAN["scattered-pairs"]


def test_one_way_does_not_draw_in_and_slants_may_ripple() -> None:
    assert "It does not draw in." in PLAN["one-way"]
    assert "the panel may ripple" in PLAN["slants"]
    assert "0 to 14.8 %" in PLAN["slants"]
    assert "the panel may ripple" not in PLAN["ripples"]


@pytest.mark.parametrize("name", PLANS)
def test_rows_further_apart_lose_a_smaller_share(name: str) -> None:
    lost = [plan_draw_in(turn_plan(name), spacing) for spacing in (6, 8, 12)]
    assert all(one.least <= one.most for one in lost)
    assert lost[0].most >= lost[1].most >= lost[2].most


def test_only_plans_with_facing_pairs_tell_the_rule_of_their_pitch() -> None:
    told = {name for name, text in PLAN.items() if "Facing pairs: pitch at least the depth" in text}
    assert told == {"linked-cells", "bands", "diamonds", "slants", "zigzags", "scattered-pairs"}


def test_a_group_of_another_size_is_offered_where_a_plan_has_groups() -> None:
    told = {name for name, text in PLAN.items() if "any number of tucks; it is drawn here with 2" in text}
    assert told == {"bands", "diamonds", "slants", "zigzags"}


def test_a_plan_leads_to_the_projects_that_use_it() -> None:
    assert "Used in: Slack Tide <cushion>" in PLAN["linked-cells"]
    assert "Used in" not in PLAN["ripples"]
    assert plans_used([cushion(), cushion()]) == ("linked cells",)
