"""What each adjustment does, whatever the chair and the client: signs that never turn.

Every pair of set-ups differs in one choice; the frame settles anew on its wheels. Pairs of which
one cannot be built are left out.
"""

from __future__ import annotations

import numpy as np

from tests.laws.setups import ROUNDING, Made, for_many, moved_hole, some
from tests.oracles.lines import everyday, everyday_as_written, line_from


def both_stand(first: Made, second: Made) -> np.ndarray:
    """Which pairs can be compared."""
    return first.stands & second.stands


@for_many(30)
def test_axle_back_never_lowers_rearward_stability(seed: int) -> None:
    # Sign: Thomas 2018, Loane & Kirby 1985 (both read in the abstract).
    made = some(seed, any_body=True)
    hole, there = moved_hole(made, -1)
    back = made.changed(hole)
    use = both_stand(made, back) & there
    assert (back["com_x_mm"] > made["com_x_mm"])[use].all()
    for figure in ("tip_rear_locked_deg", "tip_rear_free_deg"):
        assert (back[figure] > made[figure])[use].all()
    assert (back["wheelbase_mm"] > made["wheelbase_mm"])[use].all()


@for_many()
def test_casters_forward_never_lower_forward_stability(seed: int) -> None:
    # Sign: statics; a caster housing ahead of the frame instead of behind it.
    made = some(seed, any_body=True)
    codes = made.rows.line.choices["caster_housing"]
    ahead = {
        "caster_housing": np.array(
            [
                codes.codes["L" + codes.options[at].code[1:]]
                for at in made.rows.index["caster_housing"]
            ]
        )
    }
    leading = made.changed(ahead)
    moved = ahead["caster_housing"] != made.rows.index["caster_housing"]
    use = both_stand(made, leading) & moved
    assert (leading["tip_forward_deg"] > made["tip_forward_deg"])[use].all()
    # Turned ahead, a caster on a stem that tilts far back trails longer: up to 15 deg of tilt.
    use &= made["seat_angle_deg"] < 15
    figure = "tip_forward_casters_forward_deg"
    assert (leading[figure] > made[figure])[use].all()


def raised_cushions(by_mm: float) -> dict[str, object]:
    """The shipped line with every cushion thicker by the same, at the same mass."""
    data = everyday_as_written()
    for cushion in data["cushions"]:
        cushion["loaded_rear_mm"] += by_mm
        cushion["loaded_front_mm"] += by_mm
    return data


RAISED = line_from(raised_cushions(30.0))


@for_many()
def test_higher_cushion_lowers_every_tipping_angle(seed: int) -> None:
    # Sign: public stability guideline. The hip slides up along the back support, so forward
    # the law holds as long as the back leans back less than the chair tips forward.
    made = some(seed)
    raised = made.changed(line=RAISED)
    for figure in ("tip_rear_locked_deg", "tip_rear_free_deg"):
        use = made[figure] > 0
        assert (raised[figure] < made[figure])[use].all()
    upright = made["back_angle_deg"] < made["tip_forward_deg"]
    assert upright.sum() > 0
    assert (raised["tip_forward_deg"] < made["tip_forward_deg"])[upright].all()
    for figure in ("tip_left_deg", "tip_right_deg"):
        lateral = upright & (made[figure] > 0)
        assert (raised[figure] < made[figure] + ROUNDING)[lateral].all()


@for_many()
def test_forward_the_cushion_law_turns_where_the_back_leans_beyond_the_tipping_angle(
    seed: int,
) -> None:
    # Statics: a shift along the back raises the forward angle if it leans back more than that.
    made = some(seed)
    raised = made.changed(line=RAISED)
    # 3 deg: the cushion itself rises square to the seat, not along the back.
    leaning = made["back_angle_deg"] > made["tip_forward_deg"] + 3
    assert (raised["tip_forward_deg"] > made["tip_forward_deg"])[leaning].all()


