"""What a file asks for besides the body: loads, own targets, weights, settled choices, extras."""

from __future__ import annotations

from collections.abc import Collection, Iterable
from typing import cast, get_args

from chairwright.files.fields import Fields
from chairwright.person.client import Carried, CarryPlace, OwnTarget
from chairwright.units import Dimension
from chairwright.validation import shown, suggest

PLACES: tuple[str, ...] = get_args(CarryPlace)
LARGEST = 100_000.0
HEAVIEST_LOAD_KG = 60.0
LONGEST_CODE = 24
HEAVIEST_WEIGHT = 1000.0
_UNITS: dict[str, Dimension] = {"_mm": "length", "_kg": "mass", "_deg": "angle"}


def read_carries(fields: Fields) -> list[Carried]:
    """Read the loads that the chair carries every day.

    Parameters
    ----------
    fields : Fields
        The file's top mapping.

    Returns
    -------
    list of Carried
    """
    found = []
    for entry in fields.children("carries"):
        entry.check_keys("name", "mass", "place")
        name = entry.text("name", example="day bag")
        mass = entry.quantity("mass", "mass")
        where = entry.choice("place", PLACES)
        if mass is not None and mass.value > HEAVIEST_LOAD_KG:
            must = f"a load must be at most {HEAVIEST_LOAD_KG:g} kg"
            entry.refuse("mass", must, mass.typed, "Check the number and its unit.")
        if name is not None and mass is not None and where is not None:
            found.append(Carried(name, mass.value, cast(CarryPlace, where)))
    return found


def read_own_targets(fields: Fields, figures: Collection[str]) -> list[OwnTarget]:
    """Read the clinician's own targets.

    Parameters
    ----------
    fields : Fields
        The file's top mapping.
    figures : collection of str
        Names of the figures that there are.

    Returns
    -------
    list of OwnTarget
        At most one must and one preference for each figure.
    """
    found: dict[tuple[str, bool], OwnTarget] = {}
    for entry in fields.children("targets"):
        target = _read_target(entry, figures)
        if target is None:
            continue
        if (target.figure, target.must) in found:
            kind = "must" if target.must else "preference"
            must = f"a figure must have at most one {kind}"
            entry.refuse("figure", must, f"{target.figure} a second time", "Join the two.")
        found[target.figure, target.must] = target
    return list(found.values())


def _read_target(entry: Fields, figures: Collection[str]) -> OwnTarget | None:
    entry.check_keys("figure", "at_least", "at_most", "must", "weight", "reason")
    figure = entry.text("figure", example="tip_rear_locked_deg")
    reason = entry.text("reason", example="why this client needs it", longest=400)
    if figure is not None and figure not in figures:
        must = "a target must name a figure that there is"
        entry.refuse("figure", must, shown(figure), suggest(figure, figures))
    low = _end(entry, "at_least", figure or "")
    high = _end(entry, "at_most", figure or "")
    weight = entry.number("weight", 0.001, HEAVIEST_WEIGHT)
    must_hold = entry.flag("must")
    _check_ends(entry, low, high)
    if figure is None or reason is None:
        return None
    weight = 1.0 if weight is None else weight
    return OwnTarget(figure, low, high, must_hold, weight, reason, entry.where("figure"))


def _end(entry: Fields, key: str, figure: str) -> float | None:
    """Read one end: a plain number in the figure's unit, or text with a unit."""
    value = entry.data.get(key)
    suffix = next((ending for ending in _UNITS if figure.endswith(ending)), "")
    if isinstance(value, str) and suffix:
        quantity = entry.quantity(key, _UNITS[suffix], low=-LARGEST)
        return None if quantity is None else quantity.value
    return entry.number(key, -LARGEST, LARGEST)


def _check_ends(entry: Fields, low: float | None, high: float | None) -> None:
    if not entry.has("at_least") and not entry.has("at_most"):
        must = "a target must have at_least or at_most"
        entry.refuse("figure", must, "neither", "Add at least one of them.")
    if low is not None and high is not None and low > high:
        must = "at_least must not be above at_most"
        entry.refuse("at_least", must, f"{low:g} and {high:g}", "Swap or correct them.")


def read_weights(
    fields: Fields | None, figures: Collection[str], own: Iterable[OwnTarget]
) -> dict[str, float]:
    """Read the weights that the clinician gives the rules' preferences.

    Parameters
    ----------
    fields : Fields or None
        The mapping under ``weights``.
    figures : collection of str
        Names of the figures that there are.
    own : iterable of OwnTarget
        A preference among them has its weight in itself.

    Returns
    -------
    dict of str to float
        Figure to weight; 0 leaves the preference out of the cost.
    """
    found: dict[str, float] = {}
    if fields is None:
        return found
    fields.check_keys(*figures)
    preferred = {target.figure for target in own if not target.must}
    for figure in fields.data:
        weight = fields.number(str(figure), 0.0, HEAVIEST_WEIGHT)
        if figure in preferred:
            must = "the weight of an own preference must stand in that target"
            fields.refuse(figure, must, shown(weight), "Write weight: there, and take this out.")
        if weight is None and fields.data[figure] is None:
            fields.refuse(figure, "a weight must be a number", "nothing", "Write 1 for the usual.")
        if weight is not None and figure in figures:
            found[str(figure)] = weight
    return found


def read_choices(fields: Fields | None, known: Collection[str]) -> dict[str, tuple[str, ...]]:
    """Read the choices that the clinician has settled.

    Parameters
    ----------
    fields : Fields or None
        The mapping under ``choices``.
    known : collection of str
        Names of the choices that there are.

    Returns
    -------
    dict of str to tuple of str
        Option codes that may stay for each settled choice.
    """
    found: dict[str, tuple[str, ...]] = {}
    if fields is None:
        return found
    fields.check_keys(*known)
    for name in known:
        codes = _codes(fields, name) if name in fields.data else []
        if codes:
            found[name] = tuple(codes)
    return found


def read_extras(fields: Fields) -> dict[str, str]:
    """Read the accessories that are to be fitted.

    Parameters
    ----------
    fields : Fields
        The file's top mapping.

    Returns
    -------
    dict of str to str
        ``file:line`` of each code, in the order of the file.
    """
    if "extras" not in fields.data:
        return {}
    value = fields.data["extras"]
    if value == []:
        return {}
    codes = _codes(fields, "extras", "ET")
    inner = fields.inside("extras", value) if isinstance(value, list) else None
    return {
        code: fields.where("extras") if inner is None else inner.where(at)
        for at, code in enumerate(codes)
    }


def _codes(fields: Fields, name: str, example: str = "A1") -> list[str]:
    value = fields.data[name]
    if not isinstance(value, list):
        code = fields.text(name, example=example, longest=LONGEST_CODE)
        return [] if code is None else [code]
    inner = fields.inside(name, value)
    codes = [inner.text(at, example=example, longest=LONGEST_CODE) for at in range(len(value))]
    found = [code for code in codes if code is not None]
    if not value:
        fields.refuse(name, "a settled choice must keep an option", "an empty list", "Add a code.")
    if len(set(found)) < len(found):
        fields.refuse(name, "each code must stand once", ", ".join(found), "Take one out.")
    return found
