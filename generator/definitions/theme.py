"""Themes: the folder of a theme comes in, a checked and frozen Theme goes out, or all its faults at once.

A theme is a folder with ``theme.yaml`` and, where it has its own, ``templates``, ``css``, ``scripts`` and ``fonts``. A
theme that is ``based on`` another has everything of that one and replaces only what it names itself.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from pathlib import Path

from generator.definitions.faults import Faults, meant
from generator.definitions.logo_limits import logo_findings
from generator.definitions.nodes import Group, Listing, Scalar
from generator.definitions.palette import read_palette
from generator.definitions.style_limits import style_findings
from generator.definitions.text_file import read_text_file
from generator.definitions.yaml_text import read_yaml
from generator.errors import FaultyFileError, Finding, Place

MEASURES = ("text", "small", "heading", "title", "screen text")
_SECTIONS = ("title", "based on", "logo", "headings", "palette", "fonts", "measures", "drawing")
_LOGO_KINDS = (".svg", ".png")
_FACE_KEYS = ("family", "weight", "style", "print", "screen")
_UNITS = {"screen text": "em"}
# What each unit of a measure may come to: letters that can be read.
_SPANS = {"pt": (5, 72), "em": (0.5, 3)}
# The tool's own themes, which a room's theme may be based on.
OWN_THEMES = Path(__file__).resolve().parents[2] / "themes"

Layer = tuple[Path, Group]


@dataclass(frozen=True, slots=True)
class FontFace:
    """One font file for paper (TTF) and its lighter form for the screen (WOFF2).

    ``more`` has further letters for the screen, which are fetched only where a page has one of them.
    """

    family: str
    weight: str
    style: str
    print: Path
    screen: Path
    more: Path | None = None


# From here on letters are large [pt].
_LARGE = 14.0


@dataclass(frozen=True, slots=True)
class Theme:
    """How pages and sheets look.

    ``folders`` are searched in order for templates: its own folder first, then those it is based on. ``palette`` are
    its colours by day and on paper, ``dark`` those of a dark screen; ``headings`` is the family of the headings on a
    screen. ``measures`` are CSS lengths by name; ``drawing`` holds values for the style of the diagrams, ``places``
    where each of these stands, with '' for the theme itself; ``logo`` is the room's mark.
    """

    name: str
    title: str
    folders: tuple[Path, ...]
    palette: Mapping[str, str]
    dark: Mapping[str, str]
    faces: tuple[FontFace, ...]
    headings: str
    measures: Mapping[str, str]
    drawing: Mapping[str, str] = field(default_factory=dict)
    logo: Path | None = None
    places: Mapping[str, Place] = field(default_factory=dict)

    @property
    def family(self) -> str:
        """The font family of the text: the first one named."""
        return self.faces[0].family

    @property
    def text_size(self) -> float:
        """The size of the letters of a sheet's text [pt]."""
        return float(self.measures["text"].removesuffix("pt"))

    @property
    def large(self) -> bool:
        """Whether the letters are so large that a sheet is set in one column, and takes the pages that it needs."""
        return self.text_size >= _LARGE

    @property
    def of_room(self) -> bool:
        """Whether it is a room's own, whose files may hold anything, and not one of the tool's."""
        return self.folders[0].parent != OWN_THEMES


