"""Extras fitted to a line: mass at its place, price, days, load limit, and codes not known."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from chairwright.errors import InputError
from chairwright.fitting.described import Described, describe
from chairwright.fitting.extras import fitted_extras, with_extras
from chairwright.line.load import load_line
from chairwright.line.model import Line
from tests.unit.chair.seated import CODES, person

LINE = load_line("everyday")
TRAY_KG, TRAY_X_MM, TRAY_Z_MM = 2.1, 250.0, 230.0
BAG_KG = 0.4


def described(line: Line) -> Described:
    index = {name: line.choices[name].codes[code] for name, code in CODES.items()}
    return describe(line, person(), index, ())


def test_mass_price_and_days_of_a_tray_and_a_bag() -> None:
    """Tray 2.1 kg, 150, 3 days; bag 0.4 kg, 35; delivery 15 days, 2 more for the camber K3."""
    bare, fitted = described(LINE), described(with_extras(LINE, ["ET", "EB"], {}))
    rise = {name: fitted.figures[name] - value for name, value in bare.figures.items()}
    assert rise["chair_mass_kg"] == pytest.approx(TRAY_KG + BAG_KG, abs=1e-9)
    assert rise["total_mass_kg"] == pytest.approx(TRAY_KG + BAG_KG, abs=1e-9)
    assert rise["price"] == pytest.approx(185.0, abs=1e-9)
    assert bare.figures["lead_days"] == 15.0 + 2.0
    assert fitted.figures["lead_days"] == 15.0 + 3.0
    assert rise["custom_surcharge"] == 0.0
    assert rise["load_margin_kg"] == 0.0
    assert rise["com_y_mm"] == pytest.approx(0.0, abs=1e-9)


def test_the_centre_of_mass_moves_as_moments_say() -> None:
    """Frame place turned by the seat angle about the axle, then first moments over masses."""
    bare, fitted = described(LINE), described(with_extras(LINE, ["ET"], {}))
    hole = bare.options["axle_hole"].numbers
    wheel, camber = bare.options["rear_wheel"].numbers, bare.options["camber"].numbers
    axle_height = wheel["radius_mm"] * math.cos(math.radians(camber["angle_deg"]))
    pitch = math.radians(bare.figures["seat_angle_deg"])
    ahead, above = TRAY_X_MM - hole["x_mm"], TRAY_Z_MM - hole["z_mm"]
    x_mm = ahead * math.cos(pitch) - above * math.sin(pitch)
    z_mm = axle_height + ahead * math.sin(pitch) + above * math.cos(pitch)
    mass = bare.figures["total_mass_kg"]
    for name, place in (("com_x_mm", x_mm), ("com_z_mm", z_mm)):
        moved = (mass * bare.figures[name] + TRAY_KG * place) / (mass + TRAY_KG)
        assert fitted.figures[name] == pytest.approx(moved, abs=1e-9), name


def test_an_extra_may_limit_the_load() -> None:
    weak = tuple(
        replace(extra, load_limit_kg=90.0) if extra.code == "EC" else extra for extra in LINE.extras
    )
    fitted = described(with_extras(replace(LINE, extras=weak), ["EC"], {}))
    assert fitted.figures["load_margin_kg"] == pytest.approx(90.0 - 80.0, abs=1e-9)


def test_fitting_again_takes_the_earlier_extras_off() -> None:
    once = with_extras(LINE, ["ET"], {})
    assert [extra.code for extra in fitted_extras(once)] == ["ET"]
    assert [extra.code for extra in fitted_extras(with_extras(once, ["EB"], {}))] == ["EB"]
    assert with_extras(once, [], {}).fixed_parts == LINE.fixed_parts
    assert fitted_extras(LINE) == ()


@pytest.mark.parametrize(
    ("code", "remedy"),
    [
        ("et", "Did you mean ET (swing-away tray)?"),
        ("tray", "Did you mean ET (swing-away tray)?"),
        ("crutches", "Did you mean EC (crutch holder)?"),
        ("YP", "It is an option: write 'belt: YP' under choices."),
        ("Q1", "Known here: EB (bag behind the back), ET (swing-away tray), EC (crutch holder)."),
    ],
)
def test_an_unknown_code_is_named_with_its_line_and_a_near_one(code: str, remedy: str) -> None:
    with pytest.raises(InputError) as refused:
        with_extras(LINE, ["EB", code], {f"extras.{code}": "c.yaml:12"})
    (problem,) = refused.value.problems
    assert problem.where == "c.yaml:12: extras"
    assert problem.must == "it must be an extra of the line everyday"
    assert problem.remedy == remedy


def test_a_line_without_extras_says_so() -> None:
    with pytest.raises(InputError, match="This line has no extras: take it out"):
        with_extras(replace(LINE, extras=()), ["EB"], {})
