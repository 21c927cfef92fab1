"""HCPCS codes one by one: who may have which, the same limit wherever it stands, every code there.

Certainty as in ``test_payers.py``: each test says how its criterion was seen.
"""

from __future__ import annotations

import pytest

from .payer_judged import (
    ARTICLE,
    BACKS,
    CUSHIONS,
    OPTIONS,
    SCHEME,
    STANDARD,
    backing_of,
    base_codes,
    codes,
    covered,
    judged,
    of,
)


@pytest.mark.parametrize(
    ("told", "expected"),
    [
        ({"pushes_standard": "no", "pushes_lightweight": "yes"}, True),
        ({"pushes_standard": "yes", "pushes_lightweight": "yes"}, False),
        ({"pushes_standard": "no", "pushes_lightweight": "no"}, False),
        ({"pushes_standard": "no"}, None),
    ],
)
def test_k0003_cannot_push_a_standard_chair_and_does_push_a_light_one(
    told: dict[str, str], expected: bool | None
) -> None:
    """L33788 (restated by a secondary source)."""
    assert covered("K0003", **told) is expected


def test_k0002_short_stature_or_feet_on_the_ground() -> None:
    """Contractor checklist (restated by a secondary source)."""
    assert covered("K0002", short_stature="no", feet_on_ground="yes") is True
    assert covered("K0002", short_stature="yes", feet_on_ground="no") is True
    assert covered("K0002", short_stature="no", feet_on_ground="no") is False


@pytest.mark.parametrize(
    ("told", "expected"),
    [
        ({"tilt": "19.9"}, ["K0001"]),
        ({"tilt": "20"}, ["E1161"]),
        ({"seat_width": "14.01", "tilt": "20"}, ["E1161"]),
        ({"seat_width": "14", "tilt": "20", "folds": "no", "seating_system": "no"}, ["E1233"]),
        ({"seat_width": "14", "folds": "yes", "seating_system": "no"}, ["E1238"]),
        ({"seat_depth": "14", "folds": "no", "seating_system": "yes"}, ["E1235"]),
        ({"seat_depth": "14.01", "folds": "no", "seating_system": "yes"}, ["K0001"]),
        ({"transport_chair": "yes", "capacity": "300"}, ["E1038"]),
        ({"transport_chair": "yes", "capacity": "300.1"}, ["E1039"]),
        ({"transport_chair": "yes", "seat_width": "14"}, ["E1037"]),
        ({"made_for_one_person": "yes"}, ["K0008"]),
    ],
)
def test_other_base_codes(told: dict[str, str], expected: list[str]) -> None:
    """HCPCS descriptors (read in the source); 20 deg and 14 in are from memory, unverified."""
    rest = {**STANDARD, "lifetime_warranty": "yes", "axle_adjustable": "no", "folds": "yes"}
    assert base_codes(judged(**{**rest, **told})) == expected


PLAIN = {**STANDARD, "lifetime_warranty": "yes", "axle_adjustable": "yes", "tilt": "0"}
ADULTS: dict[str, dict[str, str]] = {
    "K0001": {},
    "K0002": {"seat_height": "18"},
    "K0003": {"chair_weight": "35"},
    "K0004": {"chair_weight": "33"},
    "K0005": {"chair_weight": "29"},
    "K0006": {"capacity": "275"},
    "K0007": {"capacity": "350"},
    "E1161": {"tilt": "30"},
    "E1038": {"transport_chair": "yes"},
    "E1039": {"transport_chair": "yes", "capacity": "350"},
}
SEATED = {"folds": "no", "seating_system": "yes"}, {"folds": "yes", "seating_system": "yes"}
UNSEATED = {"folds": "no", "seating_system": "no"}, {"folds": "yes", "seating_system": "no"}
TILTING = dict(zip(("E1231", "E1232", "E1233", "E1234"), (*SEATED, *UNSEATED), strict=True))
STILL = dict(zip(("E1235", "E1236", "E1237", "E1238"), (*SEATED, *UNSEATED), strict=True))
CHILDREN = {
    "E1037": {"transport_chair": "yes"},
    "E1229": {"tilt": "10"},
    **{code: {**told, "tilt": "30"} for code, told in TILTING.items()},
    **STILL,
}


