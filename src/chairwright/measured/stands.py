"""The figures of a measured chair with its client, how far they can be off, and the verdicts."""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from chairwright.chair.buildable import reason_not
from chairwright.chair.occupant import Occupant
from chairwright.chair.rows import Rows
from chairwright.chair.shape_of import shape_of
from chairwright.figures.directions import tip_angles
from chairwright.figures.evaluate import figures_of, realise
from chairwright.figures.outline import plan_outline
from chairwright.figures.registry import FIGURES
from chairwright.figures.spread import NO_SPREAD
from chairwright.files.chair_measures import CHAIR_MEASURES
from chairwright.fitting.described import Described, judge, one_row, placed_masses
from chairwright.line.choices import CHOICES
from chairwright.mass_points import MassPoints
from chairwright.measured.as_line import as_line
from chairwright.measured.values import Known, known
from chairwright.targets.target import Target

MEASURED_AS = {
    "heaviest_part_kg": "heaviest_piece",
    "folded_width_mm": "folded_width",
    "overall_width_mm": "overall_width",
    "overall_height_mm": "overall_height",
    "footplate_clearance_mm": "footplate_clearance",
}
"""Figures that are read off the chair itself, by the measure."""

UNLESS_MEASURED = ("heaviest_part_kg", "folded_width_mm", "footplate_clearance_mm")
"""No formula of a measured chair gives these."""

NEVER = ("price", "custom_surcharge", "lead_days", "yaw_inertia_kgm2")
"""No tape tells what it costs, or how far apart the chair's parts are heavy."""


@dataclass(frozen=True)
class Stands:
    """What is said of one measured chair.

    Parameters
    ----------
    line : Line
        Of this one chair; see `as_line`.
    setup : Described
        Figures, NaN where the measures do not give one; half widths of all of them; verdicts.
        Choices are all called "measured", and places that nobody measured are assumed.
    """

    known: Known
    setup: Described

    @property
    def missing(self) -> dict[str, str]:
        """Measures that were not taken and that some figure wants, by label."""
        return {name: CHAIR_MEASURES[name].label for name in self.known.unknown}


def stands(
    values: Mapping[str, float],
    tolerances: Mapping[str, float],
    feet: str,
    occupant: Occupant,
    targets: Sequence[Target],
    name: str = "the measured chair",
) -> Stands:
    """Work out all that is said of a measured chair.

    Parameters
    ----------
    values, tolerances : mapping of str to float [mm, kg or deg]
        What was measured and its half widths.
    feet : {"both", "left", "right", "none"}
        Foot supports.
    occupant : Occupant
    targets : sequence of Target
    name : str

    Returns
    -------
    Stands
    """
    found = known(values, tolerances, feet, occupant.weighed)
    names = tuple(dict.fromkeys([*FIGURES, *(target.figure for target in targets)]))
    chair = _Chair(feet, occupant, names, found.values)
    middle = chair.figures({})
    for figure in _unsettled(chair, middle, found.unknown) | set(NEVER):
        middle[figure] = math.nan
    spreads = _spreads(chair, middle, found.spreads)
    rows, points = seated(found.values, feet, occupant, name)
    directions, angles = tip_angles(rows)
    setup = Described(
        line=rows.line,
        index=dict.fromkeys(CHOICES, 0),
        figures=middle,
        spreads=spreads,
        judged=judge(middle, spreads, targets),
        masses=placed_masses(rows, points),
        shape=shape_of(rows, occupant, middle, plan_outline(rows)),
        directions_deg=directions,
        angles_deg=angles,
    )
    return Stands(found, setup)


def why_not(values: Mapping[str, float], feet: str, occupant: Occupant) -> str:
    """Say in plain words why a chair cannot stand as measured; empty when it can.

    Parameters
    ----------
    values : mapping of str to float [mm, kg or deg]
        What was measured.
    feet : {"both", "left", "right", "none"}
    occupant : Occupant
    """
    return reason_not(seated(known(values, {}, feet).values, feet, occupant)[0])


def model_ahead(values: Mapping[str, float], feet: str, occupant: Occupant) -> float:
    """Centre of mass ahead of the axle by the posture model, whatever was weighed [mm].

    Parameters
    ----------
    values : mapping of str to float [mm, kg or deg]
        What was measured.
    feet : {"both", "left", "right", "none"}
    occupant : Occupant

    Returns
    -------
    float [mm]
        NaN when too little is measured to seat the client.
    """
    found = known(values, {}, feet)
    if set(SEATED_BY) & set(found.unknown):
        return math.nan
    left = {name: each for name, each in found.values.items() if name not in WEIGHED}
    rows, _ = seated(left, feet, occupant)
    return float(figures_of(rows, occupant, ["com_x_mm"])["com_x_mm"][0])


SEATED_BY = ("axle_ahead_of_post", "back_angle", "cushion_rear", "cushion_front", "chair_mass")
WEIGHED = ("occupied_on_rear", "occupied_on_casters", "com_ahead_of_axle")


