"""The keys of the room's file: its groups come in, frozen definitions go out."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from types import MappingProxyType
from typing import Annotated
from zoneinfo import ZoneInfo

from generator.definitions.caution_rule import CautionRule
from generator.definitions.faults import Fault
from generator.definitions.fields import VALUE, Fact, Label, Markdown, Share, Whole, WordList, YesNo, length, standing
from generator.definitions.keyed import Items, Keyed, Located, NamedGroups
from generator.definitions.nodes import Scalar
from generator.definitions.readers import Leaf, LeafGroup, LeafList, choices
from generator.definitions.reading import Reading, filled_words, fixed, read_value
from generator.definitions.tucks import Sample
from generator.definitions.values import Formula
from generator.definitions.vocabulary import (
    EDITION_NAMES,
    PAPERS,
    RATES_EACH,
    RATES_LENGTH,
    SHEETS_BESIDE,
    USUAL_SHEETS,
)
from generator.lengths import CENTIMETRE, EDITIONS, FOOT, METRE, YARD
from generator.limits import FINEST_STEP, LARGEST_STEP

_LENGTHS = {"inch": Fraction(1), "foot": FOOT, "yard": YARD, "metre": METRE, "meter": METRE, "10 cm": 10 * CENTIMETRE}
_PER = "|".join(_LENGTHS)
_RATE = re.compile(rf"(?P<number>.+?) (?P<unit>seconds?|minutes?)(?: (?P<each>each)| (?:an? )?(?P<per>{_PER}))?")
_TIMES = re.compile(r"(?P<number>.+?) times(?: as long)?")
_PRICE = re.compile(rf"(?P<amount>[^\d]{{0,6}}\d+(?:\.\d{{1,3}})?(?: ?[^\d\s]{{1,3}})?)(?: each| an? (?P<per>{_PER}))?")
_CURRENCY = re.compile(r"[^\W\d_]{1,5}|[^\w\s.,;:<>&-]")
# A host of letters, digits, hyphens and dots, perhaps a port, and folders; no name, no question, no place on a page.
_WEB_ADDRESS = re.compile(
    r"https?://[a-z0-9](?:[a-z0-9.-]{0,251}[a-z0-9])?(?::[1-9]\d{0,4})?(?:/[\w~][\w.~-]{0,80}){0,9}/?",
    re.ASCII | re.IGNORECASE,
)
_LENGTHS_LISTED = {"anyOf": [VALUE, {"type": "array", "items": VALUE}]}
_EXAMPLES = "for example 30 seconds, 4 minutes or 20 seconds a foot"
# Guesses to begin with for a hand that has done it before, common practice, no source: a room times itself and writes
# its own. A foot of stitching is some 120 stitches, sewn along a guide at three a second. Two are told by others: one
# sewer's 20 stitches a minute by hand (lifeatasewingcentre.blogspot.com, 2012), three minutes a foot at five to the
# inch; and another's six to seven minutes for a tuck of 24 in, pinned and sewn (the-littlest-thistle.com, 2011).
DEFAULT_RATES: Mapping[str, Fraction] = MappingProxyType(
    {
        "cut a piece": Fraction(300),
        "mark a fold": Fraction(45),
        "turn a tuck": Fraction(8),
        "start a seam": Fraction(30),
        "turn a corner": Fraction(20),
        "turn out": Fraction(240),
        "join a length": Fraction(240),
        "rule a row": Fraction(90),
        "buttonhole": Fraction(240),
        "sew a button": Fraction(240),
        "crease": Fraction(60, 12),
        "stitch": Fraction(40, 12),
        "gather": Fraction(75, 12),
        "sew by hand": Fraction(180, 12),
        "press": Fraction(30, 12),
        "pin": Fraction(40, 12),
        "baste": Fraction(60, 12),
        "turn a hem": Fraction(90, 12),
        "cut along a line": Fraction(40, 12),
    }
)


@dataclass(frozen=True, slots=True)
class Price:
    """A price as written, for one thing or, where ``per`` is a length [in], for that much cloth."""

    amount: str
    per: Fraction | None = None


def _web_address(words: Scalar, reading: Reading) -> str:
    """Return where the site is published, with a slash at its end."""
    text = filled_words(words).strip()
    if not _WEB_ADDRESS.fullmatch(text):
        raise Fault(
            f"'{text}' is no address of a site; write https://, the host and the folder if it lies in one, "
            "for example https://sewing.example/sheets"
        )
    return f"{text.rstrip('/')}/"


def _time_zone(words: Scalar, reading: Reading) -> str:
    """Return a name of the time zone database, such as Europe/London."""
    name = filled_words(words).strip()
    try:
        return ZoneInfo(name).key
    except (OSError, ValueError, KeyError):  # a folder of names, a path out of the database, no such name
        told = f"'{name}' is no time zone known here; write its name in the IANA database, for example Europe/London"
        raise Fault(told) from None


class GuideGroup(Located):
    """Pages of words that stand together in the list of guides, by the names of their files."""

    title: Label
    pages: WordList


class RoomName(Keyed):
    """Who the room is."""

    name: Label
    place: Label = ""
    line: Label = ""
    welcome: Markdown | None = None
    time_zone: Annotated[str, Leaf(_time_zone, {"type": "string"})] = ""
    web_address: Annotated[str, Leaf(_web_address, {"type": "string", "format": "uri"})] = ""


class Thread(Keyed):
    """Thread on a spool, what is wasted of it, and the length of a stitch.

    A spool: common practice, no source. Waste: 15 to 20 % in a thread maker's bulletin. Stitch: 10 to the inch, as the
    table of needles and stitches has it for cloth of medium weight.
    """

    spool: Annotated[Formula, Leaf(_spent, VALUE)] = standing("110 yd or 100 m")
    waste: Share = Fraction(1, 5)
    stitch: Annotated[Formula, Leaf(_spent, VALUE)] = standing("1/10 in or 2.5 mm")


class Layers(Keyed):
    """How many layers of medium cloth a row or a seam may cross; common practice, no source."""

    warn_over: Whole = 7
    refuse_over: Whole = 9


def _fact(words: Scalar, reading: Reading) -> Fraction:
    """Return a fixed length [in]."""
    return fixed(read_value(words, reading, purpose="fact"))


def _step(words: Scalar, reading: Reading) -> Fraction:
    """Return a fixed length [in] that something can be counted in: never nothing."""
    length = _fact(words, reading)
    if not FINEST_STEP <= length <= LARGEST_STEP:
        told = "no ruler and no shop has such a step; write a length between 1/128 in and 10 yd, such as 1/16 in"
        raise Fault(f"'{words.text.strip()}': {told}")
    return length


def _rate(words: Scalar, reading: Reading) -> Fraction:
    """Return the seconds of one thing, of one inch, or how many times as long."""
    text = filled_words(words).strip()
    times = _TIMES.fullmatch(text)
    found = _RATE.fullmatch(text)
    if times:
        return _above_nothing(Scalar(times["number"], words.place), reading)
    if not found:
        raise Fault(f"'{text}' is no time of work; write {_EXAMPLES}")
    number = _above_nothing(Scalar(found["number"], words.place), reading)
    seconds = number * (60 if found["unit"].startswith("minute") else 1)
    return seconds / _LENGTHS[found["per"]] if found["per"] else seconds


def _above_nothing(words: Scalar, reading: Reading) -> Fraction:
    number = fixed(read_value(words, reading, wanted=0))
    if number <= 0:
        raise Fault(f"'{words.text.strip()}': work takes more than no time; write {_EXAMPLES}")
    return number


def _spent(words: Scalar, reading: Reading) -> Formula:
    """Return a length that is never nothing: of thread, of a stitch."""
    found = read_value(words, reading, purpose="fact")
    if min(fixed(found, edition) for edition in EDITIONS.values()) <= 0:
        raise Fault(f"'{words.text.strip()}': this is never nothing; write for example 110 yd or 2.5 mm")
    return found


def _price(words: Scalar, reading: Reading) -> Price:
    text = filled_words(words).strip()
    found = _PRICE.fullmatch(text)
    if not found:
        raise Fault(f"'{text}' is no price; write for example 14.80 a yard, 12.50 a metre or 0.40 each")
    return Price(found["amount"], _LENGTHS[found["per"]] if found["per"] else None)


def _currency(words: Scalar, reading: Reading) -> str:
    """Return the mark of the room's money: a sign, or the letters of a word."""
    text = filled_words(words).strip()
    if not _CURRENCY.fullmatch(text):
        raise Fault(f"'{text}' is no mark of money; write a sign or a short word without its number: £, kr, CHF")
    return text


