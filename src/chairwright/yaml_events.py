"""From a YAML parser's events to plain data with the line of every value, in one pass.

YAML 1.2, and of that only what a hand-written file needs: one document of mappings, lists and
plain values. Anchors, aliases, tags, duplicate keys, NaN and infinity are refused.
"""

from __future__ import annotations

import re
from typing import TYPE_CHECKING, Protocol

from chairwright.errors import InputError, Problem

if TYPE_CHECKING:
    from collections.abc import Iterator

    from ruamel.yaml.error import MarkedYAMLError

DEEPEST = 20
OPENED = ("while parsing a flow ", "while scanning a quoted ")
"""How the parser begins a complaint about something that a bracket or a quote has opened."""
CHECK_AROUND = "Check the indentation (spaces, no tabs), the colons and the quotes around here."
CHECK_CLOSED = "Close every bracket and quote that opens here, and check the commas between."
SPECIAL = {
    "'<stream end>'": "the end of the file",
    "unexpected end of stream": "the end of the file inside a quoted text",
    "<block end>": "the end of the block",
    "'<block mapping start>'": "a key",
    "'<scalar>'": "a value",
}
"""The parser's own names, and what they are to somebody who writes a file."""

Key = str | int
KeyPath = tuple[Key, ...]
Scalar = str | int | float | bool | None

CONTROL = re.compile("[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x84\x86-\x9f\ud800-\udfff\ufffe\uffff]")
_INTEGER = re.compile(r"[-+]?[0-9]{1,18}")
_DECIMAL = re.compile(
    r"[-+]?(?:[0-9]{1,18}\.[0-9]{0,18}|\.[0-9]{1,18}|[0-9]{1,18})(?:[eE][-+]?[0-9]{1,4})?"
)
_NOT_FINITE = re.compile(r"[-+]?\.(?:inf|Inf|INF)|\.(?:nan|NaN|NAN)")
_WORDS: dict[str, bool | None] = {
    **dict.fromkeys(("", "~", "null", "Null", "NULL"), None),
    **dict.fromkeys(("true", "True", "TRUE"), True),
    **dict.fromkeys(("false", "False", "FALSE"), False),
}


class Mark(Protocol):
    """A place in the text."""

    line: int


class Event(Protocol):
    """What is used of the parser's events."""

    start_mark: Mark
    value: str
    style: str | None


