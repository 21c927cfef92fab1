"""Sizes and masses that no wheelchair part has: slips of the unit, of a sign, of a digit."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping

from chairwright.fitting.line_checks.finding import Finding, mistake, remark
from chairwright.fitting.line_checks.usual import EACH, MASSES, SIZES, Pattern
from chairwright.reading import YamlSource
from chairwright.units import KG_PER_POUND, MM_PER_INCH
from chairwright.validation import place
from chairwright.yaml_events import KeyPath

STEP = "step_mm"
"""A stepped range's third number is no size."""
Ends = tuple[float, float]
Slip = tuple[str, float]

LENGTH_SLIPS: tuple[Slip, ...] = (
    ("If it was measured in inches, write", MM_PER_INCH),
    ("If it was measured in cm, write", 10.0),
    ("If it was measured in m, write", 1000.0),
    ("If a digit is too many, write", 0.1),
    ("If the sign is wrong (below the seat rail and behind the back post are negative), write",
     -1.0),
)  # fmt: skip
MASS_SLIPS: tuple[Slip, ...] = (
    ("If it was weighed in g, write", 0.001),
    ("If it was weighed in lb, write", KG_PER_POUND),
    ("If a digit is too many, write", 0.1),
)


def value_findings(source: YamlSource) -> Iterator[Finding]:
    """Judge sizes and masses against what such parts commonly have.

    Parameters
    ----------
    source : YamlSource
        A line file that can be read.

    Yields
    ------
    Finding
        A mistake for a size outside, a remark for a mass outside.
    """
    yield from _outside(source, SIZES, "mm", LENGTH_SLIPS, mistake)
    yield from _outside(source, MASSES, "kg", MASS_SLIPS, remark)


def _outside(
    source: YamlSource,
    usual: Mapping[Pattern, Ends],
    unit: str,
    slips: Iterable[Slip],
    make: Callable[[str, str, str, str], Finding],
) -> Iterator[Finding]:
    for pattern, (least, most) in usual.items():
        for at, value in values_at(source.data, pattern):
            if not least <= value <= most:
                yield make(
                    place(source, at),
                    f"such a part lies between {least:g} and {most:g} {unit}",
                    f"{value:g}",
                    _remedy(value, (least, most), slips),
                )


def values_at(data: object, pattern: Pattern, at: KeyPath = ()) -> Iterator[tuple[KeyPath, float]]:
    """The numbers that stand at a kind of place in a file.

    Parameters
    ----------
    data : object
        Mappings, lists and values.
    pattern : tuple of str
        Keys from the top; ``*`` for every key or list item.
    at : tuple
        Where ``data`` itself stands.

    Yields
    ------
    tuple of key path and float
    """
    if not pattern:
        if isinstance(data, int | float):
            yield at, float(data)
        return
    here, *rest = pattern
    for key, value in _entries(data):
        if here == key or (here == EACH and key != STEP):
            yield from values_at(value, tuple(rest), (*at, key))


def _entries(data: object) -> Iterable[tuple[int | str, object]]:
    if isinstance(data, Mapping):
        return data.items()
    return enumerate(data) if isinstance(data, list) else ()


def _remedy(value: float, ends: Ends, slips: Iterable[Slip]) -> str:
    least, most = ends
    fitting = [
        f"{words} {value * factor:g}."
        for words, factor in slips
        if least <= value * factor <= most and value
    ]
    return " ".join(fitting) or "Look the number up again."
