"""What an added load, a lost limb or the other side does."""

from __future__ import annotations

from dataclasses import replace
from typing import Literal

import numpy as np
import pytest

from chairwright.chair.occupant import Occupant
from chairwright.person.client import Amputation, AmputationLevel, Carried, CarryPlace, Client
from chairwright.person.estimates import MeasureSet, complete
from tests.laws.setups import Made, for_many, make, some
from tests.oracles.draws import random_setups
from tests.oracles.lines import everyday
from tests.oracles.people import adult, client, seated

Side = Literal["left", "right"]
LOAD_KG = 10.0


def loaded(made: Made, place: CarryPlace) -> Made:
    """The same set-ups with 10 kg more somewhere (Kirby 1996 loaded 0 to 10 kg)."""
    carries = (*made.occupant.carries, Carried("load", LOAD_KG, place))
    return made.changed(occupant=replace(made.occupant, carries=carries))


def usual(seed: int) -> Made:
    """Set-ups that stand by 5 deg at least, seat level to 10 deg: what is sat in."""
    made = some(seed)
    keep = (made["tip_least_deg"] > 5) & (np.abs(made["seat_angle_deg"] - 5) < 5)
    assert keep.any()
    index = {name: array[keep] for name, array in made.rows.index.items()}
    return make(made.rows.line, made.occupant, index)


@for_many()
def test_load_on_the_foot_supports(seed: int) -> None:
    # ST-22, sign: Kirby 1996 (read in the abstract).
    made = usual(seed)
    heavier = loaded(made, "foot_support")
    for figure in ("tip_rear_locked_deg", "tip_rear_free_deg"):
        assert (heavier[figure] > made[figure]).all()
    assert (heavier["tip_forward_deg"] < made["tip_forward_deg"]).all()


@for_many()
def test_backpack_lowers_rearward_stability(seed: int) -> None:
    # ST-23, sign: Kirby 1996 (read in the abstract).
    made = usual(seed)
    heavier = loaded(made, "backpack")
    for figure in ("tip_rear_locked_deg", "tip_rear_free_deg"):
        assert (heavier[figure] < made[figure]).all()


@for_many()
def test_load_under_the_seat_raises_forward_stability(seed: int) -> None:
    # ST-24, sign: Kirby 1996 (read in the abstract).
    made = usual(seed)
    heavier = loaded(made, "under_seat")
    assert (heavier["tip_forward_deg"] > made["tip_forward_deg"]).all()
    for figure in ("tip_left_deg", "tip_right_deg"):
        assert (heavier[figure] > made[figure]).all()


@for_many()
def test_load_on_the_lap_changes_least(seed: int) -> None:
    # ST-25, order: Kirby 1996 (read in the abstract). The larger of the changes of the rearward
    # and the forward angle, on average over the set-ups.
    made = usual(seed)
    places: tuple[CarryPlace, ...] = ("lap", "foot_support", "backpack", "under_seat")
    change = {place: _change(made, loaded(made, place)) for place in places}
    assert change["lap"] == min(change.values())


def _change(made: Made, heavier: Made) -> float:
    both = [
        np.abs(heavier[figure] - made[figure])
        for figure in ("tip_rear_locked_deg", "tip_forward_deg")
    ]
    return float(np.mean(np.maximum(*both)))


def mirrored(occupant: Occupant) -> Occupant:
    """The same person with left and right exchanged."""
    other: dict[str, Side] = {"left": "right", "right": "left"}
    body = occupant.body

    def swapped(values: object) -> object:
        return {side: values[other[side]] for side in other}  # type: ignore[index]

    names = ("upper_arm_mm", "forearm_to_grip_mm", "thigh_mm", "shank_mm", "foot_length_mm")
    sided = {name: swapped(getattr(body, name)) for name in (*names, "wrist_mm")}
    segments = tuple(
        replace(segment, side=other.get(segment.side, "middle")) for segment in body.segments
    )
    return replace(
        occupant,
        body=replace(body, segments=segments, **sided),  # type: ignore[arg-type]
        feet_that_push=tuple(other[side] for side in occupant.feet_that_push),
        hands_that_push=tuple(other[side] for side in occupant.hands_that_push),
        lower_leg_mm={other[side]: mm for side, mm in occupant.lower_leg_mm.items()},
        knee_above_joint_mm={other[side]: mm for side, mm in occupant.knee_above_joint_mm.items()},
    )


