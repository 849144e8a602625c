"""A size that no project lists: names and texts, typed or from a class file, come in, a Size goes out."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from generator.definitions.faults import Fault, meant
from generator.definitions.in_proportion import found_by
from generator.definitions.names import Names
from generator.definitions.nodes import Scalar, fold
from generator.definitions.reading import Reading
from generator.definitions.sizes import Size, dimensions, size_value
from generator.definitions.values import Formula
from generator.errors import FaultyFileError, Finding, LengthError, Place
from generator.lengths import Edition, read_length
from generator.limits import LONGEST_LABEL

_SHOWN = "--with"


def own_size(
    sizes: Mapping[str, Size], values: Mapping[str, str], edition: Edition, places: Mapping[str, Place] | None = None
) -> Size:
    """Return a size of one student's own, labelled by its values.

    Parameters
    ----------
    sizes : Mapping of str to Size
        The sizes of the file; the new one must give the same names.
    values : Mapping of str to str
        A length or a number for every name. Where the sizes are those of a table of body measures, the first of them
        finds the others, in proportion between two rows.
    edition : Edition
        Whose unit a bare number has where a length is wanted.
    places : Mapping of str to Place, optional
        Where each value stands in a file, and under '' where all of them do; without it they were typed.

    Returns
    -------
    Size
        The new size.

    Raises
    ------
    FaultyFileError
        With every name that is missing, unknown or not readable.
    """
    wanted, places = dimensions(sizes), places or {}
    given = {fold(key): text for key, text in values.items()}
    given = {**_of_table(sizes, given, edition), **given}
    findings = list(_missing(wanted, given, edition, places))
    read: dict[str, Formula] = {}
    for key, text in given.items():
        if key not in wanted:
            told = f"the sizes of this project give no '{key}'{meant(key, wanted)}"
            findings.append(Finding("error", told, places.get(key)))
            continue
        try:
            read[key] = _value(text, wanted[key], edition)
        except Fault as fault:
            findings.append(_finding(key, text, fault, places.get(key)))
    label = ", ".join(f"{key} {value.text}" for key, value in read.items())
    if len(label) > LONGEST_LABEL or label in sizes:
        told = f"'{label[:LONGEST_LABEL]}' cannot stand on a sheet as the name of these measures; write plain lengths"
        findings.append(Finding("error", told, places.get("")))
    if findings:
        raise FaultyFileError(findings)
    return Size(label=label, values={key: read[key] for key in wanted})


def _of_table(sizes: Mapping[str, Size], given: Mapping[str, str], edition: Edition) -> dict[str, str]:
    """What a table of body measures gives beside the measure that decides; nothing of other sizes."""
    name = next((name for name, sort in dimensions(sizes).items() if sort == 1), "")
    if name not in given or not all(size.source for size in sizes.values()):
        return {}
    try:
        return found_by(name, _value(given[name], 1, edition).fixed(edition), sizes, edition)
    except Fault:
        return {}


def _missing(
    wanted: Mapping[str, int | None], given: Mapping[str, str], edition: Edition, places: Mapping[str, Place]
) -> Iterator[Finding]:
    for name in [name for name in wanted if name not in given]:
        example = "3" if wanted[name] == 0 else "17" if edition.unit == "in" else "43"
        written = f"{name}: {example}" if places else f"{name}={example}"
        yield Finding("error", f"'{name}' is missing; add for example {written}", places.get(""))


def _finding(key: str, text: str, fault: Fault, place: Place | None) -> Finding:
    """Return a fault at its place in a file, or with what was typed."""
    if place:
        return Finding("error", fault.text, Scalar(text, place).at(fault.offset))
    return Finding("error", f"{_SHOWN} {key}={text}: {fault.text}")


def _value(text: str, dimension: int | None, edition: Edition) -> Formula:
    if dimension == 1:
        text = _with_unit(text, edition)
    words = Scalar(text, Place(_SHOWN))
    formula = size_value(words, Reading(names=Names(none="only a length or a number can stand here")))
    if formula.dimension != dimension:
        raise Fault("a plain number is wanted here, this is a length")
    return formula


def _with_unit(text: str, edition: Edition) -> str:
    """Return a length with its unit: that of the edition where it names none."""
    try:
        read_length(text)
    except LengthError:
        try:
            read_length(text, edition.unit)
        except LengthError:
            return text
        return f"{text.strip()} {edition.unit}"
    return text
