"""The measures of a client file: a value each, with sides and a tolerance where they matter."""

from __future__ import annotations

from collections.abc import Mapping

from chairwright.files.fields import Fields
from chairwright.person.client import Measure, Side
from chairwright.person.estimates import LOST_WITH
from chairwright.person.measures import CATALOGUE, MeasureKind, check_limits
from chairwright.units import Quantity
from chairwright.validation import suggest

_SIDES: tuple[Side, ...] = ("left", "right")


def read_measures(fields: Fields | None, lost: Mapping[str, tuple[str, ...]]) -> list[Measure]:
    """Read every measure of a client.

    Parameters
    ----------
    fields : Fields or None
        The mapping under ``measures``.
    lost : mapping of str to tuple of str
        Amputation levels of each side.

    Returns
    -------
    list of Measure
        A measure that has sides stands once for each side; a single value counts for both
        sides, or for the only one that is left.
    """
    if fields is None:
        return []
    found: list[Measure] = []
    for name in fields.data:
        kind = CATALOGUE.get(str(name))
        if kind is None:
            must = "a measure must be one that is known"
            fields.refuse(name, must, repr(name), suggest(name, CATALOGUE))
        else:
            found.extend(_read_kind(fields, kind, lost))
    return found


def _read_kind(
    fields: Fields, kind: MeasureKind, lost: Mapping[str, tuple[str, ...]]
) -> list[Measure]:
    if not isinstance(fields.data[kind.name], Mapping):
        quantity = fields.quantity(kind.name, kind.dimension)
        if quantity is None:
            return []
        return _on_sides(fields, kind.name, kind, quantity, kind.tolerance, lost)
    inner = fields.child(kind.name)
    if inner is None or not _shape_holds(fields, inner, kind):
        return []
    tolerance = _tolerance(inner, kind)
    if "value" in inner.data:
        quantity = inner.quantity("value", kind.dimension)
        if quantity is None:
            return []
        return _on_sides(inner, "value", kind, quantity, tolerance, lost)
    return _each_side(inner, kind, tolerance, lost)


def _shape_holds(fields: Fields, inner: Fields, kind: MeasureKind) -> bool:
    inner.check_keys("value", "tolerance", "left", "right")
    sides = [side for side in _SIDES if side in inner.data]
    if sides and not kind.sided:
        must = f"{kind.label.lower()} must be one value: it has no left and right"
        fields.refuse(kind.name, must, " and ".join(sides), "Write one value.")
        return False
    if sides and "value" in inner.data:
        must = "a measure must have either one value or a left and a right"
        got = f"value and {' and '.join(sides)}"
        fields.refuse(kind.name, must, got, "Keep the sides or the value, not both.")
        return False
    if not sides and "value" not in inner.data:
        fields.refuse(kind.name, "a measure must have a value", "none", "Add value: or left:.")
        return False
    return True


def _tolerance(inner: Fields, kind: MeasureKind) -> float:
    if not inner.has("tolerance"):
        return kind.tolerance
    quantity = inner.quantity("tolerance", kind.dimension)
    return kind.tolerance if quantity is None else quantity.value


def _each_side(
    inner: Fields, kind: MeasureKind, tolerance: float, lost: Mapping[str, tuple[str, ...]]
) -> list[Measure]:
    found = []
    for side in _SIDES:
        if side not in inner.data:
            continue
        level = _level_that_took(kind.name, lost[side])
        quantity = inner.quantity(side, kind.dimension)
        if level:
            must = f"a measure of the {side} must not be given: that part is lost ({level})"
            got = f"{kind.name} {side}"
            inner.refuse(side, must, got, "Take it out, or correct the amputation.")
        elif quantity is not None:
            found.append(_checked(inner, side, kind, quantity, tolerance, side))
    return found


def _on_sides(
    fields: Fields,
    key: str,
    kind: MeasureKind,
    quantity: Quantity,
    tolerance: float,
    lost: Mapping[str, tuple[str, ...]],
) -> list[Measure]:
    if not kind.sided:
        return [_checked(fields, key, kind, quantity, tolerance, "middle")]
    there = [side for side in _SIDES if not _level_that_took(kind.name, lost[side])]
    if not there:
        must = f"{kind.label.lower()} must not be given: that part is lost on both sides"
        fields.refuse(key, must, quantity.typed, "Take it out, or correct the amputations.")
        return []
    first = _checked(fields, key, kind, quantity, tolerance, there[0])
    rest = [Measure(kind.name, side, quantity, tolerance, where=first.where) for side in there[1:]]
    return [first, *rest]


def _checked(
    fields: Fields,
    key: str,
    kind: MeasureKind,
    quantity: Quantity,
    tolerance: float,
    side: Side,
) -> Measure:
    measure = Measure(kind.name, side, quantity, tolerance, where=fields.where(key))
    problem = check_limits(measure)
    if problem is not None:
        fields.findings.add((*fields.at, key), problem)
    return measure


def _level_that_took(name: str, levels: tuple[str, ...]) -> str:
    return next((level for level in levels if name in LOST_WITH[level]), "")
