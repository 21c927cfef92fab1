"""``chairwright line heights``: the table, the files, JSON, and refusals."""

from __future__ import annotations

import csv
import json
import time
from itertools import product
from pathlib import Path
from typing import Any

import pytest

from chairwright.cli.main import main
from chairwright.fitting.heights_chart import SHOWN
from chairwright.fitting.heights_fixed import FIXED, VARIED
from chairwright.line.load import load_line

LINE = load_line("everyday")
SIZES = {name: len(LINE.choices[name].options) for name in VARIED}
COMBINATIONS = SIZES["rear_wheel"] * SIZES["axle_hole"] * SIZES["caster"] * SIZES["fork"]


def said(capsys: pytest.CaptureFixture[str], *words: str) -> tuple[str, str]:
    assert main(["line", "heights", "everyday", *words]) == 0
    captured = capsys.readouterr()
    return captured.out, captured.err


def refused(capsys: pytest.CaptureFixture[str], *words: str) -> str:
    assert main(["line", "heights", *words]) == 2
    captured = capsys.readouterr()
    assert captured.out == ""
    return captured.err


def rows_of(path: Path) -> list[dict[str, str]]:
    with path.open(encoding="utf-8", newline="") as stream:
        return list(csv.DictReader(stream))


def test_the_table_names_all_that_stays_the_same(capsys: pytest.CaptureFixture[str]) -> None:
    text, _ = said(capsys)
    assert text.startswith(f"Seat heights: {LINE.title}, version {LINE.version}, {LINE.maker}\n")
    for name in FIXED:
        assert f"\n{LINE.choices[name].label}:" in text
    assert "\nAxle holes:" in text
    assert "Not in these heights: the occupant, the cushion" in text
    assert max(len(row) for row in text.splitlines()) <= 100


def test_every_wheel_and_caster_has_its_block(capsys: pytest.CaptureFixture[str]) -> None:
    text, _ = said(capsys)
    for wheel in LINE.choices["rear_wheel"].options:
        part = text.split(f"Rear wheel {wheel.code}, {wheel.name}\n")[1]
        part = part.split("\n\nRear wheel ")[0]
        for caster in LINE.choices["caster"].options:
            assert f"\nCaster {caster.code}, {caster.name}\n" in part


