"""By which measure a size is chosen: what the project says of its sizes comes in, the measure goes out."""

from __future__ import annotations

from generator.calculation.worked_project import DecidingMeasure
from generator.calculation.worksheet.scope import Scope


def deciding_measure(scope: Scope) -> DecidingMeasure | None:
    """Return the measure by which a size is told from the others.

    Without a word in the project it is the first length that the size gives itself; None where it gives none.
    """
    said = scope.project.measured_by
    if said is not None:
        return DecidingMeasure(said.called or said.shown.text, scope.value(said.shown), said.how)
    values = scope.project.sizes[scope.size].values
    name = next((name for name, value in values.items() if value.dimension == 1), None)
    return None if name is None else DecidingMeasure(name, scope.value(values[name]))
