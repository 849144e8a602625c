"""Whatever a hand does to a file, reading it gives a project or faults with places, never a crash."""

from pathlib import Path

from hypothesis import given, settings
from hypothesis import strategies as st

from generator.definitions.project import load_project
from generator.errors import FaultyFileError, Place

SOUND = (Path(__file__).parent / "trap-cushion.yaml").read_text(encoding="utf-8")
LINES = SOUND.splitlines()
TYPED = ": |:| #|#x|- |-|>|'|\"|{{|}}|{{ x }}|[|]|{|&a|*a|!t|%|@|\t| |  |\n|\n\n|or|to|1 1/2|1/0|cm|(|)|,|é|½|?|~|0"
SNIPPETS = st.sampled_from([*TYPED.split("|"), "|"])


@st.composite
def spoilt(draw: st.DrawFn) -> str:
    """The sound file with one to three slips: something typed, taken out, moved or doubled."""
    text = SOUND
    for _ in range(draw(st.integers(1, 3))):
        place = draw(st.integers(0, len(text)))
        kind = draw(st.sampled_from(["type", "take out", "line away", "line twice", "indent"]))
        if kind == "type":
            text = text[:place] + draw(SNIPPETS) + text[place:]
        elif kind == "take out":
            text = text[:place] + text[place + draw(st.integers(1, 4)) :]
        else:
            lines = text.splitlines(keepends=True) or [""]
            number = draw(st.integers(0, len(lines) - 1))
            put = {"line away": [], "line twice": [lines[number]] * 2, "indent": [" " + lines[number]]}[kind]
            text = "".join([*lines[:number], *put, *lines[number + 1 :]])
    return text


@settings(max_examples=250, deadline=None)
@given(spoilt())
def test_a_spoilt_file_gives_a_project_or_faults_with_places(tmp_path_factory: object, text: str) -> None:
    path = tmp_path_factory.mktemp("any") / "cushion.yaml"  # type: ignore[attr-defined]
    path.write_text(text, encoding="utf-8")
    try:
        found = load_project(path, root=path.parent).findings
    except FaultyFileError as error:
        found = error.findings
        assert found
    last = text.count("\n") + 2
    places = [finding.place or Place("") for finding in found]
    assert all(place.file == "cushion.yaml" and 1 <= place.line <= last and place.column >= 1 for place in places)
    assert len(set(map(str, found))) == len(found)
