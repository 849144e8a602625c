"""Addresses: names of projects, sizes, editions and papers come in, relative paths inside the site go out.

This is the one place that knows where a page or a sheet lies. A name of small letters, digits and single spaces is
kept, with hyphens for the spaces; any other name gets a mark made from all its letters, so that two names never share
an address and no address is a word that a computer keeps for itself.
"""

from __future__ import annotations

import hashlib
import posixpath
import re
from urllib.parse import urlsplit

HOME = "index.html"
ASSETS = "assets"
WORKER = "offline.js"
GALLERY = "gallery.html"
REFERENCE = "reference/index.html"
GUIDES = "pages/index.html"
CLASSES = "classes/index.html"
CORRECTIONS = "corrections.html"
FEED = "corrections.xml"
SITEMAP = "sitemap.xml"
ROBOTS = "robots.txt"
NEWEST = "sheets.json"
ALL = "all.html"
MANIFEST = "site.webmanifest"
MISSING = "404.html"

# The first part of every path that the tool writes to: no other file of a site may lie there. A room may have its own
# robots.txt, which is then not written.
TAKEN = frozenset(
    path.partition("/")[0]
    for path in (
        *(HOME, WORKER, GALLERY, REFERENCE, GUIDES, CLASSES, CORRECTIONS, FEED, SITEMAP, NEWEST, ALL),
        *(MANIFEST, MISSING),
    )
) | {ASSETS, "projects", "sheets", "surfaces"}

PICTURE_WIDTHS = (320, 480, 720)  # of the pictures of finished things, in dots
_LONGEST = 60
# What a size between the named ones is named by: "side 12 1/2 in", "form 12.5 cm".
_MEASURE = re.compile(r"[a-z][a-z0-9]*(?: [a-z0-9]+)*? (?:\d+(?:\.\d+)?(?: \d+/\d+)?|\d+/\d+) (?:in|cm)", re.ASCII)
_DEVICES = frozenset(
    {"con", "prn", "aux", "nul", "index"} | {f"{port}{number}" for port in ("com", "lpt") for number in range(10)}
)


def slug(name: str, joint: str = " ") -> str:
    """Return the part of an address that stands for a name; different names always give different parts.

    ``joint`` is what stands between the words of an ordinary name. A size named by a measure has a low line for the
    stroke of its fraction.

    Examples
    --------
    >>> slug("2 to 3")
    '2-to-3'
    >>> slug("side 12 1/2 in")
    'side-12-1_2-in'
    >>> slug("2-to-3").startswith("2-to-3--"), slug("con").startswith("con--")
    (True, True)
    """
    ordinary = re.fullmatch(f"[a-z0-9]+(?:{joint}[a-z0-9]+)*", name, re.ASCII)
    of_measure = joint == " " and _MEASURE.fullmatch(name)
    if (ordinary or of_measure) and len(name) <= _LONGEST and name not in _DEVICES:
        return name.replace("/", "_").replace(" ", "-")
    readable = re.sub(r"[^a-z0-9]+", "-", name.lower())[: _LONGEST - 20].strip("-") or "x"
    return f"{readable}--{hashlib.sha256(name.encode('utf-8', 'surrogatepass')).hexdigest()[:10]}"


def project_slug(project: str) -> str:
    """Return the part of an address that stands for a project, whose name is a file name with hyphens."""
    return slug(project, "-")


def project_page(project: str) -> str:
    """Return the path of a project's page."""
    return f"projects/{project_slug(project)}/index.html"


def size_page(project: str, size: str, edition: str) -> str:
    """Return the path of the page of one size in one edition."""
    return f"projects/{project_slug(project)}/{slug(size)}/{slug(edition)}.html"


def machine_page(project: str, size: str, edition: str) -> str:
    """Return the path of the page for the machine, beside that of its size."""
    return size_page(project, size, edition).removesuffix(".html") + "-at-the-machine.html"


def sheet_name(project: str, size: str, edition: str) -> str:
    """Return the name of the sheet of one size in one edition, as the site knows it: "neck-roll/small/inch"."""
    return size_page(project, size, edition).removeprefix("projects/").removesuffix(".html")


def mark_anchor(mark: str) -> str:
    """Return the name of the note on an edition mark in a page."""
    return f"mark-{slug(mark, '-')}"


