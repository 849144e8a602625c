"""By which measure a size is chosen: what the project says of its sizes comes in, the measure goes out."""

from __future__ import annotations

from generator.calculation.worked_project import DecidingMeasure
from generator.calculation.worksheet.scope import Scope
from generator.definitions.between import deciding_length


def deciding_measure(scope: Scope) -> DecidingMeasure | None:
    """Return the measure by which a size is told from the others.

    Without a word in the project it is the length by which sizes between the named ones go on, else the first that the
    size gives itself; None where it gives none.
    """
    said = scope.project.measured_by
    if said is not None:
        return DecidingMeasure(said.called or said.shown.text, scope.value(said.shown), said.how)
    name = deciding_length(scope.project.between, scope.project.sizes)
    values = scope.project.sizes[scope.size].values
    return DecidingMeasure(name, scope.value(values[name])) if name else None
