"""A class as a person likes to read it: a ClassSheet comes in, text goes out."""

from __future__ import annotations

from collections.abc import Mapping

from generator.calculation.laid import CutItem
from generator.calculation.making.class_paper import KitSlip, print_run
from generator.calculation.making.classes import Kit
from generator.calculation.making.timetable import SessionPlan, TimetableLine, clock
from generator.calculation.worked_piece import Piece
from generator.calculation.worksheet.class_kits import KitWork
from generator.calculation.worksheet.class_work import ClassSheet
from generator.commands.columns import UNIT_WORDS, in_columns, indented
from generator.lengths import on_ruler, say_length
from generator.rendering.addresses import handout_file

_IN_THE_PACK = "(class pack)"


def class_text(sheet: ClassSheet, pages: Mapping[Kit, int]) -> str:
    """Return a class as plain text: kits, what to buy, what goes into each bag, timetable, print run.

    ``pages`` are those of the handout of each kit, as far as they are known.
    """
    lines = [
        f"{sheet.title}: {sheet.project_title}",
        f"{sheet.edition.name} edition, lengths in {UNIT_WORDS[sheet.edition.unit]}",
        *(indented("", " ".join(sheet.note.split())) if sheet.note else []),
    ]
    parts = (
        ("Kits", _kits(sheet)),
        ("To buy", _to_buy(sheet)),
        ("Cost", _cost(sheet)),
        ("In each bag", _bags(sheet)),
        ("Bags", [_slip(slip) for slip in sheet.slips]),
        (_timetable_head(sheet), _timetable(sheet)),
        ("To print", _print_run(sheet, pages)),
        ("To know", [line for finding in sheet.findings for line in indented("  - ", str(finding))]),
    )
    for head, told in parts:
        if told:
            lines += ["", head, *told]
    return "\n".join(lines)


def _kits(sheet: ClassSheet) -> list[str]:
    rows: list[tuple[str, ...]] = [("size", "edition", "places", "own cloth", "spare", "to pack", "to cut")]
    for work in sheet.kits:
        count = work.count
        numbers = (count.places, count.own_cloth, count.spare, count.packed, count.cut)
        rows.append((work.kit.size, work.kit.edition, *(str(number) for number in numbers)))
    return in_columns(rows)


def _to_buy(sheet: ClassSheet) -> list[str]:
    rows: list[tuple[str, ...]] = [("cloth", "kits", "usable width", "layout", "at least", "one by one", "buy")]
    for name, cloth in sheet.cloths.items():
        layout = cloth.use.layout
        lengths = (cloth.use.width, layout.length, layout.lower_bound, cloth.apart)
        told = (say_length(length, sheet.edition) for length in lengths)
        rows.append((f"{name} ({cloth.use.label})", str(cloth.kits), *told, cloth.use.buy_text))
    return [
        *(in_columns(rows) if sheet.cloths else ["  no cloth"]),
        *(f"  thread{words}: {length}, spools: {spools}" for words, length, spools in sheet.thread.lines),
        *(f"  {line.item}: {line.amount}" for line in sheet.supplies),
        *([f"  students bring: {', '.join(sheet.bring)}"] if sheet.bring else []),
        *([f"  the room lends: {', '.join(sheet.lent)}"] if sheet.lent else []),
        *(indented("  neither: ", ", ".join(sheet.of_nobody)) if sheet.of_nobody else []),
    ]


def _cost(sheet: ClassSheet) -> list[str]:
    bill = sheet.bill
    if bill.whole is None:
        return []
    rows = [("item", "amount", "cost"), *((line.item, line.amount, str(line.cost)) for line in bill.lines)]
    lines = [*in_columns(rows), f"  in all {bill.whole}"]
    if bill.unpriced:
        lines += indented("  ", f"no price for: {', '.join(bill.unpriced)}", hang=4)
    for work in sheet.kits:
        if work.worksheet.cost:
            lines += indented("  ", f"one kit {_named(work)} by itself, {work.worksheet.cost}", hang=4)
    return lines


