"""What a client file expects of the years to come: a range for each measure that changes."""

from __future__ import annotations

from collections.abc import Iterable

from chairwright.files.fields import Fields
from chairwright.person.client import Expected, Measure
from chairwright.person.growth import LONGEST_YEARS, USUAL_YEARS
from chairwright.person.measures import CATALOGUE
from chairwright.validation import shown, suggest

LEAST_YEARS = 0.5
OWN = ("over_years", "reason")


def read_expected(fields: Fields | None, measures: Iterable[Measure]) -> Expected | None:
    """Read what is expected.

    Parameters
    ----------
    fields : Fields or None
        The mapping under ``expected``.
    measures : iterable of Measure
        Those of the client: only what was measured can have a range.

    Returns
    -------
    Expected or None
    """
    if fields is None:
        return None
    years = fields.number("over_years", LEAST_YEARS, LONGEST_YEARS)
    ranges, taken = {}, {each.name for each in measures}
    for name in fields.data:
        if name in OWN:
            continue
        if name not in CATALOGUE:
            must = "it must be a measure, over_years or reason"
            fields.refuse(name, must, repr(name), suggest(name, (*CATALOGUE, *OWN)))
            continue
        if name not in taken:
            must = f"{name} must be among the measures: a range starts at what was measured"
            fields.refuse(name, must, "no such measure", "Measure it, or take the range out.")
        found = _range(fields, str(name))
        if found is not None:
            ranges[str(name)] = found
    reason = fields.text("reason", example="gains 2 kg a year since the operation", longest=400)
    return Expected(USUAL_YEARS if years is None else years, ranges, reason or "")


def _range(fields: Fields, name: str) -> tuple[float, float] | None:
    """Least and most at the end, inside the measure's widest limits."""
    kind, value = CATALOGUE[name], fields.data[name]
    if not isinstance(value, list) or len(value) != 2:
        must = "it must be least and most at the end of the years, such as [60 kg, 75 kg]"
        fields.refuse(name, must, shown(value), "Write two values in brackets.")
        return None
    both = fields.inside(name, value)
    ends = [both.quantity(at, kind.dimension) for at in (0, 1)]
    if ends[0] is None or ends[1] is None:
        return None
    low, high = ends[0].value, ends[1].value
    if not kind.low <= low <= high <= kind.high:
        must = f"least and most must rise, within {kind.low:g} and {kind.high:g} {ends[0].unit}"
        got = f"{ends[0].typed} and {ends[1].typed}"
        fields.refuse(name, must, got, "Write the smaller value first, and check the units.")
        return None
    return low, high
