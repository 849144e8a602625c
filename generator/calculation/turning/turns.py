"""A row told to the person who sews it: turns as seen on the chart come in, words in the order of sewing go out."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from functools import lru_cache
from itertools import groupby

from generator.calculation.worked import Hand, Turn

TOWARD, AWAY, UPRIGHT = "toward", "away", "upright"

_LONGEST_LEAD = 8
_LONGEST_REPEAT = 24
# All rows of a project in every size are some hundred; each is told on several pages.
_REMEMBERED = 1000


def row_words(turns: Sequence[Turn], start: Hand) -> tuple[str, ...]:
    """Return the turns of a row in words, in the order in which they are sewn over.

    Right side up, the work feeds away from the sewer, so what is not yet sewn lies nearer to her. Begun at the left
    end, the tucks not yet sewn lie to the right: turned right is *toward*. Begun at the right end, order and words are
    both the other way round.

    Parameters
    ----------
    turns : Sequence[Turn]
        One turn a tuck, from the left as seen on the right side.
    start : Hand
        The end of the row where sewing begins.

    Returns
    -------
    tuple[str, ...]
        ``toward``, ``away`` or ``upright``, one a tuck, the tuck that is met first coming first.

    Examples
    --------
    >>> row_words((Turn.RIGHT, Turn.LEFT, Turn.LEFT), "left")
    ('toward', 'away', 'away')
    >>> row_words((Turn.RIGHT, Turn.LEFT, Turn.LEFT), "right")
    ('toward', 'toward', 'away')

    References
    ----------
    Derived in the docstring above.
    """
    ahead = Turn.RIGHT if start == "left" else Turn.LEFT
    met = tuple(turns) if start == "left" else tuple(turns)[::-1]
    return tuple(UPRIGHT if turn is Turn.UPRIGHT else TOWARD if turn is ahead else AWAY for turn in met)


def starting_hand(row: int, start: Hand, *, back_and_forth: bool) -> Hand:
    """Return the end at which a row is begun.

    Examples
    --------
    >>> [starting_hand(row, "right", back_and_forth=True) for row in (1, 2, 3)]
    ['right', 'left', 'right']
    """
    if row % 2 or not back_and_forth:
        return start
    return "left" if start == "right" else "right"


def lighter_hand(ruled: Fraction, length: Fraction) -> Hand:
    """Return the end at which a row is begun so that less of the panel lies under the arm of the machine.

    The work feeds away from the sewer, so a row begun at the right end has the top edge at her left hand, and all that
    lies below the row is under the arm, which stands at her right; begun at the left end, all that lies above it.

    Parameters
    ----------
    ruled : Fraction
        Where the row is ruled, from the top cut edge [in].
    length : Fraction
        Length of the panel as cut [in].

    Returns
    -------
    Hand
        ``left`` in the upper half, ``right`` in the lower one and in the middle.

    Examples
    --------
    >>> [lighter_hand(Fraction(ruled), Fraction(18)) for ruled in (2, 9, 16)]
    ['left', 'right', 'right']

    References
    ----------
    Derived in the docstring above.
    """
    return "left" if 2 * ruled < length else "right"


def spoken_row(words: Sequence[str]) -> str:
    """Return the words of a row as a short sentence in which repeats are folded together.

    Parts are joined by ``; then``. A part is a list of groups, a repeat of groups told as ``4 times:``, or two words
    that take turns, told with their number and the last word as a check. The shortest telling is taken.

    Examples
    --------
    >>> spoken_row(("toward", "away") * 8 + ("toward",))
    'toward, away and so on in turn for 17 tucks, ending with toward'
    >>> spoken_row(("toward", "toward", "toward", "away", "away") * 4 + ("upright",))
    '4 times: 3 toward, 2 away; then 1 upright'
    >>> spoken_row(("away",) * 12)
    'all 12 away'
    """
    return _spoken(tuple(words))


@lru_cache(maxsize=_REMEMBERED)
def _spoken(told: tuple[str, ...]) -> str:
    if not told:
        return "no tucks"
    if len(set(told)) == 1:
        return told[0] if len(told) == 1 else f"all {len(told)} {told[0]}"
    choices = [(_runs(told), 0, _groups(told)), *_in_turn(told), *_in_repeats(told)]
    return min(choices, key=lambda choice: choice[:2])[2]


def row_in_groups(words: Sequence[str]) -> str:
    """Return the words of a row to be read at a glance: the shortest group that makes up the row, and how often.

    A row that no group makes up is told as by :func:`spoken_row`.

    Parameters
    ----------
    words : Sequence[str]
        Words in the order of sewing.

    Returns
    -------
    str
        Without a stop.

    Examples
    --------
    >>> row_in_groups(("toward", "away") * 10)
    'toward, away: 10 times'
    >>> row_in_groups(("toward", "toward", "away") * 3 + ("toward",))
    '2 toward, away: 3 times, then toward'
    >>> row_in_groups(("away",) * 12)
    'all 12 away'

    References
    ----------
    Derived in the docstring above.
    """
    told = tuple(words)
    for period in range(2, len(told) // 2 + 1):
        if len(set(told)) > 1 and _kept_up(told, 0, period) == len(told):
            times, over = divmod(len(told), period)
            rest = f", then {_short_groups(told[-over:])}" if over else ""
            return f"{_short_groups(told[:period])}: {times} times{rest}"
    return spoken_row(told)


def _short_groups(words: Sequence[str]) -> str:
    runs = [(word, len(list(alike))) for word, alike in groupby(words)]
    return ", ".join(word if number == 1 else f"{number} {word}" for word, number in runs)


def _groups(words: Sequence[str]) -> str:
    """Tell neighbours that are alike together: ``3 toward, 2 away``, and plainly where none are."""
    runs = [(word, len(list(alike))) for word, alike in groupby(words)]
    if all(number == 1 for _, number in runs) and len(runs) > 1:
        return ", ".join(word for word, _ in runs)
    return ", ".join(f"{number} {word}" for word, number in runs)


def _runs(words: Sequence[str]) -> int:
    return sum(1 for _ in groupby(words))


def _kept_up(words: Sequence[str], lead: int, period: int) -> int:
    """How many words from ``lead`` on repeat themselves after ``period`` words."""
    end = lead + period
    while end < len(words) and words[end] == words[end - period]:
        end += 1
    return end - lead


def _joined(lead: Sequence[str], middle: str, tail: Sequence[str]) -> str:
    parts = [_groups(lead) if lead else "", middle, _groups(tail) if tail else ""]
    return "; then ".join(part for part in parts if part)


def _in_turn(words: tuple[str, ...]) -> list[tuple[int, int, str]]:
    """Tellings in which two words take turns, each with its cost (groups to read) and its lead."""
    found = []
    for lead in range(min(_LONGEST_LEAD, len(words) - 2) + 1):
        first, second = words[lead : lead + 2]
        length = _kept_up(words, lead, 2)
        if first == second or length < 4:
            continue
        tail = words[lead + length :]
        told = f"{first}, {second} and so on in turn for {length} tucks, ending with {words[lead + length - 1]}"
        found.append((_runs(words[:lead]) + 2 + _runs(tail), lead, _joined(words[:lead], told, tail)))
    return found


def _in_repeats(words: tuple[str, ...]) -> list[tuple[int, int, str]]:
    """Tellings in which a list of groups is repeated, each with its cost (groups to read) and its lead.

    A list that ends as it begins is left out: at each repeat its last and first group would have to be read as one.
    """
    found = []
    for lead in range(min(_LONGEST_LEAD, len(words)) + 1):
        for period in range(3, min(_LONGEST_REPEAT, (len(words) - lead) // 2) + 1):
            times = _kept_up(words, lead, period) // period
            repeat, tail = words[lead : lead + period], words[lead + times * period :]
            if times < 2 or repeat[0] == repeat[-1]:
                continue
            cost = _runs(words[:lead]) + _runs(repeat) + 1 + _runs(tail)
            found.append((cost, lead, _joined(words[:lead], f"{times} times: {_groups(repeat)}", tail)))
    return found