class EventReader:
    """Turns the parser's events into data and lines in one pass.

    Parameters
    ----------
    where : str
        The file's name, for messages.
    text : str
        Its content.

    Attributes
    ----------
    lines : dict
        Line of every key and list item, by its path from the top.
    typed : dict
        Every single value as it stands in the file, by its path from the top.
    """

    def __init__(self, where: str, text: str) -> None:
        self.where = where
        self.text = text
        self.lines: dict[KeyPath, int] = {}
        self.typed: dict[KeyPath, str] = {}
        self.problems: list[Problem] = []

    def build(self) -> dict[Key, object]:
        """Read the whole file or raise every problem found."""
        from ruamel.yaml.error import MarkedYAMLError, YAMLError

        try:
            data = self._document(self._events())
        except MarkedYAMLError as error:
            raise self._syntax(*_complaint(error)) from None
        except YAMLError as error:
            raise self._syntax(str(error), 1) from None
        if self.problems:
            raise InputError(*self.problems)
        return data

    def _events(self) -> Iterator[Event]:
        from ruamel.yaml import YAML

        for event in YAML(typ="safe", pure=True).parse(self.text):
            name = type(event).__name__
            if name == "AliasEvent" or getattr(event, "anchor", None) is not None:
                raise self._stop(event, "values must be written out", "an anchor or alias (& or *)")
            if getattr(event, "tag", None) is not None:
                raise self._stop(event, "values must be plain", "a tag (!)")
            yield event

    def _document(self, events: Iterator[Event]) -> dict[Key, object]:
        next(events)  # stream start
        document = next(events)
        if type(document).__name__ == "StreamEndEvent":
            raise self._refusal(self.where, "the file must not be empty", "no value", "Fill it in.")
        first = next(events)
        if type(first).__name__ != "MappingStartEvent":
            raise self._stop(first, "the file must hold keys and values (key: value)", "no key")
        data = self._mapping(events, ())
        next(events)  # document end
        after = next(events)
        if type(after).__name__ != "StreamEndEvent":
            raise self._stop(after, "the file must hold one document", "a second one (---)")
        return data

    def _value(self, event: Event, events: Iterator[Event], at: KeyPath) -> object:
        name = type(event).__name__
        if name == "ScalarEvent":
            self.typed[at] = event.value
            return self._scalar(event)
        if len(at) >= DEEPEST:
            raise self._stop(event, f"values must be nested at most {DEEPEST} deep", "more")
        return (self._mapping if name == "MappingStartEvent" else self._list)(events, at)

    def _mapping(self, events: Iterator[Event], at: KeyPath) -> dict[Key, object]:
        found: dict[Key, object] = {}
        for event in events:
            if type(event).__name__ == "MappingEndEvent":
                break
            key = self._key(event)
            here = (*at, key)
            if key in found:
                self._duplicate(key, event, here)
            else:
                self.lines[here] = event.start_mark.line + 1
            found[key] = self._value(next(events), events, here)
        return found

    def _list(self, events: Iterator[Event], at: KeyPath) -> list[object]:
        found: list[object] = []
        for event in events:
            if type(event).__name__ == "SequenceEndEvent":
                break
            here = (*at, len(found))
            self.lines[here] = event.start_mark.line + 1
            found.append(self._value(event, events, here))
        return found

    def _key(self, event: Event) -> Key:
        key = self._scalar(event) if type(event).__name__ == "ScalarEvent" else None
        if isinstance(key, bool) or not isinstance(key, (str, int)):
            raise self._stop(event, "a key must be a word or a whole number", "something else")
        return key

    def _scalar(self, event: Event) -> Scalar:
        text: str = event.value
        plain = event.style is None or event.style == ""
        if plain and _NOT_FINITE.fullmatch(text):
            return self._not_finite(event, text)
        if not plain:
            if CONTROL.search(text):
                raise self._stop(event, "text must not hold control characters", repr(text[:40]))
            return text
        value = _resolve(text)
        if isinstance(value, float) and value in (float("inf"), float("-inf")):
            return self._not_finite(event, text)
        return value

    def _not_finite(self, event: Event, text: str) -> float:
        remedy = "Write the number, or leave the line out."
        self.problems.append(Problem(self._at(event), "a number must be finite", text, remedy))
        return 0.0

    def _duplicate(self, key: Key, event: Event, here: KeyPath) -> None:
        self.problems.append(
            Problem(
                self._at(event),
                "a key must stand once",
                f"{key!r} a second time (first on line {self.lines[here]})",
                "Keep one of the two.",
            )
        )

    @staticmethod
    def _refusal(where: str, must: str, got: str, remedy: str) -> InputError:
        return InputError(Problem(where, must, got, remedy))

    def _at(self, event: Event) -> str:
        return f"{self.where}:{event.start_mark.line + 1}"

    def _stop(self, event: Event, must: str, got: str) -> InputError:
        return self._refusal(self._at(event), must, got, "Rewrite this line.")

    def _syntax(self, complaint: str, line: int, remedy: str = CHECK_AROUND) -> InputError:
        where = f"{self.where}:{line}"
        return self._refusal(where, "the file must be valid YAML", complaint, remedy)


def _complaint(error: MarkedYAMLError) -> tuple[str, int, str]:
    """What was found, on which line (of a bracket or quote: where it opens), what to do."""
    opened, found = error.context_mark, error.problem_mark or error.context_mark
    words, line = _plain_words(error.problem or str(error)), found.line + 1 if found else 1
    if opened is None or not (error.context or "").startswith(OPENED):
        return words, line, CHECK_AROUND
    start = opened.line + 1
    return (words if start == line else f"{words} (on line {line})"), start, CHECK_CLOSED


def _plain_words(complaint: str) -> str:
    """The parser's complaint as what was got: ``':' where ',' or ']' was expected``."""
    for special, plain in SPECIAL.items():
        complaint = complaint.replace(special, plain)
    found = re.fullmatch(r"expected (.+), but (?:got|found) (.+)", complaint)
    if found is None:
        return complaint.removeprefix("found ")
    return f"{found[2]} where {found[1]} was expected"


def _resolve(text: str) -> Scalar:
    if text in _WORDS:
        return _WORDS[text]
    if _INTEGER.fullmatch(text):
        return int(text)
    if _DECIMAL.fullmatch(text):
        return float(text)
    return text
