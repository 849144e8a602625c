"""Whole worksheets against figures worked by hand, with the working shown."""

from __future__ import annotations

import json
from fractions import Fraction
from pathlib import Path
from typing import Any

from rooms_on_disk import CUSHION, WRAP, put, sheet

from generator.calculation.worksheet.figures import figures
from generator.lengths import read_length


def every(first: str, step: str, count: int) -> list[Fraction]:
    return [read_length(first, "in") + number * read_length(step, "in") for number in range(count)]


def read(texts: list[str]) -> list[Fraction]:
    return [read_length(text, "in") for text in texts]


def cushion(folder: Path) -> dict[str, Any]:
    found: dict[str, Any] = json.loads(json.dumps(figures(sheet(folder, CUSHION, "medium"))))
    return found


def wrap(folder: Path) -> dict[str, Any]:
    found: dict[str, Any] = json.loads(json.dumps(figures(sheet(folder, WRAP, "neck"))))
    return found


def test_a_cushion_front_of_16_inches_across(tmp_path: Path) -> None:
    # p = 1 1/2 - 2 x 3/8 = 3/4.  20 tucks: (16 - 19 x 3/4) / 2 = 1 3/4 / 2 = 7/8, within 3/4 to 1 1/2.
    # f_1 = 1/2 + 7/8 + 3/8 = 1 3/4.  L = 16 + 20 x 3/4 + 2 x 1/2 = 32.  x_1 = 7/8, then every 3/4.
    front = cushion(tmp_path)["pieces"]["front"]
    tucks = front["tucks"]
    assert (tucks["count"], tucks["depth"], tucks["spacing"], tucks["pitch"]) == (20, "3/8", "1 1/2", "3/4")
    assert (tucks["take_up"], tucks["margins"]) == ("15", ["7/8", "7/8"])
    assert read(tucks["marks"]) == every("1 3/4", "1 1/2", 20)
    assert read(tucks["stitching"]) == every("7/8", "3/4", 20)
    assert (front["cut"]["across"], front["finished"]["across"]) == ("32", "16")


def test_the_length_of_that_front_and_its_rows(tmp_path: Path) -> None:
    # A tuck of 3/8 swings from side to side: 3/8 pi = 1.1781.  An interval of 3 finishes at
    # sqrt(9 - 1.3879) = 2.7590, a loss of 0.2410.  Six rows: 5 x 2.7590 = 13.795, so the first lies
    # (16 - 13.795) / 2 = 1.1025 from the edge; seven would leave less than nothing.
    # Cut: 16 + 1 + 5 x 0.2410 = 18.205, up to 1/8: 18 1/4, so 1 1/4 extra.
    # First ruled at 1/2 + (1 1/4 - 1.205) / 2 + 1.1025 = 1.625, then every 3.
    front = cushion(tmp_path)["pieces"]["front"]
    rows = front["rows"]
    assert front["cut"]["along"] == "18 1/4"
    assert (rows["plan"], rows["spacing"], rows["extra"]) == ("linked cells", "3", "1 1/4")
    assert rows["ruled"] == ["1 5/8", "4 5/8", "7 5/8", "10 5/8", "13 5/8", "16 5/8"]
    # Least loss of an interval, the straight way: 3 - sqrt(9 - (3/4)^2) = 0.0953.  Row 1: 1 5/8 - 1/2 - 5/8 = 1/2, and
    # half of what five intervals below lose more: 1/2 + 5 x 0.0953 / 2 = 0.738, 1/2 + 5 x 0.2410 / 2 = 1.1025;
    # outward 11/16 and 1 1/8.
    assert rows["finished"][0] == ["11/16", "1 1/8"]


def test_the_turns_of_that_front_alternate_and_shift_by_one(tmp_path: Path) -> None:
    rows = cushion(tmp_path)["pieces"]["front"]["rows"]
    assert rows["start"] == ["right"] * 6
    one, other = " ".join(["toward away"] * 10), " ".join(["away toward"] * 10)
    # Linked cells: tucks 1 and 2 face each other, so 2, 4 ... 20 lie to the left.  From the right tuck 20 comes first,
    # and left is the side not yet sewn: toward.
    assert rows["turns"] == [one, other] * 3


def test_the_check_points_of_that_front(tmp_path: Path) -> None:
    # After 6: f_7 - 6 x 3/4 = 10 3/4 - 4 1/2 = 6 1/4.  12: 19 3/4 - 9 = 10 3/4.  18: 28 3/4 - 13 1/2 = 15 1/4.
    # After all: 32 - 15 = 17, to the far cut edge.
    points = cushion(tmp_path)["pieces"]["front"]["checkpoints"]
    assert [(point["after"], point["to"], point["expect"]) for point in points] == [
        (6, "fold mark 7", "6 1/4"),
        (12, "fold mark 13", "10 3/4"),
        (18, "fold mark 19", "15 1/4"),
        (20, "the far cut edge", "17"),
    ]
    assert {point["from"] for point in points} == {"the cut edge"}


