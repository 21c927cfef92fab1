"""``chairwright fit``: its result as text and JSON, its files, and why when nothing fits."""

from __future__ import annotations

import io
import json
from pathlib import Path
from typing import Any

import pytest
from pypdf import PdfReader

from chairwright.cli.main import main
from chairwright.files.client import read_client
from chairwright.files.setup import read_setup
from chairwright.fitting.setup import check_setup, index_of
from chairwright.line.choices import CHOICES
from chairwright.line.load import load_line
from tests.unit.files.samples import client_file

from .fitting_person import person_of

FILES = {"setup.yaml", "sheet.pdf", "side.svg", "plan.svg", "polar.svg", "figures.json"}
TOO_NARROW = """targets:
  - {figure: overall_width_mm, at_most: 45 cm, must: true, reason: a very narrow door}
choices:
  {side_frame: SFL, rear_wheel: W22, camber: K0, cushion: Q50, back_support: BT, hanger: H70}
"""
"""No chair of the line is 450 mm wide with a seat for these hips of 394 mm: the hubs alone stand
38 mm outside the seat on each side, and the rims stand off further."""


def run(capsys: pytest.CaptureFixture[str], *words: str) -> str:
    assert main(["fit", *words]) == 0
    return capsys.readouterr().out


def test_text_shows_measures_space_choices_figures_and_front(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = client_file(tmp_path)
    assert main(["fit", str(path)]) == 0
    captured = capsys.readouterr()
    line = load_line("everyday")
    for name in CHOICES:
        assert f" {line.choices[name].label} " in captured.out
    assert "set-ups to choose from" in captured.out
    assert "Measures: 3 taken" in captured.out
    assert "Best set-up, proven" in captured.out
    assert "WHO WSTP (restated by a secondary source)" in captured.out
    (front,) = [part for part in captured.out.split("\n\n") if part.startswith("Trade-off: ")]
    told = " ".join(front.split())
    for label in ("least tipping angle of all directions", "overall width", "elbow off the middle"):
        assert label in told
    assert "never replaces, a qualified assessment" in captured.out
    order = [
        captured.out.index(f"{number} {step}")
        for number, step in [
            (1, "Foot support"),
            (2, "Seat"),
            (3, "Back"),
            (4, "Rear wheel"),
            (7, "Anti-tip"),
        ]
    ]
    assert order == sorted(order)
    assert captured.err.startswith("T-1: ")


def test_json_is_one_document_and_the_best_keeps_every_must(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    found = json.loads(run(capsys, str(client_file(tmp_path)), "--json", "--no-front"))
    assert found["meets_every_must"] is True
    assert found["reasons"] is None and found["front"] is None
    assert found["set_ups"] > 1_000_000
    figures = found["set_up"]["figures"]
    musts = [item for item in found["set_up"]["verdicts"] if item["must"]]
    assert len(musts) > 10
    for item in musts:
        value = figures[item["figure"]]
        assert item["low"] is None or value >= item["low"] - 1e-9, item["figure"]
        assert item["high"] is None or value <= item["high"] + 1e-9, item["figure"]
    assert list(found["set_up"]["choices"]) == list(CHOICES)


def test_no_point_of_the_front_beats_another(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    front = json.loads(run(capsys, str(client_file(tmp_path)), "--json"))["front"]
    assert [aim["figure"] for aim in front["objectives"]] == [
        "tip_least_deg", "overall_width_mm", "push_reach_deg"
    ]  # fmt: skip
    signs = [-1.0 if aim["sense"] == "max" else 1.0 for aim in front["objectives"]]
    names = [aim["figure"] for aim in front["objectives"]]
    grades = [
        tuple(sign * point["values"][name] for sign, name in zip(signs, names, strict=True))
        for point in front["points"]
    ]
    assert len(grades) > 3
    beaten = [
        (one, other)
        for one in grades
        for other in grades
        if one != other and all(a <= b for a, b in zip(one, other, strict=True))
    ]
    assert beaten == []


def test_a_settled_choice_is_kept(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = client_file(tmp_path, "choices:\n  rear_wheel: W22\n  fork: [FM]\n")
    found = json.loads(run(capsys, str(path), "--json", "--no-front"))
    assert found["set_up"]["choices"]["rear_wheel"] == "W22"
    assert found["set_up"]["choices"]["fork"].startswith("FM-")


def test_out_writes_six_files_that_agree(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path, out = client_file(tmp_path), tmp_path / "out"
    text = run(capsys, str(path), "--no-front", "--out", str(out), "--json")
    assert {file.name for file in out.iterdir()} == {f"t-1-{end}" for end in FILES}
    setup = read_setup(out / "t-1-setup.yaml")
    assert setup.choices == json.loads(text)["set_up"]["choices"]
    assert setup.client_path.resolve() == path.resolve()
    line = load_line(setup.line)
    check_setup(setup, line, person_of(path).occupant, index_of(setup, line))
    sheet = PdfReader(out / "t-1-sheet.pdf")
    assert len(sheet.pages) == 2
    assert "T-1" in sheet.pages[0].extract_text()
    for view in ("side", "plan", "polar"):
        assert (out / f"t-1-{view}.svg").read_text("utf-8").startswith("<svg")
    capsys.readouterr()
    assert main(["figures", str(out / "t-1-setup.yaml"), "--json"]) == 0
    assert json.loads(capsys.readouterr().out) == json.loads(
        (out / "t-1-figures.json").read_text("utf-8")
    )


def test_a_file_in_the_way_is_kept_unless_replaced(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path, out = client_file(tmp_path, "choices:\n  rear_wheel: W22\n"), tmp_path / "out"
    out.mkdir()
    (out / "t-1-sheet.pdf").write_text("kept", encoding="utf-8")
    words = ["fit", str(path), "--no-front", "--out", str(out)]
    assert main(words) == 2
    captured = capsys.readouterr()
    assert captured.out == ""
    assert "t-1-sheet.pdf: the file must not exist yet" in captured.err
    assert "--replace" in captured.err
    assert [file.name for file in out.iterdir()] == ["t-1-sheet.pdf"]
    assert (out / "t-1-sheet.pdf").read_text("utf-8") == "kept"
    assert main([*words, "--replace", "--paper", "letter"]) == 0
    box = PdfReader(out / "t-1-sheet.pdf").pages[0].mediabox
    assert (float(box.width), float(box.height)) == (612.0, 792.0)


def test_nothing_fits_is_a_result_with_reasons_and_a_marked_sheet(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path, out = client_file(tmp_path, TOO_NARROW), tmp_path / "out"
    text = run(capsys, str(path), "--out", str(out))
    assert "No set-up of this line meets every must" in text
    assert "1. " in text
    assert "These cannot hold together on this line:" in text
    assert "Overall width at most 450 mm" in text
    assert "It does NOT meet every must." in text
    assert {file.name for file in out.iterdir()} == {f"t-1-nearest-{end}" for end in FILES}
    first = PdfReader(out / "t-1-nearest-sheet.pdf").pages[0].extract_text()
    assert "does NOT meet every must" in " ".join(first.split())


def test_reasons_in_json_say_what_must_give_and_by_how_much(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    found = json.loads(run(capsys, str(client_file(tmp_path, TOO_NARROW)), "--json"))
    assert found["meets_every_must"] is False
    assert found["best"] is None
    corrections: list[dict[str, Any]] = found["reasons"]["corrections"]
    assert corrections
    for correction in corrections:
        for give in correction["gives"]:
            outside = max(
                (give["low"] or give["value"]) - give["value"],
                give["value"] - (give["high"] or give["value"]),
            )
            assert give["by"] == pytest.approx(outside, abs=1e-9)
            assert give["by"] > 0
    groups = [{give["figure"] for give in each["gives"]} for each in corrections]
    clashes = [{target["figure"] for target in clash} for clash in found["reasons"]["conflicts"]]
    assert {"overall_width_mm"} in groups
    assert all(group & clash for group in groups for clash in clashes)


def test_settled_choices_that_leave_nothing_say_so(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    more = "choices:\n  rear_wheel: W20\n  wheel_lock: LP\n"
    out = tmp_path / "out"
    text = run(capsys, str(client_file(tmp_path, more)), "--out", str(out))
    assert "0 set-ups to choose from" in text
    assert "The settled choices leave no set-up" in text
    assert not out.exists()


@pytest.mark.parametrize(
    ("more", "place", "remedy"),
    [
        ("rule_set: whoo\n", "client.yaml:9: ", "Write one of these"),
        ("choices:\n  fork: [FM, FQ-1]\n", "client.yaml:9: choices.fork: ", "Did you mean F"),
        ("choices:\n  foot_supports: none\n", "client.yaml:9: choices.foot_supports: ", "rest"),
    ],
)
def test_what_cannot_be_meant_is_refused_with_its_line(
    more: str, place: str, remedy: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["fit", str(client_file(tmp_path, more)), "--out", str(tmp_path / "out")]) == 2
    captured = capsys.readouterr()
    assert captured.out == ""
    assert place in captured.err
    assert remedy in captured.err
    assert not (tmp_path / "out").exists()


def test_inches_are_added_when_asked(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = client_file(tmp_path, "choices:\n  seat_width: S400\n")
    text = run(capsys, str(path), "--no-front", "--units", "in")
    (width,) = [line for line in text.splitlines() if line.startswith("  Seat width")]
    # 400 mm = 15.748 in; built to within 3 mm, limits: 2 x 3 / sqrt 3 = 3.46
    assert width.split()[:7] == ["Seat", "width", "400", "mm", "3", "15", "3/4"]


def test_demo_prints_one_row_a_client_and_writes_sheets(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    clients, out = tmp_path / "clients", tmp_path / "out"
    clients.mkdir()
    client_file(clients, "note: An easy one. More.\nchoices:\n  rear_wheel: W22\n").rename(
        clients / "a.yaml"
    )
    client_file(clients, TOO_NARROW, ("T-1", "T-2")).rename(clients / "b.yaml")
    assert main(["demo", "--clients", str(clients), "--out", str(out)]) == 0
    captured = capsys.readouterr()
    rows = [line for line in captured.out.splitlines() if line.startswith("T-")]
    assert len(rows) == 2
    assert "An easy one" in rows[0] and "More" not in rows[0]
    assert "W22" in rows[0]
    assert rows[1].endswith("cannot be met")
    assert "2 of 2: T-2" in captured.err
    sheets = sorted(file.name for file in out.glob("*.pdf"))
    assert sheets == ["t-1-sheet.pdf", "t-2-nearest-sheet.pdf"]


def test_demo_without_clients_says_where_it_looked(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["demo", "--clients", str(tmp_path / "none")]) == 2
    assert "--clients" in capsys.readouterr().err


def test_a_sheet_needs_no_reader_of_files(tmp_path: Path) -> None:
    """The reference of the client alone stands on the sheet, never the note."""
    path = client_file(tmp_path, "note: A private remark.\nchoices:\n  rear_wheel: W22\n")
    assert main(["fit", str(path), "--no-front", "--out", str(tmp_path / "out")]) == 0
    raw = (tmp_path / "out" / "t-1-sheet.pdf").read_bytes()
    text = " ".join(page.extract_text() for page in PdfReader(io.BytesIO(raw)).pages)
    assert read_client(path).note == "A private remark."
    assert "private" not in text
