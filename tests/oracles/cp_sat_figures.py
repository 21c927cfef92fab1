"""Figures of mass, balance, price and delivery in the constraint model, and their costs."""

from __future__ import annotations

from collections.abc import Callable, Sequence

import numpy as np

from chairwright.figures.anti_tip import contact_pitch
from chairwright.figures.registry import FIGURES
from chairwright.figures.terms import TERMS
from chairwright.line.choices import CHOICES
from chairwright.targets.target import Target

from .cp_sat_balance import DEGREE, KG, KG_MM, MM, RATIO, Angle, Balance, Ends, angle
from .cp_sat_curves import Expression, product, whole
from .cp_sat_space import cost_of
from .cp_sat_tables import Tables

SHARE = 10**6
PRICE = 10**2


def charge_figures(tables: Tables, targets: Sequence[Target]) -> None:
    """Charge targets on sums, on the centre of mass, on price and delivery.

    Parameters
    ----------
    tables : Tables
    targets : sequence of Target
    """
    balance = Weighed(tables)
    for target in targets:
        if target.figure in TERMS:
            _term(tables, target)
        elif target.figure in balance.angles:
            _angle(balance, target, balance.angles[target.figure]())
        elif target.figure == "anti_tip_gain_deg":
            _gain(balance, target)
        elif target.figure == "caster_share":
            _share(balance, target)
        else:
            _linear(tables, target, balance.masses[target.figure], KG)


def _term(tables: Tables, target: Target) -> None:
    """Price: a sum. Load margin and delivery: the least or the greatest part decides."""
    space, term = tables.tabulation.space, TERMS[target.figure]
    numbers = {name: space.line.column(name, term.key)[space.allowed[name]] for name in CHOICES}
    base = np.array([term.base(space.line)])
    if term.add is np.add:
        parts = (tables.element(name, whole(each, PRICE)) for name, each in numbers.items())
        figure = sum(parts) + round(float(base[0]) * PRICE)
        _linear(tables, target, figure, PRICE)
        return
    sided = target.low is None if term.add is np.maximum else target.high is None
    if not sided or not target.must:
        message = f"{target.figure}: only a must on the end that every part must keep"
        raise NotImplementedError(message)
    for name, each in numbers.items():
        values = term.figure(space.line, space.occupant, term.add(base, each))
        tables.tabulate((name,), cost_of(target, values))


def _linear(tables: Tables, target: Target, figure: Expression, scale: float) -> None:
    """A figure that is a linear expression, whole numbers of its unit."""
    unit = target.weight / FIGURES[target.figure].scale
    for end, side in ((target.low, 1), (target.high, -1)):
        if end is None:
            continue
        short = side * (round(end * scale) - figure)
        if target.must:
            tables.model.add(short <= 0)
        else:
            tables.charge(unit, short, scale)


def _angle(balance: Balance, target: Target, found: Angle) -> None:
    """A tipping angle between ends."""
    if target.must:
        balance.must(found, target.low, target.high)
        return
    unit = target.weight / FIGURES[target.figure].scale
    if target.low is not None and found.low < target.low:
        reached = balance.below(found, target.low)
        short = round(target.low * DEGREE) - reached
        balance.tables.charge(unit, short, DEGREE)
    if target.high is not None and found.high > target.high:
        reached = balance.above(found, target.high)
        balance.tables.charge(unit, reached - round(target.high * DEGREE), DEGREE)


def _gain(balance: Weighed, target: Target) -> None:
    """What the anti-tip device adds: the difference of two angles, wanted large."""
    if target.must or target.low is None or target.high is not None:
        message = "anti_tip_gain_deg: only a preference for more"
        raise NotImplementedError(message)
    device, own = balance.device(), balance.angles["tip_rear_free_deg"]()
    gained = balance.below(device) - balance.above(own)
    unit = target.weight / FIGURES[target.figure].scale
    balance.tables.charge(unit, round(target.low * DEGREE) - gained, DEGREE)


def _share(balance: Weighed, target: Target) -> None:
    """Mass on the casters over the whole mass."""
    over, under, tables = balance.on_casters, balance.mass, balance.tables
    model, unit = tables.model, target.weight / FIGURES[target.figure].scale
    for end, side in ((target.low, 1), (target.high, -1)):
        if end is None:
            continue
        wanted = round(end * SHARE)
        if target.must:
            model.add(side * (SHARE * over - wanted * under) >= -SHARE)
            continue
        share = model.new_int_var(-SHARE, 2 * SHARE, "share")
        model.add(side * (SHARE * over - product(model, share, under)) >= 0)
        tables.charge(unit, side * (wanted - share), SHARE)