def test_the_back_and_the_cloth_of_that_cushion(tmp_path: Path) -> None:
    # Lap: 16 / 4 = 4.  Each half: (16 + 4) / 2 + 1/2 + 2 x 1 = 12 1/2 by 16 + 1 = 17.
    # On 44 in: beside a front of 32 are 12 in, too little for 12 1/2, so 18 1/4 + 17 = 35 1/4. With 1 in to straighten
    # up to 4 1/2: 40 1/2 = 1 1/8 yd.
    # Bound: nothing lies beside the front, so 18 1/4, and 2 x 12 1/2 x 17 / 44 = 9 29/44: 27 10/11, up to quarters 28.
    found = cushion(tmp_path)
    assert found["pieces"]["back"]["cut"] == {"across": "12 1/2", "along": "17"}
    cloth = found["cloth"]["face"]
    assert (cloth["length"], cloth["buy"], cloth["lower_bound"]) == ("35 1/4", "1 1/8 yd", "28")
    assert cloth["narrowest_width"] == "32"
    assert found["meetings"] == [{"join": "front.all", "to": "back.all", "join_length": "64", "to_length": "64"}]
    assert found["measures"] == {"side": "16", "lap": "4"}
    # The first row is planned 1 1/8 in from the edge; the draw-in is known within bounds, and 1 in was asked for.
    assert [finding["level"] for finding in found["findings"]] == ["note"]
    assert "the rows are planned" in found["findings"][0]["text"]


def test_a_wrap_whose_hems_are_caught(tmp_path: Path) -> None:
    # Girth: 5 pi = 15.708, up to 15 3/4; with ease 1/2 and lap 2: F = 18 1/4.  e_l = 2 1/4.
    # 19 tucks: e_r = 18 1/4 - 2 1/4 - 18 x 3/4 = 2 1/2; 18 would leave 3 1/4, 20 would leave 1 3/4: outside 2 to 3.
    # h_l = 2 1/4 + 3/8 = 2 5/8, f_1 = 5 1/4; h_r = 2 7/8.  L = 18 1/4 + 2 5/8 + 2 7/8 + 19 x 3/4 = 38.
    # From the far end: 38 - (5 1/4 + 18 x 1 1/2) = 38 - 32 1/4 = 5 3/4 = 2 x 2 7/8.
    found = wrap(tmp_path)
    piece = found["pieces"]["wrap"]
    assert found["measures"]["wrap round"] == "18 1/4"
    assert (piece["tucks"]["count"], piece["tucks"]["margins"]) == (19, ["2 1/4", "2 1/2"])
    assert read(piece["tucks"]["marks"]) == every("5 1/4", "1 1/2", 19)
    assert read(piece["tucks"]["stitching"]) == every("2 1/4", "3/4", 19)
    assert piece["cut"]["across"] == "38"


def test_the_check_points_of_a_wrap_start_at_its_hem_fold(tmp_path: Path) -> None:
    # After 6: 5 1/4 + 6 x 1 1/2 - 6 x 3/4 - 2 5/8 = 7 1/8.  12: 23 1/4 - 9 - 2 5/8 = 11 5/8.
    # After all both hems are caught: 38 - 14 1/4 - 2 5/8 - 2 7/8 = 18 1/4.
    points = wrap(tmp_path)["pieces"]["wrap"]["checkpoints"]
    assert [(point["after"], point["from"], point["to"], point["expect"]) for point in points] == [
        (6, "the hem fold", "fold mark 7", "7 1/8"),
        (12, "the hem fold", "fold mark 13", "11 5/8"),
        (19, "the hem fold", "the far hem fold", "18 1/4"),
    ]


def test_the_rows_of_a_wrap_are_sewn_back_and_forth(tmp_path: Path) -> None:
    # Five rows lose 4 x 0.2410 = 0.964 of 14 + 1: cut 16 (15.964).  The first: (14 - 4 x 2.7590) / 2 = 1.482 from the
    # edge, ruled at 1/2 + (1 - 0.964) / 2 + 1.482 = 2.
    # Ripples: all to the right, next row all to the left; from left, then from right: always to the side not yet sewn.
    piece = wrap(tmp_path)["pieces"]["wrap"]
    assert piece["cut"]["along"] == "16"
    assert piece["rows"]["ruled"] == ["2", "5", "8", "11", "14"]
    assert piece["rows"]["start"] == ["left", "right", "left", "right", "left"]
    assert set(piece["rows"]["turns"]) == {" ".join(["toward"] * 19)}
    # Row 1: 2 - 1/2 - 1/2 = 1, and half of what four intervals below lose: 0.191 to 0.482; outward 1 3/16 and 1 1/2.
    assert piece["rows"]["finished"][0] == ["1 3/16", "1 1/2"]


