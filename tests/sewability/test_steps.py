"""Every sheet can be sewn from its first step to its last with what it tells you to have at hand."""

import re
from pathlib import Path

from sewable_room import CUTTING, every_sheet, named, sheets_of

from generator.definitions.vocabulary import TOOLS

# Things to buy that a step may name, and the words that tell of them among supplies, closures, cloths and pieces.
NOTIONS = {
    "button": ("button",),
    "snap": ("snap",),
    "magnet": ("magnet",),
    "interfacing": ("interfacing",),
    "wadding": ("wadding",),
    "cord": ("cord",),
    "foam": ("foam",),
    "rod": ("rod",),
    "filling": ("pad", "filling", "foam"),
    "form": ("form",),
    "staples?": ("staple",),
    "binding": ("binding",),
    "tie": ("tie",),
    "strap": ("strap", "handle"),
    "lining": ("lining", "backing"),
    "shade": ("shade",),
    "paper": ("paper",),
}
# In these words a notion is not meant: a tool, or a thing that need not be there.
MEANT_OTHERWISE = re.compile(r"zip foot|a strap or a tie|under the needle|safety pin|so that the filling can go in")


@every_sheet
def test_every_piece_that_is_cut_is_sewn_into_something(path: Path) -> None:
    for sheet in sheets_of(path):
        sewn = {name for step in sheet.steps if step.standard not in CUTTING for name in step.pieces}
        cut = {name for name, piece in sheet.pieces.items() if piece.parts}
        assert cut - sewn == set(), f"{sheet.size}, {sheet.edition.name}"


@every_sheet
def test_every_piece_is_cut_by_one_step_and_before_it_is_sewn(path: Path) -> None:
    for sheet in sheets_of(path):
        seen: set[str] = set()
        for step in sheet.steps:
            if step.standard in CUTTING:
                later = step.standard == "cut later"
                now = {name for name in step.pieces if sheet.pieces[name].after_panel is later}
                assert not now & seen, named(sheet, step)
                seen |= now
            else:
                assert set(step.pieces) <= seen, named(sheet, step)
        assert seen == set(sheet.pieces)


@every_sheet
def test_every_step_is_done_on_pieces_that_exist(path: Path) -> None:
    for sheet in sheets_of(path):
        for step in sheet.steps:
            assert step.pieces, named(sheet, step)
            assert set(step.pieces) <= set(sheet.pieces), named(sheet, step)


@every_sheet
def test_a_piece_that_waits_for_the_panel_is_cut_after_the_panel_is_trimmed(path: Path) -> None:
    for sheet in sheets_of(path):
        places = {step.standard: step.number for step in sheet.steps}
        if any(piece.after_panel for piece in sheet.pieces.values()):
            assert places["trim"] < places["cut later"]


@every_sheet
def test_every_panel_goes_through_its_standard_steps_in_order(path: Path) -> None:
    for sheet in sheets_of(path):
        for name, panel in sheet.panels.items():
            done = [step.standard for step in sheet.steps if name in step.pieces and step.standard]
            wanted = ["mark folds", "crease", "stitch tucks"]
            wanted += ["mark cross folds", "crease cross", "stitch cross tucks"] if panel.cross else []
            wanted += ["rule rows", "sew rows"] if panel.rows else []
            wanted = (["join breadths"] if panel.joins else []) + wanted
            assert [step for step in done if step in wanted] == wanted


@every_sheet
def test_every_tool_that_a_step_names_is_in_its_list_and_the_sheets(path: Path) -> None:
    for sheet in sheets_of(path):
        for step in sheet.steps:
            text = MEANT_OTHERWISE.sub("", step.text)
            for tool in TOOLS:
                if re.search(rf"\b{tool}\b", text):
                    at_hand = {"machine", "needle"} if tool == "needle" else {tool}
                    assert at_hand & set(step.tools), f"{named(sheet, step)} names the {tool}"
            assert set(step.tools) <= set(sheet.tools)


@every_sheet
def test_everything_that_a_step_needs_is_bought_or_cut(path: Path) -> None:
    for sheet in sheets_of(path):
        bought = [line.item for line in sheet.notions]
        made = [piece.label for piece in sheet.pieces.values()] + [use.label for use in sheet.cloths.values()]
        at_hand = " ".join([*bought, *made]).lower()
        for step in sheet.steps:
            text = MEANT_OTHERWISE.sub("", step.text)
            for notion, words in NOTIONS.items():
                if re.search(rf"\b{notion}s?\b", text):
                    assert any(word in at_hand for word in words), f"{named(sheet, step)} needs: {notion}"


@every_sheet
def test_everything_that_closes_is_bought_once(path: Path) -> None:
    for sheet in sheets_of(path):
        for closure in sheet.closures:
            itself = re.compile(rf"{closure.kind.rstrip('s')}s?(,|$)", re.IGNORECASE)
            named = [line for line in sheet.notions if itself.match(line.item)]
            assert sum(line.number for line in named) == (0 if closure.kind == "ties" else closure.number), named


@every_sheet
def test_every_closure_is_sewn_on(path: Path) -> None:
    for sheet in sheets_of(path):
        told = " ".join(step.text for step in sheet.steps).lower()
        for closure in sheet.closures:
            assert closure.kind.rstrip("s") in told


@every_sheet
def test_every_caution_that_a_tool_asks_for_stands_at_its_step(path: Path) -> None:
    for sheet in sheets_of(path):
        for step in sheet.steps:
            for tool in ("iron", "machine", "awl", "stapler"):
                assert (tool in step.tools) == (tool in step.cautions), named(sheet, step)
            assert set(step.cautions) <= set(sheet.cautions)


@every_sheet
def test_every_caution_of_a_sheet_stands_at_a_step(path: Path) -> None:
    for sheet in sheets_of(path):
        assert set(sheet.cautions) == {name for step in sheet.steps for name in step.cautions}


@every_sheet
def test_every_step_takes_time(path: Path) -> None:
    for sheet in sheets_of(path):
        for step in sheet.steps:
            assert step.minutes or step.standard == "measure sample", named(sheet, step)
        assert sheet.minutes == sum(step.minutes for step in sheet.steps)
