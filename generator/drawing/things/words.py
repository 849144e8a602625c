"""What is said of the picture of a finished thing: a worksheet and a side come in, plain words go out."""

from __future__ import annotations

from generator.calculation.making_up.items import is_filled
from generator.calculation.worked_project import Worksheet
from generator.drawing.things.forms import form_of
from generator.lengths import say_length

_FORMS = {
    "flat": "lying flat",
    "pillow": "filled",
    "box": "filled, with its sides",
    "drum": "with its side",
    "roll": "lying round its form",
    "tube": "standing",
    "hung": "as it hangs",
    "over an edge": "with one end over the edge of a table",
}


def thing_words(worksheet: Worksheet, side: str, form: str = "") -> tuple[str, str]:
    """Return what a person sees, and what to look for; ``form`` is said instead of how it is drawn in lines."""
    laid, edition = worksheet.laid_out, worksheet.edition
    if side == "back":
        told = back_words(worksheet)
        return f"The finished {_kind(worksheet)} from the back: {told}.", f"back: {told}"
    size = f"{say_length(laid.across, edition)} by {say_length(laid.along, edition)}"
    tucks = [(laid_one, worksheet.pieces[laid_one.piece].panel) for laid_one in laid.seen]
    number = sum(panel.across.count for _, panel in tucks if panel is not None)
    form = form or _form(worksheet)
    pair = f"one of {laid.number}, " if laid.number > 1 else ""
    shape = "; it is cut to its shape later" if laid.shaped else ""
    told = f"{size}, {number} tucks" if number else size
    before = ", before it is cut to its shape" if laid.shaped else ""
    return f"The finished {_kind(worksheet)} from the front, {pair}{form}: {told}{shape}.", f"front{before}"


def _form(worksheet: Worksheet) -> str:
    name = form_of(worksheet).name
    return f"filled, {_FORMS[name]}" if name == "drum" and is_filled(worksheet.thing) else _FORMS[name]


def back_words(worksheet: Worksheet) -> str:
    """Return what the back of a thing shows: how it is closed, or what is sewn on it."""
    lapped = [piece for piece in worksheet.pieces.values() if piece.made.lap]
    if lapped:
        return f"two halves that lap by {say_length(lapped[0].made.lap, worksheet.edition)}"
    panels = [worksheet.pieces[one.piece].panel for one in worksheet.laid_out.seen]
    rodded = next((panel for panel in panels if panel is not None and panel.rods is not None), None)
    if rodded is not None and rodded.rods is not None:
        rings = len(rodded.rods.rings)
        return "a rod in each tuck" + (f", and {rings} rings along each" if rings else "")
    buttons = [one for one in worksheet.closures if one.kind == "buttons"]
    if worksheet.laid_out.round and buttons:
        return f"it laps, and closes with {buttons[0].number} buttons"
    behind = {lying.piece for lying in worksheet.laid_out.pieces if lying.layer == "behind"}
    patches = [worksheet.pieces[one.piece].label for one in worksheet.attached if one.onto[0] in behind]
    return f"with its {patches[0]}" if patches else "plain"


def _kind(worksheet: Worksheet) -> str:
    return "thing" if worksheet.kind == "other" else worksheet.kind
