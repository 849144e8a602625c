"""Every key, every word and every command is in the documents, and the documents name none that does not exist."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, fields
from pathlib import Path
from typing import Any

import click
import pytest

from generator import limits
from generator.cli import COMMANDS, overview
from generator.definitions import (
    body_table,
    caution_rule,
    class_plan,
    making_words,
    palette,
    room_file,
    technique_words,
    techniques,
    theme,
    thread_work,
    vocabulary,
)
from generator.definitions.functions import FUNCTIONS
from generator.definitions.keyed import Keyed
from generator.definitions.pieces.kinds import PIECES
from generator.definitions.schema import project_schema
from generator.definitions.states import states
from generator.definitions.technique_names import TECHNIQUES, step_names
from generator.drawing.style import Style
from generator.lengths import UNITS
from generator.rendering import sandbox

ROOT = Path(__file__).resolve().parents[2]
PAGES = ROOT / "site" / "pages"
SCHEMA = project_schema()
HEAD = "| key | without it | what it says |"
COMMON = set.intersection(*(set(model.keys()) for model in PIECES.values()))
KINDS_OF_PIECE = tuple(model.of_kind for model in PIECES.values())


@dataclass(frozen=True)
class Row:
    """One line of a table of keys."""

    key: str
    without: str
    says: str


def page(name: str) -> str:
    return (PAGES / f"{name}.md").read_text(encoding="utf-8")


def tables(name: str) -> dict[str, list[Row]]:
    """The tables of keys of a page by the heading that they stand under."""
    found: dict[str, list[Row]] = {}
    heading = ""
    rows: list[Row] | None = None
    for line in page(name).splitlines():
        if line.startswith("#"):
            heading = line.lstrip("# ")
        if line == HEAD:
            rows = found.setdefault(heading, [])
        elif not line.startswith("|"):
            rows = None
        elif rows is not None and not line.startswith("|---"):
            key, without, says = (cell.strip() for cell in line.strip("|").split("|"))
            rows.append(Row(key, without, says))
    return found


def keys_of(model: type[Keyed]) -> dict[str, str]:
    """The keys of a definition, each with what holds without it: 'must', a text, or '' for anything."""
    return of_schema(model.keys_schema({}))


def of_schema(schema: Mapping[str, Any]) -> dict[str, str]:
    must = schema.get("required", [])
    return {key: "must" if key in must else inner.get("default", "") for key, inner in schema["properties"].items()}


def defined(name: str) -> dict[str, str]:
    return of_schema(SCHEMA["$defs"][name])


def without(keys: Mapping[str, str], *left_out: str) -> dict[str, str]:
    return {key: value for key, value in keys.items() if key not in left_out}


def only(keys: Mapping[str, str], *kept: str) -> dict[str, str]:
    return {key: keys[key] for key in kept}


SAY, CLASS, ROOM = "what-a-project-can-say", "write-a-class", "set-up-your-room"
TECHNIQUE = {**keys_of(techniques._TechniqueFile), **keys_of(techniques._Part)}
ABOUT = {
    (SAY, "The whole file"): of_schema(SCHEMA),
    (SAY, "Sizes"): of_schema(SCHEMA["properties"]["sizes"]["additionalProperties"]["anyOf"][0]),
    (SAY, "By which measure a size is chosen"): defined("MeasuredBy"),
    (SAY, "Sizes between the named ones"): defined("Between"),
    (SAY, "Sizes of bodies"): keys_of(body_table.BodyTable),
    (SAY, "Some rows and columns of a table"): defined("SizesFrom"),
    (SAY, "Cloths"): defined("Cloth"),
    (SAY, "Pieces"): {key: value for key, value in defined("Bought").items() if key in COMMON},
    (SAY, "Copies"): only(defined("Copy"), "of", "reaches", "fixed", "on"),
    (SAY, "A facing of the shape of an edge"): only(defined("ShapedFacing"), "along", "width"),
    (SAY, "Tucks"): defined("Tucks"),
    (SAY, "Unequal tucks"): defined("Run"),
    (SAY, "A blind"): defined("Rings"),
    (SAY, "Rows and turns"): defined("Rows"),
    (SAY, "Wider than the cloth"): only(defined("TuckedPanel"), "join allowance"),
    (SAY, "Tuck first, cut to shape after"): only(defined("TuckedPanel"), "cut to shape", "room around"),
    (SAY, "Samples"): defined("Sample"),
    (SAY, "Edges that meet"): defined("Meeting"),
    (SAY, "Closures"): defined("Closure"),
    (SAY, "Supplies"): defined("Supply"),
    (SAY, "Embroidery"): defined("Embroidery"),
    (SAY, "Steps"): defined("Step"),
    (SAY, "A standard step in your own words"): TECHNIQUE,
    (SAY, "A caution in your own words"): defined("OwnCaution"),
    (SAY, "Editions and corrections"): defined("Change"),
    (CLASS, "Every key"): keys_of(class_plan.ClassPlan),
    (CLASS, "A session"): keys_of(class_plan.Session),
    (CLASS, "A place"): keys_of(class_plan.Seat),
    (CLASS, "A bolt of another width"): keys_of(class_plan.ClassCloth),
    (ROOM, "Name, editions, papers"): keys_of(room_file.SiteFile),
    (ROOM, "Rulers and shop"): keys_of(room_file.Ruler),
    (ROOM, "Thread and layers"): {**keys_of(room_file.Thread), **keys_of(room_file.Layers)},
    (ROOM, "Cautions of your own"): keys_of(caution_rule.CautionRule),
    (ROOM, "Pages of your own"): keys_of(room_file.GuideGroup),
}
KEYED = sorted(ABOUT, key=str)


@pytest.mark.parametrize(("name", "heading"), KEYED)
def test_a_table_of_keys_has_every_key_and_no_other(name: str, heading: str) -> None:
    told = [row.key.strip("`") for row in tables(name)[heading]]
    assert sorted(told) == sorted(ABOUT[name, heading])


@pytest.mark.parametrize(("name", "heading"), KEYED)
def test_a_table_of_keys_says_what_must_be_there_and_what_holds_without_it(name: str, heading: str) -> None:
    for row in tables(name)[heading]:
        held = ABOUT[name, heading][row.key.strip("`")]
        if held == "must":
            assert row.without == "**must**", row
        elif held:
            assert row.without == f"`{held}`", row
        assert row.key.startswith("`"), row


def test_every_table_of_keys_is_held_to_a_definition() -> None:
    assert {(name, heading) for name in (SAY, CLASS, ROOM) for heading in tables(name)} == set(ABOUT)


def test_every_kind_of_piece_is_told_with_all_its_own_keys() -> None:
    rows = re.findall(r"^\| `([a-z ]+)` \| ([^|]*)\| [^|]* \|$", page(SAY).split("kind of piece |")[1], re.MULTILINE)
    told = {kind: set(re.findall(r"`([a-z ]+)`", keys)) - set(vocabulary.PLEAT_STYLES) for kind, keys in rows}
    assert {kind: told.get(kind) for kind in PIECES} == {
        kind: set(model.keys()) - COMMON for kind, model in PIECES.items()
    }


def ticked(text: str) -> set[str]:
    """What stands between backticks, and the entries of such lists."""
    return set(re.findall(r"`([^`\n]+)`", text))


WORDS = {
    "kinds of project": vocabulary.KINDS,
    "levels": vocabulary.LEVELS,
    "editions": vocabulary.EDITION_NAMES,
    "cautions": vocabulary.CAUTIONS,
    "ways of the grain": vocabulary.GRAINS,
    "weights": vocabulary.WEIGHTS,
    "times to cut": vocabulary.CUT_TIMES,
    "what gives": vocabulary.GIVES,
    "hands": vocabulary.HANDS,
    "ways to hold": vocabulary.HELD,
    "lone edge tucks": vocabulary.LONE_EDGE_TUCKS,
    "ways to press tucks": vocabulary.PRESSED,
    "edges to hang by": vocabulary.HANGS,
    "styles of pleat": vocabulary.PLEAT_STYLES,
    "turn plans": vocabulary.PLANS,
    "turn signs": tuple(vocabulary.TURN_SIGNS),
    "closures": vocabulary.CLOSURES,
    "tools": vocabulary.TOOLS,
    "conditions": tuple(vocabulary.CONDITIONS),
    "pictures of a technique": technique_words.FIGURES,
    "ways of making up": technique_words.ASSEMBLIES,
    "work of a technique": technique_words.WORK,
    "words in brackets": tuple(f"[{word}]" for word in technique_words.BRACKETS),
    "standard steps": tuple(step_names(None)),
    "units": tuple(UNITS),
    "edges": tuple(edge for kind in KINDS_OF_PIECE for edge in kind.edges),
    "measures of pieces": tuple(name for kind in KINDS_OF_PIECE for name in kind.dimensions),
    "states": tuple(states()),
    "needs": making_words.NEEDS,
    "sorts of seam": making_words.SORTS,
    "things that a technique is for": making_words.FOR,
    "work with thread of its own": tuple(thread_work.THREAD_WORK),
}


@pytest.mark.parametrize("sort", WORDS)
def test_every_word_of_the_language_is_explained(sort: str) -> None:
    assert set(WORDS[sort]) - ticked(page(SAY)) == set()


def test_every_finish_function_and_unit_of_work_is_shown() -> None:
    shown = ticked(page(SAY))
    assert {name for name in vocabulary.FINISHES if not any(text.startswith(name) for text in shown)} == set()
    assert {name for name in FUNCTIONS if not any(text.startswith(f"{name}(") for text in shown)} == set()
    rates = page(ROOM)
    named = (*vocabulary.RATES_EACH, *vocabulary.RATES_LENGTH, "beginners take")
    assert {name for name in named if f"  {name}: " not in rates} == set()


def test_lists_of_words_name_none_that_does_not_exist() -> None:
    steps = page(SAY).split("The standard steps, in the order")[1].split("###")[0]
    assert ticked(steps) == step_names(None)
    plans = re.findall(r"^\| `([a-z ]+)` \|", page(SAY).split("| plan | how the tucks lie |")[1].split("\n\n")[0], re.M)
    assert plans == list(vocabulary.PLANS)
    when = re.search(r"^After `when` may stand: (.*?)\n\n", page(SAY), re.MULTILINE | re.DOTALL)
    assert when is not None
    assert ticked(when[1]) == vocabulary.CONDITIONS
    asked = page(SAY).split("| of | you can ask |")[1].split("\n\n")[0]
    assert ticked(asked) == set(WORDS["measures of pieces"])
    cautions = re.findall(r"^\| `([a-z ]+)` \|", page(SAY).split("| caution | when |")[1], re.MULTILINE)
    assert set(cautions) >= set(vocabulary.CAUTIONS)


def test_the_guide_says_what_every_standard_step_is_on() -> None:
    rows = re.findall(
        r"^\| ([^|]+) \| ([^|]+) \|$", page(SAY).split("| it is done on | steps |")[1].split("\n\n")[0], re.M
    )
    told = {step: place for place, steps in rows for step in ticked(steps)}
    assert set(told) == step_names(None)
    about = {"nothing": "project", "tucked": "panel", "the": "piece"}
    known = techniques.load_techniques((TECHNIQUES,))
    assert {step: about[place.split()[0].rstrip(":")] for step, place in told.items()} == {
        name: technique.about for name, technique in known.items()
    }


def documents() -> str:
    return "\n".join(path.read_text(encoding="utf-8") for path in (ROOT / "README.md", *sorted(PAGES.glob("*.md"))))


@pytest.mark.parametrize("name", sorted(COMMANDS))
def test_every_option_of_a_command_is_in_the_readme_or_on_a_page(name: str) -> None:
    command = overview.get_command(click.Context(overview), name)
    assert command is not None
    text = documents()
    options = [option.opts for option in command.params if option.opts[0].startswith("-")]
    assert [names for names in options if not any(stands_in(text, name) for name in names)] == []


def stands_in(text: str, option: str) -> bool:
    return re.search(rf"(?<![\w-]){option}(?![\w-])", text) is not None


def test_the_documents_name_no_option_that_does_not_exist() -> None:
    known = {"--version", "--help"}
    for name in COMMANDS:
        command = overview.get_command(click.Context(overview), name)
        assert command is not None
        known |= {text for option in command.params for text in option.opts}
    boxes = re.findall(r"`(?:tuckwright |--)[^`\n]*`|^\$? ?tuckwright .*$", documents(), re.MULTILINE)
    named = {option for box in boxes for option in re.findall(r"(?<![\w-])--[a-z][a-z-]*", box)}
    assert named - known == set()


def test_every_part_of_a_theme_is_explained() -> None:
    shown = ticked(page("make-a-theme"))
    assert {*palette.COLOURS, palette.DARK, *theme.MEASURES, *theme._SECTIONS, *theme._FACE_KEYS} - shown == set()
    numbers = {field.name for field in fields(Style) if "dashes" not in field.name and field.name != "font"}
    assert numbers - shown == set()


def test_every_file_of_the_plain_theme_is_explained() -> None:
    plain, shown = ROOT / "themes" / "plain", ticked(page("make-a-theme"))
    assert {path.name for path in (plain / "css").iterdir()} - shown == set()
    templates = {f"{path.name}/" if path.is_dir() else path.name for path in (plain / "templates").iterdir()}
    assert templates - shown == set()
    named = {name for name in shown if name.endswith((".css", ".html"))}
    assert named - {path.name for path in plain.rglob("*")} == set()


def test_every_key_of_who_the_room_is_is_told() -> None:
    assert set(map("`{}`".format, keys_of(room_file.RoomName))) - set(re.findall(r"`[a-z ]+`", page(ROOM))) == set()


def test_every_limit_is_told() -> None:
    told = page(ROOM).split("## How much a room may hold")[1]
    numbers = {value for name, value in vars(limits).items() if name.isupper() and isinstance(value, int)}
    numbers |= {size // limits.KILOBYTE for kind, size in limits.LARGEST_FILES.items() if kind != ".json"}
    shown = {int(number) for number in re.findall(r"\d+", told)}
    assert numbers - shown - {limits.KILOBYTE, limits.LARGEST_STEP} == set()


def test_every_filter_of_a_template_is_told() -> None:
    assert set(sandbox.FILTERS) - ticked(page("make-a-theme")) == set()
