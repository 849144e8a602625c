from __future__ import annotations

import io
import re
import shutil
from pathlib import Path

import pdfplumber
import pytest
from room_setting import THEMES

from generator.definitions.contrast import contrast
from generator.definitions.theme import load_theme
from generator.errors import FaultyFileError, PublishError
from generator.limits import LONGEST_LABEL
from generator.rendering.letters import font_letters
from generator.rendering.pdf import write_pdf
from generator.rendering.styles import paper_style, properties, shared_files, style_sheet

# The head of a PNG picture of 12 by 12 dots.
MARK = b"\x89PNG\r\n\x1a\n" + (13).to_bytes(4, "big") + b"IHDR" + (12).to_bytes(4, "big") * 2


def copied(tmp_path: Path, old: str, new: str) -> Path:
    """A copy of the plain theme with one change."""
    folder = tmp_path / "plain"
    shutil.copytree(THEMES / "plain", folder)
    file = folder / "theme.yaml"
    text = file.read_text(encoding="utf-8")
    assert old in text
    file.write_text(text.replace(old, new), encoding="utf-8")
    return folder


def refusal(folder: Path) -> str:
    with pytest.raises(FaultyFileError) as refused:
        load_theme(folder)
    return str(refused.value)


@pytest.mark.parametrize("name", sorted(folder.name for folder in THEMES.iterdir() if folder.is_dir()))
def test_every_theme_is_readable(name: str) -> None:
    theme = load_theme(THEMES / name)
    assert theme.title
    assert contrast(theme.palette["ink"], theme.palette["paper"]) >= 7


@pytest.mark.parametrize("name", sorted(folder.name for folder in THEMES.iterdir() if folder.is_dir()))
def test_words_of_the_tools_own_themes_have_a_contrast_of_seven_on_every_ground_by_day_and_in_the_dark(
    name: str,
) -> None:
    theme = load_theme(THEMES / name)
    # WCAG 2.2, success criterion 1.4.6: 7 for words; 1.4.11: 3 for the frames of what can be pressed.
    least = {"ink": 7, "quiet": 7, "accent": 7, "signal": 7, "edge": 3}
    found = {
        (colours["paper"], word, ground): contrast(colours[word], colours[ground]) / wanted
        for colours in (theme.palette, theme.dark)
        for word, wanted in least.items()
        for ground in ("paper", "ground", "wash")
    }
    assert {where: share for where, share in found.items() if share < 1} == {}
    assert len(found) == 30


def test_a_colour_of_the_dark_that_cannot_be_read_is_refused(tmp_path: Path) -> None:
    told = refusal(copied(tmp_path, '"#f4ab8f"', '"#554433"'))
    assert "'signal' has a contrast of" in told
    assert told.startswith("plain/theme.yaml:32:14: in the dark ")
    assert "to the wash; it needs 4.5" in told


def test_a_colour_of_the_dark_that_nobody_gives_is_missed(tmp_path: Path) -> None:
    folder = copied(tmp_path, '    edge: "#8b9699"\n', "")
    told = "'palette: dark' lacks 'edge'; give it here or in the theme this is based on"
    assert refusal(folder) == f"plain/theme.yaml:2:1: {told}"


def test_headings_on_a_screen_are_of_a_family_of_the_theme(tmp_path: Path) -> None:
    assert load_theme(THEMES / "plain").headings == "Zilla Slab"
    assert load_theme(THEMES / "large-print").headings == "Fira Sans"
    told = refusal(copied(tmp_path, "headings: Zilla Slab", "headings: Zila Slab"))
    assert told.endswith("'Zila Slab' is no family of this theme; did you mean 'Zilla Slab'?")


def test_a_screen_gets_the_colours_of_the_dark_and_of_its_drawings_and_paper_does_not() -> None:
    theme = load_theme(THEMES / "harbour")
    screen = shared_files(theme)["theme.css"].decode()
    dark = screen[screen.index("@media screen and (prefers-color-scheme:dark)") :]
    assert f"--ink:{theme.dark['ink']};" in dark
    assert "--drawn-cloth:#eef2f4;" in screen.removesuffix(dark)
    paper = paper_style(theme, "A4", "handout")
    assert theme.dark["ink"] not in paper
    assert "prefers-color-scheme" not in paper