def _named(work: KitWork) -> str:
    return f"{work.kit.size}, {work.kit.edition}"


def _bags(sheet: ClassSheet) -> list[str]:
    lines = []
    for work in sheet.kits:
        lines.append(f"  {_named(work)} ({work.count.packed})")
        lines += [_cut(work, piece, item) for piece, items in work.pieces for item in items]
        lines += [f"    {line.item}: {line.amount}" for line in sheet.packed(work)]
        if work.count.own_cloth:
            buys = [
                f"{name} {use.buy_text}, {say_length(use.width, work.worksheet.edition)} wide"
                for name, use in work.worksheet.cloths.items()
            ]
            lines.append(f"    own cloth instead of the pieces: {'; '.join(buys)}")
    return lines


def _cut(work: KitWork, piece: Piece, item: CutItem) -> str:
    edition = work.worksheet.edition
    sides = f"{on_ruler(item.across, edition)} x {on_ruler(item.along, edition)} {edition.unit}"
    when = "after the panel" if piece.after_panel else "beforehand" if piece.name in work.beforehand else "in the class"
    return f"    {item.label}: {item.quantity} of {sides} (across the cloth x along it), cut {when}"


def _slip(slip: KitSlip) -> str:
    notes = [slip.student, "spare" if slip.spare else "", "brings own cloth" if slip.own_cloth else ""]
    told = ", ".join(note for note in notes if note) or "........................"
    return f"  {slip.number:>2} of {slip.among}  {slip.kit.size}, {slip.kit.edition}: {told}"


def _timetable_head(sheet: ClassSheet) -> str:
    return f"Timetable at the beginners' pace, for the slowest kit ({_named(sheet.slowest)})"


def _timetable(sheet: ClassSheet) -> list[str]:
    lines = []
    if sheet.preparation:
        lines.append(f"  before the class: cut for all kits, {sheet.preparation} minutes")
    for plan in sheet.timetable.sessions:
        lines += _session(plan)
    return lines


def _session(plan: SessionPlan) -> list[str]:
    session = plan.session
    spare = f", {plan.spare} minutes to spare" if plan.spare else ""
    head = f"  {session.day}, {clock(session.starts)} to {clock(session.ends)}{spare}"
    return [head, *(_entry(entry) for entry in plan.entries)]


def _entry(entry: TimetableLine) -> str:
    number = f"{entry.step}. " if entry.step else ""
    gone_on = " (goes on)" if entry.goes_on else ""
    begun = "go on with " if entry.begun else ""
    return f"    {clock(entry.starts):>5}  {entry.minutes:>3} min  {number}{begun}{entry.title}{gone_on}"


def _print_run(sheet: ClassSheet, pages: Mapping[Kit, int]) -> list[str]:
    own = {work.kit for work in sheet.kits if work.own}
    head = ("handout", "size", "edition", "paper", "copies", "pages", "sheets, both sides", "one side")
    rows: list[tuple[str, ...]] = [head]
    for line in print_run([work.count for work in sheet.kits], pages):
        kit = line.kit
        file = handout_file(sheet.project, kit.size, kit.edition, sheet.paper).rpartition("/")[2]
        file = _IN_THE_PACK if kit in own else file
        told = [str(number) if number is not None else "?" for number in (line.pages, line.both_sides, line.one_side)]
        rows.append((file, kit.size, kit.edition, sheet.paper, str(line.copies), *told))
    lines = in_columns(rows)
    if own:
        lines += indented(
            "  ", "handouts of own measures are printed with the class pack, each with its student's name"
        )
    if len(pages) + len(own) < len(rows) - 1:
        lines += indented("  ", "how many pages a handout has is not known before 'tuckwright publish' has made it")
    lines += indented("  ", "and what you use beside them: tuckwright sheet with --kind 'marking strip' and others")
    return [
        *lines,
        *indented("  ", f"the class pack, with layouts and slips: tuckwright class {sheet.name} -o pack.pdf"),
        *indented("  ", f"all of it as one PDF: tuckwright class {sheet.name} --everything -o all.pdf"),
    ]
