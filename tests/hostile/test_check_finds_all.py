"""Whatever would stop publishing, the check finds before: it is told with its place, and nothing is drawn for it."""

from __future__ import annotations

import shutil
from collections.abc import Callable
from pathlib import Path

import pytest

from .checked_room import checked, room, spoilt

SITE = "room:\n  name: The loft\n"
CLASS = (
    "title: Evening\nproject: cushion\nedition: inch\npaper: A4\nsessions:\n  - day: 2031-03-08\n    starts: 9:30\n"
    "    ends: 16:30\nplaces:\n  - size: small\n    number: 2\n"
)
PLAIN = Path(__file__).resolve().parents[2] / "themes" / "plain"


def written(path: Path, content: str | bytes) -> None:
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_bytes(content if isinstance(content, bytes) else content.encode())


def theme(folder: Path, **files: str) -> None:
    written(folder / "site/site.yaml", f"{SITE}theme: quay\n")
    written(folder / "themes/quay/theme.yaml", "title: Quay\nbased on: plain\n")
    for name, content in files.items():
        written(folder / "themes/quay" / name.replace("__", "/").replace("_html", ".html"), content)


ROOMS: dict[str, tuple[Callable[[Path], None], str]] = {
    "an unknown theme": (
        lambda folder: written(folder / "site/site.yaml", f"{SITE}theme: quai\n"),
        "there is no theme 'quai'; there are: harbour, large-print, plain",
    ),
    "a theme with a fault": (
        lambda folder: theme(folder) or written(folder / "themes/quay/theme.yaml", "title: Quay\nbased on: plane\n"),
        "quay/theme.yaml:2:11: there is no theme folder 'plane' beside this one",
    ),
    "a diagram of no width": (
        lambda folder: (
            theme(folder)
            or written(folder / "themes/quay/theme.yaml", "title: Q\nbased on: plain\ndrawing:\n  line: 0\n")
        ),
        "quay/theme.yaml:4:9: line: 0 is not between 0 and 72 points",
    ),
    "a template that cannot be read": (
        lambda folder: theme(folder, templates__home_html="<p>\n{% if %}"),
        "quay/templates/home.html:2:1: the template cannot be read here: ",
    ),
    "a class of a size that is not there": (
        lambda folder: written(folder / "site/classes/evening.yaml", CLASS.replace("size: small", "size: smal")),
        "site/classes/evening.yaml:10:5: the project has no size 'smal'; did you mean 'small'?",
    ),
    "a class of no project": (
        lambda folder: written(folder / "site/classes/evening.yaml", CLASS.replace("cushion", "cushon")),
        "site/classes/evening.yaml:2:10: there is no project 'cushon'; did you mean 'cushion'?",
    ),
    "a class with no time to sew": (
        lambda folder: written(folder / "site/classes/evening.yaml", CLASS.replace("16:30", "9:30")),
        "site/classes/evening.yaml:6:5: this session ends before it starts",
    ),
    "kept editions that are damaged": (
        lambda folder: written(folder / "site/editions/cushion.json", "[{"),
        "site/editions/cushion.json:1:3: the published editions of 'cushion' cannot be read (",
    ),
    "a page that is no text": (
        lambda folder: written(folder / "site/pages/care.md", b"# Care\n\n\xe9t\xe9\n"),
        "site/pages/care.md:3:1: the file is not UTF-8 text from here on; save it as UTF-8",
    ),
    "a page of 100 MB": (
        lambda folder: written(folder / "site/pages/care.md", b"# Care\n" * 15_000_000),
        "site/pages/care.md:1:1: the file is larger than 500 kB; divide it into several pages",
    ),
    "a guide that is not there": (
        lambda folder: written(folder / "site/site.yaml", f"{SITE}guides:\n  - title: All\n    pages: car\n"),
        "site/site.yaml:4:5: there is no page 'car' in site/pages",
    ),
    "a page that is a link to elsewhere": (
        lambda folder: written(folder / "site/pages/care.md", "# Care") or relinked(folder / "site/pages/care.md"),
        "site/pages/care.md:1:1: the file is a link that leads out of the room; put the file itself here",
    ),
    "a title in a script that the theme's fonts lack": (
        lambda folder: written(folder / "projects/cushion.yaml", spoilt("Good cushion", "Good כרית")),
        "projects/cushion.yaml:1:13: no font of the theme 'plain' has the letters 'כ' (U+05DB), 'ר' (U+05E8), 'י' "
        "(U+05D9), 'ת' (U+05EA); write it otherwise, or list a font that has them under 'fonts' in the theme",
    ),
    "a sign in the label of a piece": (
        lambda folder: written(
            folder / "projects/cushion.yaml", spoilt("  front:\n    kind", "  front:\n    label: 🧵 top\n    kind")
        ),
        "projects/cushion.yaml:22:12: no font of the theme 'plain' has the letter '🧵' (U+1F9F5); write it otherwise",
    ),
    "a student whose name cannot be set": (
        lambda folder: written(folder / "site/classes/evening.yaml", CLASS + "    student: 山田\n"),
        "site/classes/evening.yaml:12:14: no font of the theme 'plain' has the letters '山' (U+5C71), '田' (U+7530)",
    ),
    "a room whose name cannot be set": (
        lambda folder: written(folder / "site/site.yaml", "room:\n  # 山\n  name: The 山 loft\n"),
        "site/site.yaml:3:13: no font of the theme 'plain' has the letter '山' (U+5C71); write it otherwise",
    ),
    "a caution of the room that cannot be set": (
        lambda folder: written(
            folder / "site/site.yaml",
            f"{SITE}cautions:\n  stair:\n    hazard: Stair\n    consequence: You fall.\n    avoid: Mind 針.\n",
        ),
        "site/site.yaml:7:17: no font of the theme 'plain' has the letter '針' (U+91DD)",
    ),
    "a technique of the room's own that cannot be set": (
        lambda folder: written(
            folder / "site/techniques/crease.yaml",
            "title: Crease\nabout: panel\ngives: creased\ntext:\n  - say: |\n      Crease 折.\n",
        ),
        "site/techniques/crease.yaml:6:14: no font of the theme 'plain' has the letter '折' (U+6298)",
    ),
    "a template of a sheet that cannot be set": (
        lambda folder: theme(folder, templates__sheets__rescue_html="{# 山 #}\n<p>&#x5C71;</p>\n"),
        "quay/templates/sheets/rescue.html:2:1: no font of the theme 'quay' has the letter '山' (U+5C71)",
    ),
    "a part of a template that cannot be set": (
        lambda folder: theme(folder, templates__handout__parts_html="<p>山</p>\n"),
        "quay/templates/handout/parts.html:1:1: no font of the theme 'quay' has the letter '山' (U+5C71)",
    ),
    "a style sheet of a sheet that cannot be set": (
        lambda folder: (
            theme(folder)
            or written(
                folder / "themes/quay/css/paper.css",
                '/* 山 */\n.x { font-family: "山" }\np::after { content: "\\7530" }\n',
            )
        ),
        "quay/css/paper.css:3:21: no font of the theme 'quay' has the letter '田' (U+7530)",
    ),
}


