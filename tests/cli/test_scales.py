"""``chairwright scales``: the measured centre of mass on paper and as data."""

from __future__ import annotations

import argparse
import json
from pathlib import Path
from typing import Any

import pytest

from chairwright.cli import scales
from chairwright.cli.report import run_quietly

EXAMPLES = Path(__file__).resolve().parents[2] / "examples"
FOUR, TWO = (EXAMPLES / "scales" / name for name in ("avg-001.yaml", "two-pads.yaml"))
SETUP = EXAMPLES / "setups" / "avg-001.yaml"


def run(*words: str | Path) -> int:
    parser = argparse.ArgumentParser()
    scales.add_arguments(parser)
    args = parser.parse_args([str(word) for word in words])
    return run_quietly(lambda: scales.run(args))


def printed(capsys: pytest.CaptureFixture[str], *words: str | Path) -> str:
    assert run(*words) == 0
    captured = capsys.readouterr()
    assert captured.err == ""
    return captured.out


def document(capsys: pytest.CaptureFixture[str], *words: str | Path) -> dict[str, Any]:
    found: dict[str, Any] = json.loads(printed(capsys, *words, "--json"))
    return found


def refused(capsys: pytest.CaptureFixture[str], *words: str | Path) -> str:
    assert run(*words) == 2
    captured = capsys.readouterr()
    assert captured.out == ""
    return captured.err


def test_two_pads_give_the_reference_case(capsys: pytest.CaptureFixture[str]) -> None:
    # 120.0 ahead and 620.0 high; the pads of this file step by 50 g, worth 0.8 mm.
    found = document(capsys, TWO)["measured"]
    assert found["com_x_mm"]["value"] == pytest.approx(120.0, abs=1e-9)
    assert found["com_z_mm"]["value"] == pytest.approx(620.0, abs=0.8)
    assert found["occupant_mass_kg"]["value"] == pytest.approx(74.0, abs=1e-9)
    assert "com_y_mm" not in found
    assert sum(found["com_z_mm"]["variance_shares"].values()) == pytest.approx(1.0)


def test_the_text_names_what_was_measured(capsys: pytest.CaptureFixture[str]) -> None:
    text = printed(capsys, TWO)
    assert "OLD-010: weighed on 2026-11-25 (two pads)" in text
    assert "Centre of mass above floor           619.9" in text
    assert "the height of the block" in text
    assert "estimate" not in text
    assert "never replaces" in text


def test_beside_its_set_up_the_estimate_is_told(capsys: pytest.CaptureFixture[str]) -> None:
    text = printed(capsys, FOUR, "--units", "in")
    assert "off by" in text
    assert "Against the estimate the occupant is 1.4 kg heavier" in text
    found = document(capsys, FOUR)
    height = found["measured"]["com_z_mm"]
    assert height["value"] != height["estimate"]
    assert height["beyond_the_estimate"] is False
    assert height["half_width"] < height["estimate_half_width"]
    # 99.4 kg on the pads, less 20 kg of chair.
    assert found["occupant_shift"]["mass_kg"] == pytest.approx(79.4, abs=0.05)


def test_onto_the_same_set_up_it_is_as_weighed(capsys: pytest.CaptureFixture[str]) -> None:
    found = document(capsys, FOUR, "--onto", SETUP)
    for name in ("com_x_mm", "com_y_mm", "com_z_mm", "total_mass_kg"):
        weighed, there = found["measured"][name], found["onto"]["figures"][name]
        assert there["value"] == pytest.approx(weighed["value"], abs=1e-6)
    assert "avg-001, occupant as weighed" in printed(capsys, FOUR, "--onto", SETUP)


def copy(folder: Path, *changes: tuple[str, str]) -> Path:
    text = FOUR.read_text("utf-8").replace("../setups/avg-001.yaml", str(SETUP))
    for old, new in changes:
        assert old in text
        text = text.replace(old, new)
    path = folder / "scales.yaml"
    path.write_text(text, encoding="utf-8")
    return path


def test_a_slipped_wheelbase_is_named(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    text = printed(capsys, copy(tmp_path, ("wheelbase: 359", "wheelbase: 395")))
    assert "Look again: the wheelbase was read as 395 mm, and the set-up makes it 359." in text


def test_without_the_block_there_is_no_height(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    text = FOUR.read_text("utf-8").split("raised:")[0]
    path = tmp_path / "level.yaml"
    path.write_text(text.replace("../setups/avg-001.yaml", str(SETUP)), encoding="utf-8")
    shown = printed(capsys, path)
    assert "The height is not known" in shown
    assert "Tips back" not in shown
    assert "no 'raised'" in refused(capsys, path, "--onto", SETUP)


def test_onto_without_a_set_up_is_refused(capsys: pytest.CaptureFixture[str]) -> None:
    assert "must name the set-up" in refused(capsys, TWO, "--onto", SETUP)


def test_a_set_up_of_somebody_else(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = copy(tmp_path, ("client: AVG-001", "client: AVG-002"))
    message = refused(capsys, path)
    assert f"{path}:5: " in message
    assert "AVG-002" in message


def test_a_set_up_that_is_not_there(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = copy(tmp_path, (str(SETUP), "nowhere.yaml"))
    assert f"{path}:5: the set-up file must be there" in refused(capsys, path)


def test_a_chair_lighter_than_its_own_parts(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    lighter = [(f"{old} kg", f"{new} kg") for old, new in (
        ("32.4", "6.4"), ("31.0", "6.2"), ("18.5", "3.7"), ("17.5", "3.5"), ("99.4", "19.8"),
        ("16.6", "3.3"),
    )]  # fmt: skip
    message = refused(capsys, copy(tmp_path, *lighter))
    assert "must weigh more than the set-up's empty one" in message
