"""The weave of cloth: where each place of a picture lies on the flat cloth comes in, its bumps and its tone go out.

A plain weave: every thread goes over one and under the next. The threads follow the cloth round every fold.
"""

from __future__ import annotations

import numpy as np

from generator.drawing.renders.grids import Grid, chance

FINEST = 26.0  # threads to an inch of a stout linen
LEAST_WIDE = 3  # places of the picture for one thread; finer ones would swim
TONE = 0.07  # how far the tone of one thread is from the next
BUMP = 0.22  # of the width of a thread: how high it goes over another


def threads_to_an_inch(pixels: float) -> float:
    """Return how many threads are drawn to an inch: whole places wide, so that they do not swim."""
    return pixels / max(LEAST_WIDE, round(pixels / FINEST))


def woven(across: Grid, along: Grid, pixels: float) -> tuple[Grid, Grid]:
    """Return how high the cloth stands by its threads [in], and its tone about 1, from its places [in]."""
    number = np.float32(threads_to_an_inch(pixels))
    places = (across * number, along * number)
    warp, weft = (np.floor(place).astype(np.int64) for place in places)
    over = ((warp + weft) & 1).astype(np.float32)
    round_warp, round_weft = (_round(place) for place in places)
    bump = over * round_warp * (np.float32(0.55) + np.float32(0.45) * round_weft)
    bump += (1 - over) * round_weft * (np.float32(0.55) + np.float32(0.45) * round_warp)
    tone = over * (chance(warp, 1) - np.float32(0.5)) + (1 - over) * (chance(weft, 2) - np.float32(0.5))
    shown = _shown(places[0]) * np.float32(BUMP) / number
    return np.asarray(bump * shown, dtype=np.float32), np.asarray(1 + 2 * np.float32(TONE) * tone, dtype=np.float32)


def _round(place: Grid) -> Grid:
    """The section of a thread: 0 at its sides, 1 in its middle."""
    beside = 2 * (place - np.floor(place)) - 1
    return np.asarray(1 - beside * beside, dtype=np.float32)


def _shown(place: Grid) -> Grid:
    """How much of the bumps a picture can show: none where more than a thread lies on two places of it."""
    step = np.abs(np.diff(place, axis=1, append=place[:, -1:]))
    return np.asarray(np.clip(2 - 4 * step, 0, 1), dtype=np.float32)
