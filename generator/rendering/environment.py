"""Templates of a theme: a theme comes in, a Jinja environment goes out that escapes everything and forgives nothing."""

from __future__ import annotations

from collections.abc import Callable, Collection
from functools import lru_cache, partial
from pathlib import Path

from jinja2 import Template
from jinja2.meta import find_referenced_templates

from generator.calculation.marked_edges import marked_edges
from generator.calculation.turning.turns import spoken_row
from generator.calculation.worked_project import Worksheet
from generator.definitions.theme import Theme
from generator.definitions.vocabulary import tool_name
from generator.rendering import tables
from generator.rendering.logo import sheet_logo
from generator.rendering.sandbox import Sandbox
from generator.rendering.typeset import as_sentence, bare, said, time_words, typeset
from generator.rendering.words import read_words

# The templates of sheets that do not lie in the folder of sheets.
_SHEETS = ("handout.html", "pattern.html")


def template(theme: Theme, name: str) -> Template:
    """Return a template of a theme, its own or one of those that it is based on."""
    environment = _environment(_folders(theme))
    with environment.telling(name):
        return environment.get_template(name)


def read_templates(theme: Theme, names: Collection[str] = ()) -> None:
    """Read templates of a theme and all their parts now, so that they are at hand when they are asked for.

    Without names all are read, so that what is wrong with any of them is told.
    """
    environment = _environment(_folders(theme))
    wanted = environment.list_templates(
        filter_func=lambda name: name.endswith(".html") and (not names or name in names or name.startswith("parts/"))
    )
    for name in wanted:
        template(theme, name)


def sheet_templates(theme: Theme) -> dict[str, Path]:
    """Return the files of all templates that sheets are made of, by their names: those of each kind and their parts."""
    environment = _environment(_folders(theme))
    known = environment.list_templates()
    found = {name: Path() for name in known if name in _SHEETS or name.startswith(("handout/", "sheets/"))}
    waiting = list(found)
    for name in waiting:
        with environment.telling(name):
            source, file, _ = environment.files.get_source(environment, name)
            parts = dict.fromkeys(find_referenced_templates(environment.parse(source, name, file)))
        found[name] = Path(file)
        waiting += [part for part in parts if part in known and part not in waiting]
    return found


def _folders(theme: Theme) -> tuple[Path, ...]:
    return tuple(folder / "templates" for folder in theme.folders)


@lru_cache(maxsize=8)
def _environment(folders: tuple[Path, ...]) -> Sandbox:
    environment = Sandbox(folders)
    environment.filters |= {"typeset": typeset, "words": read_words}
    environment.filters |= {"time": time_words, "sentence": as_sentence, "tool": tool_name}
    environment.globals["logo"] = sheet_logo
    return environment


def sheet_words(worksheet: Worksheet, panel_columns: int) -> dict[str, object]:
    """Return what the templates of a sheet need to put a worksheet into words: it speaks the sheet's edition.

    ``panel_columns`` is how many marks stand side by side in a table.
    """
    edition = worksheet.edition
    spoken: dict[str, Callable[..., object]] = {
        "say": partial(said, edition=edition),
        "bare": partial(bare, edition=edition),
        "piece_size": partial(tables.piece_size, edition=edition),
        "in_parts": tables.in_parts,
        "drawn_up": partial(tables.drawn_up, edition=edition),
        "cut_list": partial(tables.cut_list, edition=edition),
        "key_numbers": partial(tables.key_numbers, edition=edition),
        "finished_range": partial(tables.finished_range, edition=edition),
        "mark_rows": partial(tables.mark_rows, edition=edition, columns=panel_columns),
        "marked_edges": partial(marked_edges, edition=edition),
        "spoken": spoken_row,
    }
    return {"sheet": worksheet, "edition": edition, "unit": edition.unit, **spoken}
