"""What a template may do: an environment of the templates' library comes in, whatever else it asks for is refused.

A theme may come from a stranger. Its templates read values that they are given and call what the tool hands them;
nothing leads from there to the files, the system or the program. A fault is told with the template and its line.
"""

from __future__ import annotations

import traceback
from collections.abc import Callable, Hashable, Iterator, Mapping
from contextlib import contextmanager
from dataclasses import is_dataclass
from datetime import date, time
from fractions import Fraction
from functools import lru_cache
from pathlib import Path, PurePath
from typing import Any

from jinja2 import (
    Environment,
    FileSystemLoader,
    StrictUndefined,
    Template,
    TemplateError,
    TemplateNotFound,
    TemplateSyntaxError,
)
from jinja2.environment import TemplateModule
from jinja2.exceptions import SecurityError
from jinja2.runtime import BlockReference, LoopContext, Macro, TemplateReference, Undefined
from jinja2.sandbox import ImmutableSandboxedEnvironment
from jinja2.utils import Namespace

from generator.definitions.theme import OWN_THEMES
from generator.errors import FaultyFileError, Finding, Place, TuckwrightError

GLOBALS = ("range", "dict", "namespace")
FILTERS = (
    *("abs", "batch", "capitalize", "default", "e", "escape", "first", "float", "groupby", "int", "join", "last"),
    *("length", "list", "lower", "map", "max", "min", "reject", "rejectattr", "replace", "reverse", "round", "select"),
    *("selectattr", "slice", "sort", "string", "sum", "title", "trim", "unique", "upper"),
)
TESTS = (
    *("boolean", "defined", "divisibleby", "eq", "equalto", "even", "false", "ge", "gt", "in", "integer", "iterable"),
    *("le", "lower", "lt", "mapping", "ne", "none", "number", "odd", "sameas", "sequence", "string", "true"),
    *("undefined", "upper", "==", "!=", "<", "<=", ">", ">="),
)
# Values that a template may ask beside what the tool worked out: words, numbers, days, lists, and its own loops.
_PLAIN = (str, int, float, Fraction, date, time, tuple, list, Mapping, LoopContext, Namespace)
_WORKED_OUT = "generator."
_METHODS: Mapping[type, tuple[str, ...]] = {
    str: ("endswith", "lower", "replace", "split", "splitlines", "startswith", "strip", "title", "upper"),
    Mapping: ("get", "items", "keys", "values"),
    LoopContext: ("changed", "cycle"),
}


class _Folders(FileSystemLoader):
    """Templates in folders, the first that has one; a file that comes before another later is seen too."""

    def get_source(self, environment: Environment, template: str) -> tuple[str, str, Callable[[], bool]]:
        """Return the text of a template, its file, and what tells whether that is still the one to take."""
        source, file, unchanged = super().get_source(environment, template)
        return source, file, lambda: unchanged() and self._file(template) == file

    def _file(self, template: str) -> str:
        files = (str(Path(folder) / template) for folder in self.searchpath)
        return next((file for file in files if Path(file).is_file()), "")