def load_theme(folder: Path) -> Theme:
    """Return the theme in a folder.

    Parameters
    ----------
    folder : Path
        The folder that holds ``theme.yaml``; a theme it is based on lies beside it, or is one of the tool's own.

    Returns
    -------
    Theme
        Checked: every colour readable on the paper, every font file there.

    Raises
    ------
    FaultyFileError
        With every fault of the theme and of those it is based on.
    """
    faults = Faults()
    layers = _layers(folder, faults)
    title = _words(layers[0][1], "title", faults)
    if title is None:
        faults.add(layers[0][1].place, "a theme needs a title; write for example 'title: Plain'")
    palette, dark = read_palette([content.get("palette") for _, content in layers], layers[0][1].place, faults)
    measures = _section(layers, "measures", MEASURES, faults)
    drawing = _section(layers, "drawing", None, faults)
    faces = _faces(layers, faults)
    headings = _headings(layers, faces, faults)
    logo = _logo(layers, faults)
    _check_files(layers, faults)
    _check_measures(measures, faults)
    faults.stop()
    parts = (palette, dark, measures, drawing)
    texts = [{name: words.text.strip() for name, words in part.items()} for part in parts]
    folders = tuple(path for path, _ in layers)
    drawn = {name.replace(" ", "_"): text for name, text in texts[3].items()}
    places = {name.replace(" ", "_"): words.place for name, words in drawing.items()} | {"": layers[0][1].place}
    return Theme(
        name=folder.name,
        title=title.text if title else "",
        folders=folders,
        palette=texts[0],
        dark=texts[1],
        faces=faces,
        headings=headings,
        measures=texts[2],
        drawing=drawn,
        logo=logo,
        places=places,
    )


def _layers(folder: Path, faults: Faults) -> list[Layer]:
    """Return the theme and those it is based on, each with what its file holds."""
    layers: list[Layer] = []
    while True:
        content = _content(folder, faults)
        layers.append((folder, content))
        base = _words(content, "based on", faults)
        if base is None:
            return layers
        beside = (folder.parent / base.text, OWN_THEMES / base.text)
        folder = next((found for found in beside if found.is_dir()), folder)
        if not re.fullmatch(r"[a-z0-9-]+", base.text) or folder.name != base.text:
            faults.add(base.place, f"there is no theme folder '{base.text}' beside this one")
            return layers
        if folder in [path for path, _ in layers]:
            faults.add(base.place, f"themes are based on each other in a ring: '{base.text}' comes back")
            return layers


def _content(folder: Path, faults: Faults) -> Group:
    shown = f"{folder.name}/theme.yaml"
    content = read_yaml(folder / "theme.yaml", shown)
    if not isinstance(content, Group):
        raise FaultyFileError(
            [Finding("error", "keys and values are wanted, for example 'title: Plain'", Place(shown))]
        )
    _check_keys(content, _SECTIONS, faults)
    return content


def _check_keys(group: Group, known: Iterable[str], faults: Faults) -> None:
    for name, (key, _) in group.entries.items():
        if name not in known:
            faults.add(key.place, f"'{key.text}' is not known here{meant(name, known)}")


def _words(group: Group, key: str, faults: Faults) -> Scalar | None:
    """Return the words at a key, or None where there are none."""
    found = group.get(key)
    if found is None or isinstance(found, Scalar):
        return found
    faults.add(found.place, f"'{key}' wants words, not a list or keys of its own")
    return None


def _section(layers: list[Layer], name: str, known: Iterable[str] | None, faults: Faults) -> dict[str, Scalar]:
    """Return one section of all layers, where the theme's own value wins."""
    merged: dict[str, Scalar] = {}
    for _, content in reversed(layers):
        section = content.get(name)
        if not isinstance(section, Group):
            continue
        if known is not None:
            _check_keys(section, known, faults)
        found = {key: _words(section, key, faults) for key in section.entries}
        merged |= {key: words for key, words in found.items() if words is not None}
    if known is not None and not faults.errors:
        for missing in sorted(set(known) - set(merged)):
            faults.add(layers[0][1].place, f"'{name}' lacks '{missing}'; give it here or in the theme this is based on")
    return merged


def _faces(layers: list[Layer], faults: Faults) -> tuple[FontFace, ...]:
    """Return the font faces of the first layer that names any."""
    for place, (_, content) in enumerate(layers):
        fonts = content.get("fonts")
        if isinstance(fonts, Listing) and fonts.items:
            folders = [folder / "fonts" for folder, _ in layers[place:]]
            found = [_face(item, folders, faults) for item in fonts.items if isinstance(item, Group)]
            return tuple(face for face in found if face is not None)
    wanted = ", ".join(_FACE_KEYS)
    faults.add(layers[0][1].place, f"a theme needs fonts; list at least one with {wanted}")
    return ()