@for_many()
def test_axle_forward_shortens_the_turning_diameter(seed: int) -> None:
    # Common practice, no source. The feet or casters ahead must be what sweeps widest.
    made = some(seed)
    hole, there = moved_hole(made, 1)
    ahead = made.changed(hole)
    use = both_stand(made, ahead) & there & widest_ahead(made) & widest_ahead(ahead)
    assert (ahead["turning_diameter_mm"] < made["turning_diameter_mm"])[use].all()


def widest_ahead(made: Made) -> np.ndarray:
    """Where the farthest corner lies ahead of the axle: twice it is more than front and rear."""
    return np.asarray(made["turning_diameter_mm"] > made["half_turn_width_mm"])


@for_many()
def test_camber_signs(seed: int) -> None:
    # ST-27, signs: Trudel 1995 and 1997 (both read in the abstract).
    made = some(seed)
    upright = made.changed(made.option("camber", "K0"))
    leaning = made.changed(made.option("camber", "K3"))
    use = both_stand(upright, leaning) & (upright["tip_least_deg"] > 0)
    grows = ["rear_track_mm", "wheelbase_mm", "seat_angle_deg", "tip_left_deg", "tip_right_deg"]
    grows += ["tip_forward_deg", "caster_trail_mm", "overall_width_mm"]
    for figure in grows:
        assert (leaning[figure] >= upright[figure])[use].all(), figure
    for figure in ("seat_to_floor_rear_mm", "tip_rear_locked_deg", "com_x_mm"):
        assert (leaning[figure] < upright[figure])[use].all(), figure
    toe_out = leaning["toe_deg"] > 0
    assert (toe_out == (leaning["seat_angle_deg"] > 0))[use].all()
    assert (upright["toe_deg"] == 0)[use].all()


def with_backs(first_mm: float, second_mm: float) -> dict[str, object]:
    """The shipped line with two back supports of one mass at two depths."""
    data = everyday_as_written()
    first, second = data["back_supports"] = data["back_supports"][:2]
    second["mass_kg"] = first["mass_kg"]
    first["behind_post_mm"], second["behind_post_mm"] = first_mm, second_mm
    return data


CUSHION_BEHIND = line_from(with_backs(-20.0, 30.0))


@for_many()
def test_cushion_behind_raises_rearward_and_lowers_forward_stability(seed: int) -> None:
    # ST-29, sign: public stability guideline.
    plain = some(seed, CUSHION_BEHIND)
    plain = plain.changed(plain.option("back_support", "BS"))
    padded = plain.changed(plain.option("back_support", "BT"))
    assert (padded["tip_rear_locked_deg"] > plain["tip_rear_locked_deg"]).all()
    assert (padded["tip_rear_free_deg"] > plain["tip_rear_free_deg"]).all()
    assert (padded["tip_forward_deg"] < plain["tip_forward_deg"]).all()


@for_many()
def test_recline_raises_forward_and_lowers_rearward_stability(seed: int) -> None:
    # ST-30, sign: Thomas 2018 (read in the abstract).
    made = some(seed)
    upright = made.changed(made.option("back_angle", "B0"))
    reclined = made.changed(made.option("back_angle", "B12"))
    assert (reclined["tip_forward_deg"] > upright["tip_forward_deg"]).all()
    assert (reclined["tip_rear_locked_deg"] < upright["tip_rear_locked_deg"]).all()


@for_many()
def test_raised_feet_lower_forward_stability(seed: int) -> None:
    # ST-28, sign: Kirby 1989 (read in the abstract): legs more forward on foot supports.
    made = some(seed)
    low = made.changed(made.option("hanger", "H80"))
    high = made.changed(made.option("hanger", "H60"))
    fitted = made.rows.line.column("foot_supports", "left")[made.rows.index["foot_supports"]] > 0
    use = both_stand(low, high) & fitted
    assert (high["tip_forward_deg"] < low["tip_forward_deg"])[use].all()


def test_the_lines_of_the_laws_differ_from_the_shipped_one_as_said() -> None:
    thicker = RAISED.column("cushion", "rear_mm") - everyday().column("cushion", "rear_mm")
    assert (np.round(thicker, 9) == 30.0).all()
    assert list(CUSHION_BEHIND.column("back_support", "behind_post_mm")) == [-20.0, 30.0]
