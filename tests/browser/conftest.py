"""A real browser and the whole demo site, served on this machine and opened from its folder."""

from __future__ import annotations

import os
import shutil
import threading
from collections.abc import Iterator
from functools import partial
from http.server import ThreadingHTTPServer
from pathlib import Path

import pytest
from corrected_room import FORMER, NEWER, Server, publish_both, serve
from looking import Examiner
from playwright.sync_api import Browser, BrowserContext, sync_playwright
from served_site import QuietHandler, Site, Watched

from tests.built_site import built_site
from tests.made import Made

ON_A_MAC = "/Applications/Chromium.app/Contents/MacOS/Chromium"
# The browser without windows of its own comes first: it lays out and draws alike, and takes half the time.
ON_LINUX = shutil.which("chromium-headless-shell") or shutil.which("chromium")
CHROMIUM = os.environ.get("TUCKWRIGHT_CHROMIUM") or ON_LINUX or ON_A_MAC
QUIET = (
    "--no-sandbox",
    "--disable-gpu",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
)


@pytest.fixture(scope="session")
def site() -> Iterator[Site]:
    built = built_site()
    with ThreadingHTTPServer(("127.0.0.1", 0), partial(QuietHandler, directory=str(built.folder))) as server:
        threading.Thread(target=server.serve_forever, daemon=True).start()
        yield Site(built, f"http://127.0.0.1:{server.server_port}/")
        server.shutdown()


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    with sync_playwright() as playwright:
        opened = playwright.chromium.launch(executable_path=CHROMIUM, args=list(QUIET))
        yield opened
        opened.close()


@pytest.fixture(scope="session")
def examiner() -> Examiner:
    """One for all pages, so that what they have in common is examined once."""
    return Examiner()


@pytest.fixture
def watched(browser: Browser) -> Iterator[Watched]:
    """A page of a browser that has never seen the site, on a phone."""
    context = browser.new_context(viewport={"width": 360, "height": 700}, has_touch=True)
    yield Watched(context.new_page())
    context.close()


@pytest.fixture(scope="session")
def sweeping(browser: Browser) -> Iterator[Watched]:
    """A page that is used for one page of the site after the other, and keeps none of them for later."""
    context = browser.new_context(service_workers="block")
    yield Watched(context.new_page())
    context.close()


@pytest.fixture(scope="session")
def sites(tmp_path_factory: pytest.TempPathFactory) -> dict[str, Path]:
    folder = Made(tmp_path_factory).folder("corrected", publish_both)
    return {mark: folder / mark for mark in (FORMER, NEWER)}


@pytest.fixture
def server(sites: dict[str, Path]) -> Iterator[Server]:
    served = Server(sites[FORMER])
    running = serve(served)
    yield served
    running.shutdown()
    running.server_close()


@pytest.fixture
def phone(browser: Browser) -> Iterator[BrowserContext]:
    context = browser.new_context(viewport={"width": 360, "height": 700}, has_touch=True)
    yield context
    context.close()
