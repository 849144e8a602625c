"""Names of a project in one size and edition: a name comes in, its exact value goes out, worked out when first asked.

A measure or piece that cannot be worked is reported once; whatever needs it then stays silent.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from fractions import Fraction

from generator.calculation.cutting.cloth import Buying, washed_width
from generator.calculation.pieces.bias import PiecedBias
from generator.calculation.pieces.enclosed import rolled_turn
from generator.calculation.worked import End
from generator.calculation.worked_piece import Piece
from generator.definitions.caution_rule import asked_names
from generator.definitions.pieces.grid import Grid
from generator.definitions.pieces.model import PieceModel
from generator.definitions.pieces.panel import TuckedPanel
from generator.definitions.pieces.strips import Binding
from generator.definitions.project import Project
from generator.definitions.room import Room
from generator.definitions.values import Finish, Formula, Range, Text
from generator.errors import CalculationError, Finding, Level, Place, TuckwrightError
from generator.lengths import Edition, on_step, read_length, say_length, write_length
from generator.limits import LARGEST_VALUE, MOST_THINGS

_FINEST = 10**40
# Closures that can hurt by themselves, and the caution that each brings along.
_BROUGHT = {"magnet": "magnets", "snaps": "small parts"}
_DEFAULT_SEAM = {"inch": read_length("1/2 in"), "metric": read_length("1.5 cm")}


class AlreadyReportedError(TuckwrightError):
    """Something needs a measure or a piece that failed; the reason has been reported."""


class Scope:
    """What the names of one project mean in one size and one edition.

    ``sewn`` holds measures of panels as sewn ('front.across'), which take the place of the computed ones wherever
    another piece asks for them, ``pieced`` the strips on the bias that the layout has pieced. ``work`` works out one
    piece.
    """

    def __init__(
        self,
        project: Project,
        size: str,
        edition: Edition,
        room: Room,
        work: Callable[[Scope, str], Piece],
    ) -> None:
        self.project = project
        self.size = size
        self.edition = edition
        self.room = room
        self.sewn: Mapping[str, Fraction] = {}
        self.pieced: Mapping[str, PiecedBias] = {}
        self.findings: list[Finding] = []
        self._work = work
        self._values: dict[str, Fraction] = {}
        self._failed: set[str] = set()
        self._pieces: dict[str, Piece | None] = {}
        self._under_way: list[str] = []

    def report(
        self, level: Level, text: str, place: Place | None = None, piece: str = "", *, of_file: bool = False
    ) -> None:
        """Keep a finding of this size and edition, once."""
        finding = Finding(level, text, place, piece, self.size, self.edition.name, of_file)
        if finding not in self.findings:
            self.findings.append(finding)

    @contextmanager
    def reporting(self, place: Place | None, piece: str = "") -> Iterator[None]:
        """Report what cannot be worked inside at a place, and let what needs it know."""
        try:
            yield
        except CalculationError as fault:
            self.report("error", str(fault), place, piece)
            raise AlreadyReportedError(str(fault)) from fault

    def value(self, formula: Formula) -> Fraction:
        """Return what a formula comes to: a length [in] or a plain number; one that cannot be worked is reported."""
        with self.reporting(formula.place, self._under_way[-1] if self._under_way else ""):
            value = formula.value(self.edition, self.lookup)
            if abs(value) > LARGEST_VALUE:
                most = self.say(Fraction(LARGEST_VALUE)) if formula.dimension == 1 else str(LARGEST_VALUE)
                raise CalculationError(f"'{formula.text}' comes to more than {most}; is it in the right unit?")
            if value.denominator > _FINEST:
                raise CalculationError(
                    f"'{formula.text}' comes to a value of too many digits; round it with round to()"
                )
            return value

    def count(self, formula: Formula) -> int:
        """Return a whole number of things; anything else is refused."""
        number = self.value(formula)
        if number.denominator != 1 or number < 0:
            raise CalculationError(f"'{formula.text}' comes to {number}; a whole number is needed")
        if number > MOST_THINGS:
            raise CalculationError(f"'{formula.text}' comes to {number}; more than {MOST_THINGS} are not worked out")
        return int(number)

    def bounds(self, span: Range) -> tuple[Fraction, Fraction]:
        """Return both ends of a range [in]."""
        return self.value(span.least), self.value(span.most)

    def lookup(self, name: str) -> Fraction:
        """Return the value of a name: a size's own value, a measure, or 'piece.measure'."""
        if "." in name:
            return self._piece_measure(name)
        if name in self._failed:
            raise AlreadyReportedError(name)
        if name not in self._values:
            size = self.project.sizes[self.size]
            formula = size.values[name] if name in size.values else self.project.measures[name]
            try:
                self._values[name] = self.value(formula)
            except AlreadyReportedError:
                self._failed.add(name)
                raise
        return self._values[name]

    def _piece_measure(self, name: str) -> Fraction:
        if name in self.sewn:
            return self.sewn[name]
        piece, measure = name.split(".", 1)
        measures = self.piece(piece).measures
        if measure not in measures:
            raise CalculationError(f"'{name}' has no value in this size")
        return measures[measure]

    def piece(self, name: str) -> Piece:
        """Return a worked piece; a piece that failed before stays silent."""
        if name not in self._pieces:
            if name in self._under_way:
                way = " -> ".join([*self._under_way[self._under_way.index(name) :], name])
                raise CalculationError(f"'{name}' is worked out from itself: {way}")
            self._under_way.append(name)
            try:
                self._pieces[name] = self._work(self, name)
            except AlreadyReportedError:
                self._pieces[name] = None
            except CalculationError as fault:
                self._pieces[name] = None
                self.report("error", str(fault), place_of(self.project.pieces[name]), name)
            finally:
                self._under_way.pop()
        worked = self._pieces[name]
        if worked is None:
            raise AlreadyReportedError(name)
        return worked

    def end(self, finish: Finish) -> End:
        """Return a finish with its widths worked out [in]."""
        widths = [self._on_ruler(width, finish.kind) for width in finish.widths]
        if finish.kind == "seam":
            return End("seam", widths[0] if widths else self.seam)
        if finish.kind == "french seam" or finish.kind == "felled seam" or finish.kind == "faced":
            return End("seam", widths[0], way=finish.kind)
        if finish.kind == "stitched and trimmed" or finish.kind == "sealed and trimmed":
            return End("seam", widths[0], way=finish.kind)
        if finish.kind == "rolled hem":
            return End("hem", rolled_turn(self.edition), rolled_turn(self.edition), way="rolled hem")
        if finish.kind == "casing" or finish.kind == "hem":
            return End("hem", widths[0], widths[-1], way="casing" if finish.kind == "casing" else "")
        if finish.kind == "bound":
            return End("bound", widths[0] if widths else self._binding_width())
        return End(finish.kind, widths[0] if widths else Fraction(0))

    def _on_ruler(self, formula: Formula, what: str) -> Fraction:
        """Return the width of a finish; one that the room's ruler does not show would be told otherwise than it is."""
        width = self.value(formula)
        if not on_step(width, self.edition.mark):
            exact = write_length(width, self.edition, unit=True)
            self.report(
                "warning",
                f"a {what} of {exact} lies between two marks of the room's ruler, so sheets say {self.say(width)}; "
                "write a width that the ruler shows, or give the ruler finer marks in site.yaml",
                formula.place,
            )
        return width

    @property
    def seam(self) -> Fraction:
        """The allowance of a seam that names none [in]."""
        formula = self.project.seam or self.room.seam
        return self.value(formula) if formula else _DEFAULT_SEAM[self.edition.name]

    @property
    def places(self) -> tuple[str, ...]:
        """Where the finished thing is used and what of it can hurt: as the file says, and by what closes it."""
        kinds = {one.kind for one in self.project.closures}
        brought = [caution for kind, caution in _BROUGHT.items() if kind in kinds]
        return tuple(dict.fromkeys((*asked_names(self.project.cautions), *brought)))

    def _binding_width(self) -> Fraction:
        for piece in self.project.pieces.values():
            if isinstance(piece, Binding):
                return self.value(piece.width)
        return Fraction(0)

    def say(self, length: Fraction) -> str:
        """Return a length as the sheet says it."""
        return say_length(length, self.edition)

    def text(self, text: Text | str | None) -> str:
        """Return a text with its placeholders filled; none is empty."""
        if text is None or isinstance(text, str):
            return text or ""
        with self.reporting(text.place):
            return text.filled(self.edition, self.lookup)

    def share(self, value: Formula | Fraction | None) -> Fraction:
        """Return a share of one, such as a shrinkage; none is nothing."""
        return value if isinstance(value, Fraction) else self.value(value) if value is not None else Fraction(0)

    def cloth_of(self, model: PieceModel) -> str:
        """Return the name of the cloth that a piece is cut from: the first where it names none."""
        return model.cloth or next(iter(self.project.cloths), "")

    def thickness_of(self, model: PieceModel) -> Fraction | None:
        """Return the thickness of a piece's cloth [in], None where the file does not say."""
        thickness = self.project.cloths[self.cloth_of(model)].thickness
        return self.value(thickness) if thickness is not None else None

    def quantity(self, model: PieceModel) -> int:
        """Return how many of a piece are made."""
        number = self._of_grid(model, self.count(model.quantity))
        if number == 0:
            raise CalculationError("a piece is made at least once; write 1 or more, or take the piece out")
        if model.pair and number % 2:
            raise CalculationError(f"a pair is a left and a right, and {number} cannot be halved; write quantity: 2")
        return number

    def _of_grid(self, model: PieceModel, said: int) -> int:
        """How many of a piece are made: where it is the block of a grid as many as that has, else as its file says."""
        pieces = self.project.pieces
        grids = [one for one in pieces.values() if isinstance(one, Grid) and pieces.get(one.of) is model]
        if not grids:
            return said
        number = sum(
            self.count(one.blocks_across) * self.count(one.blocks_down) * self.count(one.quantity) for one in grids
        )
        if said not in (1, number):
            raise CalculationError(f"its grid has {number} blocks and 'quantity' says {said}; take the line out")
        return number

    def note_of(self, model: PieceModel) -> str:
        """Return the note of a piece, and of a pair how its two are cut."""
        turned = "cut with the cloth folded right sides together, or one with the paper turned over"
        shaped = getattr(model, "outline", None) is not None
        pair = f"a pair: {turned if shaped else 'a left and a right'}" if model.pair else ""
        fold = "on a fold" if model.on_a_fold else ""
        own = self.text(model.note).rstrip().removesuffix("." if pair or fold else "")
        return "; ".join(filter(None, (own, fold, pair)))

    def weight_of(self, model: PieceModel) -> str:
        """Return the weight of a piece's cloth: sheer, light, medium or heavy."""
        return self.project.cloths[self.cloth_of(model)].weight

    def cloth_thickness(self, cloth: str) -> Fraction:
        """Return the thickness of a cloth by its name [in], nothing where the file does not say or there is none."""
        model = self.project.cloths.get(cloth)
        return self.value(model.thickness) if model is not None and model.thickness is not None else Fraction(0)

    def buying(self, cloth: str) -> Buying:
        """Return how a cloth is bought: by the shop's step, with what washing takes and what straightening may take."""
        model = self.project.cloths[cloth]
        kept = model.straighten or self.room.straighten
        straighten = self.value(kept)
        with self.reporting(kept.place):
            if straighten < 0:
                raise CalculationError(
                    f"'straighten' comes to {self.say(straighten)}; write what straightening takes off, 0 or more"
                )
        return Buying(self.edition.buy_step, self.share(model.shrinkage), straighten)

    def washed_width(self, cloth: str) -> Fraction:
        """Return the usable width that is left of a cloth after shrinkage [in]."""
        model = self.project.cloths[cloth]
        return washed_width(self.value(model.width), self.share(model.shrinkage_across))


def place_of(model: PieceModel) -> Place | None:
    """Return where the file says what most often makes a piece fail: its margin, else its kind."""
    if not isinstance(model, TuckedPanel):
        return model.place
    tucks = model.tucks
    margins = (tucks.margin, tucks.left_margin, tucks.right_margin)
    written = (margin.least.place for margin in margins if margin is not None and margin.least.place.file)
    return next(written, tucks.place)
