"""Masses of one set-up in floor axes add up to its figures."""

from __future__ import annotations

import pytest

from chairwright.fitting.described import describe
from chairwright.line.load import load_line
from tests.unit.chair.seated import CODES, person

LINE = load_line("everyday")


@pytest.mark.parametrize("other", [{}, {"anti_tip": "none", "camber": "K0"}])
def test_masses_add_up_to_total_and_centre(other: dict[str, str]) -> None:
    codes = CODES | other
    index = {name: LINE.choices[name].codes[code] for name, code in codes.items()}
    made = describe(LINE, person(), index, [])
    total = sum(mass.mass_kg for mass in made.masses)
    assert total == pytest.approx(made.figures["total_mass_kg"], abs=1e-9)
    for axis in "xyz":
        moment = sum(mass.mass_kg * getattr(mass, f"{axis}_mm") for mass in made.masses)
        assert moment / total == pytest.approx(made.figures[f"com_{axis}_mm"], abs=1e-9)
    assert all(mass.mass_kg > 0 for mass in made.masses)
    assert {mass.moves_with for mass in made.masses} == {"frame", "rear_wheels", "casters"}
    assert ("anti-tip device" in {mass.name for mass in made.masses}) is ("anti_tip" not in other)
    assert made.codes == codes