class Sandbox(ImmutableSandboxedEnvironment):
    """Templates in folders, with the few functions, filters and tests that pages and sheets need."""

    intercepted_binops = frozenset({"*", "**", "%"})

    def __init__(self, folders: tuple[Path, ...]) -> None:
        self.files = _Folders([str(folder) for folder in folders])
        super().__init__(
            loader=self.files,
            autoescape=True,
            undefined=StrictUndefined,
            trim_blocks=True,
            lstrip_blocks=True,
            keep_trailing_newline=True,
        )
        self.folders = folders
        self.template_class = _ToldTemplate
        self.globals = {name: self.globals[name] for name in GLOBALS}
        self.filters = {name: self.filters[name] for name in FILTERS}
        self.tests = {name: self.tests[name] for name in TESTS}

    def is_safe_attribute(self, obj: Any, attr: str, value: Any) -> bool:
        """Return whether a template may ask this of a value: never a file, of plain values only what reads them."""
        if _is_worked_out(type(obj)) and not attr.startswith("_"):  # type: ignore[arg-type]  # every type is hashable
            return True
        if not super().is_safe_attribute(obj, attr, value) or isinstance(obj, type | PurePath | Undefined):
            return False
        if isinstance(obj, TemplateReference | BlockReference) or type(obj).__module__.startswith(_WORKED_OUT):
            return True
        if isinstance(obj, TemplateModule):
            return not callable(value) or isinstance(value, Macro)
        if callable(value):
            return any(isinstance(obj, sort) and attr in names for sort, names in _METHODS.items())
        return isinstance(obj, _PLAIN)

    def wrap_str_format(self, value: Any) -> None:
        """Give no form of ``format``: one number in it can fill the machine."""

    def call_binop(self, context: Any, operator: str, left: Any, right: Any) -> Any:
        """Return a product or a remainder of numbers; powers, and texts taken many times, can fill the machine."""
        if operator == "**" or not all(isinstance(value, int | float | Fraction) for value in (left, right)):
            raise SecurityError(f"'{operator}' is not for these values in a template")
        return super().call_binop(context, operator, left, right)

    @contextmanager
    def telling(self, name: str) -> Iterator[None]:
        """Tell a fault in a template with its file and line.

        What goes wrong in the tool while a template of its own calls it is a fault of the tool, and stays as it is.
        """
        try:
            yield
        except TuckwrightError:
            raise
        except (TemplateSyntaxError, TemplateNotFound) as fault:
            raise FaultyFileError([self._unread(fault, name)]) from fault
        except Exception as fault:
            place, own = self._place(fault)
            if place is None or (own and not isinstance(fault, TemplateError)):
                raise
            raise FaultyFileError([Finding("error", _words(fault), place)]) from fault

    def _unread(self, fault: TemplateSyntaxError | TemplateNotFound, name: str) -> Finding:
        """Return what is wrong with a template that cannot be read."""
        if isinstance(fault, TemplateSyntaxError):
            place = Place(self._shown(fault.filename or name), fault.lineno)
            return Finding("error", f"the template cannot be read here: {fault.message}", place)
        used = self._place(fault)[0] or Place(self._shown(name))
        return Finding("error", f"there is no template '{fault.name}', neither here nor in the plain theme", used)

    def _place(self, fault: BaseException) -> tuple[Place | None, bool]:
        """Return where in a template a fault arose, and whether that template is one of the tool's own."""
        frames = traceback.extract_tb(fault.__traceback__)
        for frame in reversed(frames):
            path = Path(frame.filename)
            if any(path.is_relative_to(folder) for folder in self.folders):
                return Place(self._shown(frame.filename), frame.lineno or 1), path.is_relative_to(OWN_THEMES)
        return None, False

    def _shown(self, file: str) -> str:
        """Return a template as messages show it: its theme, then its way in the folder of the theme."""
        for folder in self.folders:
            if Path(file).is_relative_to(folder):
                return f"{folder.parent.name}/templates/{Path(file).relative_to(folder).as_posix()}"
        return f"{self.folders[0].parent.name}/templates/{file}"


@lru_cache(maxsize=500)
def _is_worked_out(kind: Hashable) -> bool:
    """Whether values of a kind are plain records of the tool, of which a template may ask whatever has a name."""
    is_record = isinstance(kind, type) and is_dataclass(kind) and kind.__bases__ == (object,)
    return is_record and kind.__module__.startswith(_WORKED_OUT)


def _words(fault: Exception) -> str:
    """Return what a template does wrong, in words for whoever wrote it."""
    if isinstance(fault, SecurityError):
        return f"a template may not do this: {fault}; the guide to themes says what it may"
    if isinstance(fault, RecursionError):
        return "the template calls itself without end"
    if isinstance(fault, OverflowError):
        return "a template counts to 100000 at most"
    return f"the template cannot be filled in here: {fault}"


class _ToldTemplate(Template):
    """A template whose faults are told with their place."""

    environment: Sandbox

    def render(self, *args: Any, **values: Any) -> str:
        """Return the template filled in."""
        with self.environment.telling(self.name or ""):
            return super().render(*args, **values)
