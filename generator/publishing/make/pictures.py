"""Pictures of finished things: a packed worksheet comes in, its pictures are written, what shows them goes out."""

from __future__ import annotations

import pickle
from collections.abc import Sequence

from generator.calculation.worked_project import Worksheet
from generator.drawing.renders.files import NEAR, near_file, side_by_side, thing_files
from generator.drawing.renders.words import SHARED, height_of, near_panel, near_words, picture_words, shown_alone
from generator.publishing.room import OpenRoom
from generator.publishing.write import Output
from generator.rendering import addresses
from generator.rendering.cards import SitePicture, ThingPictures


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
