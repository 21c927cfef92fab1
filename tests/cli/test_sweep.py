"""``chairwright sweep``: text, JSON, rows for a spreadsheet, the lesson sheet, and refusals."""

from __future__ import annotations

import csv
import io
import json
from pathlib import Path
from typing import Any

import pytest

from chairwright.cli.main import main
from chairwright.figures.registry import FIGURES
from tests.laws.example_sweeps import SETUPS, example, swept

SETUP = str(SETUPS / "avg-001.yaml")
NOW = example("avg-001").setup.codes


def printed(capsys: pytest.CaptureFixture[str], *words: str) -> str:
    assert main(["sweep", *words]) == 0
    return capsys.readouterr().out


def document(capsys: pytest.CaptureFixture[str], *words: str) -> dict[str, Any]:
    found: dict[str, Any] = json.loads(printed(capsys, *words, "--json"))
    return found


def test_the_json_gives_status_figures_changes_and_reasons(
    capsys: pytest.CaptureFixture[str],
) -> None:
    found = document(capsys, SETUP, "axle_hole")
    assert list(found) == ["client", "line", "choice", "option", "runs"]
    assert [run["run"] for run in found["runs"]] == ["fore-aft", "up-down"]
    for run, made in zip(found["runs"], swept("avg-001", "axle_hole").runs, strict=True):
        assert [option["code"] for option in run["options"]] == [
            each.option.code for each in made.tried
        ]
        here = run["options"][made.present]
        assert here["status"] == "as it stands"
        assert set(here["changes"].values()) <= {0.0, None}
        for option in run["options"]:
            if option["figures"] is None:
                assert option["status"] in ("not allowed", "does not stand")
                assert option["reasons"]
                continue
            for name, moved in option["changes"].items():
                if moved is not None:
                    total = here["figures"][name] + moved
                    assert option["figures"][name] == pytest.approx(total, abs=1e-9)
        assert set(run["why"]) == set(here["figures"])
        assert all(why["text"] and why["sources"] for why in run["why"].values())


def test_all_gives_every_figure(capsys: pytest.CaptureFixture[str]) -> None:
    found = document(capsys, SETUP, "wheel_lock", "--all")
    assert set(found["runs"][0]["options"][0]["figures"]) == set(FIGURES)
    fewer = document(capsys, SETUP, "wheel_lock")
    assert set(fewer["runs"][0]["options"][0]["figures"]) < set(FIGURES)


def test_the_text_says_what_was_swept_what_moved_and_why(
    capsys: pytest.CaptureFixture[str],
) -> None:
    text = printed(capsys, SETUP, "axle-hole")
    for part in (
        f"Axle hole {NOW['axle_hole']}, ",
        "One hole further forward: fore and aft at the same height, ",
        "One hole higher: up and down in the same place, ",
        "square again with, stem then",
        "\n  Tips back, wheels locked ",
        "\nWhy\n- Tips back, wheels locked: Tipping back, the chair turns about the rear tyre",
        "Thomas 2018 (read in the abstract only)",
        "more figures do not move; --all shows them.",
        "\n\nWhat tilts the frame tilts the caster stems",
        "This calculation supports, and never replaces, a qualified assessment",
    ):
        assert part in text, part


def test_rows_for_a_spreadsheet_hold_the_numbers_that_are_printed(
    capsys: pytest.CaptureFixture[str],
) -> None:
    rows = list(csv.DictReader(io.StringIO(printed(capsys, SETUP, "axle_hole", "--csv"))))
    made = [(run, each) for run in swept("avg-001", "axle_hole").runs for each in run.tried]
    assert [(row["run"], row["option"]) for row in rows] == [
        (run.run.name, each.option.code) for run, each in made
    ]
    base = round(swept("avg-001", "axle_hole").base.figures["turning_diameter_mm"])
    for row, (_, each) in zip(rows, made, strict=True):
        assert row["status"] == each.status
        if each.setup is None:
            assert row["turning_diameter_mm"] == row["turning_diameter_mm_change"] == ""
        else:
            value = round(each.setup.figures["turning_diameter_mm"])
            assert row["turning_diameter_mm"] == str(value)
            assert row["turning_diameter_mm_change"] == str(value - base)


