"""Ends of a figure before the choice that settles it: what an unfinished set-up can still reach."""

from __future__ import annotations

from collections.abc import Callable, Iterable

import numpy as np

from chairwright.chair.occupant import SIDES
from chairwright.chair.rows import Rows
from chairwright.chair.steps import HIP
from chairwright.figures.balance import forward, rear_locked
from chairwright.figures.band import Band, corner_band, known
from chairwright.figures.floor_ends import floor_along, floor_height
from chairwright.figures.mass import MassBox
from chairwright.figures.reach import MIDDLE_ELBOW_DEG, elbow_of, rim_across, rim_top
from chairwright.figures.space import Corner, farthest, plate_tips, rim_outer, toe_places
from chairwright.figures.terms import TERMS
from chairwright.figures.turning import half_turn_free_mm
from chairwright.mass_points import FloatArray
from chairwright.search.early_clearances import EarlyPlates, early_caster_tyre
from chairwright.search.early_device import EarlyDevice
from chairwright.search.early_families import early_need
from chairwright.search.early_heaviest import EarlyHeaviest
from chairwright.search.early_stroke import EarlyStroke
from chairwright.search.early_terms import EarlyTerm
from chairwright.search.grid import EndsTable, Known
from chairwright.search.once import Once
from chairwright.search.outline_ends import OutlineEnds, outline_ends
from chairwright.search.space import Space
from chairwright.targets.target import Target

OF_CORNERS = frozenset(
    {"turning_diameter_mm", "half_turn_width_mm", "half_turn_free_mm", "overall_length_mm"}
)
"""Figures whose early ends take every corner of the outline, feet and plates too."""


