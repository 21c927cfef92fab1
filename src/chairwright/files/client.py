"""Reading a client file; the format is described in docs/reference/client-file.md."""

from __future__ import annotations

import re
from collections.abc import Collection
from pathlib import Path
from typing import cast, get_args

from chairwright.figures.registry import FIGURES
from chairwright.files.expected import read_expected
from chairwright.files.fields import Fields, open_file
from chairwright.files.limbs import check_propulsion, read_amputations
from chairwright.files.measures import read_measures
from chairwright.files.wishes import (
    read_carries,
    read_choices,
    read_extras,
    read_own_targets,
    read_weights,
)
from chairwright.line.choices import CHOICES
from chairwright.person.client import Amputation, Client, Measure, Propulsion, Sex
from chairwright.reading import FileText, read_yaml

FORMAT = "chairwright client 1"
REFERENCE = "docs/reference/client-file.md"
LIMIT_BYTES = 200_000
LONGEST_NOTE = 4000
OLDEST = 120.0
KEYS = (
    "format", "reference", "sex", "note", "propulsion", "rule_set", "leg_mass_factor",
    "measures", "amputations", "carries", "targets", "weights", "choices", "extras",
    "age", "expected",
)  # fmt: skip
_REFERENCE_NUMBER = re.compile(r"(?=.*[0-9])[A-Za-z0-9][A-Za-z0-9._-]{0,39}")
_HINTS = {
    "name": "Take the name out: a client file holds a reference number and no name.",
    "height": "Write it under measures as stature.",
    "weight": "Write it under measures as body_mass.",
}


def read_client(path: Path | str | FileText, figures: Collection[str] = FIGURES) -> Client:
    """Read one client file.

    Parameters
    ----------
    path : Path or str or FileText
    figures : collection of str
        Figures that a target may name.

    Returns
    -------
    Client
        Measures that have sides stand once for each side that is there. ``where`` holds
        ``file:line`` for every top-level key of the file.

    Raises
    ------
    InputError
        With every problem of the file, by line.
    """
    source = read_yaml(path, LIMIT_BYTES)
    fields = open_file(source, FORMAT, REFERENCE)
    fields.check_keys(*KEYS, hints=_HINTS)
    amputations, weights = read_amputations(fields), fields.child("weights")
    extras = read_extras(fields)
    own = tuple(read_own_targets(fields, figures))
    measures = tuple(_measures(fields, amputations))
    client = Client(
        reference=_reference(fields),
        sex=cast(Sex, fields.choice("sex", get_args(Sex)) or "female"),
        measures=measures,
        propulsion=_propulsion(fields, amputations),
        amputations=tuple(amputations),
        carries=tuple(read_carries(fields)),
        own_targets=own,
        rule_set=fields.text("rule_set", longest=40) or "envelope",
        note=fields.text("note", longest=LONGEST_NOTE) or "",
        leg_mass_factor=fields.number("leg_mass_factor", 0.7, 1.0) or 1.0,
        fixed_choices=read_choices(fields.child("choices"), CHOICES),
        weights=read_weights(weights, figures, own),
        extras=tuple(extras),
        age_years=fields.number("age", 0.0, OLDEST),
        expected=read_expected(fields.child("expected"), measures),
        where=_where(fields, weights) | {f"extras.{code}": at for code, at in extras.items()},
    )
    fields.findings.raise_any()
    return client


def _where(fields: Fields, weights: Fields | None) -> dict[str, str]:
    found = {str(key): fields.where(key) for key in fields.data}
    if weights is not None:
        found |= {f"weights.{key}": weights.where(key) for key in weights.data}
    return found


def _reference(fields: Fields) -> str:
    text = fields.text("reference", example="WR-014", longest=40) or ""
    if text and not _REFERENCE_NUMBER.fullmatch(text):
        must = "reference must be a number such as WR-014 (letters, digits, . _ -), never a name"
        fields.refuse("reference", must, repr(text), "Use the client's number.")
    return text


def _propulsion(fields: Fields, amputations: list[Amputation]) -> Propulsion:
    word = fields.choice("propulsion", get_args(Propulsion), default="hands")
    propulsion = cast(Propulsion, word or "carer")
    check_propulsion(fields, propulsion, amputations)
    return propulsion


def _measures(fields: Fields, amputations: list[Amputation]) -> list[Measure]:
    lost = {
        side: tuple(a.level for a in amputations if a.side == side) for side in ("left", "right")
    }
    if not fields.data.get("measures"):
        remedy = "Add measures: with at least stature and body_mass under it."
        fields.refuse("measures", "measures must be given", "none", remedy)
        return []
    return read_measures(fields.child("measures"), lost)