@for_many(30)
def test_mirror_image(seed: int) -> None:
    made = some(seed, any_body=True)
    supports = made.rows.line.choices["foot_supports"].codes
    swap = {supports["left"]: supports["right"], supports["right"]: supports["left"]}
    fitted = np.array([swap.get(int(at), int(at)) for at in made.rows.index["foot_supports"]])
    mirror = made.changed({"foot_supports": fitted}, occupant=mirrored(made.occupant))
    pairs = {"tip_left_deg": "tip_right_deg", "tip_left_line_deg": "tip_right_line_deg"}
    pairs |= {second: first for first, second in pairs.items()}
    for name, values in mirror.figures.items():
        if name in {"com_y_mm", "tip_least_direction_deg"}:
            continue
        wanted = made[pairs.get(name, name)]
        assert values == pytest.approx(wanted, rel=1e-9, abs=1e-9, nan_ok=True), name
    assert mirror["com_y_mm"] == pytest.approx(-made["com_y_mm"], abs=1e-9)
    one_sided = np.abs(made["tip_left_deg"] - made["tip_right_deg"]) > 1e-6
    across = np.abs(made["tip_least_direction_deg"]) < 179.9
    turned = mirror["tip_least_direction_deg"] + made["tip_least_direction_deg"]
    assert turned[one_sided & across] == pytest.approx(0.0, abs=1e-9)


LEVELS: tuple[AmputationLevel, ...] = (
    "foot", "below_knee", "through_knee", "above_knee", "hip",
)  # fmt: skip


@pytest.mark.parametrize("level", LEVELS)
@pytest.mark.parametrize("both", [False, True])
@for_many(8)
def test_a_lost_leg_moves_the_centre_of_mass_back_and_up(
    level: AmputationLevel, both: bool, seed: int
) -> None:
    # AM-09: the lost part lies ahead of and below the centre of mass of the occupied chair. On a
    # leg support raised to 15 deg it does not always lie below.
    rng = np.random.default_rng(seed)
    whole = adult(rng)
    sides: tuple[Side, ...] = ("left", "right") if both else ("left",)
    occupant, lost = _with_and_without(whole, tuple(Amputation(s, level) for s in sides))
    rows, _ = random_setups(everyday(), occupant, rng, 40, lambda r: np.degrees(r["hanger"]) > 20)
    made = make(everyday(), occupant, rows.index)
    after = made.changed(occupant=lost)
    assert (after["com_x_mm"] < made["com_x_mm"]).all()
    assert (after["com_z_mm"] > made["com_z_mm"]).all()
    assert (after["tip_rear_locked_deg"] < made["tip_rear_locked_deg"]).all()
    assert (after["com_y_mm"] < -1e-3).all() or both


def _with_and_without(one: Client, lost: tuple[Amputation, ...]) -> tuple[Occupant, Occupant]:
    """The same person whole, and without the lost parts and their mass."""
    whole, reduced = seated(one), seated(replace(one, amputations=lost))
    # The scales' mass is what is left: bring the trunk back to what the whole body's is.
    share = _trunk_kg(whole) / _trunk_kg(reduced)
    segments = tuple(replace(s, mass_kg=share * s.mass_kg) for s in reduced.body.segments)
    mass = sum(segment.mass_kg for segment in segments)
    assert mass < whole.body.mass_kg
    return whole, replace(reduced, body=replace(reduced.body, segments=segments, mass_kg=mass))


def _trunk_kg(occupant: Occupant) -> float:
    return next(s.mass_kg for s in occupant.body.segments if s.link == "trunk")


def test_typed_in_inches_and_pounds_or_mm_and_kg_it_is_one_chair() -> None:
    pairs = [("1778 mm", "70 in"), ("1701.8 mm", "67 in"), ("1752.6 mm", "69 in")]
    masses = [("81.6466266 kg", "180 lb"), ("58.9670081 kg", "130 lb"), ("102.965468 kg", "227 lb")]
    for (mm, inches), (kg, pounds) in zip(pairs, masses, strict=True):
        metric, imperial = seated(client("male", mm, kg)), seated(client("male", inches, pounds))
        made = some(3)
        first = made.changed(occupant=metric)
        second = made.changed(occupant=imperial)
        for name, values in first.figures.items():
            # 1e-7: the pounds were rounded to 9 digits above.
            assert second[name] == pytest.approx(values, rel=1e-7, abs=1e-6, nan_ok=True), name


def test_measures_are_estimated_alike_in_both_units() -> None:
    def values(measures: MeasureSet) -> list[float]:
        return [measure.value for measure in measures]

    metric = complete(client("female", "1625.6 mm", "63.5029318 kg"))
    imperial = complete(client("female", "64 in", "140 lb"))
    assert values(imperial) == pytest.approx(values(metric), abs=1e-5)
