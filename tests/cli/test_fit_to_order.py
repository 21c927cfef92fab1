"""``fit`` beyond the standard range: when sizes made to order are looked at and what is said."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest
from pypdf import PdfReader

from chairwright.cli.main import main
from tests.unit.files.samples import client_file

SETTLED = "choices:\n  {rear_wheel: W22, camber: K0, cushion: Q50, hanger: H70}\n"
BETWEEN = (
    "targets:\n  - {figure: seat_width_mm, at_least: 405, at_most: 415, must: true, reason: test}\n"
)
"""The line file has seats of 400 and 420 mm, and made to order each 10 mm: 240, and 12 days."""
SURCHARGE = "custom_surcharge"
TOO_NARROW = (
    "targets:\n"
    "  - {figure: overall_width_mm, at_most: 45 cm, must: true, reason: a very narrow door}\n"
)


def fitted(capsys: pytest.CaptureFixture[str], path: Path, *words: str) -> dict[str, Any]:
    assert main(["fit", str(path), "--no-front", "--json", *words]) == 0
    found: dict[str, Any] = json.loads(capsys.readouterr().out)
    return found


def printed(capsys: pytest.CaptureFixture[str], path: Path, *words: str) -> str:
    assert main(["fit", str(path), *words]) == 0
    return " ".join(capsys.readouterr().out.split())


def test_a_size_between_the_standard_ones_is_made_to_order_when_needed(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = client_file(tmp_path, SETTLED + BETWEEN)
    found = fitted(capsys, path)
    assert found["meets_every_must"] is True and found["made_to_order_looked_at"] is True
    setup = found["set_up"]
    assert setup["choices"]["seat_width"] == "MS410"
    assert setup["made_to_order"] == {
        "seat_width": {"code": "MS410", "surcharge": 240.0, "extra_days": 12.0}
    }
    assert setup["figures"]["custom_surcharge"] == 240.0
    assert setup["figures"]["lead_days"] == 15.0 + 12.0
    assert found["line"]["currency"] == "EUR"


def test_the_text_says_what_is_made_to_order_its_price_and_the_days(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path, out = client_file(tmp_path, SETTLED + BETWEEN), tmp_path / "out"
    text = printed(capsys, path, "--out", str(out))
    for words in (
        "set-ups to choose from, sizes made to order included",
        "No set-up of the standard range meets every must; one with sizes made to order does.",
        "no other that does has a smaller surcharge",
        "EUR, delivery in 27 days. Made to order: seat width MS410. That is 240.00 EUR of the "
        "price, and 12 days beyond the usual 15.",
        "MS410 410 mm, made to order (+ 240.00 EUR, 12 days longer)",
        "Every must holds at the same surcharge for sizes made to order; no other set-up beats",
    ):
        assert words in text
    sheet = " ".join(PdfReader(out / "t-1-sheet.pdf").pages[0].extract_text().split())
    assert "+ 240.00 EUR, 12 days longer" in sheet


def test_the_front_keeps_to_the_least_surcharge_unless_money_is_traded(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Every set-up needs the seat at 240; a depth made to order would be 160 more."""
    path = client_file(tmp_path, SETTLED + BETWEEN)
    assert main(["fit", str(path), "--json"]) == 0
    points = json.loads(capsys.readouterr().out)["front"]["points"]
    codes = {code for point in points for code in point["choices"].values()}
    assert {code for code in codes if code.startswith(("MS", "MD", "MP", "MG"))} == {"MS410"}
    assert main(["fit", str(path), "--json", "--trade", f"{SURCHARGE}=most,chair_mass_kg"]) == 0
    front = json.loads(capsys.readouterr().out)["front"]
    assert [aim["sense"] for aim in front["objectives"]] == ["max", "min"]
    assert max(point["values"][SURCHARGE] for point in front["points"]) > 240.0


def test_never_gives_the_reasons_of_the_standard_range(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = client_file(tmp_path, SETTLED + BETWEEN)
    found = fitted(capsys, path, "--made-to-order", "never")
    assert found["meets_every_must"] is False and found["made_to_order_looked_at"] is False
    for correction in found["reasons"]["corrections"]:
        assert not correction["choices"]["seat_width"].startswith("MS")
    (width,) = [each for each in found["reasons"]["conflicts"] if len(each) == 1]
    assert width[0]["figure"] == "seat_width_mm"


def test_always_looks_at_them_like_standard_sizes(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = client_file(tmp_path, SETTLED)
    usual, always = fitted(capsys, path), fitted(capsys, path, "--made-to-order", "always")
    assert usual["made_to_order_looked_at"] is False
    assert usual["set_up"]["made_to_order"] == {}
    assert always["made_to_order_looked_at"] is True
    assert always["set_ups"] > usual["set_ups"]
    assert always["best"]["cost"] <= usual["best"]["cost"]


def test_a_settled_size_made_to_order_needs_no_more_than_that(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = client_file(tmp_path, SETTLED.replace("{rear", "{seat_width: MS410, rear"))
    found = fitted(capsys, path, "--made-to-order", "never")
    assert found["set_up"]["made_to_order"]["seat_width"]["surcharge"] == 240.0


def test_when_even_they_do_not_help_the_reasons_say_so(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = client_file(tmp_path, SETTLED + TOO_NARROW)
    text = printed(capsys, path)
    assert "No set-up of this line meets every must, not even with sizes made to order." in text
    assert "1. " in text and "Overall width at most 450 mm" in text
    plain = printed(capsys, path, "--made-to-order", "never")
    assert "not even with sizes made to order" not in plain
    assert "No set-up of this line meets every must. That is a result" in plain


def test_a_size_made_to_order_in_a_correction_is_told_with_its_price(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """The width has to give; the seat between the standard ones then has to be made."""
    more = BETWEEN + TOO_NARROW.removeprefix("targets:\n")
    text = printed(capsys, client_file(tmp_path, SETTLED + more))
    assert "made to order: seat width MS410, + 240.00 EUR, 12 days longer" in text
