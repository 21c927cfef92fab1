"""Yaw inertia of a seated person against an independent geometric body model (yeadon 2.0.1)."""

from __future__ import annotations

import numpy as np
import pytest

from chairwright.figures.yaw import segment_yaw_mm2
from chairwright.person.body import assemble_body
from chairwright.person.client import Sex
from chairwright.person.posture import centre_of_mass, leg_points, upper_body_points

from .test_yeadon import SIDES, _human, _lengths


@pytest.mark.parametrize(
    ("name", "sex"),
    [("male1", "male"), ("male2", "male"), ("male4", "male"), ("female1", "female")],
)
def test_a_seated_person_turns_as_heavily_as_the_oracle(name: str, sex: Sex) -> None:
    human = _human(name)
    lengths = _lengths(name, sex)
    body = assemble_body(sex=sex, table="de_leva", mass_kg=float(human.mass), lengths=lengths)
    points, _ = upper_body_points(body, 0.0, 0.0, 0.0, elbow_bend_rad=0.0)
    for side in SIDES:
        points += leg_points(body, side, 0.0, 0.0, 0.0, 0.0, -np.pi / 2)[0]
    _, x, y, _ = centre_of_mass(points)
    segments = {segment.name: segment for segment in body.segments}
    places, own = 0.0, 0.0
    for point in points:
        segment = segments[point.name]
        lies = np.asarray(np.pi / 2 if segment.link == "thigh" else 0.0)
        apart = (point.x_mm - x) ** 2 + (point.y_mm - y) ** 2
        places += float(point.mass_kg * apart) * 1e-6
        own += float(point.mass_kg * segment_yaw_mm2(segment, sex, lies)) * 1e-6
    wanted = float(np.diag(human.inertia)[2])
    # 7 percent: shoulders and hips stand at the model's usual distance, not at the person's.
    assert places + own == pytest.approx(wanted, rel=0.07)
    # As points alone the segments would make a quarter too little.
    assert places < 0.8 * wanted
