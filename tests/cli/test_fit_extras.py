"""Extras from the client file to the set-up file, and from there to every other command."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest
from pypdf import PdfReader

from chairwright.cli.main import main
from chairwright.files.setup import read_setup
from tests.unit.files.samples import client_file

SETTLED = "choices:\n  rear_wheel: W22\n  camber: K0\n  cushion: Q50\n"
TRAY = "extras: [ET]\n"


def document(capsys: pytest.CaptureFixture[str], *words: str) -> dict[str, Any]:
    assert main([*words, "--json"]) == 0
    found: dict[str, Any] = json.loads(capsys.readouterr().out)
    return found


@pytest.fixture
def setup(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> Path:
    path = client_file(tmp_path, SETTLED + TRAY)
    assert main(["fit", str(path), "--no-front", "--out", str(tmp_path / "out")]) == 0
    capsys.readouterr()
    return tmp_path / "out" / "t-1-setup.yaml"


def without_tray(setup: Path) -> Path:
    path = setup.with_name("bare.yaml")
    path.write_text(setup.read_text("utf-8").replace(TRAY, ""), encoding="utf-8")
    return path


def test_fit_writes_them_to_set_up_and_sheet(
    setup: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert read_setup(setup).extras == ("ET",)
    pages = PdfReader(setup.with_name("t-1-sheet.pdf")).pages
    assert "swing-away tray" in pages[0].extract_text()
    assert len(pages) == 2
    client = str(setup.parent.parent / "client.yaml")
    assert main(["fit", client, "--no-front"]) == 0
    text = capsys.readouterr().out
    (row,) = [line for line in text.splitlines() if "swing-away tray" in line]
    assert row.split() == ["9", "Extras", "Extra", "ET", "swing-away", "tray"]


def test_figures_count_mass_price_and_days(setup: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """The line file: the tray has 2.1 kg, costs 150 and takes 3 days; delivery is 15 days."""
    fitted = document(capsys, "figures", str(setup))
    bare = document(capsys, "figures", str(without_tray(setup)))
    rise = {
        name: fitted["figures"][name] - bare["figures"][name]
        for name in ("chair_mass_kg", "price", "load_margin_kg")
    }
    assert rise == pytest.approx({"chair_mass_kg": 2.1, "price": 150.0, "load_margin_kg": 0.0})
    assert bare["figures"]["lead_days"] == 15
    assert fitted["figures"]["lead_days"] == 18
    (tray,) = [point for point in fitted["mass_points"] if point["name"] == "swing-away tray"]
    assert tray["mass_kg"] == 2.1 and tray["moves_with"] == "frame"


def test_a_sweep_keeps_them(setup: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Locks LP and LL differ by 0.2 kg in the line file; the tray stays on in both."""
    figures = document(capsys, "figures", str(setup))["figures"]
    swept = document(capsys, "sweep", str(setup), "wheel_lock", "--all")
    (run,) = swept["runs"]
    masses = {each["code"]: each["figures"]["chair_mass_kg"] for each in run["options"]}
    lock = read_setup(setup).choices["wheel_lock"]
    assert masses[lock] == figures["chair_mass_kg"]
    assert masses["LL"] - masses["LP"] == pytest.approx(0.2, abs=1e-9)


def test_a_comparison_shows_them(setup: Path, capsys: pytest.CaptureFixture[str]) -> None:
    bare = without_tray(setup)
    found = document(capsys, "compare", str(setup), str(bare))
    assert [each["extras"] for each in found["set_ups"]] == [["ET"], []]
    assert found["figures_that_differ"]["price"]["differences"] == pytest.approx([0.0, -150.0])
    assert main(["compare", str(setup), str(bare)]) == 0
    text = capsys.readouterr().out
    (row,) = [line for line in text.splitlines() if line.startswith("Extras")]
    assert row.split(maxsplit=1)[1].split("  ")[0] == "ET, swing-away tray"
    assert row.rstrip().endswith("none")
    assert "built alike" not in text


@pytest.mark.parametrize("command", ["fit", "figures", "sweep"])
def test_an_unknown_code_is_refused_with_its_line(
    command: str, setup: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    if command == "fit":
        words, path = [], client_file(setup.parent.parent, "extras:\n  - EB\n  - EY\n")
        place = f"{path}:11: extras: "
    else:
        path = setup
        text = setup.read_text("utf-8")
        setup.write_text(text.replace("[ET]", "[EY]"), encoding="utf-8")
        words = ["camber"] if command == "sweep" else []
        place = f"{path}:{len(text.splitlines())}: extras: "
    assert main([command, str(path), *words]) == 2
    captured = capsys.readouterr()
    assert captured.out == ""
    assert captured.err.startswith(place)
    assert "got 'EY'" in captured.err and "ET (swing-away tray)" in captured.err
