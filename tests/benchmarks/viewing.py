"""From a save to the page that shows it, by the browser's own clock: ``python -m tests.benchmarks.viewing``.

The title is changed ten times while a page of a size lies open, some seconds apart, as one writes. What is told is the
moment at which the browser first painted the new page, less the moment of the save.
"""

from __future__ import annotations

import statistics
import sys
import tempfile
import time
from pathlib import Path

import click
from playwright.sync_api import sync_playwright

from tests.benchmarks.rooms import change, room_of

sys.path.insert(0, str(Path(__file__).resolve().parents[1] / "browser"))
from conftest import CHROMIUM, QUIET  # type: ignore[import-not-found]
from written_room import WrittenRoom  # type: ignore[import-not-found]

TIMES = 10
WRITING = 8.0
PAGE = "projects/quay-cushion/medium/inch.html"
_PAINT = "first-contentful-paint"
_PAINTED = f"performance.timeOrigin + performance.getEntriesByName('{_PAINT}')[0].startTime"


def main() -> None:
    """Measure and print."""
    with tempfile.TemporaryDirectory() as folder, sync_playwright() as playwright:
        room = room_of(Path(folder) / "room", ("quay-cushion",))
        written = WrittenRoom(room)
        page = playwright.chromium.launch(executable_path=CHROMIUM, args=list(QUIET)).new_page(bypass_csp=True)
        page.goto(written.address + PAGE)
        path, seconds = room / "projects/quay-cushion.yaml", []
        for number in range(TIMES):
            before = f"Quay {number - 1}" if number else "Quay cushion"
            time.sleep(WRITING)
            change(path, lambda text, old=before, new=f"Quay {number}": text.replace(f"title: {old}", f"title: {new}"))
            saved = time.time()
            shown = f"document.title.includes('Quay {number}') && performance.getEntriesByName('{_PAINT}')[0]"
            page.wait_for_function(shown)
            seconds.append(float(page.evaluate(_PAINTED)) / 1000 - saved)
        written.end()
    click.echo(f"from a save to the page seen: median {statistics.median(seconds):.2f} s of {TIMES}, goal < 2")
    click.echo("each: " + ", ".join(f"{one:.2f}" for one in seconds))


if __name__ == "__main__":
    main()
