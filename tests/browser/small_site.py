"""A small site of two projects, rendered straight into a folder, for looking at with a browser."""

from __future__ import annotations

import dataclasses
from pathlib import Path

from generator.calculation.worked_project import Worksheet
from generator.calculation.worksheet.editions import published_edition
from generator.calculation.worksheet.figures import figures
from generator.calculation.worksheet.sheet import shelf_of, worked_sheet
from generator.definitions.cautions import cautions_of
from generator.definitions.project import load_project
from generator.definitions.room import load_room
from generator.definitions.theme import load_theme
from generator.drawing.catalogue import draw, figure_keys
from generator.drawing.plan_samples import draw_plan_samples
from generator.drawing.style import read_style
from generator.lengths import INCH, METRIC
from generator.rendering import addresses
from generator.rendering.corrections import render_corrections
from generator.rendering.figures import Pictures, arranged
from generator.rendering.further_files import further_files
from generator.rendering.gallery import gallery_files, plans_used, render_gallery
from generator.rendering.machine import render_machine
from generator.rendering.pages import render_home, render_project, render_size
from generator.rendering.reference import render_glossary, render_reference, sourced_cautions
from generator.rendering.setting import PageLink, Setting, size_link, summarised
from generator.rendering.styles import shared_files

ROOT = Path(__file__).resolve().parents[2]
PROJECTS = ("quay-cushion", "pier-bolster")
PLAIN = load_theme(ROOT / "themes" / "plain")
STYLE = read_style(PLAIN.drawing, "plain/theme.yaml")
SAMPLES = draw_plan_samples(STYLE)
LINKS = (
    PageLink("Surfaces", addresses.GALLERY),
    PageLink("Reference", addresses.REFERENCE),
    PageLink("Glossary", addresses.words_page("glossary")),
    PageLink("Corrections", addresses.CORRECTIONS),
)
SETTING = Setting(
    room="The Ropewalk Sewing Room",
    theme=PLAIN,
    place="upstairs in the old net store, Saltersquay",
    welcome="We sew on Tuesdays.",
    edition_mark="2031-03 b",
    links=LINKS,
)


def worksheets(project: str) -> tuple[Worksheet, ...]:
    """Work the first size of a project in each of its editions."""
    room = load_room(ROOT / "site" / "site.yaml", ROOT)
    found, shelf = load_project(ROOT / "projects" / f"{project}.yaml", room, ROOT), shelf_of(room, ROOT)
    size = next(iter(found.sizes))
    return tuple(worked_sheet(found, size, room.edition(name), shelf) for name in found.editions)


def pictures_of(worksheet: Worksheet) -> Pictures:
    return {key: draw(worksheet, key, STYLE) for key in figure_keys(worksheet)}


def project_pages(sheets: tuple[Worksheet, ...], setting: Setting) -> dict[str, str]:
    links = [size_link(sheet) for sheet in sheets]
    pictures = {sheet.edition.name: pictures_of(sheet) for sheet in sheets}
    surface = arranged(sheets[0], pictures[sheets[0].edition.name]).surface
    pages = {addresses.project_page(sheets[0].project): render_project(sheets, surface, setting)}
    for sheet, link in zip(sheets, links, strict=True):
        pages[link.page] = render_size(sheet, pictures[sheet.edition.name], setting, links)
        machine = addresses.machine_page(sheet.project, sheet.size, sheet.edition.name)
        pages[machine] = render_machine(sheet, setting)
    return pages


def looked_up(worked: dict[str, tuple[Worksheet, ...]], setting: Setting) -> dict[str, str]:
    """The pages to look things up in."""
    used: dict[str, list[PageLink]] = {}
    for project, sheets in worked.items():
        for plan in plans_used(sheets):
            used.setdefault(plan, []).append(PageLink(sheets[0].title, addresses.project_page(project)))
    cautions = sourced_cautions(cautions_of(load_room(ROOT / "site" / "site.yaml", ROOT)), INCH)
    glossary = (ROOT / "site" / "pages" / "glossary.md").read_text(encoding="utf-8")
    return {
        addresses.GALLERY: render_gallery(SAMPLES, used, setting),
        addresses.words_page("glossary"): render_glossary(glossary, setting),
        **render_reference((INCH, METRIC), cautions, setting),
    }


def corrections(worked: dict[str, tuple[Worksheet, ...]], setting: Setting) -> str:
    """The page of corrections, as if the first sheet of every project had been cut by another size before."""
    editions = {}
    for project, sheets in worked.items():
        now = [figures(sheet) for sheet in sheets]
        before = [figures(sheet) for sheet in sheets]
        next(iter(before[0]["pieces"].values()))["cut"]["across"] = "99"
        editions[project] = (
            published_edition(project, "2031-02", "2031-02-01", before),
            published_edition(project, setting.edition_mark, "2031-03-14", now),
        )
    titles = {project: sheets[0].title for project, sheets in worked.items()}
    return render_corrections(editions, titles, setting)


def small_site(setting: Setting = SETTING) -> dict[str, bytes]:
    """Return every file of the small site by its path."""
    worked = {project: worksheets(project) for project in PROJECTS}
    pages = {addresses.HOME: render_home([summarised(sheets) for sheets in worked.values()], setting)}
    for sheets in worked.values():
        pages |= project_pages(sheets, setting)
    pages |= looked_up(worked, setting) | {addresses.CORRECTIONS: corrections(worked, setting)}
    shared = {addresses.asset(name): content for name, content in shared_files(setting.theme).items()}
    written = {address: page.encode() for address, page in pages.items()}
    return written | shared | gallery_files(SAMPLES) | further_files(setting.theme)


def write_site(files: dict[str, bytes], folder: Path) -> None:
    for address, content in files.items():
        path = folder / address
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(content)


def large_print(setting: Setting) -> Setting:
    return dataclasses.replace(setting, theme=load_theme(ROOT / "themes" / "large-print"))