def _face(group: Group, folders: list[Path], faults: Faults) -> FontFace | None:
    _check_keys(group, (*_FACE_KEYS, "more"), faults)
    found = {key: _words(group, key, faults) for key in (*_FACE_KEYS, "more")}
    texts = {key: words.text for key, words in found.items() if words is not None}
    missing = [key for key in _FACE_KEYS if key not in texts]
    if missing:
        faults.add(group.place, f"this font lacks {', '.join(missing)}")
        return None
    files = {key: _font_file(folders, texts[key]) for key in ("print", "screen", "more") if key in texts}
    for key, file in files.items():
        if file.name != texts[key] or not file.is_file():
            faults.add(group.place, f"there is no font file '{texts[key]}' in the theme's folder 'fonts'; put it there")
    return FontFace(
        texts["family"], texts["weight"], texts["style"], files["print"], files["screen"], files.get("more")
    )


def _font_file(folders: list[Path], name: str) -> Path:
    """Return a font file in the first folder that has it, else where it should lie."""
    places = [folder / Path(name).name for folder in folders]
    return next((place for place in places if place.is_file()), places[0])


def _headings(layers: list[Layer], faces: Sequence[FontFace], faults: Faults) -> str:
    """Return the family of the headings on a screen: that of the text where no layer names one of the theme."""
    families = list(dict.fromkeys(face.family for face in faces))
    for place, (_, content) in enumerate(layers):
        named = _words(content, "headings", faults)
        if named is not None and named.text in families:
            return named.text
        if named is not None and place == 0:
            faults.add(named.place, f"'{named.text}' is no family of this theme{meant(named.text, families)}")
    return families[0] if families else ""


def _logo(layers: list[Layer], faults: Faults) -> Path | None:
    """Return the picture that the first layer with a logo names; it lies in that theme's own folder."""
    for folder, content in layers:
        named = _words(content, "logo", faults)
        if named is None:
            continue
        file = folder / named.text
        if file.suffix.lower() not in _LOGO_KINDS:
            faults.add(named.place, f"'{named.text}' is no logo; name an SVG or PNG file in the theme's folder")
        elif file.name != named.text or not file.is_file() or not file.resolve().is_relative_to(folder.resolve()):
            faults.add(named.place, f"there is no '{named.text}' in the theme's folder '{folder.name}'; put it there")
        elif folder.parent != OWN_THEMES:
            faults.extend(logo_findings(file, f"{folder.name}/{named.text}"))
        return file
    return None


def _check_files(layers: list[Layer], faults: Faults) -> None:
    """Hold that style sheets and templates are texts of a fair size, and that style sheets ask for no flood."""
    for folder, _ in layers:
        if folder.parent == OWN_THEMES:
            continue
        for file in sorted((*folder.glob("css/*.css"), *folder.glob("templates/**/*.html"))):
            shown = f"{folder.name}/{file.relative_to(folder).as_posix()}"
            try:
                text = read_text_file(file, shown)
                faults.extend(style_findings(text, shown) if file.suffix == ".css" else ())
            except FaultyFileError as fault:
                faults.extend(fault.findings)


def _check_measures(measures: Mapping[str, Scalar], faults: Faults) -> None:
    for name, words in measures.items():
        unit = _UNITS.get(name, "pt")
        least, most = _SPANS[unit]
        if not re.fullmatch(rf"\d{{1,2}}(\.\d{{1,4}})?{unit}", words.text):
            faults.add(words.place, f"'{words.text}' is not a measure for '{name}'; write it like '1.5{unit}'")
        elif not least <= float(words.text.removesuffix(unit)) <= most:
            faults.add(words.place, f"'{name}' lies between {least:g}{unit} and {most:g}{unit}, this is {words.text}")
