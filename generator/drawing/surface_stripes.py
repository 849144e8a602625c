"""Stripes on a finished panel: a lit surface and its panel come in, which stripe each place of the grid shows goes out.

On the panel the cloth runs on from tuck to tuck; on a flap it runs from the foot to the fold. A flap turned to the
right shows its left side, one turned to the left its right side.
"""

from __future__ import annotations

from typing import Any

import numpy as np
from numpy.typing import NDArray

from generator.calculation.striped import PanelStripes
from generator.calculation.worked import TuckSet
from generator.drawing.surface_light import Relief

UPRIGHT = 0.05  # the least lean, as a sine, by which a place on a flap is told from its fold


def stripes_seen(seen: Relief, tucks: TuckSet, stripes: PanelStripes) -> NDArray[np.intp]:
    """Return the number of the stripe that lies uppermost at each place of the grid."""
    return stripes_at(cloth_seen(seen, tucks), stripes)


def stripes_at(places: NDArray[Any], stripes: PanelStripes) -> NDArray[np.intp]:
    """Return the number of the stripe at places of the flat cloth, told from its left cut edge [in]."""
    ends = np.cumsum([float(stripe.width) for stripe in stripes.stripes])
    cloth = places + float(stripes.start)
    found = np.searchsorted(ends, np.mod(cloth, ends[-1]), side="right")
    return np.asarray(np.minimum(found, len(ends) - 1), dtype=np.intp)


def cloth_seen(seen: Relief, tucks: TuckSet) -> NDArray[np.float64]:
    """Return from the left cut edge of the flat cloth [in] what lies uppermost at each place of the grid."""
    wide = seen.owner.shape[1]
    across = (np.arange(wide) + 0.5) / seen.pixels
    feet = np.array([float(foot) for foot in tucks.stitching])
    hidden = np.concatenate([[0.0], np.cumsum([float(take_up) for take_up in tucks.take_ups])])
    panel = float(tucks.left_allowance) + across + hidden[np.searchsorted(feet, across)]
    cloth = np.broadcast_to(panel, seen.owner.shape).copy()
    for number, (mark, take_up, depth) in enumerate(zip(tucks.marks, tucks.take_ups, tucks.depths, strict=True)):
        lean = np.sin(seen.turned[number])[:, np.newaxis]
        up = np.minimum(np.abs(across - feet[number]) / np.maximum(np.abs(lean), UPRIGHT), float(depth))
        side = np.where(lean >= 0, -1.0, 1.0)
        flap = float(mark) + side * float(take_up) / 2 * (1 - up / float(depth))
        uppermost = seen.owner == number
        cloth[uppermost] = flap[uppermost]
    return cloth