def relinked(path: Path) -> None:
    elsewhere = path.parents[3] / "elsewhere.md"
    path.rename(elsewhere)
    path.symlink_to(elsewhere)


@pytest.mark.parametrize("sort", ROOMS)
def test_a_room_that_cannot_be_published_is_told_by_the_check(tmp_path: Path, sort: str) -> None:
    folder = room(tmp_path / "room")
    (folder / "site").mkdir()
    made, says = ROOMS[sort]
    made(folder)
    done = checked(folder)
    assert [line for line in done.printed.splitlines() if line.startswith(says)], done.printed
    assert done.code == 1
    assert "fault of its own" not in done.printed
    assert done.megabytes < 150


def test_a_sound_room_with_a_class_a_page_and_a_theme_is_sound(tmp_path: Path) -> None:
    folder = room(tmp_path / "room")
    theme(folder, templates__home_html="{# 日本 #}日本" + (PLAIN / "templates/home.html").read_text(encoding="utf-8"))
    written(folder / "themes/quay/css/screen.css", 'p::after { content: "日本" }\n')
    written(folder / "site/site.yaml", f"{SITE}  welcome: 日本\ntheme: quay\n")
    written(folder / "site/classes/evening.yaml", CLASS + "    student: Žofie, Élodie\n")
    written(folder / "site/pages/care.md", "# Care\n\n日本\n")
    done = checked(folder)
    assert "1 project checked: 0 errors, " in done.printed


def test_a_theme_may_bring_a_font_for_a_script(tmp_path: Path) -> None:
    """The theme's own fonts lack an arrow with a hook; another file of letters, that has it, is listed beside them."""
    folder = room(tmp_path / "room", spoilt("Good cushion", "Good ↬ cushion"))
    theme(folder)
    assert "no font of the theme 'quay' has the letter '↬' (U+21AC)" in checked(folder).printed
    fonts = folder / "themes/quay/fonts"
    fonts.mkdir()
    shutil.copy(WITH_HOOK, fonts / "Own.ttf")
    listed = (PLAIN / "theme.yaml").read_text(encoding="utf-8").split("\nfonts:\n")[1].split("\n\n")[0]
    own = (
        "  - family: Own\n    weight: 400\n    style: normal\n    print: Own.ttf\n    screen: FiraSans-Regular.woff2\n"
    )
    written(folder / "themes/quay/theme.yaml", f"title: Quay\nbased on: plain\nfonts:\n{listed}\n{own}")
    assert "1 project checked: 0 errors, " in checked(folder).printed


def _with_hook() -> Path:
    matplotlib = __import__("importlib.util").util.find_spec("matplotlib")
    return Path(matplotlib.origin).parent / "mpl-data/fonts/ttf/DejaVuSans.ttf"


WITH_HOOK = _with_hook()


def test_a_step_of_no_piece_may_ask_for_the_casing(tmp_path: Path) -> None:
    folder = room(tmp_path / "room")
    cut = "title: Cut\nabout: project\ngives: cut\ntext:\n  - say: |\n      Cut all. [casing place] [casing hem]\n"
    written(folder / "site/techniques/cut.yaml", cut)
    done = checked(folder)
    assert "fault of its own" not in done.printed
    assert "1 project checked: 0 errors, " in done.printed