def test_options_can_be_named(capsys: pytest.CaptureFixture[str]) -> None:
    first, second = list(example("avg-001").line.choices["cushion"].codes)[-2:]
    (run,) = document(capsys, SETUP, "cushion", "--options", f"{first},{second}")["runs"]
    codes = {option["code"] for option in run["options"]}
    assert codes == {first, second, NOW["cushion"]}
    assert run["run"] == "named"


def test_one_run_can_be_asked_for(capsys: pytest.CaptureFixture[str]) -> None:
    for name in ("fore-aft", "up-down", "every"):
        (run,) = document(capsys, SETUP, "axle_hole", "--run", name)["runs"]
        assert run["run"] == name


def test_long_work_tells_how_far_it_is(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["sweep", SETUP, "axle_hole", "--run", "every", "--csv"]) == 0
    captured = capsys.readouterr()
    count = len(example("avg-001").line.choices["axle_hole"].options)
    assert captured.err.startswith(f"axle_hole: 10 of {count} options\n")


def test_inches_stand_under_the_lengths(capsys: pytest.CaptureFixture[str]) -> None:
    lines = printed(capsys, SETUP, "cushion", "--units", "in").splitlines()
    at = next(n for n, line in enumerate(lines) if line.startswith("  Centre of mass above floor"))
    value = float(lines[at].split()[6])
    inches = lines[at + 2].split()
    assert inches[0] == "in"
    assert float(inches[1]) == pytest.approx(value / 25.4, abs=1.0)


def test_the_lesson_sheet_is_written_once(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = tmp_path / "lessons" / "axle.pdf"
    words = ["sweep", SETUP, "axle_hole", "--out", str(path)]
    assert main(words) == 0
    assert f"wrote {path}" in capsys.readouterr().err
    first = path.read_bytes()
    assert first.startswith(b"%PDF")
    assert main(words) == 2
    captured = capsys.readouterr()
    assert captured.out == ""
    assert f"{path}: the file must not exist yet; got a file. Say --replace" in captured.err
    assert main([*words, "--replace", "--paper", "letter"]) == 0
    assert path.read_bytes() != first


@pytest.mark.parametrize(
    ("words", "parts"),
    [
        (["axel_hole"], ("CHOICE: ", "Did you mean axle_hole?")),
        (["cushion", "--options", "Q999"], ("--options: ", "got 'Q999'")),
        (["cushion", "--options", ","], ("--options: it must name options of cushion",)),
        (["cushion", "--run", "up-down"], ("--run: cushion can be swept as ",)),
        (["axle_hole", "--out", "axle.txt"], ("--out: the file must end in .pdf",)),
    ],
)
def test_what_cannot_be_meant_is_refused(
    words: list[str], parts: tuple[str, ...], capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["sweep", SETUP, *words]) == 2
    captured = capsys.readouterr()
    assert captured.out == ""
    assert [part for part in parts if part not in captured.err] == []


def test_a_lesson_without_another_option_says_why_there_is_none(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = tmp_path / "feet.pdf"
    assert main(["sweep", SETUP, "foot_supports", "--out", str(path)]) == 2
    message = capsys.readouterr().err
    assert "a lesson about foot_supports needs another option that stands" in message
    assert "the right foot rests and must have a foot support" in message
    assert not path.exists()
    assert main(["sweep", SETUP, "foot_supports"]) == 0


def test_a_set_up_that_the_line_forbids_is_not_swept(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    client = (SETUPS / example("avg-001").file.client_path).resolve()
    text = Path(SETUP).read_text("utf-8").replace("../clients/avg-001.yaml", str(client))
    path = tmp_path / "setup.yaml"
    path.write_text(text.replace(f"cushion: {NOW['cushion']}", "cushion: Q99"), encoding="utf-8")
    assert main(["sweep", str(path), "axle_hole"]) == 2
    assert "choices.cushion: " in capsys.readouterr().err
