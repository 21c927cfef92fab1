"""A rigid-body physics engine as oracle for tipping (MuJoCo).

The floor stays level and gravity turns. Feet are small spheres without mass; every point mass
is a body of its own, so the engine forms the centre of mass by itself. The moment of the feet's
normal forces about the tipping edge is exactly linear in the cosine and sine of the slope: two
slopes give the one at which it vanishes. The edge comes from a linear programme.

Stiffer contacts and a shorter step than the engine's defaults keep the feet's sinking (about a
thousandth of a millimetre) from tilting the chair.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

import mujoco
import numpy as np
from numpy.typing import NDArray

from .linear_programme import Tipping

Array = NDArray[np.float64]
MassAt = tuple[float, float, float, float]
"""Mass [kg] and place [mm]; of many, an array of shape (n, 4)."""

STEPS = 300
BELOW = (0.05, 0.02, 0.01, 0.005)
"""Second slope as a share of the tipping angle: the first at which every foot keeps bearing, so
that none chatters on the floor."""
KEEPS_BEARING = 0.4
"""Share of its load on the level floor with which a foot keeps bearing."""
STEPS_TO_TILT = 4000
STEPS_TO_TOPPLE = 4000
FOOT_MM = 5.0
GRAVITY = 9.81
HEAD = """
<option timestep="0.0005" cone="elliptic" impratio="100" solver="Newton" iterations="100"
        tolerance="1e-12" integrator="implicitfast"/>
