"""Words in a row: some come in, one phrase goes out."""

from __future__ import annotations

from collections.abc import Sequence


def listed(words: Sequence[str]) -> str:
    """Return words with commas between them and 'and' before the last; nothing of none.

    Examples
    --------
    >>> listed(["top", "left", "right"]), listed(["top", "left"]), listed(["top"]), listed([])
    ('top, left and right', 'top and left', 'top', '')
    """
    return " and ".join([", ".join(words[:-1]), words[-1]] if len(words) > 1 else words)
