"""Publishing a room: an order comes in, its site stands in ``site/public``, and what was done goes out.

This module stays light: where nothing has changed, nothing is read but bytes, and no library is loaded.
"""

from __future__ import annotations

from pkgutil import resolve_name

from generator.errors import PublishError
from generator.publishing.inputs import Inputs, read_inputs
from generator.publishing.jobs import Order, ProjectTold, Published, Report
from generator.publishing.manifest import Manifest, page_entry, read_manifest
from generator.publishing.stale import planned


def publish(order: Order, report: Report) -> Published:
    """Bring the site of a room up to date.

    Parameters
    ----------
    order : Order
        The room, and what to publish of it.
    report : Report
        Is told how far the work is.

    Returns
    -------
    Published
        What was made and what was kept.

    Raises
    ------
    FaultyFileError
        With every finding of every file; the site stays as it was.
    PublishError
        If a page or sheet could not be made or written, or a mark was used before; the site stays as it was.
    """
    inputs = read_inputs(order.folder, order.theme)
    strangers = [name for name in order.projects if name not in inputs.projects]
    if strangers:
        raise PublishError(f"{order.folder / 'projects'} holds no project '{strangers[0]}'")
    manifest = read_manifest(order.folder)
    if not order.mark and planned(inputs, manifest, order.site, order.projects).current:
        return _nothing_to_do(inputs, manifest)
    published: Published = resolve_name("generator.publishing.build:build")(order, inputs, report)
    return published


def _nothing_to_do(inputs: Inputs, manifest: Manifest) -> Published:
    done = Published(projects=len(inputs.projects), current=True)
    entries = (manifest.entries.get(page_entry(name)) for name in manifest.projects)
    done.tell(entry.told for entry in entries if entry and isinstance(entry.told, ProjectTold))
    return done
