from __future__ import annotations

import io
from pathlib import Path

import pdfplumber
import pytest
from small_room import Speech


def text_of(sheet: Path) -> str:
    with pdfplumber.open(io.BytesIO(sheet.read_bytes())) as pdf:
        return "\n".join(page.extract_text() for page in pdf.pages)


def test_a_listed_size_gives_the_handout_that_the_site_has(room: Path, speak: Speech) -> None:
    (room / "flag.pdf").write_bytes(b"%PDF-1.4 an older sheet, which is replaced")
    code, out, _ = speak(room, "sheet", "flag", "small", "-o", "flag.pdf")
    assert (code, out) == (0, "Wrote flag.pdf: Signal flag, small, inch edition, on A4\n")
    published = room / "site/public/projects/flag/small/flag-small-inch-a4.pdf"
    assert (room / "flag.pdf").read_bytes() == published.read_bytes()
    assert not list(room.glob(".flag*"))


def test_a_size_of_ones_own_is_worked_and_named_on_the_sheet(room: Path, speak: Speech) -> None:
    code, out, _ = speak(room, "sheet", "flag", "--with", "side=10", "-o", "own.pdf", "--theme", "large-print")
    assert (code, "side 10 in" in out) == (0, True)
    # A hem of 1/4 in is turned twice at each edge: 10 + 4 x 1/4 = 11 in to cut.
    assert "11 × 11" in text_of(room / "own.pdf")


def test_a_panel_as_sewn_is_worked_on_from(room: Path, speak: Speech) -> None:
    (room / "projects/tablet.yaml").write_text(
        (room / "projects/tablet.yaml").read_text(encoding="utf-8").replace("supplies:", BACK + "supplies:"),
        encoding="utf-8",
    )
    assert speak(room, "sheet", "tablet", "only", "--sewn", "front.across=5 7/8", "-o", "sewn.pdf")[0] == 0
    # The back is as wide as the panel came out, with 1/2 in for a seam at both ends: 5 7/8 + 1 = 6 7/8 in.
    assert "6 7/8 × 7" in text_of(room / "sewn.pdf")


BACK = """\
  back:
    kind: rectangle
    finished across: front.across
    finished along: side
    edges:
      all: seam 1/2 in
"""


@pytest.mark.parametrize(
    ("words", "code", "told"),
    [
        (("flag", "-o", "x.pdf"), 2, "name one size (small, large), or give a size of your own: --with NAME=VALUE"),
        (("flag", "small", "--with", "side=9", "-o", "x.pdf"), 2, "name one size (small, large)"),
        (("flag", "smal", "-o", "x.pdf"), 2, "'flag' has no size 'smal'; did you mean 'small'?"),
        (
            ("flag", "--with", "sid=9", "-o", "x.pdf"),
            1,
            "the sizes of this project give no 'sid'; did you mean 'side'?",
        ),
        (("flag", "small", "--paper", "A7", "-o", "x.pdf"), 2, "'A7' is no paper of the room; it has: A4"),
        (("flag", "small", "--edition", "metric", "-o", "x.pdf"), 2, "'flag' has no metric edition; it has: inch"),
        (("flag", "small", "--theme", "fancy", "-o", "x.pdf"), 1, "there is no theme 'fancy'"),
        (("flag", "small", "-o", "away/x.pdf"), 1, "there is no folder away; make it, or name another"),
        (("flag", "small", "-o", "site/site.yaml"), 1, "is there already and is no PDF; it stays as it is"),
        (("flag", "small", "-o", "site"), 1, "site is no file that can be written"),
        (("flag", "small"), 2, "Missing option '-o' / '--output'"),
    ],
)
def test_what_cannot_be_done_is_told_and_nothing_is_written(
    room: Path, speak: Speech, words: tuple[str, ...], code: int, told: str
) -> None:
    before = sorted(room.rglob("*"))
    settings = (room / "site/site.yaml").read_bytes()
    found, out, complaint = speak(room, "sheet", *words)
    assert (found, out) == (code, "")
    assert told in " ".join(complaint.split())
    assert "Traceback" not in complaint
    assert sorted(room.rglob("*")) == before
    assert (room / "site/site.yaml").read_bytes() == settings
