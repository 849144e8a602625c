"""Project files read as a whole: the ones of the room, what they hold, and many faults at once."""

import pickle
from fractions import Fraction
from pathlib import Path

import pytest

from generator.definitions.own_size import own_size
from generator.definitions.pieces.kinds import PIECES
from generator.definitions.pieces.model import PieceModel
from generator.definitions.pieces.panel import TuckedPanel
from generator.definitions.project import Project, load_project
from generator.definitions.room import load_room
from generator.definitions.vocabulary import TOOLS
from generator.errors import FaultyFileError
from generator.lengths import CENTIMETRE, EDITIONS, INCH, METRIC, MILLIMETRE

ROOT = Path(__file__).parents[2]
DRAFTS = sorted((ROOT / "projects").glob("*.yaml"))
SOUND = (Path(__file__).parent / "trap-cushion.yaml").read_text(encoding="utf-8")


def nothing(name: str) -> Fraction:
    raise KeyError(name)


def read(folder: Path, text: str) -> Project:
    path = folder / "cushion.yaml"
    path.write_text(text, encoding="utf-8")
    return load_project(path, root=folder)


def faults(folder: Path, text: str) -> list[str]:
    with pytest.raises(FaultyFileError) as refused:
        read(folder, text)
    return [str(finding).removeprefix("cushion.yaml:") for finding in refused.value.findings]


@pytest.mark.parametrize("path", DRAFTS, ids=lambda path: path.stem)
def test_every_project_of_the_room_reads_without_a_warning(path: Path) -> None:
    room = load_room(ROOT / "site" / "site.yaml", root=ROOT)
    project = load_project(path, room, ROOT)
    assert [finding for finding in project.findings if finding.level != "note"] == []
    assert project.editions == ("inch", "metric")
    assert project.name == path.stem


def test_there_are_seven_projects_or_more() -> None:
    assert len(DRAFTS) >= 7


def test_a_project_holds_what_its_file_says() -> None:
    project = load_project(ROOT / "projects" / "pier-bolster.yaml", root=ROOT)
    wrap = project.pieces["wrap"]
    assert isinstance(wrap, TuckedPanel)
    assert project.sizes["neck"].values["form"].fixed(METRIC) == 13 * CENTIMETRE
    assert project.sizes["neck"].values["buttons"].dimension == 0
    assert project.measures["wrap round"].names == ("girth", "ease", "lap")
    assert (wrap.grain, wrap.finish("left").kind, wrap.finish("top").kind) == ("across", "caught hem", "seam")
    assert wrap.rows is not None
    assert (wrap.rows.plan, wrap.rows.start, wrap.rows.back_and_forth) == ("ripples", "left", True)
    assert wrap.tucks.left_margin is not None
    assert wrap.tucks.left_margin.least.fixed(INCH) == Fraction(9, 4)
    assert project.edges_that_meet[0].join.edges == (("wrap", "top"),)
    assert project.closures[0].diameter is not None
    assert project.closures[0].diameter.fixed(METRIC) == 22 * MILLIMETRE
    assert project.cloths["face"].shrinkage == Fraction(1, 40)
    assert project.steps[0].use == ("cut",)
    assert project.steps[2].session_ends


def test_edges_in_a_row_keep_their_order() -> None:
    project = load_project(ROOT / "projects" / "chandlery-flap.yaml", root=ROOT)
    meeting = project.edges_that_meet[1]
    assert meeting.join.edges == (("flap", "left"), ("flap", "bottom"), ("flap", "right"))
    assert str(meeting.join) == "flap.left and flap.bottom and flap.right"


def test_unequal_tucks_are_told_in_runs() -> None:
    project = load_project(ROOT / "projects" / "harbour-headboard.yaml", root=ROOT)
    panel = project.pieces["panel"]
    assert isinstance(panel, TuckedPanel)
    assert [run.number.rule for run in panel.tucks.runs] == ["any", "exactly"]
    assert panel.tucks.runs[1].depth.most.fixed(METRIC) == 24 * MILLIMETRE
    assert panel.tucks.mirror


def test_a_drawn_plan_keeps_its_lines() -> None:
    project = load_project(ROOT / "projects" / "ferry-runner.yaml", root=ROOT)
    panel = project.pieces["end panel"]
    assert isinstance(panel, TuckedPanel)
    assert panel.rows is not None
    assert panel.rows.drawn_plan == "> < > <\n. > < .\n< > < >\n. < > ."
    assert panel.rows.plan is None


