"""Mass and balance in the constraint model.

Masses and first moments add up: each part's are tabulated over the few choices that bring and
place it, in frame axes. The running gear tells how the frame stands, so the moments on the floor
are products of its sine and cosine with the sums. An angle is kept as its tangent, a ratio of two
moments, that is one more product.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import NamedTuple

import numpy as np
from ortools.sat.python import cp_model

from chairwright.chair.steps import HIP, STEPS

from .cp_sat_axes import GEAR, Tabulation, joined_axes
from .cp_sat_curves import Expression, Number, at_least, domain, ends, product, whole
from .cp_sat_space import Array
from .cp_sat_tables import Tables

KG, KG_MM, RATIO = 10**5, 10**2, 10**6
"""Whole numbers for one kg, one kg mm and the number one."""
MM = KG_MM * RATIO // KG
"""Whole numbers for one mm, so that mass times length is in the units of moment times ratio."""
TANGENT, DEGREE = 10**6, 10**6
CHORD_DEG = 0.2
ROOM_KG_MM = 0.3
"""More than the rounding of all parts together."""


class Ends(NamedTuple):
    """Ends between which a moment lies, one for each running gear."""

    low: Array
    high: Array


class Angle(NamedTuple):
    """An angle as the arc tangent of a ratio, with the ends between which it must lie [deg]."""

    over: Expression
    under: cp_model.IntVar
    low: float
    high: float


def angle(over: Expression, under: cp_model.IntVar, overs: Ends, unders: Ends) -> Angle:
    """Angle of a ratio of two moments, the lower one above 0.

    Parameters
    ----------
    over : linear expression
    under : IntVar
    overs, unders : Ends
    """
    corners = [np.degrees(np.arctan2(a, b)) for a in overs for b in unders]
    return Angle(over, under, float(np.min(corners)) - 0.01, float(np.max(corners)) + 0.01)


class Balance:
    """Sums, moments on the floor and their products.

    Parameters
    ----------
    tables : Tables
    """

    def __init__(self, tables: Tables) -> None:
        self.tables, self.model = tables, tables.model
        self.tabulation: Tabulation = tables.tabulation
        self._gear()
        parts = [self._part(step) for step in range(1, len(STEPS)) if STEPS[step].places]
        rest = {key: sum(part[key] for part in parts) for key in ("mass", "x", "y", "z")}
        self._floor(rest)

    def _gear(self) -> None:
        rows = self.tabulation.rows(("gear",))
        brought = self.tabulation.brought(0, ("gear",))
        cos, sin = rows["cos_pitch"], rows["sin_pitch"]
        x, z = rows["axle_x"], rows["axle_z"]
        self.turn = {"cos": cos, "sin": sin, "ahead": cos * x - sin * z, "up": sin * x + cos * z}
        self.own = {
            "x": cos * brought["x"] - sin * brought["z"] - self.turn["ahead"] * brought["mass"],
            "z": sin * brought["x"] + cos * brought["z"] - self.turn["up"] * brought["mass"],
        }
        self.radius = rows["rear_height"]
        self.length = rows["wheelbase"]
        whole_mass = brought["mass"] + brought["wheels"]
        self.low = {**self.own, "mass": whole_mass, "y": np.zeros(1)}
        self.high = dict(self.low)
        element = self.tables.element
        self.gear_mass = element("gear", whole(brought["mass"], KG))
        self.wheels = element("gear", whole(brought["wheels"], KG))
        self.base = element("gear", whole(rows["wheelbase"], MM))
        self.axle = element("gear", whole(rows["rear_height"], MM))
        self._rest = dict.fromkeys(("mass", "x", "y", "z"), (0, 0))
        self.load_kg = self.tabulation.space.occupant.load_kg

    def _part(self, step: int) -> dict[str, Number]:
        """Mass and moments of one step as variables, and what they can do on the floor."""
        axes = self._axes(step)
        brought = self.tabulation.brought(step, axes)
        turn = {key: values[:, None] for key, values in self.turn.items()}
        x, z, mass = brought["x"], brought["z"], brought["mass"]
        for key, share in (
            ("x", turn["cos"] * x - turn["sin"] * z - turn["ahead"] * mass),
            ("z", turn["sin"] * x + turn["cos"] * z - turn["up"] * mass),
            ("mass", mass[None, :]),
            ("y", brought["y"][None, :]),
        ):
            self.low[key] = self.low[key] + share.min(axis=1)
            self.high[key] = self.high[key] + share.max(axis=1)
        columns = {"mass": whole(mass, KG)}
        columns.update({axis: whole(brought[axis], KG_MM) for axis in "xyz"})
        for key, values in columns.items():
            low, high = self._rest[key]
            self._rest[key] = low + int(values.min()), high + int(values.max())
        return self.tables.columns(axes, columns)

    def _axes(self, step: int) -> tuple[str, ...]:
        """What places a step's masses: with a foot on the floor, how the chair stands as well."""
        places = STEPS[step].places
        if STEPS[step].on_floor and self.tabulation.space.occupant.feet_that_push:
            places = (*places, *GEAR, *HIP)
        return joined_axes(places)

    def _floor(self, rest: Mapping[str, Expression]) -> None:
        """Moments about the axle on the floor, within what each running gear allows."""
        model, element = self.model, self.tables.element
        turn = {key: element("gear", whole(self.turn[key], RATIO)) for key in ("cos", "sin")}
        shift = {key: element("gear", whole(self.turn[key], MM)) for key in ("ahead", "up")}
        mass, along, self.y, high = (
            self.named(rest[key], *self._rest[key]) for key in ("mass", "x", "y", "z")
        )
        self.mass = self.total(mass + self.gear_mass + self.wheels, self.ends("mass"), KG)
        cos_x, sin_x = (product(model, turn[key], along) for key in ("cos", "sin"))
        cos_z, sin_z = (product(model, turn[key], high) for key in ("cos", "sin"))
        back, down = (product(model, shift[key], mass) for key in ("ahead", "up"))
        self.x = self._moment("x", cos_x - sin_z - back)
        self.tilting_z = self._moment("z", sin_x + cos_z - down)
        self.z = self.total(None, self.ends("height"), KG_MM)
        self.rounded(self.z - self.tilting_z, product(model, self.axle, self.mass))

    def named(self, expression: Expression, low: int, high: int) -> cp_model.IntVar:
        """Give a linear expression a variable of its own, between ends."""
        found = self.model.new_int_var(low, high, "")
        self.model.add(found == expression)
        return found

    def total(self, expression: Expression | None, ends: Ends, scale: float) -> cp_model.IntVar:
        """A variable within a sum's ends; equal to the expression, if one is given."""
        low = int(np.floor((np.min(ends.low) - ROOM_KG_MM) * scale))
        high = int(np.ceil((np.max(ends.high) + ROOM_KG_MM) * scale))
        if expression is None:
            return self.model.new_int_var(low, high, "")
        return self.named(expression, low, high)

    def _moment(self, key: str, rest: Expression) -> cp_model.IntVar:
        low = np.floor((self.low[key] - ROOM_KG_MM) * KG_MM).astype(np.int64)
        high = np.ceil((self.high[key] + ROOM_KG_MM) * KG_MM).astype(np.int64)
        found = self.model.new_int_var(int(low.min()), int(high.max()), key)
        self.model.add(found >= self.tables.element("gear", low))
        self.model.add(found <= self.tables.element("gear", high))
        own = self.tables.element("gear", whole(self.own[key], KG_MM))
        self.rounded(found - own, rest)
        return found

    def rounded(self, value: Expression, many: Expression) -> None:
        """Require that a value is a finer one, rounded."""
        self.model.add(2 * (many - RATIO * value) <= RATIO)
        self.model.add(2 * (many - RATIO * value) >= -RATIO)

    def ends(self, key: str) -> Ends:
        """Ends of a sum: mass, x, y, z about the axle, or the height above the floor."""
        if key == "height":
            return Ends(*(end["z"] + self.radius * end["mass"] for end in (self.low, self.high)))
        return Ends(self.low[key], self.high[key])

    def scaled(self, one: Number, other: Number) -> cp_model.IntVar:
        """A product of a length or a plain ratio with a sum, as a moment, rounded."""
        corners = [a * b for a in domain(one) for b in domain(other)]
        low, high = min(corners) // RATIO - 1, max(corners) // RATIO + 1
        found = self.model.new_int_var(low, high, "scaled")
        self.rounded(found, product(self.model, one, other))
        return found

    def must(self, angle: Angle, low: float | None, high: float | None) -> None:
        """Keep an angle between ends [deg], with room for the rounding of moments."""
        room = int(2 * ROOM_KG_MM * KG_MM) * TANGENT
        for end, side in ((low, 1), (high, -1)):
            if end is not None:
                tangent = round(np.tan(np.radians(end)) * TANGENT)
                self.model.add(side * (TANGENT * angle.over - tangent * angle.under) >= -room)

    def below(self, angle: Angle, high: float | None = None) -> Expression:
        """An angle [deg x 10^6] that is at most the given one, or at most `high`."""
        places = np.array([angle.low, min(angle.high, high) if high is not None else angle.high])
        tangent = self._tangent(places)
        steep = product(self.model, tangent, angle.under)
        self.model.add(steep <= TANGENT * angle.over)
        return -at_least(
            self.model, tangent, lambda u: -_degrees(u), _places(places), (TANGENT, DEGREE)
        )

    def above(self, angle: Angle, low: float | None = None) -> Expression:
        """An angle [deg x 10^6] that is at least the given one, or at least `low`."""
        places = np.array([max(angle.low, low) if low is not None else angle.low, angle.high])
        tangent = self._tangent(places)
        steep = product(self.model, tangent, angle.under)
        self.model.add(steep >= TANGENT * angle.over)
        return at_least(self.model, tangent, _degrees, _places(places), (TANGENT, DEGREE))

    def _tangent(self, degrees: Array) -> cp_model.IntVar:
        low, high = whole(np.tan(np.radians(degrees)), TANGENT)
        return self.model.new_int_var(int(low), int(high), "tangent")


def _degrees(tangent: Array) -> Array:
    return np.asarray(np.degrees(np.arctan(tangent)))


def _places(degrees: Array) -> Array:
    return np.asarray(np.tan(np.radians(ends(degrees, CHORD_DEG))))