<default><geom condim="{condim}" friction="3 0 0" solref="0.001 1" solimp="0.9999 0.9999 0.0001"/>
</default>"""


def _metres(*values: float) -> str:
    return " ".join(f"{value / 1000.0:.12g}" for value in values)


def _masses(points: Array, about: tuple[float, float, float] = (0, 0, 0)) -> str:
    return "".join(
        f'<body pos="{_metres(x - about[0], y - about[1], z - about[2])}"><inertial pos="0 0 0" '
        f'mass="{mass:.12g}" diaginertia="1e-3 1e-3 1e-3"/></body>'
        for mass, x, y, z in points
        if mass > 0
    )


def _foot(name: str, x: float, y: float, z: float) -> str:
    size = _metres(FOOT_MM)
    return f'<geom name="{name}" type="sphere" size="{size}" mass="0" pos="{_metres(x, y, z)}"/>'


class Chair:
    """A chair on its feet, all of one piece.

    Parameters
    ----------
    points : ndarray, shape (n, 4) [kg, mm]
    feet_mm : ndarray, shape (feet, 2) [mm]
    """

    def __init__(self, points: Array, feet_mm: Array) -> None:
        feet = "".join(_foot(f"foot{i}", x, y, FOOT_MM) for i, (x, y) in enumerate(feet_mm))
        self._engine = _Engine(
            f'<mujoco>{HEAD.format(condim=3)}<worldbody><geom type="plane" size="9 9 1"/>'
            f"<body><freejoint/>{feet}{_masses(points)}</body></worldbody></mujoco>"
        )
        self._feet = feet_mm
        self._names = [f"foot{i}" for i in range(len(feet_mm))]
        self._level = self.loads(0.0, 0.0)

    def loads(self, slope_deg: float, direction_deg: float) -> Array:
        """Normal force of each foot at rest on a slope [N]."""
        return self._engine.loads(slope_deg, direction_deg, self._names)

    def tips_at(self, hint: Tipping, direction_deg: float) -> float:
        """Slope at which the feet above the tipping edge stop bearing [deg].

        Parameters
        ----------
        hint : Tipping
            Names the edge, and a slope at which the chair still stands.
        direction_deg : float
        """
        away = self._from_edge(hint, direction_deg)
        for share in BELOW:
            slope = share * hint.angle_deg
            there = self.loads(slope, direction_deg)
            if (there >= KEEPS_BEARING * self._level).all():
                break
        return _root(float(self._level @ away), float(there @ away), slope)

    def topples(self, slope_deg: float, direction_deg: float) -> bool:
        """Whether the chair turns by more than a degree when the floor is tilted and then held."""
        self._engine.tilt(slope_deg, direction_deg)
        return self._engine.turned_deg() > 1.0

    def _from_edge(self, hint: Tipping, direction_deg: float) -> Array:
        first, second = (self._feet[foot] for foot in hint.carrying)
        along = (second - first) / np.linalg.norm(second - first)
        normal = np.array([along[1], -along[0]])
        downhill = np.array([np.cos(np.radians(direction_deg)), np.sin(np.radians(direction_deg))])
        normal *= np.sign(normal @ downhill)
        return np.asarray((first - self._feet) @ normal)


class ChairOnFreeWheels:
    """A frame hinged to rear wheels that turn freely and lean on a frictionless wall.

    Parameters
    ----------
    points : ndarray, shape (n, 4) [kg, mm]
        All but the rear wheels.
    wheels : MassAt
        Both rear wheels.
    feet_mm : ndarray, shape (4, 2) [mm]
        Rear contacts, then the casters' contacts.
    """

    def __init__(self, points: Array, wheels: MassAt, feet_mm: Array) -> None:
        mass, x, _, z = wheels
        axle = (x, 0.0, z)
        tyres = "".join(
            f'<geom type="sphere" size="{_metres(z)}" mass="{mass / 2:.12g}" '
            f'pos="{_metres(0.0, y, 0.0)}"/>'
            for y in feet_mm[:2, 1]
        )
        casters = "".join(
            _foot(f"caster{i}", at[0] - x, at[1], FOOT_MM - z) for i, at in enumerate(feet_mm[2:])
        )
        self._engine = _Engine(
            f'<mujoco>{HEAD.format(condim=1)}<worldbody><geom type="plane" size="9 9 1"/>'
            f'<geom type="plane" size="9 9 1" zaxis="1 0 0" pos="{_metres(x - z, 0, 0)}"/>'
            f'<body pos="{_metres(*axle)}"><freejoint/>{tyres}'
            f'<body><joint type="hinge" axis="0 1 0"/>{casters}{_masses(points, axle)}'
            "</body></body></worldbody></mujoco>"
        )

    def tips_back_at(self, hint: Tipping) -> float:
        """Slope at which the casters stop bearing [deg], from the level and one slope below."""
        names = ["caster0", "caster1"]
        slope_deg = BELOW[0] * hint.angle_deg
        level, there = (
            float(self._engine.loads(slope, 180.0, names).sum()) for slope in (0.0, slope_deg)
        )
        return _root(level, there, slope_deg)


def _root(level: float, there: float, slope_deg: float) -> float:
    """Root of ``level cos(t) - b sin(t)`` that takes the value ``there`` at a slope [deg]."""
    slope = np.radians(slope_deg)
    sine_part = (level * np.cos(slope) - there) / np.sin(slope)
    return float(np.degrees(np.arctan2(level, sine_part)))


class _Engine:
    def __init__(self, xml: str) -> None:
        self._model: Any = mujoco.MjModel.from_xml_string(xml)
        self._data: Any = mujoco.MjData(self._model)

    def loads(self, slope_deg: float, direction_deg: float, names: Sequence[str]) -> Array:
        """Normal forces of named feet after coming to rest under turned gravity [N]."""
        mujoco.mj_resetData(self._model, self._data)
        self._turn_gravity(slope_deg, direction_deg)
        for _ in range(STEPS):
            mujoco.mj_step(self._model, self._data)
        mujoco.mj_forward(self._model, self._data)
        return np.array([self._normal(self._model.geom(name).id) for name in names])

    def tilt(self, slope_deg: float, direction_deg: float) -> None:
        """Turn gravity slowly from the level to a slope and hold it there."""
        mujoco.mj_resetData(self._model, self._data)
        for share in (*np.linspace(0.0, 1.0, STEPS_TO_TILT), *np.ones(STEPS_TO_TOPPLE)):
            self._turn_gravity(share * slope_deg, direction_deg)
            mujoco.mj_step(self._model, self._data)

    def _turn_gravity(self, slope_deg: float, direction_deg: float) -> None:
        slope, towards = np.radians(slope_deg), np.radians(direction_deg)
        pull = np.sin(slope) * np.array([np.cos(towards), np.sin(towards), 0.0])
        self._model.opt.gravity[:] = GRAVITY * (pull - [0.0, 0.0, np.cos(slope)])

    def turned_deg(self) -> float:
        """How far the first body has turned from where it started [deg]."""
        upright = float(np.clip(abs(self._data.qpos[3]), 0.0, 1.0))
        return float(np.degrees(2.0 * np.arccos(upright)))

    def _normal(self, geom: int) -> float:
        force, total = np.zeros(6), 0.0
        for number in range(self._data.ncon):
            if geom in self._data.contact[number].geom:
                mujoco.mj_contactForce(self._model, self._data, number, force)
                total += float(force[0])
        return total
