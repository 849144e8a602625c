"""Who brings the tools of a class: the list of its file, all tools of its steps, and those that nobody has."""

from __future__ import annotations

from pathlib import Path

from class_on_disk import CLASS, the_class
from rooms_on_disk import CUSHION, put

# The last step is the only one that needs an awl or a hammer; a class of one step has these tools and no other.
STEPS = CUSHION[CUSHION.index("steps:\n") :]
AWL = """\
steps:
  - title: Pierce it
    does: sew front to back, neaten front, turn out front, put the pad in front, cut front, cut back
    uses: awl, hammer, machine
    text: |
      Pierce it.
"""


def used(folder: Path, bring: str = "", site: str = "") -> tuple[tuple[str, ...], tuple[str, ...]]:
    sheet = the_class(folder, CLASS + bring, of=put(CUSHION, (STEPS, AWL)), site=site)
    return sheet.bring, sheet.of_nobody


def test_tools_that_nobody_brings_or_lends_are_told(tmp_path: Path) -> None:
    assert used(tmp_path) == ((), ("awl", "hammer", "sewing machine"))


def test_what_is_lent_or_brought_is_somebodys_by_its_word_or_its_name(tmp_path: Path) -> None:
    found = used(tmp_path, "bring: hammers\n", "lends: machine, awl\n")
    assert found == (("hammers",), ())


def test_tools_stands_for_all_that_the_steps_need_and_nobody_lends(tmp_path: Path) -> None:
    found = used(tmp_path, "bring: tools, reading glasses\n", "lends: sewing machine\n")
    assert found == (("awl", "hammer", "reading glasses"), ())


def test_what_students_bring_by_that_word_is_not_bought(tmp_path: Path) -> None:
    supplied = put(CUSHION, (STEPS, "  - item: Awl\n" + AWL))
    bought = [line.item for line in the_class(tmp_path, CLASS, of=supplied).supplies]
    brought = [line.item for line in the_class(tmp_path, CLASS + "bring: tools\n", of=supplied).supplies]
    assert [item for item in bought if item not in brought] == ["Awl"]
