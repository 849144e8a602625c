"""The tabs at the ends of a zip: a tab of a project file comes in, its sizes go out."""

from __future__ import annotations

from generator.calculation.pieces.closings import zip_tab
from generator.calculation.worked_piece import Made
from generator.calculation.worksheet.pieces.sizes import PieceSizes, whole
from generator.calculation.worksheet.scope import Scope
from generator.definitions.pieces.tabs import ZipTab
from generator.lengths import read_length

# As wide as the tape of a common zip; common practice, no source.
_WIDE = {"inch": read_length("1 1/4 in"), "metric": read_length("3 cm")}


def tab_sizes(scope: Scope, model: ZipTab) -> PieceSizes:
    """Return the sizes of a tab, which is folded across its middle."""
    wide = _WIDE[scope.edition.name]
    shown, cut = zip_tab(scope.value(model.edge), scope.value(model.zip), scope.seam, scope.edition)
    finished = wide, shown
    made = Made(stitched=wide)
    return PieceSizes(whole((wide, cut), finished, {}), finished, {}, {"shown": shown, "edge": wide}, made)
