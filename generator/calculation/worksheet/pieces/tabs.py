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
    zip_length = scope.value(model.zip)
    shown, cut = zip_tab(scope.value(model.edge), zip_length, scope.seam, scope.edition)
    finished = wide, shown
    made = Made(stitched=wide)
    # Of each tab half its cut length is left when it is folded.
    measures = {"shown": shown, "with zip": zip_length + cut, "edge": wide}
    return PieceSizes(whole((wide, cut), finished, {}), finished, {}, measures, made)
