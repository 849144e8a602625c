"""What the parts of a project owe each other: parts that are sound in themselves come in, findings go out."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from generator.definitions.caution_rule import OwnCaution
from generator.definitions.cloths import Cloth
from generator.definitions.making_words import AS_USUAL
from generator.definitions.pieces.model import PieceModel
from generator.definitions.pieces.panel import TuckedPanel
from generator.definitions.reading import Reading
from generator.definitions.steps import Step


def check_project(
    pieces: Mapping[str, PieceModel], cloths: Mapping[str, Cloth], steps: Sequence[Step], reading: Reading
) -> None:
    """Report caught hems without a tuck, pieces that no step cuts and cloths that no piece uses."""
    for name, piece in pieces.items():
        _check_caught_hems(name, piece, reading)
    for step in steps:
        if AS_USUAL in step.use and len(step.use) > 1:
            told = f"'{AS_USUAL}' stands by itself; write the other steps below it, each as a step of its own"
            reading.faults.add(step.place, told)
    _note_uncut(pieces, steps, reading)
    first = next(iter(cloths), "")
    used = {piece.cloth or first for piece in pieces.values() if piece.of_kind.of_cloth}
    for name, cloth in cloths.items():
        if name not in used:
            reading.faults.add(cloth.place, f"no piece is cut from '{name}'", "note")


def check_cautions(own: Sequence[OwnCaution], reading: Reading) -> None:
    """Hold that each caution of a project has a name of its own: by it later steps and lists know it."""
    said: dict[str, tuple[str, ...]] = {}
    for one in own:
        words = (one.level, one.hazard, one.consequence, one.avoid.text)
        if one.name in reading.cautions:
            told = f"there is a caution '{one.name}' already; ask for it by its name, or give this one another 'short'"
            reading.faults.add(one.place, told)
        elif said.setdefault(one.name, words) != words:
            told = f"two cautions are called '{one.name}' and say different things; give each its own 'short'"
            reading.faults.add(one.place, told)


def _check_caught_hems(name: str, piece: PieceModel, reading: Reading) -> None:
    """Hold that a tuck lies beside every caught hem, to hold it."""
    held: tuple[str, ...] = ()
    if isinstance(piece, TuckedPanel):
        held = ("left", "right", "top", "bottom") if piece.cross_tucks else ("left", "right")
    for side in piece.of_kind.finished_sides:
        finish = piece.finish(side)
        if side != "all" and finish.kind == "caught hem" and side not in held:
            told = f"a caught hem is held by a tuck beside it; the {side} edge of '{name}' has none: use a hem"
            reading.faults.add(finish.place, told)


def _note_uncut(pieces: Mapping[str, PieceModel], steps: Sequence[Step], reading: Reading) -> None:
    cuts = [step for step in steps if "cut" in step.use]
    if not cuts or any(not step.on for step in cuts):
        return
    cut = {name for step in cuts for name in step.pieces}
    for name, piece in pieces.items():
        if name not in cut and piece.of_kind.of_cloth:
            told = f"no step cuts '{name}'; a step 'use: cut' without 'on' cuts all pieces"
            reading.faults.add(piece.place, told, "note")
