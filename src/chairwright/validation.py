"""Turning what a schema complains about into problems with a line, a field and a remedy."""

from __future__ import annotations

import difflib
from collections.abc import Iterable, Mapping
from typing import TYPE_CHECKING, Annotated, Any, TypeVar, get_args, get_origin

from chairwright.errors import InputError, Problem

if TYPE_CHECKING:
    from pydantic import BaseModel, ValidationError
    from pydantic_core import ErrorDetails

    from chairwright.reading import YamlSource
    from chairwright.yaml_events import KeyPath

Model = TypeVar("Model", bound="BaseModel")

CORRECT_IT = "Correct this value."
LONGEST_SHOWN = 60
LONGEST_LIST = 12
PLAIN = {
    "Input should": "it should",
    "String should": "it should",
    "List should": "the list should",
    "Tuple should": "the list should",
    "Dictionary should": "keys and values should",
    "a valid tuple": "a list",
    "a valid list": "a list",
    "a valid dictionary": "keys and values",
    " or instance of ": ", as of a ",
    " after validation": "",
    "should": "must",
}
"""The schema library's words, and what they are to somebody who writes a file."""


def suggest(word: object, known: Iterable[object]) -> str:
    """Offer the known word nearest to one that is not known.

    Parameters
    ----------
    word : object
        What was typed.
    known : iterable
        What could have been typed.

    Returns
    -------
    str
        A remedy in one or two sentences, for the end of a message.

    Examples
    --------
    >>> suggest("hip_widht", ["hip_width", "stature"])
    'Did you mean hip_width?'
    """
    words = [str(each) for each in known]
    near = difflib.get_close_matches(str(word), words, n=1, cutoff=0.6)
    if near:
        return f"Did you mean {near[0]}?"
    if not words:
        return "Take it out."
    shown = ", ".join(words[:LONGEST_LIST])
    rest = len(words) - LONGEST_LIST
    return f"Known here: {shown}{f' and {rest} more' if rest > 0 else ''}."


def dotted(at: KeyPath) -> str:
    """Return a place in a file in words: keys joined by dots, list positions left out."""
    return ".".join(str(key) for key in at if isinstance(key, str))


def shown(value: object) -> str:
    """Return a value as a message shows it: one line, cut when long, nothing for None."""
    if value is None:
        return "nothing"
    if isinstance(value, Mapping):
        return "keys and values"
    if isinstance(value, list):
        return f"a list of {len(value)}"
    text = str(value) if isinstance(value, (int, float)) else repr(value)
    return text if len(text) <= LONGEST_SHOWN else f"{text[:LONGEST_SHOWN]}..."


def place(source: YamlSource, at: KeyPath) -> str:
    """Return ``file:line: field`` for a message."""
    field = dotted(at)
    return f"{source.line_of(at)}: {field}" if field else source.line_of(at)


def check_model(model: type[Model], source: YamlSource, remedy: str = CORRECT_IT) -> Model:
    """Check a file's data against a pydantic schema.

    Parameters
    ----------
    model : type of BaseModel
    source : YamlSource
    remedy : str
        What to do about a value that breaks a rule of the schema.

    Returns
    -------
    BaseModel
        The checked model.

    Raises
    ------
    InputError
        With every problem that the schema finds, by line.
    """
    from pydantic import ValidationError

    try:
        return model.model_validate(source.data)
    except ValidationError as error:
        raise InputError(*problems_of(error, source, model, remedy)) from None


def problems_of(
    error: ValidationError, source: YamlSource, model: type[BaseModel], remedy: str = CORRECT_IT
) -> tuple[Problem, ...]:
    """Turn a pydantic error into problems, sorted by line.

    Parameters
    ----------
    error : ValidationError
    source : YamlSource
        The file that was validated.
    model : type of BaseModel
        Its schema, for suggesting known keys.
    remedy : str
        What to do about a value that breaks a rule of the schema.

    Returns
    -------
    tuple of Problem
        Where (``file:line: field``), what must hold, what was got, what to do.
    """
    found = []
    for details in error.errors(include_url=False):
        at = _existing(source.data, details["loc"])
        line = int(source.line_of(at).rpartition(":")[2])
        found.append((line, _problem(details, source, at, model, remedy)))
    return tuple(problem for _, problem in sorted(found, key=lambda pair: pair[0]))


def _problem(
    details: ErrorDetails, source: YamlSource, at: KeyPath, model: type[BaseModel], remedy: str
) -> Problem:
    last = details["loc"][-1] if details["loc"] else ""
    if details["type"] == "extra_forbidden":
        known = _known_keys(model, at[:-1])
        must = "a key must be one that this file knows"
        return Problem(place(source, at), must, repr(last), suggest(last, known))
    if details["type"] == "missing":
        where = place(source, at)
        return Problem(where, f"{last} must be given", "nothing", f"Add {last} here.")
    expected = details.get("ctx", {}).get("expected")
    if details["type"] in ("literal_error", "enum") and expected:
        options = str(expected).replace("'", "").replace(" or ", ", ").split(", ")
        remedy = suggest(details["input"], options)
    value = details["input"]
    got = shown(value) if isinstance(value, str) else source.text_of(at) or shown(value)
    return Problem(place(source, at), _must(details["msg"]), got, remedy)


def _must(message: str) -> str:
    text = message.removeprefix("Value error, ").removeprefix("Assertion failed, ")
    for theirs, plain in PLAIN.items():
        text = text.replace(theirs, plain)
    return text


def _existing(data: object, loc: tuple[int | str, ...]) -> KeyPath:
    """Keep those parts of a pydantic place that exist in the file (it adds names of its own)."""
    at: KeyPath = ()
    for part in loc:
        if isinstance(data, Mapping):
            key = _key_in(data, part)
            if key is None:
                continue
            data, at = data[key], (*at, key)
        elif isinstance(data, list) and isinstance(part, int) and part < len(data):
            data, at = data[part], (*at, part)
    return at


def _key_in(data: Mapping[Any, object], part: int | str) -> int | str | None:
    if part in data:
        return part
    text = str(part)
    return int(text) if text.lstrip("-").isdecimal() and int(text) in data else None


def _known_keys(model: type[BaseModel], at: KeyPath) -> list[str]:
    """Return the keys that a schema allows at a place of the file; none when it is unclear."""
    kind: object = model
    for part in at:
        fields = getattr(kind, "model_fields", None)
        if fields is not None:
            kind = fields[part].annotation if part in fields else None
        else:
            kind = next(iter(get_args(_unwrapped(kind))[-1:]), None)
    fields = getattr(_unwrapped(kind), "model_fields", {})
    return [field.alias or name for name, field in fields.items()]


def _unwrapped(kind: object) -> object:
    """Take the wrapping of Annotated and of an optional type off; of two, the one with keys."""
    origin = get_origin(kind)
    if origin is None or origin in (list, dict, tuple):
        return kind
    if origin is Annotated:
        return _unwrapped(get_args(kind)[0])
    inner = [_unwrapped(each) for each in get_args(kind) if each is not type(None)]
    keyed = [each for each in inner if hasattr(each, "model_fields")]
    return next(iter([*keyed, *inner]), kind)
