"""A rigid-body physics engine as oracle for a chair on the move (MuJoCo).

Rear wheels turn on hinges and roll on the floor without slipping; gravity turns instead of the
floor. What is asked for comes from readings that are linear in the torque or force applied: two
of them give the root. Settings of the contacts as in ``mujoco_tilt``.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import mujoco
import numpy as np
from numpy.typing import NDArray

Array = NDArray[np.float64]
GRAVITY = 9.81
SETTLE = 400
READ = 200
HEAD = """
<option timestep="0.0005" cone="elliptic" impratio="100" solver="Newton" iterations="100"
        tolerance="1e-12" integrator="implicitfast"/>
<default><geom contype="1" conaffinity="0" mass="0" friction="3 0 0" solref="0.002 1"
  solimp="0.999 0.9999 0.0001"/></default>"""


@dataclass(frozen=True)
class Solid:
    """A mass with principal inertias, in metres from the middle of the axle.

    Parameters
    ----------
    mass : float [kg]
    at : tuple of float [m]
    inertia : tuple of float [kg m2]
        About its own axes.
    pitch : float [rad]
        Its axes turned nose-up in the side view.
    """

    mass: float
    at: tuple[float, float, float]
    inertia: tuple[float, float, float] = (1e-6, 1e-6, 1e-6)
    pitch: float = 0.0

    @property
    def xml(self) -> str:
        """The body."""
        half = -self.pitch / 2
        return (
            f'<body pos="{_row(*self.at)}" quat="{_row(np.cos(half), 0, np.sin(half), 0)}">'
            f'<inertial pos="0 0 0" mass="{self.mass:.12g}" diaginertia="{_row(*self.inertia)}"/>'
            "</body>"
        )


@dataclass(frozen=True)
class Wheels:
    """A pair of wheels: masses and inertias of each, metres."""

    mass: float
    spin: float
    upright: float
    radius: float
    half_track: float
    ahead: float = 0.0

    def xml(self, name: str, axle_height: float, grip: float) -> str:
        """Two bodies on hinges, parts of a frame whose origin is the middle of the rear axle."""
        up = self.radius - axle_height
        return "".join(
            f'<body pos="{_row(self.ahead, side * self.half_track, up)}">'
            f'<joint name="{name}{at}" type="hinge" axis="0 1 0"/>'
            f'<inertial pos="0 0 0" mass="{self.mass:.12g}" '
            f'diaginertia="{_row(self.upright, self.spin, self.upright)}"/>'
            f'<geom name="{name}{at}" type="sphere" size="{self.radius:.12g}" '
            f'condim="{3 if grip else 1}" friction="{grip:g} 0 0"/>'
            "</body>"
            for at, side in enumerate((1.0, -1.0))
        )


def _row(*values: float) -> str:
    return " ".join(f"{value:.12g}" for value in values)


class Moving:
    """A chair on rolling wheels.

    Parameters
    ----------
    solids : list of Solid
        All but wheels and casters.
    rear, casters : Wheels
    casters_roll : bool
        False lets the casters slide without friction, as casters that follow every turn do.
    rear_grip : float
        Friction of the rear tyres on the floor.
    """

    def __init__(
        self,
        solids: list[Solid],
        rear: Wheels,
        casters: Wheels,
        *,
        casters_roll: bool = True,
        rear_grip: float = 3.0,
    ) -> None:
        bodies = "".join(solid.xml for solid in solids)
        self._model: Any = mujoco.MjModel.from_xml_string(
            f"<mujoco>{HEAD}<worldbody>"
            '<geom type="plane" size="99 99 1" contype="0" conaffinity="1" condim="1" '
            'friction="0 0 0"/>'
            f'<body name="frame" pos="0 0 {rear.radius:.12g}"><freejoint/>{bodies}'
            f"{rear.xml('rear', rear.radius, rear_grip)}"
            f"{casters.xml('caster', rear.radius, 3.0 if casters_roll else 0.0)}</body></worldbody>"
            '<actuator><motor joint="rear0"/><motor joint="rear1"/></actuator></mujoco>'
        )
        self._data: Any = mujoco.MjData(self._model)
        self._rear, self._casters = rear, casters

    def _run(
        self, gravity: Array, torques: tuple[float, float] = (0.0, 0.0), floor_n: float = 0.0
    ) -> tuple[Array, float, float]:
        """Mean acceleration of the frame (six rates), normal force on rear wheels and casters.

        ``floor_n`` pulls back at the casters' contacts, at floor height.
        """
        model, data = self._model, self._data
        mujoco.mj_resetData(model, data)
        model.opt.gravity[:] = gravity
        data.ctrl[:] = torques
        frame = model.body("frame").id
        rear = caster = 0.0
        before = np.zeros(6)
        for step in range(SETTLE + READ):
            if step == SETTLE:
                before = np.array(data.qvel[:6])
            # The pull's line lies on the floor: about the frame's own mass centre it has an arm.
            data.xfrc_applied[frame, 0] = -floor_n
            data.xfrc_applied[frame, 4] = floor_n * float(data.xipos[frame, 2])
            mujoco.mj_step(model, data)
            if step >= SETTLE:
                rear += self._normal("rear") / READ
                caster += self._normal("caster") / READ
        rates = (np.array(data.qvel[:6]) - before) / (READ * model.opt.timestep)
        return rates, rear, caster

    def _normal(self, name: str) -> float:
        wanted = {self._model.geom(f"{name}{at}").id for at in (0, 1)}
        force, total = np.zeros(6), 0.0
        for number in range(self._data.ncon):
            if wanted & set(self._data.contact[number].geom):
                mujoco.mj_contactForce(self._model, self._data, number, force)
                total += float(force[0])
        return total

    def start_lifts_at(self, slope_deg: float, hint_mps2: float) -> float:
        """Acceleration up a slope at which the casters bear nothing [m/s2]."""
        gravity = _turned(-1.0, 0.0, slope_deg)
        weight = self._model.body_subtreemass[0] * GRAVITY
        uphill = weight * np.sin(np.radians(slope_deg))
        whole = (weight / GRAVITY * hint_mps2 + uphill) * self._rear.radius / 2
        readings = [self._run(gravity, (share * whole,) * 2) for share in (0.5, 0.8)]
        (first, _, low), (second, _, high) = readings
        root = low / (low - high)
        return float(first[0] + (second[0] - first[0]) * root)

    def braking_lifts_at(self, slope_deg: float, hint_mps2: float) -> float:
        """Braking down a slope at which the rear wheels bear nothing [m/s2].

        For chairs made with no grip at the rear: where the wheels bear nothing the floor cannot
        hold them whatever their grip, and without it the load is linear in the force.
        """
        gravity = _turned(1.0, 0.0, slope_deg)
        weight = self._model.body_subtreemass[0] * GRAVITY
        whole = weight / GRAVITY * hint_mps2 + weight * np.sin(np.radians(slope_deg))
        readings = [self._run(gravity, floor_n=share * whole) for share in (0.5, 0.8)]
        (first, low, _), (second, high, _) = readings
        root = low / (low - high)
        return -float(first[0] + (second[0] - first[0]) * root)

    def yaw_inertia(self, torque_nm: float = 1.0) -> float:
        """Torque about the vertical over yaw acceleration, wheels turned against each other."""
        rates, _, _ = self._run(_turned(0.0, 0.0, 0.0), (-torque_nm, torque_nm))
        turning = 2.0 * torque_nm / self._rear.radius * self._rear.half_track
        return float(turning / rates[5])

    def holding_torque(self, cross_deg: float, hint_nm: float) -> float:
        """Torque at each rear wheel that keeps it from turning downhill, to the left [N m]."""
        gravity = _turned(0.0, 1.0, cross_deg)
        free, _, _ = self._run(gravity)
        held, _, _ = self._run(gravity, (hint_nm, -hint_nm))
        return float(hint_nm * free[5] / (free[5] - held[5]))


def _turned(ahead: float, left: float, slope_deg: float) -> Array:
    slope = np.radians(slope_deg)
    pull = np.sin(slope) * np.array([ahead, left, 0.0])
    return np.asarray(GRAVITY * (pull - [0.0, 0.0, np.cos(slope)]))
