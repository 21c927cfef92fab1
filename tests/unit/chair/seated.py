"""Set-ups of the everyday line with invented people in them."""

from __future__ import annotations

from dataclasses import dataclass, replace

from chairwright.chair.occupant import Occupant, seat
from chairwright.chair.rows import Rows
from chairwright.chair.shape import Shape
from chairwright.chair.shape_of import shape_of
from chairwright.figures.evaluate import figures_of, realise
from chairwright.figures.outline import plan_outline
from chairwright.fitting.described import one_row
from chairwright.line.load import load_line
from chairwright.line.model import Line
from chairwright.person.client import Amputation, Client, Measure, Propulsion
from chairwright.person.estimates import complete
from chairwright.units import parse_quantity

CODES = {
    "side_frame": "SFL", "rear_wheel": "W24", "camber": "K3", "axle_hole": "C4", "caster": "C6",
    "fork": "FM-3", "stem_spacer": "none", "caster_housing": "L3", "stem_setting": "NF4",
    "hand_rim": "RA", "seat_depth": "D440",
    "cushion": "Q50", "back_angle": "B8", "back_support": "BT", "seat_width": "S420",
    "arm_support": "AW-250", "foot_supports": "both", "hanger": "H70",
    "foot_plate": "FP", "leg_length": "G360",
    "back_height": "P425", "push_handle": "VF", "wheel_lock": "LP",
    "anti_tip": "TS-6", "belt": "none", "finish": "FG",
}  # fmt: skip


@dataclass(frozen=True)
class Seated:
    """One set-up made real."""

    line: Line
    occupant: Occupant
    rows: Rows
    figures: dict[str, float]
    shape: Shape


def person(propulsion: Propulsion = "hands", *lost: Amputation) -> Occupant:
    """A man of 1.75 m and 80 kg."""
    values = (("stature", "175 cm", "length"), ("body_mass", "80 kg", "mass"))
    measures = tuple(
        Measure(name, "middle", parse_quantity(typed, dimension, name), 10.0)  # type: ignore[arg-type]
        for name, typed, dimension in values
    )
    client = Client("U-1", "male", measures, propulsion, amputations=lost)
    return seat(client, complete(client))


def seated(occupant: Occupant | None = None, **other: str) -> Seated:
    """The set-up of `CODES`, with other codes where they are named."""
    line, who = load_line("everyday"), occupant or person()
    codes = CODES | other
    index = {name: line.choices[name].codes[code] for name, code in codes.items()}
    rows, _ = realise(line, who, one_row(index))
    figures = {name: float(values[0]) for name, values in figures_of(rows, who).items()}
    return Seated(line, who, rows, figures, shape_of(rows, who, figures, plan_outline(rows)))


def without_feet(*sides: str) -> Occupant:
    """The same man, with both legs lost through the knee."""
    lost = tuple(replace(Amputation("left", "through_knee"), side=side) for side in sides)  # type: ignore[arg-type]
    return person("hands", *lost)
