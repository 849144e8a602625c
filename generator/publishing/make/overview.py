"""The page of a project: its worksheets and what its leading size drew come in, the page is written."""

from __future__ import annotations

import pickle
from collections.abc import Sequence

from generator.calculation.worked_project import Worksheet
from generator.drawing.picture import Picture
from generator.publishing.jobs import AgainstEditions, FiledPicture, LeadingPictures, ProjectTold
from generator.publishing.room import OpenRoom, stamped
from generator.publishing.write import Output
from generator.rendering import addresses
from generator.rendering.cards import CardPicture, SheetLink
from generator.rendering.gallery import plans_used
from generator.rendering.pages import render_project
from generator.rendering.setting import project_card


def make_overview(
    room: OpenRoom,
    output: Output,
    packed: Sequence[bytes],
    pictures: LeadingPictures,
    sheets: Sequence[SheetLink],
    against: AgainstEditions,
) -> ProjectTold:
    """Write the page of a project; ``sheets`` are what else there is to print."""
    worksheets: list[Worksheet] = [pickle.loads(one) for one in packed]  # noqa: S301 -- packed by this run
    with output.timed("pages"):
        surface = _read_again(pictures.surface, output) if pictures.surface else None
        page = render_project(worksheets, surface, stamped(room.setting, against.stamp), sheets)
        output.add(addresses.project_page(worksheets[0].project), page.encode())
    small = pictures.card
    picture = CardPicture(small.address, small.width, small.height, small.alt) if small else None
    return ProjectTold(project_card(worksheets, picture), plans_used(worksheets), against)


def _read_again(filed: FiledPicture, output: Output) -> Picture:
    """A picture that the leading size has drawn and filed."""
    svg = (output.folder / filed.address).read_text(encoding="utf-8")
    return Picture(filed.key, svg, filed.width, filed.height, filed.alt, filed.caption, filed.text)
