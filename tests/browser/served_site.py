"""The site that the browser looks at, and what it notices while it does.

It is served twice: as the whole of a web server, and as one folder deep inside one, where many sites lie.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from http.server import SimpleHTTPRequestHandler

from playwright.sync_api import Page, Request, Response

from tests.built_site import BuiltSite

BELOW = "/sewing/room/"


@dataclass(frozen=True)
class Site:
    """The site on disk, where it is served, and where it is served below a path."""

    built: BuiltSite
    address: str

    @property
    def below(self) -> str:
        return self.address.rstrip("/") + BELOW

    def from_folder(self, page: str) -> str:
        return (self.built.folder / page).as_uri()


class QuietHandler(SimpleHTTPRequestHandler):
    """Serves a folder at the root and below a path, and says nothing."""

    def translate_path(self, path: str) -> str:
        """Return the file that an address stands for."""
        return super().translate_path("/" + path.removeprefix(BELOW) if path.startswith(BELOW) else path)

    def log_message(self, *told: object) -> None:
        """Say nothing of each request."""


@dataclass
class Watched:
    """A page, and what it said and asked for while it was watched."""

    page: Page
    said: list[str] = field(default_factory=list)
    asked: list[str] = field(default_factory=list)
    failed: list[str] = field(default_factory=list)

    def __post_init__(self) -> None:
        self.page.on("console", lambda message: self._on_words(message.text))
        self.page.on("pageerror", lambda fault: self.said.append(str(fault)))
        self.page.on("request", lambda request: self.asked.append(request.url))
        self.page.on("requestfailed", self._on_failure)
        self.page.on("response", self._on_answer)

    def _on_words(self, words: str) -> None:
        # This is the test's own doing: a page that is swept past is not kept on the device.
        if words != "Service Worker registration blocked by Playwright":
            self.said.append(words)

    def _on_failure(self, request: Request) -> None:
        # A picture below what is seen is asked for late; what is still on its way when the page is left is no fault.
        if request.failure != "net::ERR_ABORTED":
            self.failed.append(f"{request.url}: {request.failure}")

    def _on_answer(self, response: Response) -> None:
        if response.status >= 400:
            self.failed.append(f"{response.url}: {response.status}")

    def forget(self) -> None:
        """Begin anew, before another page is opened."""
        for list_ in (self.said, self.asked, self.failed):
            list_.clear()

    def faults(self, home: str) -> list[str]:
        """What was said, what failed, and what was asked for that does not lie below the site's home."""
        strange = [address for address in self.asked if not address.startswith((home, "data:"))]
        return [
            *(f"says {words!r}" for words in self.said),
            *(f"asks in vain for {address}" for address in self.failed),
            *(f"asks elsewhere: {address}" for address in strange),
        ]
