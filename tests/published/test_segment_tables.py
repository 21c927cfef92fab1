"""Identities inside the published segment tables: a misprint breaks one of them."""

from __future__ import annotations

from math import sqrt

import pytest

from chairwright.tables.load import Row, find_row, load_table

DE_LEVA = load_table("body", "de_leva1996_segments")
LIMBS = ("upper_arm", "forearm", "hand", "thigh", "shank", "foot")


def _row(sex: str, ends: str) -> Row:
    end_from, end_to = ends.split("-")
    return find_row("body", "de_leva1996_segments", sex=sex, end_from=end_from, end_to=end_to)


def _length(sex: str, ends: str) -> float:
    return float(_row(sex, ends)["length_mm"])


def _from_first(sex: str, ends: str) -> float:
    return _length(sex, ends) * float(_row(sex, ends)["com_pct_from_first_end"]) / 100


def _from_second(sex: str, ends: str) -> float:
    return _length(sex, ends) - _from_first(sex, ends)


def _mass(sex: str, segment: str) -> float:
    row = find_row("body", "de_leva1996_segments", sex=sex, segment=segment, variant="1")
    return float(row["mass_pct"])


@pytest.mark.parametrize(("sex", "total"), [("M", 100.00), ("F", 99.99)])
def test_de_leva_masses_sum(sex: str, total: float) -> None:
    limbs = 2 * sum(_mass(sex, limb) for limb in LIMBS)
    assert _mass(sex, "head") + _mass(sex, "trunk") + limbs == pytest.approx(total, abs=0.005)


@pytest.mark.parametrize(("sex", "mass", "length"), [("M", 43.46, 531.9), ("F", 42.57, 529.3)])
def test_de_leva_trunk_thirds(sex: str, mass: float, length: float) -> None:
    thirds = ("upper_trunk", "middle_trunk", "lower_trunk")
    assert sum(_mass(sex, third) for third in thirds) == pytest.approx(mass, abs=1e-9)
    ends = ("SUPR-XYPH", "XYPH-OMPH", "OMPH-MIDH")
    assert sum(_length(sex, end) for end in ends) == pytest.approx(length, abs=1e-9)


@pytest.mark.parametrize(
    ("sex", "ends", "com"),
    [
        *(("M", ends, 293.3) for ends in ("SUPR-MIDH", "CERV-MIDH", "MIDS-MIDH")),
        *(("F", ends, 309.6) for ends in ("SUPR-MIDH", "CERV-MIDH", "MIDS-MIDH")),
    ],
)
def test_de_leva_trunk_com_above_mid_hip(sex: str, ends: str, com: float) -> None:
    assert _from_second(sex, ends) == pytest.approx(com, abs=0.1)


@pytest.mark.parametrize(
    ("sex", "ends", "com"),
    [
        *(("M", ends, 121.5) for ends in ("VERT-MIDG", "VERT-CERV")),
        *(("F", ends, 118.0) for ends in ("VERT-MIDG", "VERT-CERV")),
        *(("M", ends, 193.5) for ends in ("KJC-LMAL", "KJC-AJC", "KJC-SPHY")),
        *(("F", ends, 190.9) for ends in ("KJC-LMAL", "KJC-AJC", "KJC-SPHY")),
        *(("M", ends, 123.0) for ends in ("EJC-WJC", "EJC-STYL")),
        *(("F", ends, 120.5) for ends in ("EJC-WJC", "EJC-STYL")),
    ],
)
def test_de_leva_com_from_the_first_end(sex: str, ends: str, com: float) -> None:
    assert _from_first(sex, ends) == pytest.approx(com, abs=0.1)


# The men's 3 mm gap between the two is in the published data.
@pytest.mark.parametrize(
    ("sex", "from_thirds", "from_table"), [("F", 219.7, 219.7), ("M", 241.6, 238.6)]
)
def test_de_leva_trunk_from_its_thirds(sex: str, from_thirds: float, from_table: float) -> None:
    start, moment = 0.0, 0.0
    for segment, ends in (
        ("upper_trunk", "SUPR-XYPH"),
        ("middle_trunk", "XYPH-OMPH"),
        ("lower_trunk", "OMPH-MIDH"),
    ):
        moment += _mass(sex, segment) * (start + _from_first(sex, ends))
        start += _length(sex, ends)
    assert moment / _mass(sex, "trunk") == pytest.approx(from_thirds, abs=0.1)
    assert _from_first(sex, "SUPR-MIDH") == pytest.approx(from_table, abs=0.1)


@pytest.mark.parametrize(("sex", "chain"), [("M", 1708.7), ("F", 1665.6)])
def test_de_leva_chain_is_no_stature(sex: str, chain: float) -> None:
    ends = ("VERT-CERV", "CERV-MIDH", "HJC-KJC", "KJC-AJC")
    assert sum(_length(sex, end) for end in ends) == pytest.approx(chain, abs=0.05)


def _winter(segment: str, column: str = "mass_fraction") -> float:
    return float(find_row("body", "winter2009_segments", segment=segment)[column])


@pytest.mark.parametrize(
    ("parts", "total"),
    [
        ({"head_neck": 1, "trunk": 1, "total_arm": 2, "total_leg": 2}, 1.000),
        ({"thorax": 1, "abdomen": 1, "pelvis": 1}, 0.497),
        ({"trunk_head_neck": 1, "total_arm": 2}, 0.678),
        ({"thigh": 1, "foot_leg": 1}, 0.161),
        ({"leg": 1, "foot": 1}, 0.061),
        ({"upper_arm": 1, "forearm_hand": 1}, 0.050),
    ],
)
def test_winter_masses_sum(parts: dict[str, int], total: float) -> None:
    got = sum(count * _winter(segment) for segment, count in parts.items())
    assert got == pytest.approx(total, abs=1e-12)


@pytest.mark.parametrize(
    "segment",
    ["hand", "forearm", "upper_arm", "total_arm", "foot", "leg", "thigh", "foot_leg", "HAT"],
)
def test_winter_parallel_axis(segment: str) -> None:
    k_prox = sqrt(_winter(segment, "k_com") ** 2 + _winter(segment, "com_prox") ** 2)
    assert _winter(segment, "k_prox") == pytest.approx(k_prox, abs=0.001)


def test_winter_head_and_neck_radius_is_not_the_misprint() -> None:
    assert _winter("head_neck", "k_prox") == pytest.approx(1.116, abs=0.001)
    assert sqrt(0.495**2 + 1.0**2) == pytest.approx(1.116, abs=0.001)


def test_winter_total_leg_is_the_known_exception() -> None:
    by_rule = sqrt(_winter("total_leg", "k_com") ** 2 + _winter("total_leg", "com_prox") ** 2)
    assert by_rule == pytest.approx(0.553, abs=0.001)
    assert _winter("total_leg", "k_prox") == 0.560