def test_a_project_can_be_handed_to_another_process() -> None:
    project = load_project(ROOT / "projects" / "net-loft-pinafore.yaml", root=ROOT)
    room = load_room(ROOT / "site" / "site.yaml", root=ROOT)
    assert pickle.loads(pickle.dumps(project)) == project  # noqa: S301 - what this test has just written
    assert pickle.loads(pickle.dumps(room)) == room  # noqa: S301 - the same


def test_a_project_cannot_be_changed() -> None:
    project = load_project(ROOT / "projects" / "quay-cushion.yaml", root=ROOT)
    with pytest.raises(AttributeError, match="cannot assign"):
        project.title = "Other"  # type: ignore[misc]


def test_five_different_faults_are_told_at_once_each_at_its_line(tmp_path: Path) -> None:
    text = (
        SOUND.replace("kind: cushion", "kind: cushoin")
        .replace("pad: side + 1 in or", "pad: side + 1 or")
        .replace("thickness: 0.3 mm", "thicknes: 0.3 mm")
        .replace("overlap: lap", "overlap: lapp")
        .replace("use: envelope back", "use: envelope")
    )
    assert faults(tmp_path, text) == [
        "2:7: 'cushoin' is no kind of project; did you mean 'cushion'?",
        "13:13: a length and a plain number cannot be added; does a number lack its unit (in, cm)?",
        "19:5: unknown key 'thicknes'; did you mean 'thickness'?",
        "36:14: there is no measure 'lapp'; did you mean 'lap'?",
        "52:10: there is no standard step 'envelope'; did you mean 'envelope back'?",
    ]


def test_what_depends_on_a_broken_value_stays_silent(tmp_path: Path) -> None:
    broken = SOUND.replace("side: 12 in", 'side: 12" ').replace("side: 16 in", 'side: 16" ')
    mark = "'\"' has no meaning here; write 'in' for inches"
    assert faults(tmp_path, broken) == [f"8:13: {mark}", f"11:13: {mark}"]


def test_what_depends_on_a_broken_kind_stays_silent(tmp_path: Path) -> None:
    broken = SOUND.replace("kind: tucked panel", "kind: tuckd panel")
    assert faults(tmp_path, broken) == ["22:11: 'tuckd panel' is no kind of piece; did you mean 'tucked panel'?"]


@pytest.mark.parametrize(
    ("find", "put", "says"),
    [
        (
            "cloths:\n",
            "cloth:\n",
            ["15:1: unknown key 'cloth'; did you mean 'cloths'?"],
        ),
        ("measures:\n", "mesures:\n", ["12:1: unknown key 'mesures'; did you mean 'measures'?"]),
        (
            "pieces:\n",
            "peices:\n",
            ["20:1: unknown key 'peices'; did you mean 'pieces'?"],
        ),
        ("sizes:\n", "size:\n", ["5:1: unknown key 'size'; did you mean 'sizes'?"]),
    ],
)
def test_a_section_misspelt_is_one_slip_and_what_names_its_parts_stays_silent(
    tmp_path: Path, find: str, put: str, says: list[str]
) -> None:
    named = SOUND.replace("kind: envelope back\n", "kind: envelope back\n    cloth: face\n")
    assert faults(tmp_path, named.replace(find, put, 1)) == says


def test_a_name_misspelt_in_one_size_is_one_slip(tmp_path: Path) -> None:
    third = "  large:\n    side: 20 in or 50 cm\nmeasures:\n"
    three = SOUND.replace("measures:\n", third)
    told = "6:3: size 'small' lacks 'side', which 'medium' has; is 'sid' meant to be it?"
    assert faults(tmp_path, three.replace("side: 12 in", "sid: 12 in")) == [told]
    more = three.replace("    side: 16 in", "    drop: 3 in\n    side: 16 in")
    assert faults(tmp_path, more) == ["9:3: only size 'medium' gives 'drop'; every size gives the same names"]


def test_missing_keys_are_told_with_the_group_that_lacks_them(tmp_path: Path) -> None:
    broken = SOUND.replace("title: Trap cushion\n", "").replace("      depth: 3/8 in or 1 cm\n", "")
    assert faults(tmp_path, broken) == [
        "1:1: 'title' is missing here",
        "25:7: 'depth' is missing here; or tell unequal tucks by 'runs'",
    ]


