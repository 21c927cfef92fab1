"""The command ``measured``: examples, slips named by line, bad files."""

from __future__ import annotations

import argparse
import json
import shutil
from pathlib import Path

import pytest

from chairwright.cli import measured
from chairwright.cli.report import run_quietly

EXAMPLES = Path(__file__).parents[2] / "examples"
CHAIRS = sorted((EXAMPLES / "measured").glob("*.yaml"))


def run(*words: str) -> int:
    parser = argparse.ArgumentParser()
    measured.add_arguments(parser)
    args = parser.parse_args(words)
    return run_quietly(lambda: measured.run(args))


def chair(folder: Path, old: str, new: str) -> Path:
    shutil.copytree(EXAMPLES / "clients", folder / "clients")
    path = folder / "measured" / "chair.yaml"
    path.parent.mkdir()
    text = (EXAMPLES / "measured" / "avg-001.yaml").read_text(encoding="utf-8")
    assert old in text
    path.write_text(text.replace(old, new), encoding="utf-8")
    return path


@pytest.mark.parametrize("path", CHAIRS, ids=lambda path: path.stem)
@pytest.mark.parametrize("units", ["mm", "in"])
def test_examples_close_and_are_compared(
    path: Path, units: str, capsys: pytest.CaptureFixture[str]
) -> None:
    proposed = str(EXAMPLES / "setups" / path.name)
    assert run(str(path), "--setup", proposed, "--units", units) == 0
    text = capsys.readouterr().out
    assert "The measures fit each other" in text
    assert "Gains\n- Seat width:" in text
    assert "must be" in text


def test_json_says_the_same(capsys: pytest.CaptureFixture[str]) -> None:
    proposed = str(EXAMPLES / "setups" / "chi-007.yaml")
    assert run(str(EXAMPLES / "measured" / "chi-007.yaml"), "--setup", proposed, "--json") == 0
    data = json.loads(capsys.readouterr().out)
    assert data["check"] == {"closes": True, "suspects": [], "open": []}
    assert data["figures"]["price"] is None
    assert data["figures"]["wheelbase_mm"] == pytest.approx(405.0)
    kinds = {each["figure"]: each["kind"] for each in data["proposed"]["changes"]}
    assert kinds["seat_width_mm"] == "gain"
    # 17.2 of 53.5 kg on the casters of a wheelbase of 405 mm: 130.2 mm ahead of the axle.
    assert data["figures"]["com_x_mm"] == pytest.approx(130.2, abs=0.05)


@pytest.mark.parametrize(
    ("old", "new", "name"),
    [
        ("wheelbase: 418 mm", "wheelbase: 481 mm", "wheelbase"),
        ("seat_to_floor_rear: 481 mm", "seat_to_floor_rear: 418 mm", "seat_to_floor_rear"),
        ("rear_track: 562 mm", "rear_track: 652 mm", "rear_track"),
        ("overall_length: 1052 mm", "overall_length: 1502 mm", "overall_length"),
        ("chair_mass: 17.9 kg", "chair_mass: 1.9 kg", "chair_mass"),
    ],
)
def test_a_slipped_digit_is_named_by_line(
    tmp_path: Path, old: str, new: str, name: str, capsys: pytest.CaptureFixture[str]
) -> None:
    path = chair(tmp_path, old, new)
    code = run(str(path), "--json")
    line = path.read_text(encoding="utf-8").splitlines().index(f"  {new}") + 1
    told = capsys.readouterr()
    if code == 0:
        suspect = json.loads(told.out)["check"]["suspects"][0]
        assert suspect["measure"] == name
        assert suspect["where"] == f"{path}:{line}"
        assert suspect["perhaps"] == float(old.split()[1])
    else:
        assert f"{path}:{line}" in told.err


@pytest.mark.parametrize(
    ("old", "new", "part"),
    [
        ("avg-001.yaml", "nobody.yaml", "chair.yaml:2: client: the measured chair's client file"),
        ("wheelbase: 418 mm", "wheelbase: 418", "chair.yaml:"),
        ("seat_to_floor_rear: 481 mm", "seat_to_floor_rear: 81 mm", "stands on its wheels"),
    ],
)
def test_bad_files_end_with_2(
    tmp_path: Path, old: str, new: str, part: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert run(str(chair(tmp_path, old, new))) == 2
    told = capsys.readouterr()
    assert told.out == ""
    assert part in told.err


def test_a_set_up_of_another_client_is_refused(capsys: pytest.CaptureFixture[str]) -> None:
    other = str(EXAMPLES / "setups" / "chi-007.yaml")
    assert run(str(EXAMPLES / "measured" / "avg-001.yaml"), "--setup", other) == 2
    assert "must be for the client" in capsys.readouterr().err
