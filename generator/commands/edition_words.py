"""What a run did with kept editions, for the screen: what was done comes in, lines go out."""

from __future__ import annotations

from collections.abc import Iterator

from generator.calculation.worksheet.editions import ChangedNumber
from generator.publishing.jobs import AgainstEditions, Order, Published

_MOST = 8


def edition_lines(order: Order, done: Published) -> Iterator[str]:
    """Give a line for everything that a person should know of the editions of the projects published."""
    if order.mark:
        yield from _kept(order, done)
    for project, against in done.drafts.items():
        yield from _differing(project, against, listed=not done.current)
    for project in done.strays:
        yield (
            f"site/editions/{project}.json keeps editions of a project that is not there; if it has another name now, "
            "give the file that name, too"
        )


def _kept(order: Order, done: Published) -> Iterator[str]:
    if not done.marked:
        yield "Nothing has changed on the sheets since they were last kept; there is nothing to keep under a new mark."
        return
    number = f"{len(done.marked)} project{'' if len(done.marked) == 1 else 's'}"
    yield f"Kept the sheets of {number} under edition mark {order.mark}, in site/editions: {', '.join(done.marked)}"


def _differing(project: str, against: AgainstEditions, *, listed: bool) -> Iterator[str]:
    changed, added, mark = against.changed, against.added, against.stamp.mark
    texts = sum(change.of_words for change in changed)
    counts = {"number": len(changed) - texts, "text": texts}
    counted = " and ".join(f"{count} {name}{'' if count == 1 else 's'}" for name, count in counts.items() if count)
    verb = "differs" if len(changed) == 1 else "differ"
    if counted:
        yield f"{counted} of {project} {verb} from edition mark {mark}: see corrections; keep them with --mark"
    elif added:
        yield f"{project} has sheets that are new since edition mark {mark}: keep them with --mark"
    if not listed:
        return
    yield from map(_line, changed[:_MOST])
    if len(changed) > _MOST:
        yield f"  and {len(changed) - _MOST} more"
    for size, edition in added[:_MOST]:
        yield f"  {size}, {edition}: a new sheet"


def _line(change: ChangedNumber) -> str:
    number = f"{change.piece}, {change.what}" if change.piece else change.what
    return (
        f"  {change.size}, {change.edition}: {number} was {change.was or 'not there'}, is {change.now or 'not there'}"
    )
