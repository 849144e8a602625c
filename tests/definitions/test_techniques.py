"""Techniques: texts of the standard steps, the tool's own and those of a room."""

from fractions import Fraction
from pathlib import Path

import pytest

from generator.definitions.project import load_project
from generator.definitions.starter import starter_text
from generator.definitions.technique_names import TECHNIQUES, step_names
from generator.definitions.techniques import load_techniques
from generator.errors import FaultyFileError
from generator.lengths import INCH

MARK = """\
title: Mark the folds
about: panel
uses: ruler, marking pen
figures: fold marks
work: mark folds
text:
  - say: |
      Mark {{ piece.number }} folds, the first {{ piece.first mark }} from the edge.
  - when: unequal, not ring
    say: |
      Write each depth beside its mark.
"""
CUT = """\
title: Cut
about: project
text:
  - say: Cut every piece.
"""


def folder_of(folder: Path, **files: str) -> Path:
    folder.mkdir(parents=True, exist_ok=True)
    for name, text in files.items():
        (folder / f"{name.replace('_', '-')}.yaml").write_text(text, encoding="utf-8")
    return folder


def faults(folder: Path) -> list[str]:
    with pytest.raises(FaultyFileError) as refused:
        load_techniques([folder], root=folder)
    return [str(finding) for finding in refused.value.findings]


def test_a_technique_holds_its_parts_with_their_conditions(tmp_path: Path) -> None:
    techniques = load_techniques([folder_of(tmp_path, mark_folds=MARK, cut=CUT)])
    mark = techniques["mark folds"]
    assert set(techniques) == {"mark folds", "cut"}
    assert (mark.title, mark.about) == ("Mark the folds", "panel")
    assert (mark.tools, mark.figures, mark.work) == (("ruler", "marking pen"), ("fold marks",), ("mark folds",))
    assert [part.when for part in mark.parts] == [(), ("unequal", "not ring")]
    values = {"piece.number": Fraction(17), "piece.first mark": Fraction(13, 8)}
    said = mark.parts[0].say.filled(INCH, values.__getitem__)
    assert said == "Mark 17 folds, the first 1 5/8 in from the edge."


def test_the_rooms_own_technique_replaces_the_tools(tmp_path: Path) -> None:
    tools = folder_of(tmp_path / "tools", mark_folds=MARK, cut=CUT)
    own = folder_of(tmp_path / "own", cut=CUT.replace("Cut every piece", "Cut on the table by the window"))
    techniques = load_techniques([tools, own, tmp_path / "none"])
    assert techniques["cut"].parts[0].say.text == "Cut on the table by the window."
    assert techniques["mark folds"].title == "Mark the folds"


def test_the_faults_of_all_techniques_are_told_at_once(tmp_path: Path) -> None:
    folder = folder_of(
        tmp_path,
        crease=MARK.replace("first mark", "frist mark").replace("not ring", "not rong"),
        cut=CUT.replace("Cut every piece.", "Cut {{ piece.across }}."),
        hem=MARK.replace("{{ piece.number }}", "{{ side }}").replace("about: panel", "about: panels"),
    )
    assert faults(folder)[:2] == [
        "crease.yaml:8:57: 'piece' has no measure 'frist mark'; did you mean 'first mark'? (in a placeholder)",
        "crease.yaml:9:20: 'not rong' is no condition; did you mean 'not ring'?",
    ]
    assert faults(folder)[2:] == [
        "cut.yaml:4:17: 'piece': a technique about the whole project has no piece to be asked (in a placeholder)",
        "hem.yaml:2:8: 'panels' is no thing that a technique is about; did you mean 'panel'?",
        "hem.yaml:8:15: 'side': a technique knows the measures of its piece only, for example piece.across "
        "(in a placeholder)",
    ]


def test_the_tool_has_a_technique_for_every_standard_step() -> None:
    named = (
        "cut, join breadths, mark folds, crease, stitch tucks, rule rows, sew rows, trim, mark cross folds, "
        "crease cross, stitch cross tucks, hem, face edge, bind, gather, join pieces, line and turn, line flat, "
        "envelope back, buttonholes, sew buttons, close opening, bag, fill"
    )
    assert set(named.split(", ")) <= set(load_techniques([TECHNIQUES]))
    assert step_names(None) == set(load_techniques([TECHNIQUES]))


def test_the_starter_names_every_standard_step() -> None:
    told = " ".join(line.strip("# ") for line in starter_text().splitlines())
    assert [name for name in step_names(None) if name not in told] == []


def test_a_technique_of_the_room_is_a_standard_step(tmp_path: Path) -> None:
    folder_of(tmp_path / "site" / "techniques", soak_cloth=CUT)
    assert "soak cloth" in step_names(tmp_path)
    assert "soak cloth" not in step_names(None)
    text = (Path(__file__).parent / "trap-cushion.yaml").read_text(encoding="utf-8")
    path = tmp_path / "cushion.yaml"
    path.write_text(text.replace("use: cut", "use: soak_cloth, cut"), encoding="utf-8")
    assert load_project(path, root=tmp_path).steps[0].use == ("soak cloth", "cut")


@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        (
            "work: mark folds",
            "work: mark a fold",
            "5:7: 'mark a fold' is no work that is counted; did you mean 'mark folds'?",
        ),
        ("figures: fold marks", "figures: fold mark", "4:10: 'fold mark' is no picture; did you mean 'fold marks'?"),
        (
            "figures: fold marks",
            "figures: assembly bord",
            "4:10: 'assembly bord' is no picture; did you mean 'assembly board'?",
        ),
        (
            "title: Mark the folds",
            "title: Mark the [peice]",
            "1:17: '[peice]' is nothing that can be put in; did you mean 'piece'? For brackets of your own write ( )",
        ),
        (
            "      Write each depth beside its mark.",
            "      Write each depth beside its mark.\n      [marcs] and [the guide](guide.html)",
            "12:7: '[marcs]' is nothing that can be put in; did you mean 'marks'? For brackets of your own write ( )",
        ),
        ("not ring", "not rong", "9:20: 'not rong' is no condition; did you mean 'not ring'?"),
    ],
)
def test_a_word_that_a_technique_cannot_use_is_told_where_it_stands(
    tmp_path: Path, old: str, new: str, says: str
) -> None:
    assert faults(folder_of(tmp_path, mark_folds=MARK.replace(old, new))) == [f"mark-folds.yaml:{says}"]