def test_cells_of_the_table_are_those_of_the_csv(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = tmp_path / "heights.csv"
    text, _ = said(capsys, "--units", "both", "--csv", str(path), "--axle-column", "D")
    for row in rows_of(path):
        if row["stands"] == "yes" and row["axle_column"] == "D":
            ends = [float(row[f"seat_to_floor_{end}_in"]) for end in ("rear", "front")]
            assert all(10.0 < end < 30.0 for end in ends)
            assert row["stem_setting"] in text
    printed = set(text.split())
    seen = [row for row in rows_of(path) if row["axle_column"] == "D" and row["stands"] == "yes"]
    missing = [row for row in seen if not printed & heights(row)]
    assert len(seen) > 50
    assert missing == []


def heights(row: dict[str, str]) -> set[str]:
    """How a row may stand in the table: a tenth of a millimetre rounds either way at a half."""
    ends = [float(row[f"seat_to_floor_{end}_mm"]) for end in ("rear", "front")]
    either = [{f"{end - 0.05:.0f}", f"{end + 0.05:.0f}"} for end in ends]
    return {f"{rear}/{front}" for rear, front in product(*either)}


def test_the_csv_holds_every_combination_once_with_all_figures(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = tmp_path / "heights.csv"
    _, told = said(capsys, "--csv", str(path))
    assert told == f"wrote {path}\n"
    rows = rows_of(path)
    keys = {tuple(row[name] for name in VARIED) for row in rows}
    assert len(rows) == len(keys) == COMBINATIONS
    for row in rows:
        assert row["stands"] in ("yes", "no")
        assert (row["reason"] == "") == (row["stands"] == "yes")
        assert all((row[name] != "") == (row["stands"] == "yes") for name in SHOWN)
        assert row["axle_hole"] in (
            row["axle_column"] + row["axle_row"],
            row["axle_column"][:1] + row["axle_row"] + row["axle_column"][1:],
        )
    for row in rows:
        if row["stands"] == "yes":
            for name in ("seat_to_floor_rear", "seat_to_floor_front", "wheelbase"):
                assert float(row[f"{name}_in"]) * 25.4 == pytest.approx(
                    float(row[f"{name}_mm"]), abs=0.05 + 0.005 * 25.4
                )


def test_the_whole_csv_is_there_in_about_a_second(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Twice the time asked for: the machine may be busy."""
    begun = time.perf_counter()
    said(capsys, "--csv", str(tmp_path / "heights.csv"))
    assert time.perf_counter() - begun < 2.0


def document(capsys: pytest.CaptureFixture[str], *words: str) -> dict[str, Any]:
    text, told = said(capsys, "--json", *words)
    assert told == ""
    found: dict[str, Any] = json.loads(text)
    return found


def test_json_holds_what_the_csv_holds(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = tmp_path / "heights.csv"
    said(capsys, "--csv", str(path))
    found = document(capsys)
    assert list(found) == [
        "line", "fixed", "axle_column", "axle_columns", "level_deg", "combinations",
    ]  # fmt: skip
    assert list(found["fixed"]) == list(FIXED)
    assert len(found["combinations"]) == COMBINATIONS
    for one, row in zip(found["combinations"], rows_of(path), strict=True):
        assert [one[name] for name in VARIED] == [row[name] for name in VARIED]
        assert one["stands"] == (row["stands"] == "yes")
        assert one["reason"] == row["reason"]
        assert (one["stem_setting"] or "") == row["stem_setting"]
        for name in SHOWN:
            if one["stands"]:
                assert one[name] == pytest.approx(float(row[name]), abs=0.0501)
            else:
                assert one[name] is None


def test_what_is_chosen_is_on_the_chart(capsys: pytest.CaptureFixture[str]) -> None:
    codes = {name: LINE.choices[name].options[-1].code for name in ("camber", "caster_housing")}
    frame = LINE.choices["side_frame"].options[1].code
    found = document(
        capsys, "--side-frame", frame, "--caster-housing", codes["caster_housing"],
        "--axle-column", "b",
    )  # fmt: skip
    assert found["fixed"]["side_frame"]["code"] == frame
    assert found["fixed"]["caster_housing"]["code"] == codes["caster_housing"]
    assert found["axle_column"] == "B"


def test_a_level_range_may_begin_below_nought(capsys: pytest.CaptureFixture[str]) -> None:
    found = document(capsys, "--level", "-1", "3.5")
    angles = [one["seat_angle_deg"] for one in found["combinations"] if one["stands"]]
    assert found["level_deg"] == [-1.0, 3.5]
    assert angles
    assert min(angles) >= -1.0
    assert max(angles) <= 3.5


@pytest.mark.parametrize("paper", ["a4", "letter"])
def test_the_pdf_is_written(paper: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = tmp_path / "charts" / "heights.pdf"
    _, told = said(capsys, "--out", str(path), "--paper", paper)
    assert told == f"wrote {path}\n"
    assert path.read_bytes().startswith(b"%PDF-")


def test_no_file_is_replaced_unless_it_is_said(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    paths = [tmp_path / "heights.pdf", tmp_path / "heights.csv"]
    for path in paths:
        path.write_text("kept", encoding="utf-8")
    words = ("--out", str(paths[0]), "--csv", str(paths[1]))
    told = refused(capsys, "everyday", *words)
    for path in paths:
        assert f"{path}: the file must not exist yet; got a file. Say --replace" in told
        assert path.read_text(encoding="utf-8") == "kept"
    said(capsys, *words, "--replace")
    assert all(path.stat().st_size > 1000 for path in paths)


REFUSALS = {
    "no such line": (["evryday"], "the line must be a shipped one"),
    "no line file": (["./no.yaml"], "no such file"),
    "no PDF": (["everyday", "--out", "heights.txt"], "--out: the file must end in .pdf"),
    "no CSV": (["everyday", "--csv", "heights"], "--csv: the file must end in .csv"),
    "unknown code": (["everyday", "--camber", "K99"], "--camber: it must be a camber of the line"),
    "unknown caster": (
        ["everyday", "--caster", "C99"],
        "--caster: it must be a caster of the line",
    ),
    "no code": (["everyday", "--caster", ","], "--caster: it must name at least one code"),
    "unknown column": (["everyday", "--axle-column", "7"], "--axle-column: it must be a column"),
    "upside down": (["everyday", "--level", "4", "0"], "--level: the least seat angle comes first"),
    "nothing stands": (["everyday", "--level", "19.9999", "20"], "something must stand with axle"),
}


@pytest.mark.parametrize("case", REFUSALS)
def test_what_cannot_be_is_refused(case: str, capsys: pytest.CaptureFixture[str]) -> None:
    words, expected = REFUSALS[case]
    told = refused(capsys, *words)
    assert expected in told
    assert "; got " in told
