"""The whole demo site as ``make site`` has built it: where it lies, what is in it, and whether it is up to date."""

from __future__ import annotations

import os
from collections import Counter
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path

import pytest
import yaml

from generator.publishing.inputs import read_inputs
from generator.publishing.manifest import read_manifest
from generator.publishing.stale import planned

ROOT = Path(__file__).resolve().parents[1]
# A site built elsewhere, or in another theme, is looked at as it is.
ELSEWHERE = os.environ.get("TUCKWRIGHT_SITE")
PROJECTS = tuple(sorted(path.stem for path in (ROOT / "projects").glob("*.yaml")))
ROOM = "the room"
# projects/PROJECT/SIZE
SIZE_DEPTH = 2
MOST_BETWEEN = 2
PARTS = (*PROJECTS, ROOM)
KINDS = {
    "home": "index.html",
    "project": "projects/quay-cushion/index.html",
    "size": "projects/quay-cushion/small/inch.html",
    "machine": "projects/quay-cushion/small/inch-at-the-machine.html",
    "gallery": "gallery.html",
    "reference": "reference/index.html",
    "tuck tables": "reference/tucks.html",
    "shop tables": "reference/shop.html",
    "cautions": "reference/cautions.html",
    "glossary": "pages/glossary.html",
}


@dataclass(frozen=True)
class BuiltSite:
    """A published site; its parts are the projects, and the room for everything that belongs to none of them."""

    folder: Path

    @cached_property
    def files(self) -> tuple[str, ...]:
        """Every file by its path inside the site, without the manifest, which is for the tool alone."""
        found = (path for path in self.folder.rglob("*") if path.is_file() and not path.name.startswith("."))
        return tuple(sorted(path.relative_to(self.folder).as_posix() for path in found))

    @cached_property
    def names(self) -> frozenset[str]:
        """The same files, to be asked whether one is among them: each of some ten thousand links asks so."""
        return frozenset(self.files)

    @property
    def pages(self) -> tuple[str, ...]:
        return tuple(file for file in self.files if file.endswith(".html"))

    def files_of(self, part: str, kind: str = "") -> list[str]:
        return [file for file in self.files if part_of(file) == part and file.endswith(kind)]

    def pages_of(self, part: str) -> list[str]:
        """The pages of a part; of the sizes between the named ones, which differ in numbers only, two of each kind."""
        printed = {file.rpartition("/")[0] for file in self.files if file.endswith(".pdf")}
        found, between = list[str](), Counter[str]()
        for page in self.files_of(part, ".html"):
            folder, _, name = page.rpartition("/")
            is_between = folder.count("/") == SIZE_DEPTH and folder not in printed
            between[name] += is_between
            if not is_between or between[name] <= MOST_BETWEEN:
                found.append(page)
        return found

    @cached_property
    def address(self) -> str:
        """Where the room says that its site lies on the web; empty where it does not."""
        settings = self.folder.parent / "site.yaml"
        room = yaml.safe_load(settings.read_text(encoding="utf-8"))["room"] if settings.exists() else {}
        address = str(room.get("web address", ""))
        return address and address.rstrip("/") + "/"


def part_of(file: str) -> str:
    """The project whose file this is, else the room."""
    folder, _, rest = file.partition("/")
    name = rest.partition("/")[0]
    return name if folder == "projects" and name in PROJECTS else ROOM


def built_site() -> BuiltSite:
    """Return the built demo site; stop the tests that ask for it where it is missing or not up to date."""
    if ELSEWHERE:
        folder = Path(ELSEWHERE).resolve()
        if not (folder / "index.html").is_file():
            pytest.fail(f"TUCKWRIGHT_SITE names {folder}, where no site has been built", pytrace=False)
        return BuiltSite(folder)
    folder = ROOT / "site" / "public"
    if not planned(read_inputs(ROOT, ""), read_manifest(ROOT), folder).current:
        pytest.fail(f"{folder} is missing or no longer up to date: run make site first", pytrace=False)
    return BuiltSite(folder)
