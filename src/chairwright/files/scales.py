"""Reading a scales file: wheel loads of one chair; see docs/reference/scales-file.md."""

from __future__ import annotations

from dataclasses import dataclass, field
from pathlib import Path

from chairwright.files.fields import Fields, open_file
from chairwright.files.scale_checks import check_session
from chairwright.reading import FileText, read_yaml
from chairwright.scales.model import AXLES, LOADS, PADS, SeatPlace, Session, Weighing
from chairwright.units import Dimension

FORMAT = "chairwright scales 1"
REFERENCE = "docs/reference/scales-file.md"
LIMIT_BYTES = 100_000
LONGEST_PATH = 400
METHODS = {"four pads": PADS, "two pads": AXLES, "one axle": AXLES}
LENGTHS = {
    "wheelbase": (150.0, 1200.0),
    "rear_axle_height": (60.0, 450.0),
    "caster_axle_height": (20.0, 400.0),
    "rear_track": (200.0, 1200.0),
    "caster_track": (100.0, 1200.0),
}
"""Least and most that is taken [mm]; far beyond what chairs measure."""
TRACKS = ("rear_track", "caster_track")
FINE: dict[str, tuple[Dimension, float, float, float]] = {
    "scale_step": ("mass", 0.001, 5.0, 0.1),
    "tape": ("length", 0.1, 20.0, 2.0),
    "level_tool": ("angle", 0.01, 5.0, 0.5),
}
"""Least and most, and what holds when nothing is said."""
KEYS = (
    "format", "client", "dated", "setup", "loads_on", "method", *LENGTHS, *FINE,
    "level", "raised", "empty", "seat",
)  # fmt: skip


@dataclass(frozen=True)
class ScalesFile:
    """One weighing session as it stands in a file.

    Parameters
    ----------
    path : Path
    client : str
        The client's reference.
    dated : str
        Day of the weighing; empty when not said.
    method : str
        One of ``METHODS``.
    session : Session
        Without what a set-up adds.
    setup_path : Path or None
        The set-up that was weighed, found from the file's own folder.
    loads_on : bool
        Whether what the client carries was on the chair.
    where : dict of str to str
        ``file:line`` of the top keys.
    """

    path: Path
    client: str
    dated: str
    method: str
    session: Session
    setup_path: Path | None = None
    loads_on: bool = True
    where: dict[str, str] = field(default_factory=dict)


def read_scales(path: Path | str | FileText) -> ScalesFile:
    """Read one scales file and check that its readings can belong to one chair.

    Parameters
    ----------
    path : Path or str or FileText

    Returns
    -------
    ScalesFile

    Raises
    ------
    InputError
        With every problem of the file, by line.
    """
    source = read_yaml(path, LIMIT_BYTES)
    fields, path = open_file(source, FORMAT, REFERENCE), source.path
    fields.check_keys(*KEYS)
    client = fields.text("client", example="WR-014", longest=40) or ""
    method = fields.choice("method", METHODS) or "two pads"
    setup = fields.text("setup", longest=LONGEST_PATH) if fields.has("setup") else None
    dated = fields.text("dated", longest=40) or ""
    loads_on = fields.flag("loads_on") if fields.has("loads_on") else True
    session = _session(fields, method)
    _seat_or_setup(fields)
    fields.findings.raise_any()
    check_session(fields, session)
    fields.findings.raise_any()
    return ScalesFile(
        path=path,
        client=client,
        dated=dated,
        method=method,
        session=session,
        setup_path=None if setup is None else path.parent / setup,
        loads_on=loads_on,
        where={key: fields.where(key) for key in KEYS},
    )


