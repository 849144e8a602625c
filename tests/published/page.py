"""The page of what was checked: case files come in, Markdown goes out.

``python -m tests.published.page`` writes ``site/pages/what-was-checked.md``.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from pathlib import Path

from .case import Case, sources, subjects

PAGE = Path(__file__).resolve().parents[2] / "site" / "pages" / "what-was-checked.md"
TOP = """\
# What was checked

The sums behind the sheets are compared with what others have printed: books, standards, bulletins and school pages,
and a few of our own by plain geometry. Each row is worked again whenever the tool is changed; {count} values agree now.
Where a source is wrong, a *printed slip*, we hold that the sheets do not repeat it: there are {slips} of these.
Where a source prints a rule, the row shows what the rule comes to.

A number that agrees with a book is not yet a number that suits your cloth: sew a sample.
"""


def page_text() -> str:
    """Return the whole page as Markdown."""
    files = subjects()
    every = [case for subject in files for case in subject["cases"]]
    parts = [TOP.format(count=len(every), slips=sum(bool(case.slip) for case in every))]
    parts += ["\n".join(_section(one["subject"], one["about"], one["cases"])) for one in files]
    return "\n".join([*parts, "\n".join(_sources())]) + "\n"


def _section(subject: str, about: str, cases: Iterable[Case]) -> Iterator[str]:
    """The heading and the table of one subject."""
    described = sources()
    yield f"## {subject}\n"
    yield f"{about}\n"
    yield from _line("What was checked", "Source", "It says", "The sheets have", "Result")
    yield from _line("---", "---", "---", "---", "---")
    for case in cases:
        yield from _line(case.check, _cited(case, described), case.prints, case.told(), _outcome(case))
    yield ""


def _line(*cells: str) -> Iterator[str]:
    yield "| " + " | ".join(cell.replace("|", "\\|") for cell in cells) + " |"


def _cited(case: Case, described: Mapping[str, Mapping[str, str]]) -> str:
    memory = " (from memory)" if described[case.source]["known"] == "from memory" else ""
    return case.source + (f", {case.at}" if case.at else "") + memory


def _outcome(case: Case) -> str:
    """How closely a value agrees; a case that does not agree has no place on the page."""
    holds = case.refuses in case.refusal() if case.refuses else case.agrees(case.expected)
    if not holds:
        raise ValueError(f"this case does not agree: {case.check}")
    if case.slip:
        return f"printed slip, not repeated: {case.slip}"
    how, _, step = case.close.partition(" ")
    plain = "agrees" if case.gives is None else "agrees with the rule"
    told = {
        "to": f"{plain}, to {step}",
        "at": "not more" if step == "most" else "not less",
        "between": "lies between",
        "says": "told",
    }
    return told.get(how, plain)


def _sources() -> Iterator[str]:
    """The list of sources."""
    yield "## Sources\n"
    yield "Read in stored copies, unless a line says otherwise; page numbers where the copy showed them.\n"
    for name, source in sorted(sources().items()):
        yield f"- **{name}**: {source['title']}" + ("" if source["known"] == "read" else f" ({source['known']})")


if __name__ == "__main__":
    PAGE.parent.mkdir(parents=True, exist_ok=True)
    PAGE.write_text(page_text(), encoding="utf-8")