@pytest.mark.parametrize(
    ("find", "put", "says"),
    [
        (
            "plan: linked cells",
            "plan: ripples\n      drawn plan: |\n        > <",
            "31:7: 'plan' and 'drawn plan' exclude each other; the plan is given on line 30",
        ),
        ("      plan: linked cells\n", "", "30:7: 'plan' is missing here; name a plan, or draw one under 'drawn plan'"),
        (
            "  - use: cut\n",
            "  - use: cut\n    title: Cut it\n",
            "46:5: 'title' does not go with 'use'; say more with 'add', or write a step of your own below",
        ),
        (
            "  - use: cut\n",
            "  - title: Cut it\n    text: Cut.\n    add: More.\n",
            "47:5: 'add' goes with 'use'; here write it into the text",
        ),
        ("    on: front\n", "    on: frnt\n", "47:9: there is no piece 'frnt'; did you mean 'front'?"),
        (
            "    on: back\n",
            "    on: back\n    only for: smal\n",
            "54:15: there is no size 'smal'; did you mean 'small'?",
        ),
        (
            "    on: back\n",
            "    on: back\n    uses: machine, fretsaw, iron\n",
            f"54:20: 'fretsaw' is no tool; there is: {', '.join(sorted(TOOLS))}",
        ),
        (
            "kind: envelope back\n",
            "kind: envelope back\n    cloth: lining\n",
            "34:12: there is no cloth 'lining'; there is: face",
        ),
        (
            "kind: envelope back\n",
            "kind: envelope back\n    sample: lawn\n",
            "34:5: unknown key 'sample'; there is: cloth, cut, edges, finished across, finished along, "
            "grain, hem, kind, label, neaten, note, on a fold, overlap, pair, quantity, sewn on",
        ),
        (
            "    rows:\n",
            "    sample: lawn\n    rows:\n",
            "29:13: the room keeps no sample 'lawn'; they stand in site.yaml",
        ),
        ("  pad: side", "  side: 3 in\n  pad: side", "13:3: 'side' is given by the sizes already; choose another name"),
        (
            "  pad: side",
            "  Big pad: 3 in\n  pad: side",
            "13:3: 'Big pad' is no name; a name has small letters, digits and spaces, and begins with a letter",
        ),
        (
            "  pad: side",
            "  to back: 3 in\n  pad: side",
            "13:3: 'to' cannot be part of a name; it has a meaning of its own in formulas",
        ),
        (
            "    label: cotton\n",
            "    label: cotton\n    shrinkage: 3\n",
            "18:16: a share is written in per cent, for example 3 %",
        ),
        ("    label: cotton\n", "    label: cotton\n    one way: maybe\n", "18:14: 'maybe' is neither yes nor no"),
        (
            "    label: Sofa\n",
            "    label: Sofa\n    sewn: yesterday\n",
            "11:11: 'yesterday' is no day; write year, month and day as in 2031-03-08",
        ),
        (
            "hem: 1 in or 2.5 cm",
            "hem: 1 in or 2.5 cm\n    edges:\n      rim: raw",
            "39:7: an envelope back has no edge 'rim'; there is: all, bottom, left, right, top",
        ),
        (
            "hem: 1 in or 2.5 cm",
            "hem: 1 in or 2.5 cm\n    edges: hem",
            "38:15: a hem needs its width, for example hem 1 in or 2.5 cm",
        ),
        ("hem: 1 in or 2.5 cm", "hem: 1 in or 2.5 cm\n    edges: raw 1 in", "38:16: nothing stands after 'raw'"),
        (
            "hem: 1 in or 2.5 cm",
            "hem: 1 in or 2.5 cm\n    edges: seam 1 in then 2 in",
            "38:27: a seam has 1 width at most",
        ),
        (
            "    label: Sofa\n",
            "    label: Sofa {{ side }}\n",
            "10:12: a label is the same in every size; {{ }} is filled in summaries, notes, items and steps only",
        ),
        (
            "  - join: front.all\n",
            "  - join: front\n",
            "39:11: 'front' names no edge; write the piece, a point and its edge, for example front.top",
        ),
        (
            "supplies:\n  - item: Cushion pad, {{ pad }} each way\n    note: A",
            "supplies:\n  pad: A",
            "42:3: a list is wanted here, each of its items with a - before it",
        ),
    ],
)
def test_keys_that_do_not_go_together_are_told(tmp_path: Path, find: str, put: str, says: str) -> None:
    assert find in SOUND
    assert faults(tmp_path, SOUND.replace(find, put, 1)) == [says]


def test_pieces_that_no_step_cuts_and_unused_cloths_are_noted(tmp_path: Path) -> None:
    text = SOUND.replace("  - use: cut\n", "  - use: cut\n    on: front\n").replace(
        "pieces:\n", "  lining:\n    label: lawn\n    width: 44 in\npieces:\n"
    )
    assert [str(finding) for finding in read(tmp_path, text).findings] == [
        "cushion.yaml:21:5: note: no piece is cut from 'lining'",
        "cushion.yaml:36:5: note: no step cuts 'back'; a step 'use: cut' without 'on' cuts all pieces",
    ]


