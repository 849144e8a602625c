"""A small room published under one edition mark and, corrected, under the next: two sites that a server has in turn.

It tells browsers nothing about keeping. It can be slow, out of order, cut off, or hidden by a network's own page.
"""

from __future__ import annotations

import os
import shutil
import threading
import time
from collections.abc import Callable
from dataclasses import dataclass, field
from functools import partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path

from generator.publishing.jobs import Order
from generator.publishing.publish import publish
from tests.room import edit, write_room

BELOW = "/sewing/room/"
ROOM = """\
room:
  name: The Test Loft
editions: inch
papers: A4
"""
TABLET = """\
title: Tucked tablet
kind: sample
summary: Six tucks to begin with, turned to and fro.
sizes:
  narrow:
    label: Bedside
    side: 6 in
    lap: 2 in
  wide:
    label: Window seat
    side: 8 in
    lap: 2 in
between:
  every: 1 in
cloths:
  face:
    label: calico
    width: 36 in
pieces:
  front:
    kind: tucked panel
    finished across: side
    finished along: side
    tucks:
      depth: 1/4 in
      spacing: 3/4 in
      margin: 1 in to 2 in
    rows:
      plan: one way
      spacing: 2 in
      first: 1 in to 3 in
    edges:
      all: seam 1/2 in
steps:
  - use: cut
  - use: mark folds, crease, stitch tucks, measure sample, rule rows, sew rows
    on: front
  - title: Lap the back
    on: front
    text: Let the halves lap by {{ lap }}.
  - title: Fill it
    on: front
    text: Corners first.
"""
CORRECTED = "    side: 8 in\n    lap: 2 in", "    side: 8 in\n    lap: 2 1/2 in"
FORMER, NEWER = "2031-02", "2031-03"
DAYS_OLD = {FORMER: 900, NEWER: 400}


class Silent:
    """Does not want to know how far a run is."""

    def expect(self, number: int, what: str) -> None:
        """Take no notice."""

    def done(self, label: str) -> None:
        """Take no notice."""


def publish_both(folder: Path) -> None:
    """Publish the room under both marks, and leave the site under each in a folder of its name."""
    room = write_room(folder / "room", {"site/site.yaml": ROOM, "projects/tablet.yaml": TABLET})
    for mark, day in ((FORMER, "2031-02-10"), (NEWER, "2031-03-12")):
        publish(Order(room, "", (), 1, mark, day), Silent())
        age(Path(shutil.copytree(room / "site" / "public", folder / mark)), DAYS_OLD[mark])
        if mark == FORMER:
            edit(room / "projects/tablet.yaml", *CORRECTED)


def age(site: Path, days: int) -> None:
    """Make every file old: what has not changed for long, a browser that is told nothing keeps for long."""
    then = time.time() - days * 86_400
    for file in site.rglob("*"):
        os.utime(file, (then, then))


@dataclass
class Server:
    """Where the site is served, what stands there now, and how the server answers."""

    folder: Path
    address: str = ""
    # What befalls an answer: the path comes in, and a word of what happens to it goes out, or nothing.
    befalls: Callable[[str], str] = lambda _path: ""
    asked: list[str] = field(default_factory=list)
    slowness: float = 8.0
    # Files that stand in the place of others, by their path inside the site.
    replaced: dict[str, Path] = field(default_factory=dict)

    def page(self, name: str) -> str:
        return self.address + name


class Handler(SimpleHTTPRequestHandler):
    """Serves the server's folder below a path, without a word on how long anything may be kept."""

    def __init__(self, *words: object, served: Server) -> None:
        self.served = served
        super().__init__(*words, directory=str(served.folder))  # type: ignore[arg-type]

    def translate_path(self, path: str) -> str:
        """Return the file that an address stands for."""
        inside = path.removeprefix(BELOW)
        return str(self.served.replaced.get(inside) or super().translate_path("/" + inside))

    def do_GET(self) -> None:
        """Answer, unless something befalls it."""
        self.served.asked.append(self.path)
        befallen = self.served.befalls(self.path.removeprefix(BELOW))
        if befallen == "slow":
            time.sleep(self.served.slowness)
        if befallen == "portal":
            self._say(200, b"<!DOCTYPE html><html><title>Welcome</title><p>Accept our terms.</html>")
        elif befallen == "half":
            content = Path(self.translate_path(self.path)).read_bytes()
            self._say(200, content[: len(content) // 2])
        elif befallen.isdigit():
            # A server may answer a fault with a whole page of the site.
            self._say(int(befallen), Path(self.translate_path(self.path)).read_bytes())
        else:
            super().do_GET()

    def _say(self, status: int, content: bytes) -> None:
        self.send_response(status)
        self.send_header("Content-Type", "text/html")
        self.send_header("Content-Length", str(len(content)))
        self.end_headers()
        self.wfile.write(content)

    def log_message(self, *told: object) -> None:
        """Say nothing of each request."""


def serve(server: Server) -> ThreadingHTTPServer:
    """Begin to serve; whoever asked for it shuts it down."""
    found = ThreadingHTTPServer(("127.0.0.1", 0), partial(Handler, served=server))
    server.address = f"http://127.0.0.1:{found.server_port}{BELOW}"
    threading.Thread(target=found.serve_forever, daemon=True).start()
    return found