class Early:
    """Early ends of the figures that have them, from the pose on.

    Parameters
    ----------
    space : Space
    musts : tuple of Target
        Musts that every set-up asked about holds.
    outline_ends : callable
        Ends of a need of the outline by the figure's name; None for other figures.
    known : dict or None
        What was worked out before for spaces of the same line and occupant.
    """

    def __init__(
        self,
        space: Space,
        musts: tuple[Target, ...] = (),
        outline_ends: Callable[[str], OutlineEnds | None] = outline_ends,
        known: Known | None = None,
    ) -> None:
        self._space = space
        self._outline_ends = outline_ends
        known = {} if known is None else known
        self._shoulder = _tabled(space, HIP, ("shoulder_x", "shoulder_z"), known)
        toes = [f"toe_{axis}_{side}" for side in self._resting for axis in "xz"]
        self._toes = _tabled(space, (*HIP, "foot_supports", "hanger"), tuple(toes), known)
        self._device = EarlyDevice(space, musts)
        self._once = Once()
        plates = EarlyPlates(space, self._once, known) if self._resting else None
        self._tips: Callable[[Rows], Iterable[FloatArray]] = plates.tips if plates else plate_tips
        self.formulas: dict[str, Callable[[Rows], Band]] = {
            "cushion_to_floor_front_mm": self._cushion_height,
            "seat_to_floor_front_mm": self._seat_height,
            "foot_reach_mm": self._foot_reach,
            "elbow_angle_deg": self._elbow,
            "push_reach_deg": self._push_reach,
            "turning_diameter_mm": self._turning_diameter,
            "half_turn_width_mm": self._half_turn_width,
            "half_turn_free_mm": self._half_turn_free,
            "overall_length_mm": self._overall_length,
            "caster_tyre_clearance_mm": early_caster_tyre(space),
            "heaviest_part_kg": EarlyHeaviest(space),
            **{name: EarlyTerm(space, name) for name in TERMS},
        }
        stroke = EarlyStroke(space, self._shoulder_place, self._hub_beyond_shoulder)
        self.formulas["push_handle_height_mm"] = stroke.handles
        if space.occupant.hands_that_push:
            self.formulas["push_arc_deg"] = stroke.arc
            self.formulas["fingertip_to_axle_mm"] = stroke.fingertips
        if space.occupant.knee_above_joint_mm:
            self.formulas["knee_top_mm"] = stroke.knee_tops
        if space.occupant.feet_that_push:
            self.formulas["heel_reach_mm"] = stroke.heels
        if plates:
            self.formulas["footplate_clearance_mm"] = plates.clearance
            self.formulas["caster_foot_clearance_mm"] = plates.caster_foot

    @property
    def _resting(self) -> list[str]:
        return [side for side in SIDES if side in self._space.occupant.feet_that_rest]

    @property
    def _most_inset(self) -> float:
        column = self._space.line.column("foot_plate", "outer_inset_mm")
        return float(np.max(np.nan_to_num(column[self._space.allowed["foot_plate"]])))

    def _ends(self, choice: str, key: str) -> tuple[float, float]:
        values = self._space.line.column(choice, key)[self._space.allowed[choice]]
        return float(np.min(values)), float(np.max(values))

    def _open_ends(self, rows: Rows, column: str, choice: str, key: str) -> Band:
        if column in rows.columns:
            return known(rows[column])
        low, high = self._ends(choice, key)
        zero = np.zeros(len(rows))
        return Band(zero + low, zero + high)

    def _cushion_height(self, rows: Rows) -> Band:
        depth = self._open_ends(rows, "depth", "seat_depth", "depth_mm")
        front = self._open_ends(rows, "cushion_front", "cushion", "front_mm")
        return floor_height(rows, depth, front)

    def _seat_height(self, rows: Rows) -> Band:
        depth = self._open_ends(rows, "depth", "seat_depth", "depth_mm")
        return corner_band(lambda along: rows.to_floor(along, 0.0)[1], depth)

    def _foot_reach(self, rows: Rows) -> Band:
        sides = self._space.occupant.feet_that_push
        if not sides:
            return known(np.full(len(rows), np.nan))
        shorter = min(self._space.occupant.lower_leg_mm[side] for side in sides)
        height = self._cushion_height(rows)
        return Band(shorter - height.high, shorter - height.low)

    def _elbow(self, rows: Rows) -> Band:
        """Between the nearest and the farthest place that shoulder and rim can still have."""
        occupant = self._space.occupant
        along, up = self._on_floor(rows, self._shoulder, "shoulder_x", "shoulder_z")
        top = rim_top(rows)
        spans = (along, Band(up.low - top, up.high - top), self._across(rows))
        near = np.sqrt(sum(_nearest(span) ** 2 for span in spans))
        far = np.sqrt(sum(_farthest(span) ** 2 for span in spans))
        return Band(
            elbow_of(occupant, near, within_reach=False), elbow_of(occupant, far, within_reach=True)
        )

    def _across(self, rows: Rows) -> Band:
        """Top of the rim outward of the shoulder joint [mm]."""
        low, high = self._ends("arm_support", "hub_outset_mm")
        width = self._open_ends(rows, "width", "seat_width", "width_mm")
        extra = rows.option("camber", "hub_extra_mm")
        hubs = width.low / 2 + low + extra, width.high / 2 + high + extra
        standoff = self._open_ends(rows, "rim_standoff", "hand_rim", "standoff_mm")
        return Band(
            *(
                rim_across(rows, self._space.occupant, hub, out)
                for hub, out in zip(hubs, standoff, strict=True)
            )
        )

    def _shoulder_place(self, rows: Rows) -> tuple[Band, Band]:
        return self._on_floor(rows, self._shoulder, "shoulder_x", "shoulder_z")

    def _hub_beyond_shoulder(self, rows: Rows) -> Band:
        """Rim's wheel plane at the hub, outward of the shoulder joint [mm]."""
        leans = rows.option("rear_wheel", "hand_rim_radius_mm") * np.sin(np.radians(rows["camber"]))
        across = self._across(rows)
        return Band(across.low + leans, across.high + leans)

    def _on_floor(self, rows: Rows, table: EndsTable, x_key: str, z_key: str) -> tuple[Band, Band]:
        x_mm = Band(*table.ends(x_key, rows.index))
        z_mm = Band(*table.ends(z_key, rows.index))
        return (
            floor_along(rows, x_mm, z_mm),
            floor_height(rows, x_mm, z_mm),
        )

    def _push_reach(self, rows: Rows) -> Band:
        band = self._elbow(rows)
        below, above = band.low - MIDDLE_ELBOW_DEG, band.high - MIDDLE_ELBOW_DEG
        low = np.maximum(np.maximum(below, -above), 0.0)
        return Band(low, np.maximum(np.abs(below), np.abs(above)))

    def _least_width(self, rows: Rows) -> FloatArray:
        return self._open_ends(rows, "width", "seat_width", "width_mm").low

    def begin(self) -> None:
        """Forget what was worked out for rows that may have more columns by now."""
        self._once.forget()

    def _front_corners(self, rows: Rows) -> list[Corner]:
        return self._once.of(rows, "front corners", self._front)

    def _rear_corners(self, rows: Rows) -> list[Corner]:
        return self._once.of(rows, "rear corners", self._rear)

    def _front(self, rows: Rows) -> list[Corner]:
        """Front corners at their least."""
        outer = self._least_width(rows) / 2 - self._most_inset
        tyre = rows.option("caster", "width_mm") / 2
        caster = self._least_width(rows) / 2 + rows.line.caster_outset_mm + tyre
        toes = [(toe, outer) for toe in self._toe_places(rows)]
        tips = [(tip, outer) for tip in self._tips(rows)]
        return [*toes, *tips, (rows["wheelbase"] + rows["caster_radius"], caster)]

    def _toe_places(self, rows: Rows) -> list[FloatArray]:
        """Least places of the toes ahead of the axle [mm]; those of feet that push once placed."""
        pushing = self._space.occupant.feet_that_push
        places = list(toe_places(rows, pushing))
        for side in self._resting:
            keys = f"toe_x_{side}", f"toe_z_{side}"
            along, _ = self._on_floor(rows, self._toes, *keys)
            places.append(np.maximum(np.nan_to_num(along.low), 0.0))
        return places

    def _rear(self, rows: Rows) -> list[Corner]:
        """The rear tyre's back edge and the anti-tip wheel's, at their least."""
        half = self._least_width(rows) / 2
        hub = self._ends("arm_support", "hub_outset_mm")[0]
        return [(-rows["rear_radius"], half + hub), (-self._device.behind(rows), half)]

    def _turning_diameter(self, rows: Rows) -> Band:
        front, rear = farthest(self._front_corners(rows)), farthest(self._rear_corners(rows))
        return Band(2 * np.maximum(front, rear), np.full(len(rows), np.inf))

    def _half_turn_width(self, rows: Rows) -> Band:
        low = farthest(self._front_corners(rows)) + farthest(self._rear_corners(rows))
        return Band(low, np.full(len(rows), np.inf))

    def _half_turn_free(self, rows: Rows) -> Band:
        low = half_turn_free_mm(self._corners(rows))
        return Band(low, np.full(len(rows), np.inf))

    def _corners(self, rows: Rows) -> list[Corner]:
        return [*self._front_corners(rows), *self._rear_corners(rows)]

    def _few_corners(self, rows: Rows) -> list[Corner]:
        """Feet and plates as one, the others, and the hand rim once it is placed."""
        *feet, caster = self._front_corners(rows)
        ahead = np.maximum.reduce([x for x, _ in feet]) if feet else np.zeros(len(rows))
        outer = feet[0][1] if feet else np.zeros(len(rows))
        few = [(ahead, outer), caster, *self._rear_corners(rows)]
        if "hub_half" in rows.columns:
            rim = rim_outer(rows)
            few += [(rows["rim_radius"], rim), (-rows["rim_radius"], rim)]
        return few

    def of(self, name: str) -> Callable[[Rows], Band] | None:
        """Early ends of a figure; None where there are none.

        Parameters
        ----------
        name : str
            A fixed figure, or one of a family.
        """
        if name not in self.formulas and "@" in name:
            ends = self._outline_ends(name)
            if ends is not None:
                self.formulas[name] = early_need(name, self._few_corners, ends)
        return self.formulas.get(name)

    def _overall_length(self, rows: Rows) -> Band:
        front = np.maximum.reduce([x for x, _ in self._front_corners(rows)])
        rear = np.minimum.reduce([x for x, _ in self._rear_corners(rows)])
        return Band(front - rear, np.full(len(rows), np.inf))


def _tabled(
    space: Space, choices: tuple[str, ...], columns: tuple[str, ...], known: Known
) -> EndsTable:
    table = EndsTable(space, choices)
    table.tabulate_all(space, columns, lambda rows: {name: rows[name] for name in columns}, known)
    return table


def _nearest(span: Band) -> FloatArray:
    return np.maximum(np.maximum(span.low, -span.high), 0.0)


def _farthest(span: Band) -> FloatArray:
    return np.maximum(np.abs(span.low), np.abs(span.high))


def tip_least(rows: Rows, box: MassBox) -> Band:
    """Least tipping angle before the tracks are known: at most rearward and forward [deg]."""
    highest = np.minimum(rear_locked(rows, box).high, forward(rows, box).high)
    return Band(np.full(len(rows), -90.0), highest)


EARLY_WEIGHED: dict[str, Callable[[Rows, MassBox], Band]] = {"tip_least_deg": tip_least}
"""Early ends of figures of the centre of mass."""
