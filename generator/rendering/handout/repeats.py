"""What an act would tell or show once more: the acts before it come in, what is new in it goes out.

A beginner reads how a thing is done where it is done first. Done again, an act says in a sentence what to do, sends her
there, and tells in full whatever differs by a word.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence

from generator.drawing.sizes import Heights
from generator.rendering.handout.pictures import Drawer

# So much must be said again before it is told short: less is read here sooner than it is found there [letters].
_WORTH = 200
_WIDTH = 77.0
# Boxes of these are ticked, or their numbers read, while the work goes on.
_AT_HAND = ("layout ", "turns ", "ruled rows ", "fold marks ", "cross fold marks ")
# These differ from piece to piece by their lengths only, which stand in the words and in the cut table.
_ALIKE = ("assembly frill ",)
_SENTENCE = re.compile(r"(.+?)[.?!](?=\s|$)", re.DOTALL)


def told_short(text: str, told: Mapping[str, int]) -> str:
    r"""Return a text that tells in a sentence what was told word for word, with the step that has all of it.

    Parameters
    ----------
    text : str
        Markdown.
    told : mapping of str to int
        The number of the step that told a paragraph first.

    Examples
    --------
    >>> before = "Fold the edge. " + "Press it well. " * 15
    >>> told_short(f"{before}\n\nIt is 3 in wide.", {before.strip(): 4})
    'Fold the edge (how: step 4).\n\nIt is 3 in wide.'
    """
    paragraphs = paragraphs_of(text)
    again: dict[int, list[str]] = {}
    for one in paragraphs:
        if one in told and not _has_items(one):
            again.setdefault(told[one], []).append(one)
    worth = {step: some for step, some in again.items() if sum(map(len, some)) >= _WORTH}
    return "\n\n".join(_shortened(paragraphs, worth))


def _shortened(paragraphs: Sequence[str], worth: Mapping[int, Sequence[str]]) -> Iterator[str]:
    for one in paragraphs:
        step = next((step for step, some in worth.items() if one in some), 0)
        if not step:
            yield one
        elif one == worth[step][0]:
            yield f"{_first_sentence(one)} (how: step {step})."


def paragraphs_of(text: str) -> tuple[str, ...]:
    """Return the paragraphs of a text in Markdown."""
    return tuple(one.strip() for one in text.split("\n\n") if one.strip())


def _has_items(paragraph: str) -> bool:
    """Whether a paragraph is or has a list: what stands there is numbers more than ways."""
    return bool(re.search(r"^\s*([-*]|\d+\.)\s", paragraph, re.MULTILINE))


def _first_sentence(paragraph: str) -> str:
    found = _SENTENCE.match(paragraph)
    return found[1] if found else paragraph


def with_places(text: str, steps: Sequence[int]) -> str:
    """Return a text that tells where its pictures stand that were shown before, unless it sends there already."""
    wanted = [step for step in steps if f"step {step})" not in text]
    return f"{text}\n\nThe picture stands at step {' and '.join(map(str, wanted))}." if wanted else text


class ShownBefore:
    """The pictures that acts have shown, and in which step each stands."""

    def __init__(self, drawer: Drawer) -> None:
        self._drawer = drawer
        self._steps: dict[str, int] = {}

    def add(self, keys: Sequence[str], step: int) -> None:
        """Take note of the pictures of a step."""
        self._steps |= dict.fromkeys(keys, step)

    def before(self, key: str) -> int:
        """Return the step where a picture was shown, or one that looks the same; 0 where none was."""
        if key.startswith(_AT_HAND):
            return 0
        return next((step for shown, step in self._steps.items() if self._look_same(shown, key)), 0)

    def _look_same(self, one: str, other: str) -> bool:
        if one == other:
            return True
        if one.partition(" ")[0] != other.partition(" ")[0]:
            return False
        if any(one.startswith(kind) and other.startswith(kind) for kind in _ALIKE):
            return True
        high = self._drawer.heights(one, _WIDTH)
        return high == self._drawer.heights(other, _WIDTH) and self._drawn(one, high) == self._drawn(other, high)

    def _drawn(self, key: str, high: Heights) -> list[str]:
        return [picture.svg for picture in self._drawer.pictures(key, _WIDTH, high.natural)]
