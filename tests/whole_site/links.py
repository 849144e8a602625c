"""Where everything on the site leads: a site comes in, dead links and files that nothing leads to go out."""

from __future__ import annotations

import posixpath
import re
from collections.abc import Iterator
from pathlib import Path
from urllib.parse import unquote, urlsplit

from page_reading import Link, read_tags

from tests.built_site import BuiltSite

# Search engines ask for the first by its name alone, servers for the last, scripts for the others.
ASKED_FOR = ("sitemap.xml", "robots.txt", "sheets.json", "assets/words.js", "site.webmanifest", "404.html")
# A server shows this page at any address, so its links begin at the root of the host.
AT_ANY_ADDRESS = "404.html"


def targets(site: BuiltSite, file: str) -> list[Link]:
    """What a file leads to, as it is written there."""
    path = site.folder / file
    if file.endswith(".html"):
        return read_tags(path).links
    if file.endswith(".css"):
        found = re.findall(r"""url\(\s*["']?([^"')]+)|@import\s+["']([^"']+)""", path.read_text(encoding="utf-8"))
        return [Link("css", one or other) for one, other in found]
    return []


def faulty_links(site: BuiltSite, file: str, address: str) -> Iterator[str]:
    """Links of a file that lead nowhere, out of the site, or from the root of whatever server it may lie on."""
    for link in targets(site, file):
        fault = _fault(site, file, link, address)
        if fault:
            yield f"{file}: {link.target!r} of <{link.tag}> {fault}"


def _fault(site: BuiltSite, file: str, link: Link, address: str) -> str:
    parts = urlsplit(link.target)
    if link.target.startswith("data:"):
        return "" if link.tag in ("link", "img", "image", "css") else "is data"
    if link.relation == "canonical":
        return "" if address and link.target.startswith(address) else "is not below the site's own address"
    inside = link.target
    if file == AT_ANY_ADDRESS:
        root = urlsplit(address).path or "/"
        if parts.path and not parts.path.startswith(root):
            return "does not begin at the root"
        inside = link.target.removeprefix(root)
    elif parts.path.startswith("/"):
        return "is not relative"
    if parts.scheme or parts.netloc:
        return "is not relative"
    found = resolved(file, inside)
    if found not in site.names:
        return "leads to no file"
    if parts.fragment and unquote(parts.fragment) not in _anchors(site.folder / found):
        return "leads to no such place on that page"
    return ""


def resolved(file: str, target: str) -> str:
    """The path inside the site that a relative link leads to."""
    path = unquote(urlsplit(target).path)
    if not path:
        return file
    path += "index.html" if path.endswith("/") else ""
    return posixpath.normpath(posixpath.join(posixpath.dirname(file), path))


def _anchors(path: Path) -> list[str]:
    return read_tags(path).ids if path.suffix == ".html" else []


def unreachable(site: BuiltSite) -> list[str]:
    """Files to which no way leads from the home page."""
    reached, waiting = {"index.html"}, ["index.html"]
    while waiting:
        file = waiting.pop()
        found = {resolved(file, link.target) for link in targets(site, file) if not urlsplit(link.target).scheme}
        new = (found & site.names) - reached
        reached |= new
        waiting += new
    return sorted(site.names - reached - {*ASKED_FOR} - _shared(site))


def _shared(site: BuiltSite) -> set[str]:
    """Pictures that a page names for those who share it, by their whole address."""
    named = re.compile(rf'<meta property="og:image" content="{re.escape(site.address)}([^"]+)">')
    return {found for page in site.pages for found in named.findall((site.folder / page).read_text(encoding="utf-8"))}
