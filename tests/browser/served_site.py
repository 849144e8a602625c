"""The site that the browser looks at, and what it notices while it does."""

from __future__ import annotations

from dataclasses import dataclass, field
from http.server import SimpleHTTPRequestHandler
from pathlib import Path

from playwright.sync_api import Page


@dataclass(frozen=True)
class Site:
    """The site on disk and where it is served."""

    folder: Path
    address: str

    @property
    def pages(self) -> list[str]:
        return sorted(str(path.relative_to(self.folder)) for path in self.folder.rglob("*.html"))


class QuietHandler(SimpleHTTPRequestHandler):
    def do_GET(self) -> None:
        """Serve a file; the icon that a browser asks for by itself is nobody's page."""
        if self.path == "/favicon.ico":
            self.send_response(204)
            self.end_headers()
        else:
            super().do_GET()

    def log_message(self, *told: object) -> None:
        """Say nothing of each request."""


@dataclass
class Watched:
    """A page, and what it said and asked for while it was watched."""

    page: Page
    said: list[str] = field(default_factory=list)
    asked: list[str] = field(default_factory=list)

    def __post_init__(self) -> None:
        self.page.on("console", lambda message: self.said.append(message.text))
        self.page.on("pageerror", lambda fault: self.said.append(str(fault)))
        self.page.on("request", lambda request: self.asked.append(request.url))
