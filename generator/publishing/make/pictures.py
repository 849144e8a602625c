"""Pictures of cloth: packed worksheets or turn plans come in, pictures and the pages of reference are written.

What shows a finished thing goes out.
"""

from __future__ import annotations

import pickle
from collections.abc import Mapping, Sequence

from generator.calculation.turning.plans import PLANS, turn_plan
from generator.calculation.worked_project import Worksheet
from generator.drawing.renders.files import NEAR, SAMPLE_WIDTH, near_file, plan_file, side_by_side, thing_files
from generator.drawing.renders.near import PLAN_WORDS
from generator.drawing.renders.words import SHARED, height_of, near_panel, near_words, picture_words, shown_alone
from generator.publishing.room import OpenRoom
from generator.publishing.write import Output
from generator.rendering import addresses
from generator.rendering.cards import PageLink, SitePicture, ThingPictures
from generator.rendering.gallery import render_gallery
from generator.rendering.reference import render_reference, sourced_cautions


def make_pictures(_room: OpenRoom, output: Output, packed: bytes) -> ThingPictures:
    """Write the pictures of a finished thing: in several sizes, its tucks close to, and one for those who share it."""
    worksheet = shown_alone(pickle.loads(packed))  # noqa: S301 -- packed by this run
    if worksheet is None:
        return ThingPictures()
    with output.timed("pictures of cloth"):
        return _written(worksheet, output)


def _written(worksheet: Worksheet, output: Output) -> ThingPictures:
    project = worksheet.project
    alt, caption = picture_words(worksheet)
    sizes, shared = thing_files(worksheet, addresses.PICTURE_WIDTHS)
    for width, content in sizes.items():
        output.add(addresses.rendered_picture(project, width), content)
    output.add(addresses.share_picture(project), shared)
    named = tuple((addresses.rendered_picture(project, width), width) for width in addresses.PICTURE_WIDTHS)
    largest, width = named[-1]
    thing = SitePicture(largest, width, height_of(width), alt, caption, named[:-1])
    share = SitePicture(addresses.share_picture(project), *SHARED, alt)
    return ThingPictures(thing, _near(worksheet, output), share)


def _near(worksheet: Worksheet, output: Output) -> SitePicture | None:
    panel = near_panel(worksheet)
    if panel is None:
        return None
    cloth = worksheet.cloths.get(panel.cloth)
    address = addresses.near_picture(worksheet.project)
    output.add(address, near_file(panel, cloth.colour if cloth else ""))
    return SitePicture(address, *NEAR, *near_words(panel))


def make_share(_room: OpenRoom, output: Output, shown: Sequence[str]) -> None:
    """Write the picture of the room for those who share its home page; ``shown`` are pictures of things on the site."""
    with output.timed("pictures of cloth"):
        output.add(addresses.ROOM_SHARE, side_by_side([(output.folder / address).read_bytes() for address in shown]))


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