def fits(code: str, **told: str) -> bool | None:
    step = of(judged(**{**PLAIN, **told}), code).fits
    assert step is not None
    return step.truth


@pytest.mark.parametrize("fact", ["seat_width", "seat_depth"])
@pytest.mark.parametrize("code", ADULTS)
def test_adult_sizes_begin_above_14_in(code: str, fact: str) -> None:
    """At most 14 in is paediatric (from memory, unverified)."""
    assert fits(code, **{**ADULTS[code], fact: "14"}) is False
    assert fits(code, **{**ADULTS[code], fact: "14.01"}) is True
    assert {certainty for _, certainty in backing_of(code, fact, "14")} == {"memory"}


@pytest.mark.parametrize("fact", ["seat_width", "seat_depth"])
@pytest.mark.parametrize("code", CHILDREN)
def test_paediatric_sizes_end_at_14_in(code: str, fact: str) -> None:
    """Seat width or depth at most 14 in (from memory, unverified)."""
    assert fits(code, **{**CHILDREN[code], fact: "14"}) is True
    assert fits(code, **{**CHILDREN[code], fact: "14.01"}) is False
    assert {certainty for _, certainty in backing_of(code, fact, "14")} == {"memory"}


@pytest.mark.parametrize("code", ["E1161", *TILTING])
def test_tilt_in_space_begins_at_20_deg(code: str) -> None:
    """Tilt of at least 20 degrees (from memory, unverified)."""
    rest = {**PLAIN, "seat_width": "14", **TILTING[code]} if code in TILTING else PLAIN
    assert fits(code, **{**rest, "tilt": "19.9"}) is False
    assert fits(code, **{**rest, "tilt": "20"}) is True
    assert {certainty for _, certainty in backing_of(code, "tilt", "20")} == {"memory"}


@pytest.mark.parametrize(("tilt", "other"), [("0", False), ("0.1", True), ("19.9", True),
                                             ("20", False)])  # fmt: skip
def test_a_little_tilt_is_not_otherwise_specified(tilt: str, other: bool) -> None:
    """Paediatric, neither still nor tilting by 20 deg: E1229 (from memory, unverified)."""
    assert fits("E1229", seat_width="14", tilt=tilt) is other
    for code, told in STILL.items():
        assert fits(code, seat_width="14", **told, tilt=tilt) is (tilt == "0")


def test_a_low_seat_is_hemi_above_36_lb_only() -> None:
    """Article A52497 (restated by a secondary source)."""
    assert base_codes(judged(**{**STANDARD, "seat_height": "18"})) == ["K0002"]
    low = {**STANDARD, "seat_height": "18", "chair_weight": "36"}
    assert base_codes(judged(**low)) == ["K0003"]
    assert backing_of("K0002", "chair_weight", "36") == {(ARTICLE, "restated")}


@pytest.mark.parametrize("code", ["E0973", "K0017", "K0018", "K0020"])
def test_adjustable_arm_supports_from_2_h_a_day(code: str) -> None:
    """CMS page on options (read): arm height not made fixed, and at least 2 h a day."""
    assert covered(code, arm_height_needed="yes", hours_a_day="1.99") is False
    assert covered(code, arm_height_needed="yes", hours_a_day="2") is True
    assert covered(code, arm_height_needed="no", hours_a_day="8") is False
    assert backing_of(code, "hours_a_day", "2") == {(OPTIONS, "read")}


