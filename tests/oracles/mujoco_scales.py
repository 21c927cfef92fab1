"""Scales under the wheels of a chair in a rigid-body engine (MuJoCo).

The wheels are round and without friction, as wheels that roll free. One floor carries the rear
wheels and another, as high as the block, the casters. The engine finds the loads.
"""

from __future__ import annotations

from typing import NamedTuple

import numpy as np

from .mujoco_tilt import GRAVITY, HEAD, Array, _Engine, _masses, _metres

WHEELS = ("rear_left", "rear_right", "caster_left", "caster_right")


class Frame(NamedTuple):
    """A chair on wheels [mm]: axle heights are radii."""

    wheelbase: float
    rear_radius: float
    caster_radius: float
    rear_track: float
    caster_track: float


def weigh(frame: Frame, points: Array, block_mm: float = 0.0) -> dict[str, float]:
    """Load on every wheel at rest [kg].

    Parameters
    ----------
    frame : Frame
    points : ndarray, shape (n, 4) [kg, mm]
        Of the level chair, floor axes.
    block_mm : float
        Under the casters.
    """
    turn = turned_by(frame, block_mm)
    wheels = "".join(_wheels(frame))
    engine = _Engine(
        f"<mujoco>{HEAD.format(condim=1)}<worldbody>"
        '<geom type="plane" size="9 9 1" contype="1" conaffinity="1"/>'
        f'<geom type="plane" size="9 9 1" contype="2" conaffinity="2" '
        f'pos="{_metres(0, 0, block_mm)}"/>'
        f'<body pos="{_metres(0, 0, frame.rear_radius)}" axisangle="0 1 0 {-np.degrees(turn)}">'
        f"<freejoint/>{wheels}{_masses(points, (0, 0, frame.rear_radius))}</body>"
        "</worldbody></mujoco>"
    )
    loads = engine.loads(0.0, 0.0, WHEELS) / GRAVITY
    return dict(zip(WHEELS, map(float, loads), strict=True))


def _wheels(frame: Frame) -> list[str]:
    rear, front = frame.rear_track / 2, frame.caster_track / 2
    drop = frame.caster_radius - frame.rear_radius
    places = [(0.0, rear, 0.0), (0.0, -rear, 0.0)]
    places += [(frame.wheelbase, front, drop), (frame.wheelbase, -front, drop)]
    radii = [frame.rear_radius] * 2 + [frame.caster_radius] * 2
    kinds = [1, 1, 2, 2]
    return [
        f'<geom name="{name}" type="sphere" size="{_metres(radius)}" mass="0" '
        f'pos="{_metres(*at)}" contype="{kind}" conaffinity="{kind}"/>'
        for name, at, radius, kind in zip(WHEELS, places, radii, kinds, strict=True)
    ]


def turned_by(frame: Frame, block_mm: float) -> float:
    """Turn at which the casters stand on the block [rad], by bisection."""
    low, high = -0.5, 1.0
    drop = frame.caster_radius - frame.rear_radius
    for _ in range(60):
        turn = (low + high) / 2
        up = frame.rear_radius + frame.wheelbase * np.sin(turn) + drop * np.cos(turn)
        low, high = (turn, high) if up < frame.caster_radius + block_mm else (low, turn)
    return turn


def presses_on_block(frame: Frame, points: Array, block_mm: float, share: float) -> bool:
    """Whether the casters on the block still carry a share of the whole."""
    turn = turned_by(frame, block_mm)
    mass = points[:, 0]
    x, z = (mass @ points[:, axis] / mass.sum() for axis in (1, 3))
    arm = x * np.cos(turn) - (z - frame.rear_radius) * np.sin(turn)
    return bool(arm > share * frame.wheelbase)
