"""Style sheets: a theme comes in, the text of its style sheets and the files that its pages share go out.

The colours and measures of ``theme.yaml`` become custom properties. A style sheet of a theme is added after the one of
the same name of the theme it is based on, so that it only says what differs.
"""

from __future__ import annotations

import re
from collections.abc import Collection, Mapping
from pathlib import Path

from generator.definitions.theme import FontFace, Theme
from generator.definitions.vocabulary import KINDS
from generator.drawing.style import style_of
from generator.errors import Place
from generator.rendering.letters import font_letters
from generator.rendering.lighter import lighter_script, lighter_style
from generator.rendering.logo import logo_file, page_logo

PAPERS: Mapping[str, tuple[float, float]] = {"Letter": (8.5, 11.0), "A4": (210 / 25.4, 297 / 25.4)}
# White at both sides of a sheet together, the inner one for the punch, and at its top and foot: css/paper.css [mm].
SHEET_MARGINS = (32.0, 20.0)
SHEET_STYLES = ("handout", "pattern", "sheets")
# Colours of a drawing; in the dark those of the page, with cloth and shade between its paper and its ink.
_DRAWN = ("ink", "accent", "cloth", "shade", "paper")
_DRAWN_IN_THE_DARK: Mapping[str, str] = {
    **{f"drawn-{name}": f"var(--{name})" for name in ("ink", "accent", "paper")},
    "drawn-cloth": "color-mix(in srgb, var(--ink) 14%, var(--paper))",
    "drawn-shade": "color-mix(in srgb, var(--ink) 28%, var(--paper))",
}
# Before the text of each file in a joined style stands a remark that names it.
_FROM = "from "
SCREEN_SHEETS = ("shared", "screen", "print")


def properties(theme: Theme) -> str:
    """Return the colours and measures of a theme as custom properties."""
    return f":root {{\n{_lines(_values(theme))}}}\n"


def screen_properties(theme: Theme) -> str:
    """Return what only pages need: the colours of drawings, and all colours in the dark.

    It is dark where the reader asks for it, or where the device does and the reader has not chosen.
    """
    style = style_of(theme)
    drawn = _lines({f"--drawn-{name}": getattr(style, name) for name in _DRAWN})
    dark = _lines({f"--{name}": value for name, value in {**theme.dark, **_DRAWN_IN_THE_DARK}.items()})
    asked = f':root:not([data-look="light"]) {{ color-scheme: dark;\n{dark}}}\n'
    chosen = f':root[data-look="dark"] {{ color-scheme: dark;\n{dark}}}\n'
    return (
        f":root {{ color-scheme: light;\n{drawn}}}\n{_drawn_classes()}"
        f"@media screen and (prefers-color-scheme: dark) {{ {asked}}}\n@media screen {{ {chosen}}}\n"
    )


def _drawn_classes() -> str:
    """How a page paints what bears the name of a colour in a drawing; lines come first, for a shape may have both."""
    lines = (f".line-{name} {{ fill: none; stroke: var(--drawn-{name}); }}\n" for name in _DRAWN)
    return "".join((*lines, *(f".fill-{name} {{ fill: var(--drawn-{name}); }}\n" for name in _DRAWN)))


def _lines(values: Mapping[str, str]) -> str:
    return "".join(f"  {name}: {value};\n" for name, value in values.items())


def _values(theme: Theme) -> dict[str, str]:
    families = {"family": f'"{theme.family}"', "headings": f'"{theme.headings}"'}
    values = {**theme.palette, **theme.measures, **families}
    return {f"--{name.replace(' ', '-')}": value for name, value in values.items()}


def _filled_in(css: str, theme: Theme) -> str:
    """Return style sheets with the values of a theme in the place of their names.

    The setting of a sheet would look every name up again for every element. A name that a style sheet gives another
    value somewhere stays a name.
    """
    values = {name: value for name, value in _values(theme).items() if f"{name}:" not in css}
    return re.sub(r"var\((--[\w-]+)\)", lambda found: values.get(found[1], found[0]), css)


def style_sheet(theme: Theme, name: str) -> str:
    """Return one style sheet of a theme, after those of the themes it is based on."""
    return "".join(file.read_text(encoding="utf-8") for file in _style_files(theme, name))


def _style_files(theme: Theme, name: str) -> list[Path]:
    files = [folder / "css" / f"{name}.css" for folder in reversed(theme.folders)]
    return [file for file in files if file.is_file()]


