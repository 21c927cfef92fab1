"""What the reference page of the line file must say of each key, read from the schema."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Annotated, Any, Literal, get_args, get_origin, get_type_hints

from pydantic import BaseModel
from pydantic.fields import FieldInfo

from chairwright.line import parts, schema

KINDS = {
    "code": parts.Code,
    "words": parts.Words,
    "size": parts.Size,
    "place": parts.Place,
    "mass": parts.Mass,
    "angle": parts.Angle,
    "at": parts.At,
    "hole": parts.Hole,
    "price": parts.Price,
    "days": parts.Days,
    "load": parts.Load,
    "torque": parts.Torque,
    "minutes": parts.Minutes,
    "pieces": parts.Pieces,
    "step": parts.Step,
    "capital letter": parts.Column,
    "list of codes": parts.Codes,
    "sizes": parts.Sizes,
    "codes or a range": schema.Meant,
    "choice": str,
}
"""Kinds of values by the name that the page gives them."""
UNITS = {"_mm": "mm", "_deg": "deg", "_kg": "kg", "_kgm2": "kg m²"}
KIND_UNITS = {
    "size": "mm", "place": "mm", "step": "mm", "mass": "kg", "load": "kg", "angle": "deg",
    "torque": "Nm", "minutes": "min", "price": "in the line's currency",
}  # fmt: skip
NESTED: dict[str, type[BaseModel]] = {
    "settings": parts.BackSetting,
    "range of sizes": parts.Steps,
    "range": schema.SizeRange,
    "custom_sizes": schema.CustomSizes,
    "every part": parts.Priced,
}
"""Tables of the page that are not lists of the file, with their schema."""
NONE = type(None)
PLAIN: dict[Any, str] = {
    float: "mm or degrees",
    bool: "`true` or `false`",
    **{model: name for name, model in NESTED.items()},
}


def models() -> Iterator[tuple[str, type[BaseModel]]]:
    """Every list or table of a line file with the schema of its entries."""
    for name, kind in get_type_hints(schema.WrittenLine).items():
        for each in (kind, *get_args(kind)):
            if isinstance(each, type) and issubclass(each, BaseModel) and name not in NESTED:
                yield name, each
    yield from NESTED.items()


def may_be_left_out() -> set[str]:
    """Lists and tables that a file need not have."""
    every = {name for name, _ in models()} | set(NESTED)
    fields = schema.WrittenLine.model_fields
    return {key for key, field in fields.items() if key in every and not field.is_required()}


def head() -> list[str]:
    """Keys at the top of the file that hold a single value."""
    lists = {name for name, _ in models()}
    return [key for key in schema.WrittenLine.model_fields if key not in lists]


def fields() -> dict[tuple[str, str], tuple[str, str]]:
    """Limits, and what a key left out means, by table and key.

    What every part has alike stands in a table of its own.
    """
    common = parts.Priced.model_fields
    found = {}
    for name, model in models():
        hints = get_type_hints(model, include_extras=True)
        for key, field in model.model_fields.items():
            alike = key in common and field.is_required() == common[key].is_required()
            if name == "every part" or not (issubclass(model, parts.Priced) and alike):
                found[name, field.alias or key] = (limits(key, hints[key]), left_out(field))
    return found


def left_out(field: FieldInfo) -> str:
    """What the page says of a key that is not in the file."""
    if field.is_required():
        return "needed"
    value = field.get_default(call_default_factory=True, validated_data={})
    if value is None or value in ((), []):
        return "none"
    if isinstance(value, bool):
        return f"`{str(value).lower()}`"
    if isinstance(value, tuple):
        return "`[" + ", ".join(f"{each:g}" for each in value) + "]`"
    return f"`{value}`" if isinstance(value, str) else f"{value:g}"


def limits(key: str, kind: Any) -> str:
    """What the page must say a key holds."""
    kind = without_none(kind)
    named = next((words for words, alias in KINDS.items() if kind == alias), "")
    return named or PLAIN.get(kind, "") or by_shape(key, kind)


def without_none(kind: Any) -> Any:
    """The kind that an optional value has when it is there."""
    inner = get_args(kind)
    if get_origin(kind) is Annotated and type(None) in get_args(inner[0]):
        kind, inner = inner[0], get_args(inner[0])
    return next(each for each in inner if each is not NONE) if NONE in inner else kind


def by_shape(key: str, kind: Any) -> str:
    """Lists, tables, words to choose from, and numbers with limits of their own."""
    origin, inner = get_origin(kind), get_args(kind)
    if origin is Literal:
        return " or ".join(f"`{each}`" for each in inner)
    if origin is dict:
        return f"{limits(key, inner[0])}: {limits(key, inner[1])}"
    if origin is tuple and inner[0] is not str:
        return f"two of {limits(key, inner[0])}"
    if origin in (list, tuple):
        return f"list of {'codes' if inner[0] is str else limits(key, inner[0])}"
    if get_origin(inner[0]) in (list, dict):
        return limits(key, inner[0])
    return numbers(kind, UNITS["_" + key.rpartition("_")[2]])


def numbers(kind: Any, unit: str) -> str:
    """A range in words."""
    bounds = {type(each).__name__: each for each in get_args(kind)[1].metadata}
    low = f"above {bounds['Gt'].gt:g}, at most" if "Gt" in bounds else f"{bounds['Ge'].ge:,g} to"
    comma = "," if unit.startswith("in ") else ""
    return f"{low} {bounds['Le'].le:,g}{comma} {unit}".strip()


def kinds() -> dict[str, str]:
    """The limits of each kind that has a number, by the kind's name."""
    found = {name: numbers(KINDS[name], unit) for name, unit in KIND_UNITS.items()}
    for name in ("hole", "days", "pieces"):
        found[name] = f"a whole number, {numbers(KINDS[name], '')}"
    return found