@dataclass(frozen=True)
class _Chair:
    """The figures as a function of the values."""

    feet: str
    occupant: Occupant
    names: tuple[str, ...]
    values: dict[str, float]

    def figures(self, moved: Mapping[str, float]) -> dict[str, float]:
        values = {**self.values, **moved}
        rows, _ = seated(values, self.feet, self.occupant)
        every = figures_of(rows, self.occupant, self.names)
        found = {name: float(each[0]) for name, each in every.items()}
        found |= dict.fromkeys(UNLESS_MEASURED, math.nan)
        return found | {
            figure: values[measure] for figure, measure in MEASURED_AS.items() if measure in values
        }


def seated(
    values: Mapping[str, float], feet: str, occupant: Occupant, name: str = ""
) -> tuple[Rows, list[MassPoints]]:
    """The chair with its client in it, as rows for the figures' formulas.

    Parameters
    ----------
    values : mapping of str to float [mm, kg or deg]
        From `values.known`.
    feet : {"both", "left", "right", "none"}
    occupant : Occupant
    name : str
        Of the chair.

    Returns
    -------
    tuple of Rows, shape (1,), and list of MassPoints
        The rows' centre of mass is as weighed, where it was; the points are the model's.
    """
    line = as_line(values, feet, name)
    rows, points = realise(line, occupant, one_row(dict.fromkeys(CHOICES, 0)))
    _shift(rows, occupant, values["occupant_ahead"], values["occupant_up"])
    _as_weighed(rows, values)
    return rows, points


def _turned_back(rows: Rows, ahead: float, up: float) -> tuple[float, float]:
    sin, cos = float(rows["sin_pitch"][0]), float(rows["cos_pitch"][0])
    return ahead * cos + up * sin, up * cos - ahead * sin


def _shift(rows: Rows, occupant: Occupant, ahead: float, up: float) -> None:
    x_mm, z_mm = _turned_back(rows, ahead, up)
    rows["frame_mass_x"] = rows["frame_mass_x"] + occupant.body.mass_kg * x_mm
    rows["frame_mass_z"] = rows["frame_mass_z"] + occupant.body.mass_kg * z_mm


def _as_weighed(rows: Rows, values: Mapping[str, float]) -> None:
    """Put the centre of mass where scales found it; the rear wheels stay at the axle."""
    frame = rows["frame_mass"]
    share = frame / (frame + rows["wheel_mass"])
    along, up = rows.to_floor(rows["frame_mass_x"] / frame, rows["frame_mass_z"] / frame)
    ahead = measured_ahead(values)
    if ahead is not None:
        along = ahead / share
    if "com_above_floor" in values:
        up = rows["rear_height"] + (values["com_above_floor"] - rows["rear_height"]) / share
    if "com_to_left" in values:
        rows["frame_mass_y"] = frame * (values["com_to_left"] / share)
    x_mm, z_mm = _turned_back(rows, float(along[0]), float((up - rows["rear_height"])[0]))
    rows["frame_mass_x"] = frame * (rows["axle_x"] + x_mm)
    rows["frame_mass_z"] = frame * (rows["axle_z"] + z_mm)


def measured_ahead(values: Mapping[str, float]) -> float | None:
    """Centre of mass of the occupied chair ahead of the axle as weighed [mm], or None."""
    if {"occupied_on_rear", "occupied_on_casters"} <= values.keys():
        casters = values["occupied_on_casters"]
        return values["wheelbase"] * casters / (casters + values["occupied_on_rear"])
    return values.get("com_ahead_of_axle")


def _unsettled(chair: _Chair, middle: Mapping[str, float], unknown: Iterable[str]) -> set[str]:
    """Figures that some plausible value of a missing measure would change."""
    ends = {name: (CHAIR_MEASURES[name].low, CHAIR_MEASURES[name].high) for name in unknown}
    trials = [{name: end} for name, pair in ends.items() for end in pair]
    trials += [{name: pair[at] for name, pair in ends.items()} for at in (0, 1)]
    found: set[str] = set()
    for trial in trials if ends else ():
        moved = chair.figures(trial)
        found |= {name for name in chair.names if _differs(name, middle[name], moved[name])}
    return found


def _differs(name: str, first: float, second: float) -> bool:
    if math.isnan(first) or math.isnan(second):
        return math.isnan(first) != math.isnan(second)
    return abs(first - second) > FIGURES[name].resolution / 2.0


def _spreads(
    chair: _Chair, middle: Mapping[str, float], spreads: Mapping[str, float]
) -> dict[str, float]:
    """Root of the sum of squares of what each value's half width does to a figure."""
    squares = dict.fromkeys(chair.names, 0.0)
    for name, half in spreads.items():
        if half <= 0.0:
            continue
        value = chair.values[name]
        high, low = (chair.figures({name: value + sign * half}) for sign in (1.0, -1.0))
        for figure in chair.names:
            ends = [abs(end[figure] - middle[figure]) for end in (high, low)]
            squares[figure] += max((end for end in ends if not math.isnan(end)), default=0.0) ** 2
    return {
        name: float(np.sqrt(square))
        for name, square in squares.items()
        if square > 0.0 and name not in NO_SPREAD and not math.isnan(middle[name])
    }
