"""The figures of a class as plain nested values: exact text, never a float. Keys may be added, none is renamed."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from generator.calculation.laid import CutItem
from generator.calculation.making.class_paper import KitSlip, PrintLine, print_run
from generator.calculation.making.classes import Kit
from generator.calculation.making.timetable import SessionPlan, TimetableLine, clock
from generator.calculation.worked_project import SupplyLine
from generator.calculation.worksheet.class_cloth import ClassClothUse
from generator.calculation.worksheet.class_kits import KitWork
from generator.calculation.worksheet.class_work import ClassSheet
from generator.calculation.worksheet.cloth_figures import cloth_figures
from generator.calculation.worksheet.costs import Bill
from generator.calculation.worksheet.threads import thread_figures
from generator.lengths import Edition, write_length


def class_figures(sheet: ClassSheet, pages: Mapping[Kit, int]) -> dict[str, Any]:
    """Return all numbers of a class, ready for JSON; lengths of a kit are in the unit of its own edition.

    ``pages`` are those of the handout of each kit; one that is not known is None, and so are its sheets of paper.
    """
    edition = sheet.edition
    return {
        "class": sheet.name,
        "title": sheet.title,
        "project": sheet.project,
        "edition": edition.name,
        "unit": edition.unit,
        "paper": sheet.paper,
        "kits": [_kit(sheet, work) for work in sheet.kits],
        "cloth": {name: _cloth(cloth, edition) for name, cloth in sheet.cloths.items()},
        "thread": thread_figures(sheet.thread),
        "supplies": [_supply(line) for line in sheet.supplies],
        "cost": _cost(sheet.bill),
        "prices": [
            {"size": price.size_label, "edition": price.edition, "price": str(price.whole)} for price in sheet.prices
        ],
        "slips": [_slip(slip) for slip in sheet.slips],
        "timetable": {
            "size": sheet.slowest.kit.size,
            "edition": sheet.slowest.kit.edition,
            "sessions": [_session(plan) for plan in sheet.timetable.sessions],
            "left_over": sheet.timetable.left_over,
            "cut_beforehand": sheet.preparation,
        },
        "print_run": [_printed(line, sheet.paper) for line in print_run([work.count for work in sheet.kits], pages)],
        "bring": list(sheet.bring),
        "lent": list(sheet.lent),
        "of_nobody": list(sheet.of_nobody),
        "findings": [{"level": finding.level, "text": finding.text} for finding in sheet.findings],
    }


def _printed(line: PrintLine, paper: str) -> dict[str, Any]:
    return {
        "size": line.kit.size,
        "edition": line.kit.edition,
        "paper": paper,
        "copies": line.copies,
        "pages": line.pages,
        "sheets_both_sides": line.both_sides,
        "sheets_one_side": line.one_side,
    }


def _kit(sheet: ClassSheet, work: KitWork) -> dict[str, Any]:
    edition = work.worksheet.edition
    return {
        "size": work.kit.size,
        "edition": work.kit.edition,
        "unit": edition.unit,
        "own_measures": work.own,
        "places": work.count.places,
        "own_cloth": work.count.own_cloth,
        "spare": work.count.spare,
        "packed": work.count.packed,
        "cut": work.count.cut,
        "pieces": [
            _piece(item, edition, beforehand=piece.name in work.beforehand, after_panel=piece.after_panel)
            for piece, items in work.pieces
            for item in items
        ],
        "supplies": [_supply(line) for line in sheet.packed(work)],
        "cloth_alone": {name: use.buy_text for name, use in work.worksheet.cloths.items()},
        "cost_alone": work.worksheet.cost,
    }


def _piece(item: CutItem, edition: Edition, *, beforehand: bool, after_panel: bool) -> dict[str, Any]:
    return {
        "piece": item.piece,
        "label": item.label,
        "quantity": item.quantity,
        "across": write_length(item.across, edition),
        "along": write_length(item.along, edition),
        "cut_beforehand": beforehand,
        "after_panel": after_panel,
    }


def _supply(line: SupplyLine) -> dict[str, str]:
    return {"item": line.item, "amount": line.amount}


def _cloth(cloth: ClassClothUse, edition: Edition) -> dict[str, Any]:
    return {
        **cloth_figures(cloth.use, edition),
        "kits": cloth.kits,
        "apart": write_length(cloth.apart, edition),
    }


def _cost(bill: Bill) -> dict[str, Any]:
    return {
        "whole": str(bill.whole) if bill.whole is not None else "",
        "lines": [{"item": line.item, "amount": line.amount, "cost": str(line.cost)} for line in bill.lines],
        "unpriced": list(bill.unpriced),
    }


def _slip(slip: KitSlip) -> dict[str, Any]:
    return {
        "number": slip.number,
        "among": slip.among,
        "size": slip.kit.size,
        "edition": slip.kit.edition,
        "student": slip.student,
        "own_cloth": slip.own_cloth,
        "spare": slip.spare,
    }


def _session(plan: SessionPlan) -> dict[str, Any]:
    return {
        "day": plan.session.day,
        "starts": clock(plan.session.starts),
        "ends": clock(plan.session.ends),
        "steps": [_entry(entry) for entry in plan.entries],
        "spare": plan.spare,
    }


def _entry(entry: TimetableLine) -> dict[str, Any]:
    return {
        "at": clock(entry.starts),
        "minutes": entry.minutes,
        "step": entry.step,
        "title": entry.title,
        "begun": entry.begun,
        "goes_on": entry.goes_on,
    }
