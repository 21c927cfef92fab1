"""``chairwright growth``: what lasts, the life of a set-up, the reviews, and what is refused."""

from __future__ import annotations

import argparse
import json
from pathlib import Path
from typing import Any

import pytest

from chairwright.cli import growth
from chairwright.cli.report import run_quietly
from chairwright.files.setup import read_setup

EXAMPLES = Path(__file__).resolve().parents[2] / "examples"
CHILD, WIDE, ADULT = (EXAMPLES / "clients" / f"{n}.yaml" for n in ("chi-007", "bar-006", "avg-001"))
SETUP = EXAMPLES / "setups" / "chi-007.yaml"


def run(*words: str | Path) -> int:
    parser = argparse.ArgumentParser()
    growth.add_arguments(parser)
    args = parser.parse_args([str(word) for word in words])
    return run_quietly(lambda: growth.run(args))


def document(capsys: pytest.CaptureFixture[str], *words: str | Path) -> dict[str, Any]:
    assert run(*words, "--json") == 0
    found: dict[str, Any] = json.loads(capsys.readouterr().out)
    return found


def refused(capsys: pytest.CaptureFixture[str], *words: str | Path) -> str:
    assert run(*words) == 2
    captured = capsys.readouterr()
    assert captured.out == ""
    return captured.err


def test_a_child_grows_out_of_the_chair(capsys: pytest.CaptureFixture[str]) -> None:
    found = document(capsys, CHILD, "--years", "2", "--delivered", "2026-12-01")
    assert found["ranges"]["stature"]["source"] == "CDC 2000"
    points = found["trade_off"]
    assert [p["months"] for p in points] == sorted({p["months"] for p in points})
    assert [p["cost"] for p in points] == sorted(p["cost"] for p in points)
    assert found["planned"] == points[-1]
    assert not found["lasts_throughout"]
    assert {track["name"] for track in found["tracks"]} >= {"middle of the range"}
    first = found["first_to_run_out"]
    assert first["month"] > found["planned"]["months"]
    growing = next(each for each in found["reviews"] if each["by_growth"])
    assert growing["month"] == first["month"] - 1
    assert found["reviews"][0]["month"] == min(each["month"] for each in found["reviews"])
    assert found["reviews"][0]["day"] == "2027-06-01"
    for track in found["tracks"]:
        ends = [each["to_month"] for each in track["servings"]]
        starts = [each["from_month"] for each in track["servings"]]
        assert starts == [0, *ends[:-1]]
        assert track["servings"][0]["setting"] == "A"


def test_nothing_changes_for_an_adult_of_whom_nothing_is_said(
    capsys: pytest.CaptureFixture[str],
) -> None:
    assert run(ADULT) == 0
    text = capsys.readouterr().out
    assert "Nothing is expected to change" in text
    assert "stays good for all of 5 years" in text
    assert "in 6 months" in text


def test_the_file_s_own_range_with_its_reason(capsys: pytest.CaptureFixture[str]) -> None:
    assert run(WIDE) == 0
    text = capsys.readouterr().out
    assert "170.0 to 205.0 kg" in text
    assert "on a programme to lose weight" in text


def test_a_set_up_that_is_named_is_followed(capsys: pytest.CaptureFixture[str]) -> None:
    found = document(capsys, CHILD, "--setup", SETUP, "--years", "1")
    assert found["planned"]["choices"] == dict(read_setup(SETUP).choices)
    assert len(found["trade_off"]) == 1


def test_files_are_written_and_not_written_over(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    words = (CHILD, "--years", "1", "--lasts", "0.5", "--out", tmp_path)
    assert run(*words) == 0
    capsys.readouterr()
    sheet, setup = tmp_path / "chi-007-life-sheet.pdf", tmp_path / "chi-007-life-setup.yaml"
    first = sheet.read_bytes()
    assert first.startswith(b"%PDF-")
    assert read_setup(setup).client_path.resolve() == CHILD
    assert "must not exist yet" in refused(capsys, *words)
    assert run(*words, "--replace") == 0
    assert sheet.read_bytes() == first


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("--years", "0"), "--years: it must lie between 0.5 and 15 years; got 0"),
        (("--years", "nan"), "--years: it must lie between 0.5 and 15 years; got nan"),
        (("--lasts", "16"), "--lasts: it must lie between"),
        (("--mass-change", "60"), "--mass-change: it must be more than 0 and at most 50 per cent"),
        (("--delivered", "1.12.2026"), "delivered: it must be a day of the calendar"),
        (("--setup", str(SETUP), "--lasts", "1"), "--lasts: a set-up that is named is taken as it"),
        (("--setup", str(EXAMPLES / "setups" / "avg-001.yaml")), "must be of the client CHI-007"),
        (("--years", "2", "--lasts", "2"), "some set-up of the line must last 2 years; got "),
    ],
)
def test_what_is_refused(
    words: tuple[str, ...], said: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert said in refused(capsys, CHILD, *words)


def changed(folder: Path, old: str, new: str) -> Path:
    text = WIDE.read_text(encoding="utf-8")
    assert old in text
    path = folder / "client.yaml"
    path.write_text(text.replace(old, new), encoding="utf-8")
    return path


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        ("[170 kg, 205 kg]", "205 kg", "least and most at the end of the years"),
        ("[170 kg, 205 kg]", "[205 kg, 170 kg]", "least and most must rise"),
        ("[170 kg, 205 kg]", "[170 cm, 205 cm]", "kg"),
        ("body_mass: [", "knee_height: [", "must be among the measures"),
        ("body_mass: [", "body_mas: [", "it must be a measure, over_years or reason"),
        ("over_years: 3", "over_years: 40", "from 0.5 to 15"),
        ("  reason: on a programme to lose weight, with the doctor; the upper end if it fails\n",
         "", "reason must be given"),
        ("expected:\n", "age: -4\nexpected:\n", "from 0 to 120"),
    ],
)  # fmt: skip
def test_what_a_client_file_may_not_expect(
    old: str, new: str, said: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = changed(tmp_path, old, new)
    text = refused(capsys, path)
    assert said in text
    assert f"{path}:" in text


def test_todays_weighing_is_carried_over_in_plain_words(
    capsys: pytest.CaptureFixture[str],
) -> None:
    """99.4 kg on the scales; 78 kg by the client file, 70.2 to 85.8 kg at the end."""
    named = (ADULT, "--setup", EXAMPLES / "setups" / "avg-001.yaml", "--years", "0.5")
    scales = ("--scales", EXAMPLES / "scales" / "avg-001.yaml")
    found = document(capsys, *named, *scales, "--mass-change", "10")["weighed"]
    assert found["dated"] == "2026-11-25"
    ratio = found["mass_kg"] / 78.0
    assert found["mass_ratio"] == pytest.approx(ratio)
    assert run(*named, *scales, "--mass-change", "10") == 0
    text = " ".join(capsys.readouterr().out.split())
    assert "it is today's weighing carried over, not one of that day" in text
    assert f"{ratio:.3f} times the expected one, {70.2 * ratio:.1f} to {85.8 * ratio:.1f}" in text
    assert run(*named, *scales) == 0
    text = capsys.readouterr().out
    assert "Centre of mass measured on the scales (2026-11-25)" in text
    assert "carried over" not in text
    assert document(capsys, *named)["weighed"] is None
