"""Amputation: published fractions, stumps, and the shift of the seated centre of mass."""

from __future__ import annotations

import pytest

from chairwright.errors import InputError
from chairwright.person.amputation import (
    LostPart,
    client_intact_mass_kg,
    intact_equivalent_mass_kg,
    osterkamp_lost_part,
    partial_segment,
)
from chairwright.person.client import Amputation, AmputationLevel, Sex
from chairwright.person.posture import centre_of_mass
from chairwright.person.segments import segment_kinds
from chairwright.tables.load import find_row

from .reference_people import MASS_KG, reference_body, seated


def _osterkamp(part: str) -> float:
    row = find_row("body", "osterkamp1995_amputation", part=part)
    return float(row["mass_pct_of_intact_body"])


@pytest.mark.parametrize(
    ("parts", "whole", "total"),
    [
        (("hand", "forearm"), "forearm_hand", 2.3),
        (("forearm_hand", "upper_arm"), "arm", 5.0),
        (("foot", "lower_leg"), "lower_leg_foot", 5.9),
        (("lower_leg_foot", "thigh"), "leg", 16.0),
    ],
)
def test_osterkamp_adds_up(parts: tuple[str, str], whole: str, total: float) -> None:
    assert sum(_osterkamp(part) for part in parts) == pytest.approx(total, abs=1e-12)
    assert _osterkamp(whole) == total


@pytest.mark.parametrize(
    ("mass_kg", "lost_pct", "intact_kg"),
    [(70.0, 5.9, 74.389), (80.0, 16.0, 95.238), (60.0, 11.8, 68.027)],
)
def test_intact_equivalent_mass(mass_kg: float, lost_pct: float, intact_kg: float) -> None:
    lost = [LostPart(lost_pct / 100, "osterkamp")]
    assert intact_equivalent_mass_kg(mass_kg, lost) == pytest.approx(intact_kg, abs=0.0005)


@pytest.mark.parametrize(
    ("mass_kg", "amputations", "intact_kg"),
    [
        (70.0, (Amputation("left", "through_knee"),), 74.389),
        (80.0, (Amputation("right", "hip"),), 95.238),
        # Two below knee at the joint line: no stump is left.
        (60.0, tuple(Amputation(s, "below_knee", 0.0) for s in ("left", "right")), 68.027),
    ],
)
def test_intact_equivalent_mass_of_a_client(
    mass_kg: float, amputations: tuple[Amputation, ...], intact_kg: float
) -> None:
    assert client_intact_mass_kg(mass_kg, amputations) == pytest.approx(intact_kg, abs=0.0005)


def test_mid_thigh_loss_is_more_than_the_thigh_alone_suggests() -> None:
    lost = osterkamp_lost_part(Amputation("left", "above_knee", 0.5))
    assert lost.fraction == pytest.approx((5.9 + 10.1 / 2) / 100, abs=1e-12)


BOTH = ("left", "right")
SHIFTS: list[tuple[Sex, tuple[str, ...], AmputationLevel, float, float, float]] = [
    ("male", BOTH, "foot", 97.26, 96.3, 195.9),
    ("male", ("left",), "through_knee", 94.30, 87.7, 204.6),
    ("male", BOTH, "through_knee", 88.60, 64.4, 234.0),
    ("male", BOTH, "hip", 60.28, 13.4, 343.9),
    ("female", BOTH, "foot", 97.41, 83.9, 193.9),
    ("female", ("left",), "through_knee", 93.89, 74.5, 204.9),
    ("female", BOTH, "through_knee", 87.79, 52.7, 236.0),
    ("female", BOTH, "hip", 58.23, 11.9, 355.9),
]


@pytest.mark.parametrize(("sex", "sides", "level", "left_pct", "x", "z"), SHIFTS)
def test_shift_of_the_seated_com(
    sex: Sex, sides: tuple[str, ...], level: AmputationLevel, left_pct: float, x: float, z: float
) -> None:
    lost = tuple(Amputation("left" if s == "left" else "right", level) for s in sides)
    body = reference_body(sex, amputations=lost)
    kinds = segment_kinds(sex, "de_leva")
    share = sum(kinds[segment.link].mass_share for segment in body.segments)
    assert 100 * share == pytest.approx(left_pct, abs=0.005)
    mass, got_x, _, got_z = centre_of_mass(seated(body))
    assert got_x == pytest.approx(x, abs=0.1)
    assert got_z == pytest.approx(z, abs=0.1)
    assert mass == pytest.approx(MASS_KG[sex], abs=1e-9)


@pytest.mark.parametrize(("sex", "sideways"), [("male", 5.14), ("female", 5.52)])
def test_one_leg_at_the_knee_moves_the_com_to_the_other_side(sex: Sex, sideways: float) -> None:
    left = reference_body(sex, amputations=(Amputation("left", "through_knee"),))
    right = reference_body(sex, amputations=(Amputation("right", "through_knee"),))
    assert centre_of_mass(seated(left))[2] == pytest.approx(-sideways, abs=0.01)
    assert centre_of_mass(seated(right))[2] == pytest.approx(sideways, abs=0.01)


@pytest.mark.parametrize("sex", ["male", "female"])
@pytest.mark.parametrize("level", ["foot", "below_knee", "through_knee", "above_knee", "hip"])
def test_every_leg_loss_moves_the_com_back_and_up(sex: Sex, level: AmputationLevel) -> None:
    whole = centre_of_mass(seated(reference_body(sex)))
    lost = (Amputation("right", level),)
    less = centre_of_mass(seated(reference_body(sex, amputations=lost)))
    assert less[1] < whole[1]
    assert less[3] > whole[3]


@pytest.mark.parametrize(
    ("com", "kept_length", "mass_share", "kept_com"),
    [
        (0.4095, 0.5, 0.6357, 0.2322),
        (0.4095, 0.75, 0.8518, 0.3302),
        (0.3612, 0.5, 0.7082, 0.2255),
    ],
)
def test_partial_thigh(com: float, kept_length: float, mass_share: float, kept_com: float) -> None:
    got_mass, got_com = partial_segment(com, kept_length)
    # 0.6357 is the cut-off value of exactly 0.63575, hence 1e-9 more than half a digit.
    assert got_mass == pytest.approx(mass_share, abs=0.00005 + 1e-9)
    assert got_com == pytest.approx(kept_com, abs=0.00005)


@pytest.mark.parametrize("com", [0.3612, 0.4095, 0.5, 0.5772])
def test_partial_segment_ends(com: float) -> None:
    assert partial_segment(com, 1.0) == pytest.approx((1.0, com), abs=1e-12)
    assert partial_segment(com, 0.0) == (0.0, 0.0)
    assert partial_segment(com, 1e-6)[0] == pytest.approx(0.0, abs=1e-5)
    # What is kept and what is lost make the whole; the lost end is the mirrored segment.
    kept, kept_com = partial_segment(com, 0.3)
    lost, lost_from_distal = partial_segment(1.0 - com, 0.7)
    assert kept + lost == pytest.approx(1.0, abs=1e-12)
    balance = kept * kept_com + lost * (1.0 - lost_from_distal)
    assert balance == pytest.approx(com, abs=1e-12)


def test_table_families_are_never_mixed() -> None:
    lost = [LostPart(0.059, "osterkamp"), LostPart(0.0570, "de_leva")]
    with pytest.raises(InputError, match="one table family; got de_leva and osterkamp"):
        intact_equivalent_mass_kg(70.0, lost)
