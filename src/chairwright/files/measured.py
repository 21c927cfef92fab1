"""Reading a measured-chair file; see docs/reference/measured-chair-file.md."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from chairwright.files.chair_measures import CHAIR_MEASURES
from chairwright.files.fields import Fields, open_file
from chairwright.reading import FileText, read_yaml
from chairwright.units import Quantity

FORMAT = "chairwright measured chair 1"
REFERENCE = "docs/reference/measured-chair-file.md"
LIMIT_BYTES = 200_000
LONGEST_PATH = 400
FOOT_SUPPORTS = ("both", "left", "right", "none")


@dataclass(frozen=True)
class Reading:
    """One value as it was measured.

    Parameters
    ----------
    name : str
        A key of `CHAIR_MEASURES`.
    quantity : Quantity
    tolerance : float [mm, kg or deg]
        Half width.
    where : str
        ``file:line``.
    """

    name: str
    quantity: Quantity
    tolerance: float
    where: str

    @property
    def value(self) -> float:
        """In mm, kg or deg."""
        return self.quantity.value


@dataclass(frozen=True)
class MeasuredFile:
    """One measured chair as it stands in a file.

    Parameters
    ----------
    path, client_path : Path
        The file itself, and the client file found from its folder.
    name, note : str
    foot_supports : {"both", "left", "right", "none"}
    readings : dict of str to Reading
        In the order of `CHAIR_MEASURES`.
    where : dict of str to str
        ``file:line`` of ``client`` and ``foot_supports``.
    """

    path: Path
    client_path: Path
    name: str
    note: str
    foot_supports: str
    readings: dict[str, Reading]
    where: dict[str, str]

    @property
    def values(self) -> dict[str, float]:
        """Every measured value [mm, kg or deg]."""
        return {name: reading.value for name, reading in self.readings.items()}

    @property
    def tolerances(self) -> dict[str, float]:
        """Half width of every measured value [mm, kg or deg]."""
        return {name: reading.tolerance for name, reading in self.readings.items()}


def read_measured(path: Path | str | FileText) -> MeasuredFile:
    """Read one measured chair.

    Parameters
    ----------
    path : Path or str or FileText

    Returns
    -------
    MeasuredFile
        Values may lie outside their bounds: that is for the check of slips to say.

    Raises
    ------
    InputError
        With every problem of the file, by line.
    """
    source = read_yaml(path, LIMIT_BYTES)
    fields, path = open_file(source, FORMAT, REFERENCE), source.path
    fields.check_keys("format", "client", "name", "note", "foot_supports", "measures")
    client = fields.text("client", example="../clients/wr-014.yaml", longest=LONGEST_PATH) or ""
    feet = fields.choice("foot_supports", FOOT_SUPPORTS)
    name = fields.text("name", longest=200) or "the measured chair"
    note = fields.text("note", longest=2000) or ""
    readings = _readings(fields)
    fields.findings.raise_any()
    return MeasuredFile(
        path=path,
        client_path=path.parent / client,
        name=name,
        note=note,
        foot_supports=feet or "none",
        readings=readings,
        where={key: fields.where(key) for key in ("client", "foot_supports")},
    )


def _readings(fields: Fields) -> dict[str, Reading]:
    inner = fields.child("measures")
    if inner is None:
        if not fields.has("measures"):
            remedy = "Add measures: and the values under it."
            fields.refuse("measures", "measures must be given", "nothing", remedy)
        return {}
    inner.check_keys(*CHAIR_MEASURES)
    found = {}
    for name, kind in CHAIR_MEASURES.items():
        if name in inner.data:
            reading = _reading(inner, name)
            if reading is not None:
                found[name] = reading
        elif kind.needed:
            remedy = f"Measure it: {kind.label.lower()}."
            inner.refuse(name, f"{name} must be given", "nothing", remedy)
    return found


def _reading(inner: Fields, name: str) -> Reading | None:
    kind, where = CHAIR_MEASURES[name], inner.where(name)
    low = min(0.0, kind.low) * 10.0
    more = inner.child(name) if isinstance(inner.data[name], dict) else None
    if more is None:
        quantity = inner.quantity(name, kind.dimension, low)
        return None if quantity is None else Reading(name, quantity, kind.tolerance, where)
    more.check_keys("value", "tolerance")
    value = more.quantity("value", kind.dimension, low)
    spread = more.quantity("tolerance", kind.dimension)
    if value is None or spread is None:
        return None
    return Reading(name, value, spread.value, more.where("value"))
