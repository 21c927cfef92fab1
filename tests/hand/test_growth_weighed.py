"""Today's weighing on a later day: masses and moments of the hand chair, worked with a pencil.

The chair weighs 21 kg and its lowest load limit is 120 kg. The client is 80 kg by the file and
100 kg at the heavy end of five years. On the chair then: 21 + 100 = 121 kg, by the estimate.
"""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np
import pytest

from chairwright.errors import InputError
from chairwright.fitting.weighed import WeighedClient
from chairwright.order.states import MONTHS, States
from chairwright.person.client import Expected
from chairwright.person.growth import Growth, expected_growth
from chairwright.scales.carried import OccupantShift
from tests.laws.setups import Made, make
from tests.oracles.people import client, seated

from .level_chair import CODES, line

EXACT = 1e-9
END = 5 * MONTHS
HEAVY = 2
"""The track of the heavy end."""
INDEX = {name: np.array([line().choices[name].codes[code]]) for name, code in CODES.items()}


def growth(high: float = 100.0) -> Growth:
    return expected_growth(
        replace(client(), expected=Expected(5.0, {"body_mass": (80.0, high)}, "by hand"))
    )


def weighed(mass_kg: float, ahead_mm: float = 0.0, up_mm: float = 0.0) -> WeighedClient:
    """Eighty kilograms by the file; on the scales with these, known to 0.1 kg and 2 mm."""
    spread = np.diag([0.01, 4.0, 4.0, 4.0])
    shift = OccupantShift(mass_kg, ahead_mm, 0.0, up_mm, (0.0, 0.0, 0.0), spread)
    return WeighedClient("T-1", "scales", "2026-11-25", seated(client()), shift)


def on_day(months: int, scales: WeighedClient | None) -> Made:
    """The hand chair with the client of a day, on the heavy track."""
    state = States(growth(), line(), None, scales).at(months, HEAVY)
    return make(line(), state.person.occupant, INDEX)


@pytest.mark.parametrize(("months", "mass"), [(0, 80.0), (END // 2, 90.0), (END, 100.0)])
def test_the_centre_moves_by_the_clients_share_of_the_shift(months: int, mass: float) -> None:
    """20 mm ahead and 10 mm up, of M of 21 + M kg: at the end 2000 / 121 and 1000 / 121 mm."""
    before, after = on_day(months, None), on_day(months, weighed(80.0, 20.0, 10.0))
    total = 21.0 + mass
    assert after["total_mass_kg"][0] == pytest.approx(total, abs=EXACT)
    x, z = (
        before[name][0] + shift * mass / total
        for name, shift in (("com_x_mm", 20.0), ("com_z_mm", 10.0))
    )
    assert after["com_x_mm"][0] == pytest.approx(x, abs=1e-7)
    assert after["com_z_mm"][0] == pytest.approx(z, abs=1e-7)
    assert after["tip_rear_locked_deg"][0] == pytest.approx(math.degrees(math.atan2(x, z)))


def test_the_mass_goes_in_the_ratio_of_today() -> None:
    """84 for 80 kg is 1.05: 105 for 100, so 126 kg in all, and 120 - 105 are left of the load."""
    today, end = on_day(0, weighed(84.0)), on_day(END, weighed(84.0))
    assert today["total_mass_kg"][0] == pytest.approx(105.0, abs=EXACT)
    assert end["total_mass_kg"][0] == pytest.approx(126.0, abs=EXACT)
    assert today["load_margin_kg"][0] == pytest.approx(36.0, abs=EXACT)
    assert end["load_margin_kg"][0] == pytest.approx(15.0, abs=EXACT)


def test_how_sure_the_mass_is_goes_with_it() -> None:
    """Two standard uncertainties: 0.2 kg of 80, so 0.25 of 100; the place stays at 4 mm."""
    state = States(growth(), line(), None, weighed(80.0)).at(END, HEAVY)
    centre = state.person.occupant.weighed
    assert centre is not None
    assert centre.half_widths == pytest.approx((0.25, 4.0, 4.0, 4.0))


def test_what_the_scales_say_can_end_a_chair_sooner() -> None:
    """At 114 kg the file's own mass leaves 6 kg; on scales it was 1.0625 times: 121.125 kg."""
    plain, scales = (States(growth(114.0), line(), None, w) for w in (None, weighed(85.0)))
    left = [make(line(), s.at(END, HEAVY).person.occupant, INDEX)["load_margin_kg"][0]
            for s in (plain, scales)]  # fmt: skip
    assert left == pytest.approx([6.0, -1.125], abs=EXACT)


def test_another_clients_weighing_is_refused() -> None:
    other = replace(weighed(80.0), reference="T-2")
    with pytest.raises(InputError, match="the client on the scales must be the client"):
        _ = States(growth(), line(), None, other).now