class Weighed(Balance):
    """Ratios that make the figures of the centre of mass.

    Parameters
    ----------
    tables : Tables
    """

    def __init__(self, tables: Tables) -> None:
        super().__init__(tables)
        x, length = self.ends("x"), self.length
        self.on_casters = self.total(None, Ends(x.low / length, x.high / length), KG)
        self.rounded(self.x, product(self.model, self.on_casters, self.base))
        self.angles: dict[str, Callable[[], Angle]] = {
            "tip_rear_locked_deg": lambda: self._over(self.x, self.ends("x")),
            "tip_rear_free_deg": lambda: angle(
                self.x, self.tilting_z, self.ends("x"), self.ends("z")
            ),
            "tip_forward_deg": self._forward,
            "tip_left_deg": lambda: self._sideways(-1),
            "tip_right_deg": lambda: self._sideways(1),
        }
        self.masses: dict[str, Expression] = {
            "total_mass_kg": self.mass,
            "chair_mass_kg": self.mass - round(self.load_kg * KG),
        }

    def _over(self, over: Expression, ends: Ends) -> Angle:
        return angle(over, self.z, ends, self.ends("height"))

    def _forward(self) -> Angle:
        mass, x = self.ends("mass"), self.ends("x")
        ends = Ends(self.length * mass.low - x.high, self.length * mass.high - x.low)
        return self._over(self.scaled(self.base, self.mass) - self.x, ends)

    def _sideways(self, side: int) -> Angle:
        """Over the wheels of one side: half the track where the centre of mass stands, less it."""
        rows = self.tabulation.rows(TRACK)
        rear, front = rows["rear_track"] / 2, rows["caster_track"] / 2
        track = self.tables.columns(
            TRACK, {"rear": whole(rear, MM), "narrowing": whole(rear - front, MM)}
        )
        half = self.scaled(track["rear"], self.mass) - self.scaled(
            track["narrowing"], self.on_casters
        )
        mass, y = self.ends("mass"), self.ends("y")
        aside = float(np.max(np.abs(y)))
        least, most = min(rear.min(), front.min()), max(rear.max(), front.max())
        ends = Ends(least * mass.low - aside, most * mass.high + aside)
        return self._over(half + side * self.y, ends)

    def device(self) -> Angle:
        """The chair pitched onto its anti-tip device, about the device's wheels."""
        axes = ("gear", "anti_tip")
        rows = self.tabulation.rows(axes)
        pitch, axle = contact_pitch(rows), rows["rear_height"]
        cos, sin = np.cos(pitch), np.sin(pitch)
        behind = rows["device_x"] * cos - (rows["device_z"] - axle) * sin
        above = axle - rows["device_radius"]
        rows_left = self.tables.open_rows(axes)
        if not np.isfinite(behind[rows_left]).all():
            message = "a set-up without a device that touches has no such figure"
            raise NotImplementedError(message)
        turn = self.tables.columns(
            axes,
            {
                "cos": whole(cos, RATIO),
                "sin": whole(sin, RATIO),
                "behind": whole(behind, MM),
                "above": whole(above, MM),
            },
        )
        x, z = self.x, self.tilting_z
        over = self.scaled(turn["cos"], x) - self.scaled(turn["sin"], z)
        under = self.scaled(turn["sin"], x) + self.scaled(turn["cos"], z)
        over -= self.scaled(turn["behind"], self.mass)
        under += self.scaled(turn["above"], self.mass)
        gear = self.tabulation.grid(axes)[rows_left, 0]
        cos, sin, behind, above = (each[rows_left] for each in (cos, sin, behind, above))
        low, high = (
            {key: values[gear] for key, values in end.items() if key != "y"}
            for end in (self.low, self.high)
        )
        overs = Ends(
            cos * low["x"] - sin * high["z"] - behind * low["mass"],
            cos * high["x"] - sin * low["z"] - behind * high["mass"],
        )
        unders = Ends(
            sin * low["x"] + cos * low["z"] + above * low["mass"],
            sin * high["x"] + cos * high["z"] + above * high["mass"],
        )
        return angle(over, self.total(under, unders, KG_MM), overs, unders)


TRACK = ("rear_wheel", "camber", "seat_width", "arm_support")

WEIGHED = frozenset(
    {
        "tip_rear_locked_deg", "tip_rear_free_deg", "tip_forward_deg", "tip_left_deg",
        "tip_right_deg", "anti_tip_gain_deg", "caster_share", "total_mass_kg", "chair_mass_kg",
    }
)  # fmt: skip
