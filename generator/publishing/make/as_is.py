"""Files that a room has for the web and no page is made of: they are copied into the site as they are."""

from __future__ import annotations

from generator.errors import PublishError
from generator.publishing.room import OpenRoom
from generator.publishing.room_files import as_is_files
from generator.publishing.write import Output


def copy_as_is(room: OpenRoom, output: Output) -> None:
    """Copy the files of ``site/as-is`` into the site, where everything else lies already.

    Raises
    ------
    PublishError
        If one would take the place of a file that the theme brings.
    """
    with output.timed("files as they are"):
        for address, path in as_is_files(room.folder).items():
            if (output.folder / address).exists():
                raise PublishError(f"site/as-is/{address}: the theme brings a file of this name; choose another name")
            output.add(address, path.read_bytes())
