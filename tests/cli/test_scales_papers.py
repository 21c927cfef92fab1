"""``scales`` and ``measured`` with ``--out``: the sheet, what stands in its way, bad input."""

from __future__ import annotations

import argparse
import io
import json
import re
from pathlib import Path
from types import ModuleType

import pytest
from pypdf import PdfReader

from chairwright.cli import measured, scales
from chairwright.cli.report import run_quietly

EXAMPLES = Path(__file__).resolve().parents[2] / "examples"
SETUP = str(EXAMPLES / "setups" / "avg-001.yaml")
WEIGHED = (str(EXAMPLES / "scales" / "avg-001.yaml"),)
MEASURED = (str(EXAMPLES / "measured" / "avg-001.yaml"), "--setup", SETUP)
BOTH = [
    (scales, (*WEIGHED, "--onto", SETUP), "avg-001-weighing-sheet.pdf"),
    (measured, MEASURED, "avg-001-measured-chair-sheet.pdf"),
]


def run(command: ModuleType, *words: str | Path) -> int:
    parser = argparse.ArgumentParser()
    command.add_arguments(parser)
    args = parser.parse_args([str(word) for word in words])
    return run_quietly(lambda: command.run(args))


def text_of(path: Path) -> str:
    pages = PdfReader(io.BytesIO(path.read_bytes())).pages
    return re.sub(r"\s+", " ", " ".join(page.extract_text() for page in pages))


@pytest.mark.parametrize("paper", ["a4", "letter"])
@pytest.mark.parametrize(("command", "words", "name"), BOTH, ids=["scales", "measured"])
def test_the_sheet_is_written_once_and_replaced_on_request(
    command: ModuleType,
    words: tuple[str, ...],
    name: str,
    paper: str,
    tmp_path: Path,
    capsys: pytest.CaptureFixture[str],
) -> None:
    out = tmp_path / "papers"
    assert run(command, *words) == 0
    said = capsys.readouterr().out
    assert run(command, *words, "--out", out, "--paper", paper) == 0
    told = capsys.readouterr()
    assert told.out == said
    assert told.err == f"wrote {out / name}\n"
    assert [each.name for each in out.iterdir()] == [name]
    before = (out / name).read_bytes()
    assert run(command, *words, "--out", out, "--paper", paper) == 2
    assert "the file must not exist yet" in capsys.readouterr().err
    assert run(command, *words, "--out", out, "--paper", paper, "--replace") == 0
    assert (out / name).read_bytes() == before


@pytest.mark.parametrize(("command", "words", "name"), BOTH, ids=["scales", "measured"])
def test_json_goes_with_the_sheet(
    command: ModuleType,
    words: tuple[str, ...],
    name: str,
    tmp_path: Path,
    capsys: pytest.CaptureFixture[str],
) -> None:
    assert run(command, *words, "--out", tmp_path, "--json", "--units", "in") == 0
    data = json.loads(capsys.readouterr().out)
    text = text_of(tmp_path / name)
    if command is scales:
        there = data["onto"]["figures"]["tip_rear_locked_deg"]["value"]
        height = data["measured"]["com_z_mm"]["value"]
        assert f"Tips back, wheels locked {there:.1f} deg" in text
        assert f"{height:.1f} mm ± 8.9 = 27 1/4 in above the floor" in text
    else:
        assert f"Seat width {data['figures']['seat_width_mm']:.0f} mm" in text
        gains = [each for each in data["proposed"]["changes"] if each["kind"] == "gain"]
        assert gains
        assert all(each["words"].partition(":")[0] in text for each in gains)


@pytest.mark.parametrize(("command", "words", "name"), BOTH, ids=["scales", "measured"])
def test_a_file_in_place_of_the_folder(
    command: ModuleType,
    words: tuple[str, ...],
    name: str,
    tmp_path: Path,
    capsys: pytest.CaptureFixture[str],
) -> None:
    out = tmp_path / name
    out.write_text("mine", encoding="utf-8")
    assert run(command, *words, "--out", out) == 2
    told = capsys.readouterr()
    assert told.out == ""
    assert "the sheet needs a folder" in told.err
    assert out.read_text("utf-8") == "mine"


@pytest.mark.parametrize(
    ("command", "folder", "old", "new"),
    [
        (scales, "scales", "wheelbase: 359 mm", "wheelbase: 359"),
        (scales, "scales", "../setups/avg-001.yaml", "../setups/nowhere.yaml"),
        (measured, "measured", "wheelbase: 418 mm", "wheelbase: 418"),
        (measured, "measured", "seat_to_floor_rear: 481 mm", "seat_to_floor_rear: 81 mm"),
    ],
)
def test_bad_input_writes_nothing_and_leaves_what_is_there(
    command: ModuleType,
    folder: str,
    old: str,
    new: str,
    tmp_path: Path,
    capsys: pytest.CaptureFixture[str],
) -> None:
    text = (EXAMPLES / folder / "avg-001.yaml").read_text("utf-8")
    assert old in text
    text = text.replace(old, new)
    for each in ("clients", "setups"):
        text = text.replace(f"../{each}/avg-001", str(EXAMPLES / each / "avg-001"))
    path, out = tmp_path / "bad.yaml", tmp_path / "out"
    path.write_text(text, encoding="utf-8")
    out.mkdir()
    names = ("avg-001-weighing-sheet.pdf", "avg-001-measured-chair-sheet.pdf")
    for name in names:
        (out / name).write_text("mine", encoding="utf-8")
    assert run(command, path, "--out", out, "--replace") == 2
    told = capsys.readouterr()
    assert told.out == ""
    assert str(path) in told.err
    assert [(out / name).read_text("utf-8") for name in names] == ["mine", "mine"]
    assert len(list(out.iterdir())) == len(names)


def test_a_reference_that_is_no_file_name_stays_in_the_folder(tmp_path: Path) -> None:
    text = (EXAMPLES / "scales" / "two-pads.yaml").read_text("utf-8")
    path, out = tmp_path / "scales.yaml", tmp_path / "out"
    path.write_text(text.replace("OLD-010", "../OLD 010"), encoding="utf-8")
    assert run(scales, path, "--out", out) == 0
    assert [each.name for each in out.iterdir()] == ["old-010-weighing-sheet.pdf"]
    assert {each.name for each in tmp_path.iterdir()} == {"scales.yaml", "out"}
