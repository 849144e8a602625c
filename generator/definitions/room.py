"""The room's file, ``site/site.yaml``: its path comes in, what is the same for all projects goes out.

Everything but the room's name has a default, so a room can begin with an empty file, or with none.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from fractions import Fraction
from pathlib import Path

from generator.definitions.caution_rule import CautionRule
from generator.definitions.nodes import Group
from generator.definitions.reading import Reading, constant
from generator.definitions.room_file import DEFAULT_RATES, GuideGroup, Price, SiteFile
from generator.definitions.tucks import Sample
from generator.definitions.values import Formula, Text
from generator.definitions.vocabulary import EDITION_NAMES, PAPERS, USUAL_SHEETS
from generator.definitions.yaml_text import read_yaml, shown_path
from generator.errors import FaultyFileError, Finding, Place
from generator.lengths import EDITIONS, Edition, round_up


@dataclass(frozen=True, slots=True)
class Room:
    """What a room sets for all its projects.

    ``rates`` are seconds of work, for each thing or for each inch of length; ``beginners`` is how many times as long a
    beginner takes. ``sheets`` are those beside the handout that are on its site. ``spool`` is the thread on one
    spool, ``waste`` the share that ends up as ends. A tack row over more than ``layers_warn`` layers is a warning,
    over more than ``layers_refuse`` it is refused. ``rows_by_bulk`` tells whether rows whose project does not say
    where begin at the end that leaves less cloth under the arm of the machine.
    """

    name: str = ""
    place: str = ""
    line: str = ""
    time_zone: str = ""
    web_address: str = ""
    welcome: Text | None = None
    editions: tuple[str, ...] = EDITION_NAMES
    papers: tuple[str, ...] = PAPERS
    sheets: tuple[str, ...] = USUAL_SHEETS
    theme: str = "plain"
    seam: Formula = field(default=constant("1/2 in or 1.5 cm"))
    straighten: Formula = field(default=constant("1 in or 2.5 cm"))
    zip_lengths: tuple[Formula, ...] = ()
    rows_by_bulk: bool = True
    own_editions: Mapping[str, Edition] = field(default_factory=lambda: dict(EDITIONS))
    spool: Formula = field(default=constant("110 yd or 100 m"))
    waste: Fraction = Fraction(1, 5)
    stitch: Formula = field(default=constant("1/10 in or 2.5 mm"))
    rates: Mapping[str, Fraction] = field(default_factory=lambda: dict(DEFAULT_RATES))
    beginners: Fraction = Fraction(2)
    layers_warn: int = 7
    layers_refuse: int = 9
    cautions: Mapping[str, CautionRule] = field(default_factory=dict)
    samples: Mapping[str, Sample] = field(default_factory=dict)
    prices: Mapping[str, Price] = field(default_factory=dict)
    currency: str = ""
    currency_code: str = ""
    lends: tuple[str, ...] = ()
    guides: tuple[GuideGroup, ...] = ()

    def edition(self, name: str) -> Edition:
        """Return an edition with the room's ruler and the steps of its shop."""
        return self.own_editions[name]


def load_room(path: Path, root: Path | None = None) -> Room:
    """Return the room of a file; without the file, the defaults.

    Parameters
    ----------
    path : Path
        The file ``site.yaml``.
    root : Path, optional
        The folder that the file is shown relative to in messages.

    Returns
    -------
    Room
        Checked and frozen.

    Raises
    ------
    FaultyFileError
        With every fault at once.
    """
    if not path.exists():
        return Room()
    shown = shown_path(path, root)
    tree = read_yaml(path, shown, root)
    if not isinstance(tree, Group):
        raise FaultyFileError(
            [Finding("error", "the room's file is a group of keys: room, editions ...", Place(shown))]
        )
    reading = Reading()
    site = SiteFile.read(tree, reading)
    reading.faults.stop()
    if site is None:
        raise AssertionError("a file without errors gives a room")
    return _room(site)


def _room(site: SiteFile) -> Room:
    rates = {name: rate for name, rate in site.rates.items() if name != "beginners take"}
    return Room(
        name=site.room.name,
        place=site.room.place,
        line=site.room.line,
        time_zone=site.room.time_zone,
        web_address=site.room.web_address,
        welcome=site.room.welcome,
        editions=site.editions,
        papers=site.papers,
        sheets=site.sheets,
        theme=site.theme,
        seam=site.seam,
        straighten=site.straighten,
        zip_lengths=site.zip_lengths,
        rows_by_bulk=site.rows_by_bulk,
        own_editions={name: _edition(site, name) for name in EDITION_NAMES},
        spool=site.thread.spool,
        waste=site.thread.waste,
        stitch=site.thread.stitch,
        rates={**DEFAULT_RATES, **rates},
        beginners=site.rates.get("beginners take", Fraction(2)),
        layers_warn=site.layers.warn_over,
        layers_refuse=site.layers.refuse_over,
        cautions=dict(site.cautions),
        samples=dict(site.samples),
        prices=dict(site.prices),
        currency=site.currency,
        currency_code=site.currency_code,
        lends=site.lends,
        guides=site.guides,
    )


def _edition(site: SiteFile, name: str) -> Edition:
    edition = EDITIONS[name]
    ruler = site.rulers.get(name)
    if ruler is not None:
        grids = (*(mark for mark in ruler.marks if mark > ruler.finest), ruler.finest)
        cut_step = round_up(edition.cut_step, ruler.finest)
        edition = replace(edition, grids=grids, mark=ruler.finest, cut_step=cut_step)
    if name in site.shop:
        edition = replace(edition, buy_step=site.shop[name])
    return edition