def test_a_theme_has_everything_of_the_one_it_is_based_on() -> None:
    plain, large = load_theme(THEMES / "plain"), load_theme(THEMES / "large-print")
    assert large.folders == (THEMES / "large-print", THEMES / "plain")
    assert large.faces == plain.faces
    assert (plain.measures["text"], large.measures["text"]) == ("10pt", "18pt")


def test_a_theme_of_a_room_may_be_based_on_one_of_the_tools_own(tmp_path: Path) -> None:
    folder = tmp_path / "themes" / "harbour"
    folder.mkdir(parents=True)
    (folder / "theme.yaml").write_text("title: Harbour\nbased on: large-print\n", encoding="utf-8")
    theme = load_theme(folder)
    assert theme.folders == (folder, THEMES / "large-print", THEMES / "plain")
    assert theme.measures["text"] == "18pt"


def test_style_sheets_of_a_theme_follow_those_of_its_base() -> None:
    plain, large = (style_sheet(load_theme(THEMES / name), "handout") for name in ("plain", "large-print"))
    assert large.startswith(plain)
    assert len(large) > len(plain)


def test_colours_and_measures_become_properties() -> None:
    text = properties(load_theme(THEMES / "large-print"))
    assert "--ink: #000000;" in text
    assert "--title: 30pt;" in text


def test_sheets_are_set_with_values_and_not_with_their_names() -> None:
    text = paper_style(load_theme(THEMES / "large-print"), "Letter", "handout")
    assert "color: #000000; background: #ffffff;" in text
    assert "var(--" not in text


def test_a_name_that_a_style_sheet_gives_another_value_stays_a_name(tmp_path: Path) -> None:
    folder = copied(tmp_path, "title: Plain", "title: Plain")
    with (folder / "css/sheets.css").open("a", encoding="utf-8") as file:
        file.write(".dark { --ink: #ffffff; }")
    text = paper_style(load_theme(folder), "Letter", "sheets")
    assert "html { color: var(--ink); background: #ffffff;" in text


def test_shared_files_ask_no_other_host() -> None:
    files = shared_files(load_theme(THEMES / "plain"))
    assert {"theme.css", "shared.css", "screen.css", "print.css", "finding.js"} <= set(files)
    for name, content in files.items():
        if name.endswith((".css", ".js")):
            assert b"://" not in content
            assert not re.search(rb"""(url\(|["'])\s*//""", content)


@pytest.mark.parametrize(
    ("logo", "told"),
    [
        ("mark.gif", "'mark.gif' is no logo; name an SVG or PNG file in the theme's folder"),
        ("mark.svg", "there is no 'mark.svg' in the theme's folder 'plain'; put it there"),
        ("../secret.svg", "there is no '../secret.svg' in the theme's folder 'plain'; put it there"),
        ("linked.svg", "there is no 'linked.svg' in the theme's folder 'plain'; put it there"),
    ],
)
def test_a_logo_lies_in_the_folder_of_its_theme(tmp_path: Path, logo: str, told: str) -> None:
    (tmp_path / "secret.svg").write_text("<svg/>", encoding="utf-8")
    folder = copied(tmp_path, "title: Plain", f"title: Plain\nlogo: {logo}")
    (folder / "linked.svg").symlink_to(tmp_path / "secret.svg")
    assert refusal(folder) == f"plain/theme.yaml:3:7: {told}"


def test_a_theme_shows_the_logo_of_the_one_it_is_based_on(tmp_path: Path) -> None:
    copied(tmp_path, "title: Plain", "title: Plain\nlogo: mark.png")
    (tmp_path / "plain" / "mark.png").write_bytes(MARK)
    (tmp_path / "quay").mkdir()
    (tmp_path / "quay" / "theme.yaml").write_text("title: Quay\nbased on: plain\n", encoding="utf-8")
    theme = load_theme(tmp_path / "quay")
    assert theme.logo == tmp_path / "plain" / "mark.png"
    files = shared_files(theme)
    assert files["logo.png"] == MARK
    assert b'url("logo.png");background-color:#ffffff' in files["theme.css"]


