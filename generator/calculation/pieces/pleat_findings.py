"""What a person should know about pleats that can be folded: a pleated strip comes in, warnings go out."""

from __future__ import annotations

from generator.calculation.pieces.pleats import PleatedSizes
from generator.calculation.turning.layers import LayerLimits, refuse_too_thick
from generator.lengths import Edition, say_length


def pleat_findings(strip: PleatedSizes, limits: LayerLimits, edition: Edition) -> tuple[str, ...]:
    """Return the warnings about a pleated strip: pleats caught in its ends, and too many layers in its seam.

    The seam along the pleats has the layers of the pleats and the edge that they are sewn to.

    Parameters
    ----------
    strip : PleatedSizes
        The strip as worked.
    limits : LayerLimits
        What the room sews.
    edition : Edition
        The unit of the sentences.

    Returns
    -------
    tuple of str
        The warnings; empty where there is nothing to say.

    Raises
    ------
    CalculationError
        If the seam has more layers than the room sews.

    Examples
    --------
    One inverted pleat 6 deep in 10: its creases lie 6 to either side of the middle, 1 beyond each end.

    >>> from generator.calculation.pieces.pleats import Fraction, Pleats, worked_pleated_strip
    >>> from generator.calculation.worked import End
    >>> from generator.lengths import INCH
    >>> ends = dict.fromkeys(("left", "right", "top", "bottom"), End("seam", Fraction(1, 2)))
    >>> strip = worked_pleated_strip(Fraction(10), Fraction(6), Pleats("inverted", 1, Fraction(6)), ends)
    >>> for text in pleat_findings(strip, LayerLimits(), INCH):
    ...     print(text)
    the outermost pleats reach 1 in past the ends of the strip and are caught there; make them shallower, or fewer
    the seam of the pleats goes through up to 6 layers of cloth; make them shallower or fewer, or sew it slowly

    References
    ----------
    The layers derived in the docstring above; the advice is common practice, no source.
    """
    layers = strip.layers + 1
    refuse_too_thick("the seam of the pleats", layers, limits)
    found = []
    if strip.beyond:
        past = say_length(strip.beyond, edition)
        found.append(
            f"the outermost pleats reach {past} past the ends of the strip and are caught there; make them shallower, "
            "or fewer"
        )
    if layers > limits.warn:
        found.append(
            f"the seam of the pleats goes through up to {layers} layers of cloth; make them shallower or fewer, or sew "
            "it slowly"
        )
    return tuple(found)