def sheet_style_files(theme: Theme) -> tuple[Path, ...]:
    """Return the style sheets of all kinds of sheet, each once."""
    return tuple(dict.fromkeys(file for sheet in SHEET_STYLES for file in _paper_files(theme, sheet)))


def _paper_files(theme: Theme, sheet: str) -> list[Path]:
    return [file for name in ("shared", "paper", sheet) for file in _style_files(theme, name)]


def style_place(style: str, line: int, column: int) -> Place | None:
    """Return where a place of a joined style lies in the file of a theme; None for what the tool wrote itself."""
    before = style.split("\n")[:line]
    for number in range(len(before), 0, -1):
        found = re.match(rf"/\*{_FROM}(.*)\*/$", before[number - 1])
        if found:
            return Place(found[1], max(line - number, 1), column)
    return None


def paper_fonts(theme: Theme) -> str:
    """Return the fonts of all sheets of a theme."""
    return "".join(
        f'@font-face {{ font-family: "{face.family}"; font-weight: {face.weight}; font-style: {face.style};'
        f' src: url("{face.print.resolve().as_uri()}"); }}\n'
        for face in theme.faces
    )


def page_size(width: float, height: float) -> str:
    """Return the rule for pages of a width and height [in]."""
    return f"@page {{ size: {width:.5f}in {height:.5f}in; }}\n"


def paper_style(theme: Theme, paper: str, sheet: str) -> str:
    """Return the style of a kind of sheet, one of ``SHEET_STYLES``, on a paper."""
    page = page_size(*PAPERS[paper])
    css = "".join(
        f"/*{_FROM}{file.parents[1].name}/css/{file.name}*/\n{file.read_text(encoding='utf-8')}\n"
        for file in _paper_files(theme, sheet)
    )
    return properties(theme) + page + _filled_in(css, theme)


def _kinds_chosen() -> str:
    """What hides the cards of other kinds than the one that is chosen, where no script runs."""
    return "".join(
        f'main:has([name="kind"][value="{kind}"]:checked) .card:not([data-kind="{kind}"]) {{ display: none; }}\n'
        for kind in KINDS
    )


def _screen_faces(face: FontFace) -> str:
    """The fonts of a face on the screen; a browser fetches the second only where a page has one of its letters."""
    if face.more is None:
        return _screen_face(face, face.screen, "")
    few, all_of_it = (font_letters(file) for file in (face.screen, face.more))
    shares = ((face.screen, few), (face.more, all_of_it - few))
    return "".join(_screen_face(face, file, f" unicode-range: {_ranges(letters)};") for file, letters in shares)


def _screen_face(face: FontFace, file: Path, letters: str) -> str:
    return (
        f'@font-face {{ font-family: "{face.family}"; font-weight: {face.weight}; font-style: {face.style};'
        f' font-display: swap; src: url("{file.name}") format("woff2");{letters} }}\n'
    )


def _ranges(letters: Collection[int]) -> str:
    """Letters by their numbers as a style sheet names them: runs of neighbours."""
    runs: list[list[int]] = []
    for letter in sorted(letters):
        if runs and letter == runs[-1][1] + 1:
            runs[-1][1] = letter
        else:
            runs.append([letter, letter])
    return ", ".join(f"U+{first:X}" if first == last else f"U+{first:X}-{last:X}" for first, last in runs)


def shared_files(theme: Theme) -> dict[str, bytes]:
    """Return the files that all pages share, by their name in the folder of shared files."""
    faces = "".join(_screen_faces(face) for face in theme.faces)
    files = {
        "theme.css": (
            faces + properties(theme) + screen_properties(theme) + page_logo(theme) + _kinds_chosen()
        ).encode()
    }
    if theme.logo is not None:
        files[logo_file(theme)] = theme.logo.read_bytes()
    files |= {f"{name}.css": style_sheet(theme, name).encode() for name in SCREEN_SHEETS}
    fonts = [file for face in theme.faces for file in (face.screen, face.more) if file is not None]
    files |= {file.name: file.read_bytes() for file in fonts}
    for folder in reversed(theme.folders):
        files |= {file.name: file.read_bytes() for file in sorted((folder / "scripts").glob("*.js"))}
        files |= {file.name: file.read_bytes() for file in sorted((folder / "icons").glob("icon*"))}
    return {name: _lighter(name, content) for name, content in files.items()}


def _lighter(name: str, content: bytes) -> bytes:
    shorten = {".css": lighter_style, ".js": lighter_script}.get(Path(name).suffix)
    return shorten(content.decode()).encode() if shorten else content