def test_pages_without_a_logo_show_the_icon() -> None:
    files = shared_files(load_theme(THEMES / "plain"))
    assert not [name for name in files if name.startswith("logo")]
    assert b"logo" not in files["theme.css"]
    assert b'url("icon.svg")' in files["theme.css"]
    assert files["icon.svg"].startswith(b"<svg")
    # The eight bytes that begin every PNG, then its width and height (PNG, third edition, 5.2 and 11.2.1).
    assert files["icon-180.png"].startswith(b"\x89PNG\r\n\x1a\n")
    assert files["icon-180.png"][16:24] == (180).to_bytes(4, "big") * 2


def test_fonts_that_a_theme_has_not_itself_are_taken_from_its_base() -> None:
    faces = {face.print.name: face.print.parent.parent.name for face in load_theme(THEMES / "harbour").faces}
    assert faces["AlegreyaSans-Regular.ttf"] == "harbour"
    assert faces["DejaVuSans.ttf"] == "plain"


@pytest.mark.parametrize("name", sorted(folder.name for folder in THEMES.iterdir() if folder.is_dir()))
def test_fractions_are_set_with_small_figures(name: str) -> None:
    """In a font that cannot do it 1 1/4 would read as 11/4; small figures take much less room than large ones."""
    theme = load_theme(THEMES / name)
    html = '<html lang="en"><title>t</title><p class="f" style="font-size:1em">13/16</p><p>13/16</p>'
    with pdfplumber.open(io.BytesIO(write_pdf(html, paper_style(theme, "A4", "handout"), theme))) as read:
        ends = sorted(letter["x1"] for letter in read.pages[0].chars if letter["text"] == "6")
        start = min(letter["x0"] for letter in read.pages[0].chars if letter["text"] == "1")
    assert len(ends) == 2
    assert ends[0] - start < 0.85 * (ends[1] - start)


def test_a_style_sheet_of_sheets_names_no_font_itself(tmp_path: Path) -> None:
    folder = copied(tmp_path, "title: Plain", "title: Plain")
    with (folder / "css/handout.css").open("a", encoding="utf-8") as file:
        file.write('@font-face { font-family: "Fancy"; src: url("fancy.ttf"); }')
    theme = load_theme(folder)
    with pytest.raises(PublishError, match=r"with @font-face; name fonts in theme.yaml instead"):
        write_pdf("<p>", paper_style(theme, "A4", "handout"), theme)


def test_a_misspelt_key_is_named_with_its_place(tmp_path: Path) -> None:
    told = refusal(copied(tmp_path, "title: Plain", "titel: Plain"))
    assert "plain/theme.yaml:2:1: 'titel' is not known here; did you mean 'title'?" in told


def test_colours_that_cannot_be_read_are_refused(tmp_path: Path) -> None:
    told = refusal(copied(tmp_path, '"#464c50"', '"#bbbbbb"'))
    assert told == "plain/theme.yaml:12:11: 'quiet' has a contrast of 1.6 to the wash; it needs 4.5 to be readable"


def test_all_faults_are_told_at_once(tmp_path: Path) -> None:
    folder = copied(tmp_path, "text: 10pt", "text: ten")
    file = folder / "theme.yaml"
    changed = file.read_text(encoding="utf-8").replace("FiraSans-Italic.ttf", "../x.ttf").replace('"#85888a"', "grey")
    file.write_text(changed, encoding="utf-8")
    told = refusal(folder).splitlines()
    assert len(told) == 3
    assert told[0].endswith("'grey' is not a colour; write six digits such as '#7a2e1f'")
    assert told[1].endswith("there is no font file '../x.ttf' in the theme's folder 'fonts'; put it there")
    assert told[2].endswith("'ten' is not a measure for 'text'; write it like '1.5pt'")


