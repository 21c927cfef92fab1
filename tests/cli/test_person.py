"""``chairwright person``: what it prints and what its JSON holds."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from chairwright.cli.main import main
from chairwright.person.measures import CATALOGUE
from tests.unit.files.samples import client_file


def output(capsys: pytest.CaptureFixture[str], *words: str) -> str:
    assert main(["person", *words]) == 0
    captured = capsys.readouterr()
    assert captured.err == ""
    return captured.out


def test_measures_show_typed_value_millimetres_and_inches(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    text = output(capsys, str(client_file(tmp_path)))
    (hips,) = [line for line in text.splitlines() if line.startswith("Hip width")]
    # 15.5 in x 25.4 mm/in = 393.7 mm; usual tolerance of the catalogue 10 mm
    assert hips.split() == [
        "Hip",
        "width",
        "15",
        "1/2",
        "in",
        "394",
        "15",
        "1/2",
        "in",
        "10",
        "measured",
    ]
    assert "estimate 1: expected from the measured values" in text
    for kind in CATALOGUE.values():
        assert kind.label in text


def test_a_slip_of_the_tape_is_remarked_with_its_line(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = client_file(tmp_path, "  sitting_height: 60 cm\n")
    text = output(capsys, str(path))
    assert f"- {path}:9: Sitting height" in text
    assert "Nothing looks doubtful" not in text


def test_json_holds_every_measure_and_segments_that_add_up(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    more = "amputations:\n  - {side: left, level: hip}\n"
    found = json.loads(output(capsys, str(client_file(tmp_path, more)), "--json"))
    assert found["client"]["amputations"] == [{"side": "left", "level": "hip", "residual": 0.5}]
    measures = {(row["name"], row["side"]): row for row in found["measures"]}
    assert ("foot_length", "left") not in measures
    assert measures["foot_length", "right"]["estimated"] is True
    assert measures["hip_width", "middle"]["typed"] == "15 1/2 in"
    rows = found["segments"]["rows"]
    assert not [row for row in rows if row["side"] == "left" and row["link"] in ("thigh", "foot")]
    assert sum(row["mass_kg"] for row in rows) == pytest.approx(62.0, abs=1e-6)
    assert found["plausibility"]["degrees_of_freedom"] == 3


def test_the_segment_table_can_be_chosen(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    found = json.loads(output(capsys, str(client_file(tmp_path)), "--table", "winter", "--json"))
    thigh = next(row for row in found["segments"]["rows"] if row["name"] == "left thigh")
    # Winter 2009, Table 4.1: thigh 0.100 of body mass, printed to 0.001
    assert thigh["mass_kg"] / 62.0 == pytest.approx(0.100, abs=0.0005)