def test_one_edition_alone_needs_no_notes(tmp_path: Path) -> None:
    text = SOUND.replace("summary:", "editions: inch\nsummary:").replace("3/8 in or 1 cm", "3/8 in")
    project = read(tmp_path, text)
    assert project.editions == ("inch",)
    assert project.findings == ()


def test_a_fact_in_one_unit_is_converted_exactly_and_without_a_note(tmp_path: Path) -> None:
    project = read(tmp_path, SOUND.replace("width: 44 in or 112 cm", "width: 44 in"))
    assert project.cloths["face"].width.fixed(METRIC) == 44
    assert project.findings == ()


def test_a_size_of_ones_own_takes_bare_numbers_in_the_unit_of_the_edition(tmp_path: Path) -> None:
    project = read(tmp_path, SOUND)
    mine = own_size(project.sizes, {"side": "17 1/2"}, INCH)
    metric = own_size(project.sizes, {"side": "45"}, METRIC)
    assert (mine.label, mine.values["side"].fixed(INCH)) == ("side 17 1/2 in", Fraction(35, 2))
    assert (metric.label, metric.values["side"].fixed(METRIC)) == ("side 45 cm", 45 * CENTIMETRE)
    assert list(project.with_sizes([mine]).sizes) == ["small", "medium", "side 17 1/2 in"]
    assert list(project.sizes) == ["small", "medium"]


@pytest.mark.parametrize(
    ("values", "says"),
    [
        ({}, "'side' is missing; add for example side=17"),
        ({"sid": "3", "side": "17"}, "the sizes of this project give no 'sid'; did you mean 'side'?"),
        ({"side": "wide"}, "--with side=wide: 'wide': only a length or a number can stand here"),
        ({"side": "4,5"}, "--with side=4,5: write a decimal with a point: 4.5"),
        ({"side": ""}, "--with side=: nothing is written here; give a value, or take the line out"),
    ],
)
def test_a_size_of_ones_own_is_checked(tmp_path: Path, values: dict[str, str], says: str) -> None:
    with pytest.raises(FaultyFileError) as refused:
        own_size(read(tmp_path, SOUND).sizes, values, INCH)
    assert [str(finding) for finding in refused.value.findings] == [says]


def _models(base: type[PieceModel]) -> set[type[PieceModel]]:
    """Every class below one that is the model of a kind of its own."""
    below = {model for one in base.__subclasses__() for model in _models(one)}
    return below | ({base} if "of_kind" in vars(base) else set())


def test_every_kind_of_piece_that_has_a_model_can_be_asked_for_by_its_word() -> None:
    assert set(PIECES.values()) == _models(PieceModel)
    assert all(word == model.of_kind.word for word, model in PIECES.items())


@pytest.mark.parametrize(
    ("asked", "told"),
    [
        # 3 cm are 1.18 in, 9 cm 3.54 in: of 12 in and 3 in more and less than a quarter.
        ("12 in or 3 cm", True),
        ("3 in or 9 cm", False),
        ("3 in or 10.2 cm", True),
        ("1/16 in or 2 mm", False),
        ("side + 12 in or side + 3 cm", False),
    ],
)
def test_two_editions_that_cannot_both_be_meant_are_told_with_their_line(
    tmp_path: Path, asked: str, told: bool
) -> None:
    text = SOUND.replace("measures:\n", f"measures:\n  odd: {asked}\n")
    line = text.splitlines().index(f"  odd: {asked}") + 1
    found = [str(one) for one in read(tmp_path, text).findings if one.level == "warning"]
    assert [one.split(": ")[0].split(":")[1] for one in found] == ([str(line)] if told else [])
    assert all("are the two editions of one length? They differ by more than a quarter" in one for one in found)


def test_there_are_two_editions() -> None:
    assert set(EDITIONS) == {"inch", "metric"}


def test_a_chain_of_measures_that_is_too_deep_is_told_and_does_no_harm(tmp_path: Path) -> None:
    chain = "".join(f"  m{number}: m{number + 1} + 1 in or m{number + 1} + 2 cm\n" for number in range(250))
    text = SOUND.replace("measures:\n", f"measures:\n{chain}  m250: 1 in or 2 cm\n")
    told = faults(tmp_path, text)
    assert told[0] == "33:3: measures that follow from each other, 20 deep at most"
