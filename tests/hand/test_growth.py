"""Growth of a client worked by hand."""

from __future__ import annotations

from dataclasses import replace

import pytest

from chairwright.errors import InputError
from chairwright.person.client import Client, Expected, Measure
from chairwright.person.growth import Growth, expected_growth, measured
from chairwright.units import parse_quantity


def measure(name: str, typed: str, side: str = "middle") -> Measure:
    kind = "mass" if name == "body_mass" else "length"
    return Measure(name, side, parse_quantity(typed, kind, name), 5.0)  # type: ignore[arg-type]


ADULT = Client(
    "HAND-1",
    "female",
    (
        measure("stature", "160 cm"),
        measure("body_mass", "64 kg"),
        measure("hip_width", "40 cm"),
        measure("elbow_height", "24 cm"),
        measure("buttock_thigh_depth", "46 cm", "left"),
        measure("buttock_thigh_depth", "47 cm", "right"),
        measure("shoe_sole", "20 mm"),
    ),
)


def expecting(years: float = 4.0, **ranges: tuple[float, float]) -> Client:
    return replace(ADULT, expected=Expected(years, ranges, "by hand"))


def at(growth: Growth, name: str, years: float) -> dict[str, float]:
    track = next(each for each in growth.tracks if each.name == name)
    client = growth.at(track, years)
    return {f"{m.name} {m.side}": m.value for m in client.measures}


def test_an_adult_of_whom_nothing_is_said_stays() -> None:
    growth = expected_growth(ADULT)
    assert not growth.changes
    assert growth.years == 5.0
    assert [track.name for track in growth.tracks] == ["middle of the range"]
    assert growth.at(growth.tracks[0], 3.0).measures == ADULT.measures


def test_mass_goes_straight_to_the_end_and_breadths_with_its_root() -> None:
    """64 to 81 kg over 4 years: half way 72.5; at the end sqrt(81 / 64) = 9 / 8, 40 cm to 45."""
    growth = expected_growth(expecting(body_mass=(64.0, 81.0)))
    assert [t.name for t in growth.tracks] == ["middle of the range", "lightest", "heaviest"]
    assert at(growth, "heaviest", 2.0)["body_mass middle"] == pytest.approx(72.5)
    end = at(growth, "heaviest", 4.0)
    assert end["hip_width middle"] == pytest.approx(450.0)
    assert end["stature middle"] == 1600.0
    assert end["elbow_height middle"] == 240.0
    assert at(growth, "lightest", 4.0)["body_mass middle"] == 64.0
    assert at(growth, "middle of the range", 4.0)["body_mass middle"] == pytest.approx(72.5)


def test_lengths_go_with_stature_and_soles_stay() -> None:
    """160 to 176 cm is 1.1 times: depth 46 and 47 to 50.6 and 51.7; hips by sqrt(1 / 1.1)."""
    growth = expected_growth(expecting(stature=(1600.0, 1760.0)))
    end = at(growth, "tallest", 4.0)
    assert end["buttock_thigh_depth left"] == pytest.approx(506.0)
    assert end["buttock_thigh_depth right"] == pytest.approx(517.0)
    assert end["hip_width middle"] == pytest.approx(400.0 * (1 / 1.1) ** 0.5)
    assert end["shoe_sole middle"] == 20.0


def test_a_measure_with_its_own_range_goes_its_own_way() -> None:
    growth = expected_growth(expecting(hip_width=(400.0, 440.0), body_mass=(60.0, 70.0)))
    assert at(growth, "heaviest", 4.0)["hip_width middle"] == 440.0
    assert at(growth, "lightest", 4.0)["hip_width middle"] == 400.0
    both = expected_growth(expecting(stature=(1600.0, 1650.0), body_mass=(60.0, 70.0)))
    assert len(both.tracks) == 5
    assert both.tracks[2].name == "shortest and heaviest"


def test_a_child_on_the_median_stays_on_it() -> None:
    """A girl at 120.5 months on the printed medians; at 20 years 163.338 cm and 58.219 kg."""
    child = replace(
        ADULT,
        age_years=120.5 / 12,
        measures=(measure("stature", "1382.111552 mm"), measure("body_mass", "33.06392318 kg")),
    )
    growth = expected_growth(child, 240 / 12 - 120.5 / 12)
    middle = growth.at(growth.tracks[0], growth.years)
    assert measured(middle, "stature") == pytest.approx(1633.38251, abs=1e-3)
    assert measured(middle, "body_mass") == pytest.approx(58.21897289, abs=1e-5)
    low, high = growth.ranges["stature"]
    assert low < 1633.0 < high
    assert growth.sources == {"stature": "CDC 2000", "body_mass": "CDC 2000"}


def test_a_grown_up_of_known_age_stays() -> None:
    assert not expected_growth(replace(ADULT, age_years=20.0)).changes


def test_the_file_goes_before_the_table_measure_by_measure() -> None:
    child = replace(expecting(years=2.0, body_mass=(60.0, 70.0)), age_years=12.0)
    growth = expected_growth(child)
    assert growth.sources == {"body_mass": "client file", "stature": "CDC 2000"}


def test_a_share_of_the_mass_when_asked() -> None:
    growth = expected_growth(ADULT, mass_share=0.10)
    assert growth.ranges["body_mass"] == pytest.approx((57.6, 70.4))
    assert "no source" in growth.sources["body_mass"]
    assert expected_growth(expecting(body_mass=(64, 66)), mass_share=0.1).ranges["body_mass"] == (
        64,
        66,
    )


def test_years_of_the_file_are_not_stretched() -> None:
    with pytest.raises(InputError, match="ranges are for 4 years; got 2 years"):
        expected_growth(expecting(body_mass=(60.0, 70.0)), 2.0)
