"""The frame on its wheels: what stands, what cannot, and the turns of vectors."""

from __future__ import annotations

import numpy as np
import pytest

from chairwright.chair import pose


def arrays(*values: float) -> tuple[np.ndarray, ...]:
    return tuple(np.array([value]) for value in values)


@pytest.mark.parametrize(
    ("ahead", "above", "rear", "caster"),
    [
        (-10.0, -200.0, 300.0, 75.0),  # casters behind the axle
        (0.0, -225.0, 300.0, 75.0),  # straight below it
        (100.0, 50.0, 300.0, 75.0),  # nearer to each other than their heights differ
    ],
)
def test_what_cannot_stand_has_no_pose(
    ahead: float, above: float, rear: float, caster: float
) -> None:
    settled = pose.settle(*arrays(ahead, above, rear, caster))
    assert np.isnan(settled.pitch_rad).all()
    assert np.isnan(settled.wheelbase_mm).all()


@pytest.mark.parametrize("ahead", [260.0, 350.0, 500.0])
@pytest.mark.parametrize("above", [-300.0, -225.0, -100.0])
def test_both_axles_come_to_their_heights(ahead: float, above: float) -> None:
    settled = pose.settle(*arrays(ahead, above, 300.0, 75.0))
    sin, cos = np.sin(settled.pitch_rad), np.cos(settled.pitch_rad)
    along, up = pose.turned(np.array([ahead]), np.array([above]), sin, cos)
    assert up[0] == pytest.approx(75.0 - 300.0, abs=1e-9)
    assert along[0] == pytest.approx(settled.wheelbase_mm[0], abs=1e-9)
    assert np.hypot(along, up)[0] == pytest.approx(np.hypot(ahead, above), abs=1e-9)


def test_lower_casters_tilt_the_frame_back() -> None:
    low, high = (pose.settle(*arrays(400.0, above, 300.0, 75.0)) for above in (-250.0, -200.0))
    assert low.pitch_rad[0] > 0 > high.pitch_rad[0]


def test_swing_circle_reaches_the_farthest_corner_of_the_caster() -> None:
    # 3-4-5: trail 30 + radius 90, half width 50.
    assert pose.swing_radius(*arrays(30.0, 90.0, 100.0))[0] == 130.0


def test_camber_growth_is_twice_the_lean_of_one_wheel() -> None:
    growth = pose.track_growth(*arrays(300.0, 30.0))[0]
    height = pose.rear_axle_height(*arrays(300.0, 30.0))[0]
    assert growth == pytest.approx(300.0)
    assert np.hypot(growth / 2, height) == pytest.approx(300.0)