def _session(fields: Fields, method: str) -> Session:
    nan = float("nan")
    tracks = method == "four pads"
    asked = {name: tracks or name not in TRACKS or fields.has(name) for name in LENGTHS}
    size = {
        name: _ranged(fields, name, "length", *limits) if asked[name] else nan
        for name, limits in LENGTHS.items()
    }
    fine = {
        name: _ranged(fields, name, kind, low, high) if fields.has(name) else usual
        for name, (kind, low, high, usual) in FINE.items()
    }
    empty = fields.child("empty")
    if empty is not None:
        empty.check_keys("level", "raised")
    return Session(
        wheelbase_mm=size["wheelbase"],
        rear_height_mm=size["rear_axle_height"],
        caster_height_mm=size["caster_axle_height"],
        rear_track_mm=size["rear_track"],
        caster_track_mm=size["caster_track"],
        resolution_kg=fine["scale_step"],
        tape_mm=fine["tape"],
        level_deg=fine["level_tool"],
        occupied=_weighing(fields, method),
        empty=None if empty is None else _weighing(empty, method),
        seat=_seat(fields),
    )


def _ranged(fields: Fields, key: str, kind: Dimension, low: float, high: float) -> float:
    if not fields.has(key):
        unit = {"length": "mm", "mass": "kg", "angle": "deg"}[kind]
        remedy = f"Measure it and add {key}, with its unit ({unit})."
        fields.refuse(key, f"{key} must be given", "nothing", remedy)
        return float("nan")
    found = fields.quantity(key, kind)
    if found is None:
        return float("nan")
    if not low <= found.value <= high:
        must = f"it must lie between {low:g} and {high:g} {found.unit}"
        fields.refuse(key, must, found.typed, "Read it again, and check the unit.")
    return found.value


def _weighing(fields: Fields, method: str) -> Weighing:
    level, raised = fields.child("level"), fields.child("raised")
    if level is None:
        remedy = "Indent the loads, one a line, under level:."
        fields.refuse("level", "the loads on the level must be given", "nothing", remedy)
        return Weighing({})
    level.check_keys(*LOADS)
    loads = _loads(level, LOADS)
    _complete(level, loads, method)
    if raised is None:
        return Weighing(loads)
    raised.check_keys("block", *LOADS)
    up = _loads(raised, LOADS)
    if "casters" not in up and not {"caster_left", "caster_right"} <= set(up):
        must = "the load on the raised casters must be given"
        raised.refuse("casters", must, "nothing", "Add casters: with what the pad says.")
    return Weighing(loads, up, _ranged(raised, "block", "length", 5.0, 400.0))


def _loads(fields: Fields, names: tuple[str, ...]) -> dict[str, float]:
    found = {}
    for name in names:
        if name in fields.data:
            load = fields.quantity(name, "mass")
            found[name] = float("nan") if load is None else load.value
    return found


def _complete(fields: Fields, loads: dict[str, float], method: str) -> None:
    if method == "one axle" and "casters" in loads and "total" in loads:
        return
    missing = [name for name in METHODS[method] if name not in loads]
    for name in missing:
        must = f"with method '{method}' {name} must be given"
        fields.refuse(name, must, "nothing", "Read that pad and add it, or correct the method.")


def _seat(fields: Fields) -> SeatPlace | None:
    seat = fields.child("seat")
    if seat is None:
        return None
    seat.check_keys("ahead_of_axle", "above_floor", "angle")
    ahead = seat.quantity("ahead_of_axle", "length", -600.0)
    above = seat.quantity("above_floor", "length")
    angle = seat.quantity("angle", "angle", -30.0)
    if ahead is None or above is None or angle is None:
        return None
    return SeatPlace(ahead.value, above.value, angle.value)


def _seat_or_setup(fields: Fields) -> None:
    if fields.has("seat") and fields.has("setup"):
        must = "the seat must not be given when a set-up is named: the set-up says where it is"
        fields.refuse("seat", must, "both", "Take one of them out.")
    if fields.has("loads_on") and not fields.has("setup"):
        must = "loads_on must stand beside a set-up: it is about what its client carries"
        fields.refuse("loads_on", must, "no setup", "Take it out, or name the set-up.")
