"""Thickness where a row crosses the tucks: stitching, depths and turns come in, the most layers of cloth go out."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from types import MappingProxyType

from generator.calculation.worked import End, TuckSet, Turn
from generator.errors import CalculationError


@dataclass(frozen=True, slots=True)
class LayerLimits:
    """How many layers of cloth a needle is asked to go through: above ``warn`` a finding, above ``refuse`` a fault."""

    warn: int = 5
    refuse: int = 9


# How many layers of a medium cloth one layer is like; common practice, no source.
_LIKE_MEDIUM: Mapping[str, Fraction] = MappingProxyType(
    {"sheer": Fraction(1, 2), "light": Fraction(2, 3), "medium": Fraction(1), "heavy": Fraction(3, 2)}
)


def as_medium(layers: int, weight: str) -> Fraction:
    """Return how many layers of a medium cloth some layers of a cloth are like under the needle.

    Parameters
    ----------
    layers : int
        Layers of the cloth [-].
    weight : str
        Its weight: sheer, light, medium or heavy.

    Returns
    -------
    Fraction
        Layers of medium cloth [-].

    Examples
    --------
    Six layers of lawn are like four of a plain cotton, six of canvas like nine.

    >>> as_medium(6, "light"), as_medium(6, "heavy")
    (Fraction(4, 1), Fraction(9, 1))

    References
    ----------
    Common practice, no source.
    """
    return layers * _LIKE_MEDIUM[weight]


def limits_of(limits: LayerLimits, weight: str) -> LayerLimits:
    """Return limits that are told for medium cloth as they are for another; what a machine does not sew stays.

    Parameters
    ----------
    limits : LayerLimits
        For medium cloth.
    weight : str
        The weight of the cloth.

    Returns
    -------
    LayerLimits
        For that cloth.

    Examples
    --------
    Seven layers of plain cotton are like ten of lawn and four of canvas.

    >>> limits_of(LayerLimits(7, 9), "light").warn, limits_of(LayerLimits(7, 9), "heavy").warn
    (10, 4)

    References
    ----------
    Common practice, no source.
    """
    return LayerLimits(int(limits.warn / _LIKE_MEDIUM[weight]), limits.refuse)


def row_layers(tucks: TuckSet, turns: Sequence[Turn]) -> int:
    """Return the layers of cloth at the thickest place of one row.

    A tuck turned right covers the panel from its stitching to its depth further right, turned left to its depth further
    left; upright it covers nothing. A flap adds two layers to the panel's one. Flaps that only touch do not add up.

    Parameters
    ----------
    tucks : TuckSet
        The sewn tucks.
    turns : Sequence[Turn]
        How each tuck lies at the row.

    Returns
    -------
    int
        Layers of cloth [-], one where nothing is turned.

    Notes
    -----
    Counted exactly, place by place, from the rounded stitching. A ring is counted across its closing too.

    References
    ----------
    Derived in the docstring above.
    """
    steps: list[tuple[Fraction, int]] = []
    for left, right in _flaps(tucks, turns):
        steps += [(left, 1), (right, -1)]
    # At one place flaps end before others begin: folds that meet are no stack.
    over, most = 0, 0
    for _, change in sorted(steps):
        over += change
        most = max(most, over)
    return 1 + 2 * most


def _flaps(tucks: TuckSet, turns: Sequence[Turn]) -> Iterable[tuple[Fraction, Fraction]]:
    copies = (-tucks.finished, Fraction(0), tucks.finished) if tucks.ring else (Fraction(0),)
    for foot, depth, turn in zip(tucks.stitching, tucks.depths, turns, strict=True):
        if turn is Turn.UPRIGHT:
            continue
        left = foot if turn is Turn.RIGHT else foot - depth
        yield from ((left + copy, left + depth + copy) for copy in copies)


def crossed_layers(across: int, along: int) -> int:
    """Return the layers where the tucks of one set lie over the tucks of another.

    The second set is folded from cloth that already has the first set's layers, so each of its layers is that thick.

    Parameters
    ----------
    across, along : int
        Layers of either set by itself [-].

    Returns
    -------
    int
        Layers at the crossing [-].

    Examples
    --------
    Flat tucks crossing flat tucks, three layers each: nine.

    >>> crossed_layers(3, 3)
    9

    References
    ----------
    Derived in the docstring above.
    """
    return across * along


def crossed_findings(first: TuckSet, second: TuckSet, limits: LayerLimits) -> str:
    """Return a warning where tucks that cross are many layers for the needle; refuse more than it can go through.

    The second set is stitched through folded cloth, two plies, each with the first set lying flat in it. Where both
    sets lie flat afterwards the crossing is thicker still, and only the iron or a later row meets it there.

    Parameters
    ----------
    first, second : TuckSet
        The set that is sewn first, and the one across it.
    limits : LayerLimits
        What the room sews.

    Returns
    -------
    str
        The sentence; empty where there is nothing to say.

    References
    ----------
    The layers derived in the docstring above; the advice is common practice, no source.
    """
    flat = [row_layers(tucks, (Turn.RIGHT,) * tucks.count) for tucks in (first, second)]
    needle = crossed_layers(flat[0], 2)
    refuse_too_thick("the stitching of the cross tucks", needle, limits)
    if needle <= limits.warn or not second.count:
        return ""
    return (
        f"the cross tucks are stitched through up to {needle} layers of cloth, and where both sets lie flat there are "
        f"{crossed_layers(*flat)}; use a longer stitch and a stronger needle, turn the wheel by hand over each tuck, "
        "and press the first set flat before"
    )


def edge_layers(held: int, end: End) -> int:
    """Return the layers where an edge across the tucks is finished.

    A seam adds the partner's layer, a binding two on either side; a hem turned twice has its tucks three deep.

    Parameters
    ----------
    held : int
        Layers of the tucks as they lie at that edge [-].
    end : End
        How the edge is finished.

    Returns
    -------
    int
        Layers of cloth [-].

    Examples
    --------
    >>> edge_layers(3, End("seam", Fraction(1, 2))), edge_layers(3, End("hem", Fraction(1, 2), Fraction(1, 2)))
    (4, 9)
    >>> edge_layers(3, End("raw"))
    3

    References
    ----------
    Derived in the docstring above.
    """
    if end.kind == "hem":
        return 3 * held
    return held + {"seam": 1, "bound": 4}.get(end.kind, 0)


def refuse_too_thick(where: str, layers: int, limits: LayerLimits) -> None:
    """Refuse a place that a machine cannot be asked to sew through.

    Parameters
    ----------
    where : str
        The place, as the message begins: ``row 2``.
    layers : int
        Layers of cloth there [-].
    limits : LayerLimits
        What the room sews.

    Returns
    -------
    None
        Nothing: the place can be sewn.

    Raises
    ------
    CalculationError
        If there are more layers than the limit.

    Examples
    --------
    >>> refuse_too_thick("row 2", 9, LayerLimits())

    References
    ----------
    Common practice, no source.
    """
    if layers > limits.refuse:
        raise CalculationError(
            f"{where} goes through {layers} layers of cloth and the most is {limits.refuse}; give the tucks a wider "
            "spacing, make them shallower, or choose a plan that lays fewer over each other"
        )
