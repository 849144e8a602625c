"""The server: requests of browsers on this machine come in, pages of the room go out.

It listens on the loopback address alone and answers only requests that name it, so that neither other machines nor
pages of other sites that point a name here can read the room. It answers nothing but reading.
"""

from __future__ import annotations

import json
from collections.abc import Iterable
from http import HTTPStatus
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path, PurePosixPath
from queue import Empty
from typing import ClassVar
from urllib.parse import parse_qs, unquote

from generator.definitions.theme import OWN_THEMES, load_theme
from generator.errors import FaultyFileError, Finding, TuckwrightError, printable
from generator.limits import KILOBYTE, LARGEST_SHOWN
from generator.rendering import addresses
from generator.rendering.setting import Setting
from generator.rendering.viewing import render_viewing
from generator.viewing.events import Events
from generator.viewing.papers import Papers
from generator.viewing.room_now import RoomNow

LOOPBACK = "127.0.0.1"
OWN = "-/"
"""Below it lies what is this program's own; no page of a room begins so."""
_SCRIPT = b'<link rel="stylesheet" href="/-/view.css"><script src="/-/view.js" defer></script>'
_HERE = Path(__file__).parent
_BEAT = 10.0
"""How often [s] a line to a browser is tried, so that it ends with the page."""
_SORTS = {
    ".html": "text/html; charset=utf-8",
    ".css": "text/css; charset=utf-8",
    ".js": "text/javascript; charset=utf-8",
    ".json": "application/json",
    ".svg": "image/svg+xml",
    ".webp": "image/webp",
    ".jpg": "image/jpeg",
    ".png": "image/png",
    ".pdf": "application/pdf",
    ".woff2": "font/woff2",
    ".xml": "application/xml",
    ".ics": "text/calendar; charset=utf-8",
}


class View(ThreadingHTTPServer):
    """Serves a room on this machine."""

    daemon_threads = True

    def __init__(self, now: RoomNow, port: int) -> None:
        self.now, self.papers, self.events = now, Papers(now), Events()
        super().__init__((LOOPBACK, port), _Answer)

    @property
    def address(self) -> str:
        """What a browser is given."""
        return f"http://{LOOPBACK}:{self.server_port}/"

    def saved(self) -> None:
        """Forget what the files said, and have every page that is open read again."""
        self.now.forget()
        self.papers.forget()
        self.events.tell("saved")

    def leave(self) -> None:
        """End: no page is answered any more."""
        self.events.tell(None)
        self.shutdown()
        self.papers.close()
        self.server_close()


def _read(path: Path) -> bytes:
    """Return what a file holds; refuse one that is larger than anything that is published."""
    if path.stat().st_size > LARGEST_SHOWN * KILOBYTE * KILOBYTE:
        told = f"'{path.name}' is larger than {LARGEST_SHOWN} MB and is not shown; open it where it lies"
        raise FaultyFileError([Finding("error", told)])
    return path.read_bytes()


class _Answer(BaseHTTPRequestHandler):
    """Answers one request."""

    server: View
    server_version = "tuckwright"
    sys_version = ""
    timeout = 60
    _own: ClassVar = {"view.js": _HERE / "view.js", "view.css": _HERE / "view.css"}

    def do_GET(self) -> None:
        """Answer a request to read."""
        if self.headers.get("Host") not in (
            f"{LOOPBACK}:{self.server.server_port}",
            f"localhost:{self.server.server_port}",
        ):
            self.send_error(HTTPStatus.FORBIDDEN, "this address is for this machine only")
            return
        path, _, query = self.path.partition("?")
        try:
            self._answer(unquote(path).removeprefix("/"), parse_qs(query))
        except (BrokenPipeError, ConnectionResetError):
            # The page was left before it came.
            return
        except Exception as fault:
            told = f"tuckwright has a fault of its own ({type(fault).__name__}: {fault}). Your files are untouched."
            self.send_error(HTTPStatus.INTERNAL_SERVER_ERROR, explain=told)

    def _answer(self, address: str, query: dict[str, list[str]]) -> None:
        if address.startswith(OWN):
            self._answer_own(address.removeprefix(OWN), query)
        elif not address or address.endswith("/"):
            self._answer_page(address + addresses.HOME)
        else:
            self._answer_page(address)

    def _answer_own(self, name: str, query: dict[str, list[str]]) -> None:
        if name in self._own:
            self._send(self._own[name].read_bytes(), self._own[name].suffix)
        elif name == "saved":
            self._send_events()
        elif name == "told":
            self._send(json.dumps(self._told(query.get("page", [""])[0])).encode(), ".json")
        elif name == "":
            self._send(self._list((), OWN + addresses.HOME), ".html")
        else:
            self.send_error(HTTPStatus.NOT_FOUND)

    def _answer_page(self, address: str) -> None:
        """Answer with what lies at an address, or with what is wrong with the files that it is made from."""
        now = self.server.now
        try:
            sheet = now.sheet_at(address)
            if sheet is not None and address.endswith(".pdf"):
                path: Path | None = self.server.papers.file(sheet, address)
            else:
                path = None if address == addresses.WORKER else now.file(address)
                if sheet is not None:
                    self.server.papers.want(sheet)
            content = None if path is None else _read(path)
        except (OSError, TuckwrightError) as fault:
            self._send(self._list(now.told(fault), address), ".html")
            return
        if content is not None:
            self._send(content, PurePosixPath(address).suffix)
        elif address == addresses.HOME:
            self._send(self._list((), addresses.HOME), ".html")
        else:
            self.send_error(HTTPStatus.NOT_FOUND, "no page of the room lies here, or it was never published")

    def _list(self, findings: Iterable[Finding], address: str) -> bytes:
        """Return a page of what is wrong, and of what there is to look at."""
        now = self.server.now
        try:
            setting = now.room.setting
        except (OSError, TuckwrightError):
            setting = Setting(now.folder.name, load_theme(OWN_THEMES / "plain"))
        try:
            pages = now.pages
        except (OSError, TuckwrightError):
            pages = {}
        return render_viewing(address, list(map(str, findings)), pages, setting).encode()

    def _told(self, page: str) -> list[dict[str, str]]:
        found = self.server.now.findings(page.removeprefix("/"))
        return [{"level": one.level, "text": printable(str(one), lines=True)} for one in found]

    def _send(self, content: bytes, sort: str) -> None:
        if sort == ".html":
            content = content.replace(b"</head>", _SCRIPT + b"</head>", 1)
        self._begin(_SORTS.get(sort, "application/octet-stream"))
        self.send_header("Content-Length", str(len(content)))
        self.end_headers()
        self.wfile.write(content)

    def _begin(self, sort: str) -> None:
        self.send_response(HTTPStatus.OK)
        self.send_header("Content-Type", sort)
        self.send_header("Cache-Control", "no-store")
        self.send_header("X-Content-Type-Options", "nosniff")

    def _send_events(self) -> None:
        """Tell what happens, for as long as the page is open."""
        self._begin("text/event-stream")
        self.end_headers()
        with self.server.events.line() as line:
            while True:
                try:
                    what = line.get(timeout=_BEAT)
                except Empty:
                    self.wfile.write(b":\n\n")
                    continue
                if what is None:
                    return
                self.wfile.write(f"event: {what}\ndata:\n\n".encode())

    def log_message(self, format: str, *args: object) -> None:
        """Say nothing of each request."""
