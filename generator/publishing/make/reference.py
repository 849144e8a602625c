"""Pages to look things up in: which plans projects use comes in, the turn plans and the reference are written."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from generator.calculation.turning.plans import PLANS, turn_plan
from generator.drawing.renders.files import SAMPLE_WIDTH, plan_file
from generator.drawing.renders.near import PLAN_WORDS
from generator.publishing.room import OpenRoom
from generator.publishing.write import Output
from generator.rendering import addresses
from generator.rendering.cards import PageLink, SitePicture
from generator.rendering.gallery import render_gallery
from generator.rendering.reference import render_reference, sourced_cautions


def make_reference(room: OpenRoom, output: Output, used_in: Mapping[str, Sequence[PageLink]], glossary: bool) -> None:
    """Write the turn plans with their pictures, and the pages of the reference.

    ``used_in`` leads to the projects that use each turn plan, ``glossary`` tells whether the room has one.
    """
    plans = {}
    with output.timed("pictures of cloth"):
        for name in PLANS:
            content, high = plan_file(turn_plan(name).cell)
            address = addresses.plan_picture(name)
            output.add(address, content)
            plans[name] = SitePicture(address, SAMPLE_WIDTH, high, PLAN_WORDS.format(name))
    with output.timed("pages"):
        for address, page in _reference(room, glossary=glossary).items():
            output.add(address, page.encode())
        output.add(addresses.GALLERY, render_gallery(plans, used_in, room.setting).encode())


def _reference(room: OpenRoom, *, glossary: bool) -> dict[str, str]:
    editions = [room.shared.room.edition(name) for name in room.setting.editions]
    cautions = sourced_cautions(room.shared.cautions, editions[0])
    return render_reference(editions, cautions, room.setting, glossary=glossary)
