"""Command tolerance: the table, the charts, what is refused."""

from __future__ import annotations

import json
from pathlib import Path
from xml.etree import ElementTree as ET

import pytest

from chairwright.cli.main import main

EXAMPLES = Path(__file__).parents[2] / "examples"
CLIENT = str(EXAMPLES / "clients" / "avg-001.yaml")
SETUP = str(EXAMPLES / "setups" / "avg-001.yaml")
PLACES = str(EXAMPLES / "places" / "avg-001.yaml")


def test_table_of_every_figure(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["tolerance", CLIENT, "--setup", SETUP]) == 0
    text = capsys.readouterr().out
    (tips,) = [line for line in text.splitlines() if line.startswith("Tips back, wheels locked")]
    assert "first order" in tips
    assert tips.endswith("body model: centre of mass ahead")
    assert "Musts that hold on nominal values only" in text
    assert "Measure again: elbow height" in text


def test_json_says_the_same_as_figures(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["tolerance", CLIENT, "--setup", SETUP, "--places", PLACES, "--json"]) == 0
    found = json.loads(capsys.readouterr().out)
    assert main(["figures", SETUP, "--json"]) == 0
    figures = json.loads(capsys.readouterr().out)["figures"]
    for name, each in found["figures"].items():
        if "@" not in name:
            assert each["value"] == pytest.approx(figures[name])
    unsure = {item["figure"]: item for item in found["on_nominal_values"]}
    assert unsure["arm_height_mm"]["margin"] < unsure["arm_height_mm"]["margin_half_width"]
    assert any(item["place"] for item in found["on_nominal_values"])
    assert {each["method"] for each in found["figures"].values()} <= {"first order", "Monte Carlo"}


def test_charts_are_drawn_and_not_written_over(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    ask = ["tolerance", CLIENT, "--setup", SETUP, "--out", str(tmp_path)]
    assert main(ask) == 0
    drawn = {path.name for path in tmp_path.iterdir()}
    assert "avg-001-tornado-arm_height_mm.svg" in drawn
    assert main(ask) == 2
    assert "Say --replace" in capsys.readouterr().err
    assert main([*ask, "--replace", "--figure", "tip_rear_locked_deg"]) == 0
    svg = (tmp_path / "avg-001-tornado-tip_rear_locked_deg.svg").read_text("utf-8")
    words = [node.text for node in ET.fromstring(svg).iter() if node.tag.endswith("text")]
    assert words[0] == "Tips back, wheels locked: 10.0 deg ± 2.1"
    assert words[1] == "body model: centre of mass ahead"
    assert any("Weigh the client in a chair" in (each or "") for each in words)


def test_another_client_is_refused(capsys: pytest.CaptureFixture[str]) -> None:
    other = str(EXAMPLES / "clients" / "tal-002.yaml")
    assert main(["tolerance", other, "--setup", SETUP]) == 2
    assert "the client must be the set-up's, AVG-001" in capsys.readouterr().err


def test_an_unknown_figure_is_refused(capsys: pytest.CaptureFixture[str]) -> None:
    ask = ["tolerance", CLIENT, "--setup", SETUP, "--figure", "tip_rear_loked_deg"]
    assert main(ask) == 2
    assert "tip_rear_locked_deg" in capsys.readouterr().err


def test_fit_asked_to_be_sure_names_what_no_set_up_is_sure_of(
    capsys: pytest.CaptureFixture[str],
) -> None:
    assert main(["fit", CLIENT, "--no-front", "--sure", "--json"]) == 0
    found = json.loads(capsys.readouterr().out)
    sure = found["sure"]
    never = {each["figure"] for each in sure["never_sure"]}
    assert (sure["every_must_sure"], sure["others_sure"]) == (False, True)
    assert never == {"seat_depth_mm", "arm_height_mm"}
    assert found["best"]["cost"] > sure["cost_on_nominal_values"]
    assert main(["fit", CLIENT, "--why", "--sure"]) == 2