def test_themes_based_on_each_other_are_refused(tmp_path: Path) -> None:
    folder = copied(tmp_path, "title: Plain", "title: Plain\nbased on: plain")
    assert "in a ring: 'plain' comes back" in refusal(folder)
    shutil.rmtree(folder)
    assert "there is no theme folder 'lost'" in refusal(
        copied(tmp_path, "title: Plain", "title: Plain\nbased on: lost")
    )


def test_black_on_white_has_the_greatest_contrast() -> None:
    # WCAG 2.2 gives 21:1 as the top of the scale; #767676 on white is the grey often named as just passing 4.5.
    assert contrast("#000000", "#ffffff") == pytest.approx(21)
    assert contrast("#767676", "#ffffff") == pytest.approx(4.54, abs=0.01)


def test_a_letter_that_the_theme_lacks_is_not_taken_from_the_machine() -> None:
    theme = load_theme(THEMES / "plain")
    with pytest.raises(PublishError, match=r"no font of the theme has the letter 'א' \(U\+05D0\)"):
        write_pdf('<html lang="en"><title>t</title><p>א</p>', paper_style(theme, "A4", "handout"), theme)


def test_a_fault_of_a_style_sheet_is_told_with_its_own_file_and_line(tmp_path: Path) -> None:
    folder = copied(tmp_path, "title: Plain", "title: Plain")
    lines = (folder / "css/handout.css").read_text(encoding="utf-8").count("\n")
    with (folder / "css/handout.css").open("a", encoding="utf-8") as file:
        file.write(".step {\n  colour: red;\n}\n")
    theme = load_theme(folder)
    with pytest.raises(PublishError, match=rf"plain/css/handout\.css:{lines + 2}:3: Ignored `colour: ?red`"):
        write_pdf("<p>", paper_style(theme, "A4", "handout"), theme)


def test_a_title_of_one_long_word_stays_on_the_paper() -> None:
    theme = load_theme(THEMES / "large-print")
    html = f'<html lang="en"><title>t</title><h1>{"W" * LONGEST_LABEL}</h1>'
    with pdfplumber.open(io.BytesIO(write_pdf(html, paper_style(theme, "Letter", "handout"), theme))) as read:
        letters = read.pages[0].chars
    assert sum(letter["text"] == "W" for letter in letters) == LONGEST_LABEL
    assert max(letter["x1"] for letter in letters) < 8.5 * 72


def test_a_face_in_two_files_has_each_letter_in_one_of_them() -> None:
    theme = load_theme(THEMES / "plain")
    style = shared_files(theme)["theme.css"].decode()
    for face in theme.faces:
        assert face.more is not None
        told = {
            name: re.search(rf'url\("{re.escape(name)}"\) format\("woff2"\);unicode-range:([^;}}]+)', style)
            for name in (face.screen.name, face.more.name)
        }
        first, second = (ranged(found[1]) for found in told.values() if found)
        assert first & second == set()
        assert first | second == font_letters(face.more)
        assert set(map(ord, "Aé½¼×–")) <= first


def ranged(text: str) -> set[int]:
    """The letters that a style sheet names by their ranges."""
    runs = (run.removeprefix("U+").partition("-") for run in text.split(","))
    return {letter for first, _, last in runs for letter in range(int(first, 16), int(last or first, 16) + 1)}


def test_what_nearly_every_page_needs_of_a_face_is_small() -> None:
    files = shared_files(load_theme(THEMES / "plain"))
    assert [name for name, content in files.items() if name.endswith("-latin.woff2") and len(content) > 12_000] == []


def test_a_face_in_one_file_has_all_its_letters_there(tmp_path: Path) -> None:
    folder = Path(shutil.copytree(THEMES / "plain", tmp_path / "plain"))
    text = (folder / "theme.yaml").read_text(encoding="utf-8")
    (folder / "theme.yaml").write_text(re.sub(r"    more: .*\n", "", text), encoding="utf-8")
    assert "unicode-range" not in shared_files(load_theme(folder))["theme.css"].decode()