def test_the_buttons_of_a_wrap(tmp_path: Path) -> None:
    # 14 long, 2 from both ends: 2, 7, 12.  Buttonhole 7/8 + 1/8 = 1.
    assert wrap(tmp_path)["closures"] == [
        {
            "kind": "buttons",
            "number": 3,
            "on": "wrap.left",
            "onto": "wrap.right",
            "positions": ["2", "7", "12"],
            "buttonhole": "1",
        }
    ]


def test_a_wrap_that_runs_across_the_cloth_takes_its_round_from_the_length(tmp_path: Path) -> None:
    # 38 round lies along the selvage, 16 across the cloth; up to 4 1/2 in: 40 1/2 = 1 1/8 yd.
    cloth = wrap(tmp_path)["cloth"]["face"]
    assert (cloth["length"], cloth["buy"], cloth["narrowest_width"]) == ("38", "1 1/8 yd", "16")


def test_a_metric_cushion_is_worked_with_metric_lengths(tmp_path: Path) -> None:
    # Side 40, d 1, m 4: p = 2.  18 tucks: (40 - 17 x 2) / 2 = 3, within 2 to 3; f_1 = 1.5 + 3 + 1 = 5.5.
    # 19: (40 - 36) / 2 = 2, f_1 = 4.5.  Both lie on 5 mm; 18 has fewer.  L = 40 + 36 + 3 = 79.
    found = figures(sheet(tmp_path, CUSHION, "medium", "metric"))
    tucks = found["pieces"]["front"]["tucks"]
    assert (found["unit"], tucks["count"], tucks["margins"], tucks["marks"][:2]) == (
        "cm",
        18,
        ["3", "3"],
        ["5.5", "9.5"],
    )
    assert found["pieces"]["front"]["cut"]["across"] == "79"


def test_the_keys_of_the_figures_stay(tmp_path: Path) -> None:
    # What programs of others read: a key may be added here, none may go.
    found = cushion(tmp_path)
    assert {"project", "size", "edition", "unit", "measures", "numbers", "pieces", "meetings", "closures"} <= set(found)
    assert {"cloth", "thread", "minutes", "findings"} <= set(found)
    front = found["pieces"]["front"]
    assert {"kind", "cloth", "quantity", "cut", "finished", "tucks", "rows", "checkpoints"} <= set(front)
    assert {"count", "depth", "spacing", "pitch", "take_up", "margins", "marks", "stitching"} <= set(front["tucks"])
    assert {"plan", "spacing", "ruled", "finished", "start", "turns", "spoken", "extra"} <= set(front["rows"])
    assert {"after", "from", "to", "expect", "within"} <= set(front["checkpoints"][0])
    assert {"label", "width", "length", "buy", "lower_bound", "narrowest_width"} <= set(found["cloth"]["face"])
    assert {"length", "spools"} <= set(found["thread"])


def test_no_figure_is_a_float(tmp_path: Path) -> None:
    def floats(value: Any) -> list[float]:
        inner = value.values() if isinstance(value, dict) else value if isinstance(value, list) else ()
        return [value] if isinstance(value, float) else [found for part in inner for found in floats(part)]

    assert floats(cushion(tmp_path)) == []
    assert floats({"a": ["1", {"b": 0.5}]}) == [0.5]


def test_a_length_stays_exact_in_the_figures_when_no_ruler_shows_it(tmp_path: Path) -> None:
    # A third of an inch on the back's overlap: (16 + 4 1/3) / 2 + 2 1/2 = 12 2/3, cut up to 12 11/16.
    text = put(CUSHION, ("lap: larger(side / 4, 3 in)", "lap: 13 in / 3"))
    found = figures(sheet(tmp_path, text, "medium"))
    assert found["measures"]["lap"] == "4 1/3"
    assert found["pieces"]["back"]["cut"]["across"] == "12 11/16"


def test_a_piece_of_several_parts_tells_how_many_and_how_large(tmp_path: Path) -> None:
    # Each half of the back: (16 + 4) / 2 + 1/2 + 2 x 1 = 12 1/2 by 16 + 1 = 17.
    found = cushion(tmp_path)
    assert found["pieces"]["back"]["parts"] == {"count": 2, "across": "12 1/2", "along": "17"}
    assert "parts" not in found["pieces"]["front"]
    assert found["supplies"] == [{"item": "Square cushion pad, 16 in each way", "amount": "1"}]
    assert (found["as_sewn"], found["cloth"]["face"]["proven_shortest"]) == ({}, True)
