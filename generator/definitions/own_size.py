"""A size that stands in no file: names and texts from the command line come in, a Size goes out."""

from __future__ import annotations

from collections.abc import Mapping

from generator.definitions.faults import Fault, meant
from generator.definitions.names import Names
from generator.definitions.nodes import Scalar, fold
from generator.definitions.reading import Reading
from generator.definitions.sizes import Size, dimensions, size_value
from generator.definitions.values import Formula
from generator.errors import FaultyFileError, Finding, LengthError, Place
from generator.lengths import Edition, read_length

_SHOWN = "--with"


def own_size(sizes: Mapping[str, Size], name: str, values: Mapping[str, str], edition: Edition) -> Size:
    """Return a size of one student's own.

    Parameters
    ----------
    sizes : Mapping of str to Size
        The sizes of the file; the new one must give the same names.
    name : str
        What to call the size.
    values : Mapping of str to str
        A length or a number for every name.
    edition : Edition
        Whose unit a bare number has where a length is wanted.

    Returns
    -------
    Size
        The new size.

    Raises
    ------
    FaultyFileError
        With every name that is missing, unknown or not readable.
    """
    wanted = dimensions(sizes)
    findings: list[Finding] = []
    given = {fold(key): text for key, text in values.items()}
    for missing in [key for key in wanted if key not in given]:
        example = f"{missing}={'3' if wanted[missing] == 0 else '17' if edition.unit == 'in' else '43'}"
        findings.append(_finding(f"'{missing}' is missing; add for example {example}"))
    read: dict[str, Formula] = {}
    for key, text in given.items():
        if key not in wanted:
            findings.append(_finding(f"the sizes of this project give no '{key}'{meant(key, wanted)}"))
            continue
        try:
            read[key] = _value(text, wanted[key], edition)
        except Fault as fault:
            findings.append(_finding(f"{_SHOWN} {key}={text}: {fault.text}"))
    if findings:
        raise FaultyFileError(findings)
    return Size(label=name, values={key: read[key] for key in wanted})


def _finding(text: str) -> Finding:
    return Finding("error", text)


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
