"""Measures out of files: a client file, a health record (FHIR R4, JSON), a table (CSV)."""

from __future__ import annotations

import csv
import datetime as dt
import io
import tempfile
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from chairwright.errors import InputError
from chairwright.exchange.fhir_measures import read_height_and_mass
from chairwright.figures.registry import FIGURES
from chairwright.files.client import LIMIT_BYTES, read_client
from chairwright.person.client import Client
from chairwright.person.measures import CATALOGUE
from chairwright.reading import FileText
from chairwright.units import parse_quantity
from chairwright.validation import suggest

MOST_ROWS = 200


@dataclass(frozen=True)
class Brought:
    """What a file held.

    Parameters
    ----------
    body : dict of str to str
        Fields of a set of measures.
    abilities : dict of str to str
    targets : tuple of dict
        Columns of an own target.
    rule_set : str
    taken_on : date or None
        When the file says so.
    whole : bool
        Whether it was a whole client file.
    remarks : tuple of str
        What was left out, and why.
    troubles : tuple of str
        Why the file cannot be taken; everything else is empty then.
    """

    body: dict[str, str] = field(default_factory=dict)
    abilities: dict[str, str] = field(default_factory=dict)
    targets: tuple[dict[str, Any], ...] = ()
    rule_set: str = ""
    taken_on: dt.date | None = None
    whole: bool = False
    remarks: tuple[str, ...] = ()
    troubles: tuple[str, ...] = ()


def brought_in(raw: bytes) -> Brought:
    """Read a file of one of the three kinds, told by its content.

    Parameters
    ----------
    raw : bytes
    """
    try:
        text = raw.decode("utf-8-sig")
    except UnicodeDecodeError:
        return Brought(troubles=("The file must be text in UTF-8. Save it so and send it again.",))
    head = text.lstrip()[:400]
    try:
        if head.startswith("{"):
            return _record(raw)
        if "," in head.partition("\n")[0] or ";" in head.partition("\n")[0]:
            return _table(text)
        if len(raw) > LIMIT_BYTES:
            return Brought(troubles=("A client file is at most 200 kB.",))
        return _whole(read_client(FileText("file", text)))
    except InputError as error:
        return Brought(troubles=tuple(str(each) for each in error.problems))


def _record(raw: bytes) -> Brought:
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "record.json"
        path.write_bytes(raw)
        try:
            found = read_height_and_mass(path)
        except InputError as error:
            told = (str(each).replace(str(path), "record") for each in error.problems)
            return Brought(troubles=tuple(told))
    body = {each.measure: each.quantity.typed for each in found.seen}
    days = [each.when.text[:10] for each in found.seen if each.when is not None]
    return Brought(body, taken_on=_day(max(days, default="")), remarks=found.remarks)


def _day(text: str) -> dt.date | None:
    try:
        return dt.date.fromisoformat(text)
    except ValueError:
        return None


def _table(text: str) -> Brought:
    """Rows of measure, side and value; the first row names the columns."""
    mark = ";" if text.partition("\n")[0].count(";") > text.partition("\n")[0].count(",") else ","
    rows = list(csv.DictReader(io.StringIO(text), delimiter=mark))[: MOST_ROWS + 1]
    if not rows or not {"measure", "value"} <= {str(key).strip().lower() for key in rows[0]}:
        return Brought(troubles=("The first row must name the columns measure, side and value.",))
    body: dict[str, str] = {}
    troubles = [words for at, row in enumerate(rows, 2) if (words := _row(row, at, body))]
    return Brought(troubles=tuple(troubles)) if troubles else Brought(body)


def _row(row: dict[Any, Any], at: int, body: dict[str, str]) -> str:
    told = {str(k).strip().lower(): str(v or "").strip() for k, v in row.items()}
    name, side, value = (told.get(key, "") for key in ("measure", "side", "value"))
    if not name and not value:
        return ""
    kind = CATALOGUE.get(name)
    if kind is None:
        return f"Row {at}: {name} is no measure that is known. {suggest(name, CATALOGUE)}"
    try:
        quantity = parse_quantity(value, kind.dimension, f"Row {at}")
    except InputError as error:
        return str(error.problems[0])
    if not kind.low <= quantity.value <= kind.high:
        ends = f"{kind.low:g} and {kind.high:g} {quantity.unit}"
        return f"Row {at}: {kind.label} must lie between {ends}."
    sides = ("left", "right") if side in ("", "both") else (side,)
    if kind.sided and not set(sides) <= {"left", "right"}:
        return f"Row {at}: the side must be left, right or both; it says {side}."
    for each in sides if kind.sided else ("",):
        body[f"{name}_{each}" if each else name] = quantity.typed
    return ""


def _whole(client: Client) -> Brought:
    body: dict[str, str] = {"sex": client.sex}
    if client.age_years is not None:
        body["age"] = f"{client.age_years:g}"
    if client.leg_mass_factor != 1.0:
        body["leg_mass_factor"] = f"{client.leg_mass_factor:g}"
    for each in client.measures:
        kind = CATALOGUE[each.name]
        body[f"{each.name}_{each.side}" if kind.sided else each.name] = each.quantity.typed
        if each.tolerance != kind.tolerance:
            body[f"{each.name}_give"] = f"{each.tolerance:.10g} {each.quantity.unit}"
    for lost in client.amputations:
        limb = f"{lost.side}_{'leg' if lost.level in _LEGS else 'arm'}"
        body[limb] = lost.level
        body[f"{limb}_share"] = f"{lost.residual:g}"
    return Brought(body, _abilities(client), _targets(client), client.rule_set, whole=True)


_LEGS = ("foot", "below_knee", "through_knee", "above_knee", "hip")


def _abilities(client: Client) -> dict[str, str]:
    found = {
        "propulsion": client.propulsion,
        "note": client.note,
        "extras": " ".join(client.extras),
    }
    for at, load in enumerate(client.carries):
        found |= {
            f"load_name_{at}": load.name,
            f"load_mass_{at}": f"{load.mass_kg:.10g} kg",
            f"load_place_{at}": load.place,
        }
    for at, (choice, codes) in enumerate(client.fixed_choices.items()):
        found |= {f"settled_choice_{at}": choice, f"settled_codes_{at}": " ".join(codes)}
    if client.expected is not None:
        found |= {
            "over_years": f"{client.expected.over_years:g}",
            "expected_reason": client.expected.reason,
        }
        for at, (name, (low, high)) in enumerate(client.expected.ranges.items()):
            unit = "kg" if CATALOGUE[name].dimension == "mass" else "mm"
            found |= {
                f"range_measure_{at}": name,
                f"range_least_{at}": f"{low:.10g} {unit}",
                f"range_most_{at}": f"{high:.10g} {unit}",
            }
    return {name: value for name, value in found.items() if value}


def _targets(client: Client) -> tuple[dict[str, Any], ...]:
    own = [
        {
            "figure": each.figure,
            "must": each.must,
            "at_least": _end(each.figure, each.low),
            "at_most": _end(each.figure, each.high),
            "weight": "" if each.must else f"{each.weight:g}",
            "reason": each.reason,
        }
        for each in client.own_targets
    ]
    weights = [
        {"figure": figure, "weight": f"{weight:g}", "reason": "weight of the client file"}
        for figure, weight in client.weights.items()
    ]
    return (*own, *weights)


def _end(figure: str, value: float | None) -> str:
    if value is None:
        return ""
    unit = FIGURES[figure].unit
    return f"{value:.10g} {unit}" if unit in ("mm", "kg", "deg") else f"{value:.10g}"
