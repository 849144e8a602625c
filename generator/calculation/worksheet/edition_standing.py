"""How the numbers of a project stand to its published editions: both come in, what differs from the newest goes out."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from generator.calculation.worksheet.editions import ChangedNumber, PublishedEdition, SheetName, changed_numbers


@dataclass(frozen=True, slots=True)
class EditionStanding:
    """The newest edition mark, empty where nothing was ever published under one, and what is otherwise now.

    ``changed`` are numbers and texts that read otherwise, ``added`` sheets that the newest edition does not have.
    """

    mark: str
    changed: tuple[ChangedNumber, ...] = ()
    added: tuple[SheetName, ...] = ()

    @property
    def draft(self) -> bool:
        """Whether what is printed is not, all of it, that of the newest edition."""
        return not self.mark or bool(self.changed or self.added)


def standing(editions: Sequence[PublishedEdition], now: PublishedEdition) -> EditionStanding:
    """Return how the sheets of now stand to the published editions of a project.

    Parameters
    ----------
    editions : sequence of PublishedEdition
        In the order of publishing.
    now : PublishedEdition
        The sheets of now; its mark and day do not count.

    Examples
    --------
    >>> now = PublishedEdition("tray", "", "", {("small", "inch"): {": girth": "20"}})
    >>> standing((), now).draft
    True
    >>> kept = PublishedEdition("tray", "2031-03", "2031-03-14", {("small", "inch"): {": girth": "20"}})
    >>> standing((kept,), now)
    EditionStanding(mark='2031-03', changed=(), added=())
    """
    if not editions:
        return EditionStanding("")
    newest = editions[-1]
    added = tuple(name for name in now.sheets if name not in newest.sheets)
    return EditionStanding(newest.mark, changed_numbers(newest, now), added)