def corrections_anchor(project: str) -> str:
    """Return the name of the part of the page of corrections that is about a project."""
    return f"project-{project_slug(project)}"


def plan_picture(plan: str) -> str:
    """Return the path of the picture of a turn plan."""
    return f"surfaces/{slug(plan)}.webp"


def surface(plan: str) -> str:
    """Return the path of what the gallery tells of a turn plan, with its place on the page."""
    return f"{GALLERY}#{plan.replace(' ', '-')}"


def reference_page(name: str) -> str:
    """Return the path of one page of the reference."""
    return f"reference/{slug(name)}.html"


CAUTIONS = reference_page("cautions")


def handout_file(project: str, size: str, edition: str, paper: str) -> str:
    """Return the path of a handout; its file name says what it is, for it will be saved and sent on."""
    named = f"{project_slug(project)}-{slug(size)}-{slug(edition)}-{slug(paper.lower())}.pdf"
    return f"projects/{project_slug(project)}/{slug(size)}/{named}"


def room_sheet_file(kind: str, edition: str, paper: str) -> str:
    """Return the path of a sheet of the whole room, such as the one on the wall."""
    return f"sheets/{_file_name(kind, edition, paper)}"


def project_sheet_file(project: str, kind: str, edition: str, paper: str) -> str:
    """Return the path of a sheet about all sizes of a project; an empty edition is one sheet for all editions."""
    return f"projects/{project_slug(project)}/{project_slug(project)}-{_file_name(kind, edition, paper)}"


def size_sheet_file(project: str, size: str, kind: str, edition: str, paper: str) -> str:
    """Return the path of a sheet about one size, beside its handout."""
    return f"{handout_file(project, size, edition, paper).removesuffix('.pdf')}-{slug(kind)}.pdf"


def class_page(name: str) -> str:
    """Return the path of the page of a class."""
    return f"classes/{project_slug(name)}.html"


def class_calendar(name: str) -> str:
    """Return the path of the days of a class as a calendar file."""
    return f"classes/{project_slug(name)}.ics"


def class_sheet_file(name: str, kind: str, paper: str) -> str:
    """Return the path of a sheet for a class, whose name is a file name with hyphens."""
    return f"classes/{project_slug(name)}-{_file_name(kind, '', paper)}"


def _file_name(kind: str, edition: str, paper: str) -> str:
    return "-".join(slug(part.lower()) for part in (kind, edition, paper) if part) + ".pdf"


def words_page(name: str) -> str:
    """Return the path of a page of words, such as the room's own pages."""
    return f"pages/{slug(name, '-')}.html"


def rendered_picture(project: str, width: int) -> str:
    """Return the path of the picture of the finished thing that is so many dots wide."""
    return f"projects/{project_slug(project)}/picture-{width}.webp"


def near_picture(project: str) -> str:
    """Return the path of the close view of a project's tucks."""
    return f"projects/{project_slug(project)}/near.webp"


def share_picture(project: str) -> str:
    """Return the path of the picture of a project for those who share its pages."""
    return f"projects/{project_slug(project)}/share.jpg"


def pictures_of(project: str) -> tuple[str, ...]:
    """Return the paths of all pictures of a project's finished thing."""
    return (
        *(rendered_picture(project, width) for width in PICTURE_WIDTHS),
        near_picture(project),
        share_picture(project),
    )


def asset(name: str) -> str:
    """Return the path of a file that pages share: style sheets, fonts, scripts."""
    return f"{ASSETS}/{name}"


ROOM_SHARE = asset("share.jpg")


def relative(start: str, to: str) -> str:
    """Return the link from one page to another, so that the site works from any folder.

    Examples
    --------
    >>> relative("projects/neck-roll/index.html", "index.html")
    '../../index.html'
    """
    return posixpath.relpath(to, posixpath.dirname(start) or ".")


def from_root(site_address: str, to: str) -> str:
    """Return the link to a page from wherever a server shows it: from the root of the site's host.

    A site that does not say where it lies is taken to lie at the root itself.

    Examples
    --------
    >>> from_root("https://loft.example/sheets/", "index.html")
    '/sheets/index.html'
    """
    return posixpath.join("/", urlsplit(site_address).path, to)
