"""A template from a stranger reads what it is given and nothing else; what it does wrong is told with file and line."""

from __future__ import annotations

from pathlib import Path

import pytest

from generator.definitions.theme import load_theme
from generator.errors import FaultyFileError
from generator.rendering.environment import template
from generator.rendering.pages import render_words
from generator.rendering.setting import Setting

REFUSED = "a template may not do this: "
TRICKS = {
    "the globals of a function": "{{ cycler.__init__.__globals__ }}",
    "the globals of what the tool gives": "{{ words.__globals__.os.system('touch owned') }}",
    "the class of a text": "{{ ''.__class__.__mro__[1].__subclasses__() }}",
    "the class of a text by name": "{{ ''['__class__'] }}",
    "the class through a filter": "{{ ['']|map(attribute='__class__')|join }}",
    "the class through a form": "{{ '{0.__class__}'.format('') }}",
    "the code of a macro": "{% macro m() %}{% endmacro %}{{ m._func.__code__ }}",
    "the function of a partial": "{{ to.func('x', 'y') }}",
    "the files of the theme": "{{ setting.theme.folders[0].parent }}",
    "a font file read": "{{ setting.theme.faces[0].print.read_bytes() }}",
    "a font file removed": "{{ setting.theme.faces[0].print.unlink() }}",
    "the environment": "{{ self._TemplateReference__context.environment }}",
    "a value changed": "{{ setting.theme.palette.update({'ink': 'red'}) }}",
    "a text without end": "{{ 'x' * 1000000000 }}",
    "a power without end": "{{ 9 ** 9 ** 9 }}",
    "a text filled up": "{{ '%1000000000d' % 1 }}",
}


def setting(folder: Path, text: str | bytes, name: str = "words.html") -> Setting:
    """A room whose theme has one template of its own, with a text on its second line."""
    own = folder / "quay"
    (own / "templates").mkdir(parents=True)
    (own / "theme.yaml").write_text("title: Quay\nbased on: plain\n", encoding="utf-8")
    content = (
        text
        if isinstance(text, bytes)
        else f'{{% extends "page.html" %}}\n{{% block main %}}{text}{{% endblock %}}'.encode()
    )
    (own / "templates" / name).write_bytes(content)
    return Setting(room="The loft", theme=load_theme(own))


def refusal(folder: Path, text: str | bytes) -> str:
    with pytest.raises(FaultyFileError) as refused:
        render_words("page", "Title", "Text", setting(folder, text))
    return str(refused.value)


@pytest.mark.parametrize("trick", TRICKS)
def test_a_template_that_reaches_for_more_is_refused_with_file_and_line(tmp_path: Path, trick: str) -> None:
    said = refusal(tmp_path, TRICKS[trick])
    assert said.startswith("quay/templates/words.html:2:1: ")
    assert "fault of its own" not in said
    assert list(tmp_path.rglob("owned")) == []


@pytest.mark.parametrize("trick", ["the class of a text", "the files of the theme", "a text without end"])
def test_what_is_refused_is_told_as_such(tmp_path: Path, trick: str) -> None:
    assert refusal(tmp_path, TRICKS[trick]).removeprefix("quay/templates/words.html:2:1: ").startswith(REFUSED)


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("{{ setting.rom }}", "2:1: the template cannot be filled in here: "),
        ("{{ setting.room + 1 }}", "2:1: the template cannot be filled in here: "),
        ("{{ setting.room", "2:1: the template cannot be read here: "),
        ("{% for a in %}", "2:1: the template cannot be read here: "),
        ("{{ setting.room|rot13 }}", "2:1: the template cannot be read here: No filter named 'rot13'."),
        ("{% include 'none.html' %}", "2:1: there is no template 'none.html', neither here nor in the plain theme"),
        ("{% for a in range(10 ** 2) %}{% endfor %}", "2:1: a template may not do this: '**' is not for these values"),
        ("{% for a in range(1000000000) %}x{% endfor %}", "2:1: a template counts to 100000 at most"),
        ("{% macro m() %}{{ m() }}{% endmacro %}{{ m() }}", "2:1: the template calls itself without end"),
        (b"<p>\n\xe9t\xe9</p>", "2:1: the file is not UTF-8 text from here on; save it as UTF-8"),
    ],
)
def test_a_slip_in_a_template_is_told_with_file_and_line(tmp_path: Path, text: str | bytes, says: str) -> None:
    assert refusal(tmp_path, text).startswith(f"quay/templates/words.html:{says}")


def test_a_template_may_do_what_those_of_the_tool_do(tmp_path: Path) -> None:
    text = "{% set n = namespace(all=[]) %}{% for a in range(3) %}{% set n.all = n.all + [a * 2] %}{% endfor %}"
    page = render_words("page", "T", "Text", setting(tmp_path, text + "{{ n.all|join('-') }} {{ setting.room|upper }}"))
    assert "0-2-4 THE LOFT" in page


def test_a_template_that_is_not_there_is_told(tmp_path: Path) -> None:
    with pytest.raises(FaultyFileError, match=r"there is no template 'none\.html'"):
        template(setting(tmp_path, "x").theme, "none.html")


def test_a_template_that_is_put_beside_the_tools_own_later_is_seen(tmp_path: Path) -> None:
    room = setting(tmp_path, "x", name="guides.html")
    assert "<h1>Title</h1>" in render_words("page", "Title", "Text", room)
    (tmp_path / "quay/templates/words.html").write_text("<p>mine</p>", encoding="utf-8")
    assert render_words("page", "Title", "Text", room) == "<p>mine</p>"