@pytest.mark.parametrize("code", ["E0990", "K0195", "K0046", "K0047", "K0053"])
def test_elevating_leg_rests_with_a_reclining_back(code: str) -> None:
    """CMS page on options: knee (read), oedema, reclining back over 15 deg (restated)."""
    rest = {"knee_kept_straight": "no", "leg_oedema": "no"}
    assert covered(code, **rest, recline="15") is False
    assert covered(code, **rest, recline="15.1") is True
    assert covered(code, **{**rest, "leg_oedema": "yes"}) is True
    assert covered(code, **{**rest, "knee_kept_straight": "yes"}) is True
    assert backing_of(code, "recline", "15") == {(OPTIONS, "restated")}


@pytest.mark.parametrize(
    ("code", "told", "expected"),
    [
        ("E2209", {"arm_control_lost": "yes"}, True),
        ("E2209", {"arm_control_lost": "no"}, False),
        ("E0978", {"belt_needed": "no"}, False),
        ("E0974", {"able_to_push": "yes", "ramps": "yes"}, True),
        ("E0974", {"able_to_push": "yes", "ramps": "no"}, False),
        ("E1226", {"pressure_risk": "no", "catheter": "yes"}, True),
        ("E1226", {"pressure_risk": "no", "catheter": "no"}, False),
        ("E2203", {"depth_justified": "no"}, False),
        ("E2204", {"depth_justified": "yes"}, True),
        ("E2220", {"replacement": "no"}, False),
        ("E2220", {"replacement": "yes"}, True),
    ],
)
def test_accessories_and_the_client(code: str, told: dict[str, str], expected: bool) -> None:
    """CMS page on options (start read), L33788 (restated by a secondary source)."""
    assert covered(code, **told) is expected


def test_rented_and_bought_leg_rests_have_different_codes() -> None:
    """HCPCS descriptors (read in the source): E0990 each, K0195 a pair for a rented base."""
    assert codes(judged(leg_rests="elevating", rental="no"), "hanger") == ["E0990"]
    assert codes(judged(leg_rests="elevating", rental="yes"), "hanger") == ["K0195"]


OTHERS = (
    "E0950 E0951 E0952 E0953 E0954 E0955 E0956 E0957 E0958 E0959 E0960 E0961 E0967 E0971 E0973 "
    "E0974 E0978 E0990 E1020 E1028 E1225 E1226 E2201 E2202 E2203 E2204 E2205 E2206 E2209 E2211 "
    "E2213 E2214 E2216 E2217 E2218 E2219 E2220 E2221 E2222 E2224 E2225 E2226 E2227 E2228 E2231 "
    "K0017 K0018 K0020 K0037 K0040 K0046 K0047 K0053 K0056 K0065 K0073 K0105 K0108 K0195"
)
BASE_CODES = (
    "K0001 K0002 K0003 K0004 K0005 K0006 K0007 K0008 K0009 E1037 E1038 E1039 E1161 E1229 E1231 "
    "E1232 E1233 E1234 E1235 E1236 E1237 E1238"
)


def test_every_listed_code_is_there() -> None:
    """HCPCS descriptors, 2020 (read in the source)."""
    seats = [*CUSHIONS.values(), *BACKS.values()]
    expected = {*OTHERS.split(), *(code for pair in seats for code in pair)}
    assert {entry.code for entry in SCHEME.accessories} == expected
    assert {entry.code for entry in SCHEME.groups[0].classes} == set(BASE_CODES.split())


def test_paperwork_is_asked_for() -> None:
    """Contractor checklist (restated); DME MAC article (read); L33788 (restated)."""
    standard = [each.key for each in judged(**STANDARD).documents]
    assert standard == ["order", "visit", "delivery"]
    light = {**STANDARD, "lifetime_warranty": "yes", "axle_adjustable": "yes"}
    strong = judged(**{**light, "chair_weight": "33"})
    ultra = judged(**{**light, "chair_weight": "29"})
    assert "dimension" in [each.key for each in strong.documents]
    assert {"evaluation", "atp"} <= {each.key for each in ultra.documents}
