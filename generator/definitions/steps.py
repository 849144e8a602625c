"""The steps of a project: groups of keys come in, frozen steps go out, standard ones or the project's own."""

from __future__ import annotations

from typing import Annotated, Any, NamedTuple

from generator.definitions.acts import WrittenAct, read_act
from generator.definitions.caution_rule import Asked, AskedCautions
from generator.definitions.faults import Fault, meant
from generator.definitions.fields import Label, Markdown, Minutes, YesNo
from generator.definitions.keyed import Located
from generator.definitions.making_words import AS_USUAL
from generator.definitions.nodes import Group, Scalar, fold
from generator.definitions.readers import LeafList, choices
from generator.definitions.reading import Reading, filled_words
from generator.definitions.reading_edges import read_edges
from generator.definitions.vocabulary import TOOLS

_LIST: dict[str, Any] = {"anyOf": [{"type": "string"}, {"type": "array", "items": {"type": "string"}}]}
_OWN_KEYS = ("title", "text")


def _standard_step(words: Scalar, reading: Reading) -> str:
    name = fold(filled_words(words))
    if name == AS_USUAL:
        return name
    if name not in reading.steps:
        raise Fault(f"there is no standard step '{name}'{meant(name, reading.steps)}")
    return name


def _target(words: Scalar, reading: Reading) -> Target:
    """Return a piece, or one edge of a piece where a point stands between them."""
    if "." in filled_words(words):
        run = read_edges(words, reading)
        if len(run.edges) != 1:
            raise Fault("one edge is wanted here; write several with commas between them")
        return Target(*run.edges[0])
    name = fold(words.text)
    reading.kind_of(name)
    return Target(name)


def _size(words: Scalar, reading: Reading) -> str:
    name = filled_words(words).strip()
    if name not in reading.sizes:
        raise reading.unknown("sizes", f"there is no size '{name}'{meant(name, reading.sizes)}")
    return name


class Target(NamedTuple):
    """What a step is done on: a piece, or one edge of it."""

    piece: str
    edge: str = ""


class Step(Located):
    """One step: standard steps by name (``use``), or a title and a text of the project's own.

    ``on`` are the pieces or edges it is done on, all where empty; ``does`` says in acts what it does. ``begin_with`` is
    told before the standard text, ``add`` after it. ``cautions`` are told beside those of its tools. ``only_for`` are
    the sizes that have the step, all where empty. ``minutes`` takes the place of the time worked out from the rates.
    """

    use: Annotated[tuple[str, ...], LeafList(_standard_step, _LIST)] = ()
    title: Label = ""
    text: Markdown | None = None
    on: Annotated[tuple[Target, ...], LeafList(_target, _LIST)] = ()
    does: Annotated[tuple[WrittenAct, ...], LeafList(read_act, _LIST)] = ()
    begin_with: Markdown | None = None
    add: Markdown | None = None
    uses: Annotated[tuple[str, ...], choices(TOOLS, "tool")] = ()
    cautions: Annotated[tuple[Asked, ...], AskedCautions()] = ()
    only_for: Annotated[tuple[str, ...], LeafList(_size, _LIST)] = ()
    minutes: Minutes | None = None
    session_ends: YesNo = False

    @property
    def pieces(self) -> tuple[str, ...]:
        """The pieces that it is done on, each once; none where it is done on all."""
        return tuple(dict.fromkeys(target.piece for target in self.on))

    @classmethod
    def check_keys(cls, found: Group, reading: Reading) -> None:
        """Hold that a step is a standard one or the project's own."""
        own = [key for key in _OWN_KEYS if key in found.entries]
        if "use" in found.entries:
            for key in own:
                told = f"'{key}' does not go with 'use'; say more with 'add', or write a step of your own below"
                reading.faults.add(found.entries[key][0].place, told)
        elif len(own) < len(_OWN_KEYS):
            missing = " and ".join(f"'{key}'" for key in _OWN_KEYS if key not in own)
            told = f"{missing} is missing here; a step has 'use', or a 'title' and a 'text'"
            reading.faults.add(found.place, told)
        else:
            for key in (key for key in ("begin with", "add") if key in found.entries):
                told = f"'{key}' goes with 'use'; here write it into the text"
                reading.faults.add(found.entries[key][0].place, told)
