"""A large room: ``python -m tests.benchmarks.scale [--projects 100] [--sizes 5] [--against 10]``.

A room with so many projects of so many sizes, each in two editions on one paper, is published from nothing, and before
it one with fewer projects. What a handout takes should be the same, and so should the memory of a worker; finding a
project on the home page should stay quick. With 100 projects it takes about forty minutes on two cores.
"""

from __future__ import annotations

import tempfile
from pathlib import Path

import click
from playwright.sync_api import Page, sync_playwright

from tests.benchmarks.clock import Clock
from tests.benchmarks.cost import Cost, cost_of
from tests.benchmarks.publish import TOOL, told_goal
from tests.benchmarks.rooms import KINDS, grown_room

EDITIONS = 2
FIND = """kind => {
  const form = document.getElementById("finding");
  form.elements.kind.value = kind;
  const start = performance.now();
  form.elements.kind.dispatchEvent(new Event("change", {bubbles: true}));
  document.body.offsetHeight;
  return performance.now() - start;
}"""


def measured(folder: Path, projects: int, sizes: int, clock: Clock) -> tuple[Cost, float]:
    """Publish a room from nothing; return what it took, and how long processors worked for one handout [s]."""
    cost = cost_of(TOOL, grown_room(folder, projects, sizes), clock)
    handouts = projects * sizes * EDITIONS
    a_handout = cost.worked / handouts
    click.echo(f"{handouts} handouts: waited {cost.waited:.0f} s, worked {cost.worked:.0f} s, {a_handout:.2f} s each")
    for who, most, goal in (("where it was called", cost.parent, "< 150"), ("in a worker", cost.worker, "< 200")):
        click.echo(f"  memory {who}, at its highest: {most} MiB{told_goal(most, goal)}")
    return cost, a_handout


def home_page(site: Path) -> None:
    """Tell how large the home page is, how soon it can be read, and how long finding takes there."""
    home = site / "index.html"
    with sync_playwright() as driver:
        browser = driver.chromium.launch(executable_path="/usr/bin/chromium", args=["--no-sandbox"])
        page = browser.new_page()
        page.goto(home.as_uri())
        loaded = page.evaluate("performance.getEntriesByType('navigation')[0].domComplete")
        click.echo(f"home page: {home.stat().st_size // 1024} KiB, complete after {loaded:.0f} ms")
        click.echo(f"  finding by kind: {longest_find(page):.1f} ms at most")
        browser.close()


def longest_find(page: Page) -> float:
    """Return how long it takes at most until the cards of a kind are laid out [ms]."""
    return max(float(page.evaluate(FIND, kind)) for kind in (*KINDS, ""))


@click.command(help=__doc__)
@click.option("--projects", default=100, show_default=True)
@click.option("--sizes", default=5, show_default=True)
@click.option("--against", default=10, show_default=True, help="How many projects the smaller room has; 0 for none.")
def main(projects: int, sizes: int, against: int) -> None:
    """Measure and print."""
    with tempfile.TemporaryDirectory() as folder, Clock() as clock:
        few = measured(Path(folder) / "few", against, sizes, clock)[1] if against else 0.0
        many = measured(Path(folder) / "many", projects, sizes, clock)[1]
        if few:
            click.echo(
                f"a handout takes {many / few:.2f} x what it takes in the smaller room{told_goal(many / few, '<= 1.1')}"
            )
        home_page(Path(folder) / "many" / "site" / "public")


if __name__ == "__main__":
    main()