def _currency_code(words: Scalar, reading: Reading) -> str:
    """Return the letters of a kind of money as ISO 4217 writes them."""
    text = filled_words(words).strip()
    if not re.fullmatch("[A-Z]{3}", text):
        raise Fault(f"'{text}' is no code of money; write the three capital letters of ISO 4217: GBP, EUR, SEK")
    return text


class Ruler(Keyed):
    """The divisions of a ruler that a person finds, best first, and the finest of all."""

    marks: Annotated[tuple[Fraction, ...], LeafList(_step, {"type": ["string", "array"]})]
    finest: Annotated[Fraction, Leaf(_step, VALUE)]


class SiteFile(Keyed):
    """The whole file."""

    room: RoomName
    editions: Annotated[tuple[str, ...], choices(EDITION_NAMES, "edition")] = EDITION_NAMES
    papers: Annotated[tuple[str, ...], choices(PAPERS, "paper")] = PAPERS
    sheets: Annotated[tuple[str, ...], choices(SHEETS_BESIDE, "sheet beside the handout", may_be_empty=True)] = (
        USUAL_SHEETS
    )
    theme: Label = "plain"
    seam: Annotated[Formula, length("seam")] = standing("1/2 in or 1.5 cm")
    straighten: Fact = standing("1 in or 2.5 cm")
    zip_lengths: Annotated[tuple[Formula, ...], LeafList(read_value, _LENGTHS_LISTED)] = ()
    rows_by_bulk: YesNo = True
    rulers: NamedGroups[Ruler] = field(default_factory=dict)
    shop: Annotated[Mapping[str, Fraction], LeafGroup(Leaf(_step, VALUE), EDITION_NAMES)] = field(default_factory=dict)
    thread: Thread = Thread()
    rates: Annotated[
        Mapping[str, Fraction],
        LeafGroup(Leaf(_rate, VALUE), (*RATES_EACH, *RATES_LENGTH, "beginners take")),
    ] = field(default_factory=dict)
    layers: Layers = Layers()
    cautions: NamedGroups[CautionRule] = field(default_factory=dict)
    samples: NamedGroups[Sample] = field(default_factory=dict)
    prices: Annotated[Mapping[str, Price], LeafGroup(Leaf(_price, VALUE))] = field(default_factory=dict)
    currency: Annotated[str, Leaf(_currency, {"type": "string"})] = ""
    currency_code: Annotated[str, Leaf(_currency_code, {"type": "string", "pattern": "^[A-Z]{3}$"})] = ""
    lends: WordList = ()
    guides: Items[GuideGroup] = ()
