"""Diagrams on pages and sheets: pictures by key come in, numbered figures in reading order go out.

A page gets a figure as inline SVG (``page_svg``), so that its letters use the page's fonts; a sheet gets it as an image
that is kept in memory while the sheet is set.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from markupsafe import Markup

from generator.calculation.worked_project import Worksheet
from generator.drawing.picture import Picture

Pictures = Mapping[str, tuple[Picture, ...]]
_BEFORE_STEPS = ("fold marks ", "layout ", "piece ")
_ANY_SIZE = (100.0, 100.0)
_LATER = ("assembly ", "cross fold marks ")


@dataclass(frozen=True, slots=True)
class Figure:
    """One picture with its number; ``first`` is False where it only refers to a figure shown before."""

    number: int
    picture: Picture
    first: bool = True


@dataclass(frozen=True, slots=True)
class Arrangement:
    """Which figure stands where: the finished thing, then all others in reading order."""

    things: tuple[Picture, ...]
    before: tuple[Figure, ...]
    steps: Mapping[int, tuple[Figure, ...]]
    turns: Mapping[str, tuple[Figure, ...]]
    checks: Mapping[str, tuple[Figure, ...]]
    cross_checks: Mapping[str, tuple[Figure, ...]]
    after: tuple[Figure, ...]

    @property
    def shown(self) -> tuple[Figure, ...]:
        """Every figure that is shown, in order."""
        sections = (self.steps, self.turns, self.checks, self.cross_checks)
        groups = (self.before, *(group for section in sections for group in section.values()), self.after)
        return tuple(figure for group in groups for figure in group if figure.first)


class _Numbering:
    """Numbers pictures in the order in which they are first shown."""

    def __init__(self, known: Pictures) -> None:
        self._known = known
        self._numbers: dict[str, int] = {}

    def figures(self, *keys: str) -> tuple[Figure, ...]:
        """Return the pictures of some keys as figures; a key without a picture gives none."""
        return tuple(self._figure(picture) for key in keys for picture in self._known.get(key, ()))

    def _figure(self, picture: Picture) -> Figure:
        first = picture.key not in self._numbers
        return Figure(self._numbers.setdefault(picture.key, len(self._numbers) + 1), picture, first)


def arranged(worksheet: Worksheet, pictures: Pictures) -> Arrangement:
    """Return where each picture of a worksheet stands; a picture that a step names stands at its first such step.

    What no step names stands before all steps, or where it is about later work: at the last step done on its piece if
    that is one of the project's own, which cannot name it; else after all steps.
    """
    # A step may name all drawings of making up of a piece, or one of them by its own key.
    known = {**_of_pieces(worksheet, pictures), **pictures}
    of_steps = {step.number: [key for key in step.figures if key in known] for step in worksheet.steps}
    named = {key for keys in of_steps.values() for key in keys}
    after = _with_later_work(of_steps, worksheet, pictures, {picture.key for key in named for picture in known[key]})
    # A figure gets its number where it is first shown, so the groups are made in reading order.
    figures = _Numbering(known).figures
    return Arrangement(
        things=tuple(shown[0] for key, shown in pictures.items() if key.startswith("thing ") and shown),
        before=figures(*_before_steps(worksheet, pictures, named)),
        steps={number: figures(*keys) for number, keys in of_steps.items()},
        turns={name: figures(f"turns {name}") for name, panel in worksheet.panels.items() if panel.rows},
        checks={name: figures(f"checking {name}") for name in worksheet.panels},
        cross_checks={name: figures(f"cross checking {name}") for name in worksheet.panels},
        after=figures(*after),
    )


def _with_later_work(
    of_steps: dict[int, list[str]], worksheet: Worksheet, pictures: Pictures, named: set[str]
) -> list[str]:
    """Give the steps the drawings of later work that none of them names; return those that come after all steps."""
    after: list[str] = []
    for key in (key for key in pictures if key.startswith(_LATER)):
        piece = _piece_of(key, worksheet)
        step = of_steps.get(_last_own_step(worksheet, piece), after)
        step += [picture.key for picture in pictures[key] if picture.key not in named]
    return after


def _piece_of(key: str, worksheet: Worksheet) -> str:
    """The piece whose name ends a key, the longest where several do; empty where none does."""
    return max((name for name in worksheet.pieces if key.endswith(f" {name}")), key=len, default="")


def _of_pieces(worksheet: Worksheet, pictures: Pictures) -> Pictures:
    """All drawings of making up of each piece, by the name under which a step may ask for all of them."""
    found: dict[str, tuple[Picture, ...]] = {}
    for key, drawn in pictures.items():
        if key.startswith("assembly "):
            name = f"assembly {_piece_of(key, worksheet)}"
            found[name] = (*found.get(name, ()), *drawn)
    return found


def _before_steps(worksheet: Worksheet, pictures: Pictures, named: set[str]) -> list[str]:
    """Return what stands before all steps; a panel that is drawn flat is not drawn as a piece too."""
    drawn_flat = {f"piece {name}" for name in worksheet.panels if f"fold marks {name}" in pictures}
    return [key for key in pictures if key.startswith(_BEFORE_STEPS) and key not in named | drawn_flat]


def _last_own_step(worksheet: Worksheet, piece: str) -> int:
    """Return the number of the last step done on a piece, 0 if there is none or it is a standard one."""
    last = next((step for step in reversed(worksheet.steps) if piece in step.pieces), None)
    return last.number if last and not last.standard else 0


def sheet_image(memory: dict[str, str], room: tuple[float, float], scale: float) -> Callable[..., Markup]:
    """Return a function that puts a picture on a sheet and its SVG into ``memory``.

    ``room`` is the width and height [in] that a picture may fill; ``scale`` enlarges every picture before that.
    """

    def image(picture: Picture, width: float = 0.0, height: float = 0.0, smaller: float = 1.0) -> Markup:
        address = f"{len(memory) + 1}.svg"
        memory[address] = picture.svg
        wanted = width / picture.width if width else scale
        factor = min(wanted, room[0] / picture.width, (height or room[1]) / picture.height) * smaller
        return Markup('<img src="mem:{}" alt="{}" style="width:{:.4f}in;height:{:.4f}in">').format(
            address, picture.alt, picture.width * factor, picture.height * factor
        )

    return image


def true_size_image(memory: dict[str, str]) -> Callable[[Picture], Markup]:
    """Return a function that puts a picture on a sheet as large as it was drawn, whatever a template asks for."""
    to_fit = sheet_image(memory, _ANY_SIZE, 1.0)

    def image(picture: Picture) -> Markup:
        return to_fit(picture)

    return image
