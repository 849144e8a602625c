"""Pages to look things up in: which plans projects use comes in, the turn plans and the reference are written."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from generator.drawing.plan_samples import draw_plan_samples
from generator.publishing.room import OpenRoom
from generator.publishing.write import Output
from generator.rendering import addresses
from generator.rendering.cards import PageLink
from generator.rendering.gallery import gallery_files, render_gallery
from generator.rendering.reference import render_reference, sourced_cautions


def make_reference(room: OpenRoom, output: Output, used_in: Mapping[str, Sequence[PageLink]], glossary: bool) -> None:
    """Write the turn plans with their pictures, and the pages of the reference.

    ``used_in`` leads to the projects that use each turn plan, ``glossary`` tells whether the room has one.
    """
    with output.timed("pictures"):
        plans = draw_plan_samples(room.style)
    with output.timed("pages"):
        for address, page in _reference(room, glossary=glossary).items():
            output.add(address, page.encode())
        output.add(addresses.GALLERY, render_gallery(plans, used_in, room.setting).encode())
        for address, content in gallery_files(plans).items():
            output.add(address, content)


def _reference(room: OpenRoom, *, glossary: bool) -> dict[str, str]:
    editions = [room.shared.room.edition(name) for name in room.setting.editions]
    cautions = sourced_cautions(room.shared.cautions, editions[0])
    return render_reference(editions, cautions, room.setting, glossary=glossary)
