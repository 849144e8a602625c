"""A real browser and a small site: built once, served on this machine and opened from its folder."""

from __future__ import annotations

import os
import threading
from collections.abc import Iterator
from functools import partial
from http.server import ThreadingHTTPServer

import pytest
from playwright.sync_api import Browser, sync_playwright
from served_site import QuietHandler, Site, Watched
from small_site import SETTING, small_site, write_site

CHROMIUM = os.environ.get("TUCKWRIGHT_CHROMIUM", "/usr/bin/chromium")
QUIET = (
    "--no-sandbox",
    "--disable-gpu",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
)


@pytest.fixture(scope="session")
def site(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Site]:
    folder = tmp_path_factory.mktemp("site")
    write_site(small_site(SETTING), folder)
    with ThreadingHTTPServer(("127.0.0.1", 0), partial(QuietHandler, directory=str(folder))) as server:
        threading.Thread(target=server.serve_forever, daemon=True).start()
        yield Site(folder, f"http://127.0.0.1:{server.server_port}/")
        server.shutdown()


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    with sync_playwright() as playwright:
        opened = playwright.chromium.launch(executable_path=CHROMIUM, args=list(QUIET))
        yield opened
        opened.close()


@pytest.fixture
def watched(browser: Browser) -> Iterator[Watched]:
    context = browser.new_context(viewport={"width": 360, "height": 700}, has_touch=True)
    yield Watched(context.new_page())
    context.close()
