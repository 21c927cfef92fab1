"""``fit`` with several ``--line``: the lines side by side."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

from chairwright.cli.main import main
from chairwright.files.setup import read_setup
from tests.unit.files.samples import client_file

BOTH = ("--line", "everyday", "--line", "light-rigid")
WHEELS = "choices:\n  rear_wheel: [W24, N24]\n"


def document(capsys: pytest.CaptureFixture[str], path: Path, *words: str) -> dict[str, Any]:
    assert main(["fit", str(path), "--json", *words]) == 0
    found: dict[str, Any] = json.loads(capsys.readouterr().out)
    return found


def test_each_line_gives_what_it_gives_alone(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    found = document(capsys, client_file(tmp_path, WHEELS), *BOTH)
    assert found["client"]["reference"] == "T-1"
    assert [each["line"]["name"] for each in found["lines"]] == ["everyday", "light-rigid"]
    for each, code in zip(found["lines"], ("W24", "N24"), strict=True):
        alone = document(
            capsys,
            client_file(tmp_path, f"choices:\n  rear_wheel: {code}\n"),
            "--no-front", "--line", each["line"]["name"],
        )  # fmt: skip
        assert each["tried"] is True
        for key in ("set_ups", "best", "set_up", "reasons", "line"):
            assert each[key] == alone[key], key


def test_the_text_has_a_column_a_line(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = client_file(tmp_path, WHEELS)
    assert main(["fit", str(path), *BOTH]) == 0
    text = capsys.readouterr().out
    found = document(capsys, path, *BOTH)
    rows = {line[:36].strip(): line for line in text.splitlines()}
    for label, figure, digits in (
        ("Seat width mm", "seat_width_mm", 0),
        ("Tips back, wheels locked deg", "tip_rear_locked_deg", 1),
        ("Chair kg", "chair_mass_kg", 1),
        ("List price", "price", 2),
        ("Delivery", "lead_days", 0),
    ):
        for each in found["lines"]:
            assert f"{each['set_up']['figures'][figure]:.{digits}f}" in rows[label], label
    assert rows["List price"].count(" EUR") == 2
    assert rows["Delivery"].count(" days") == 2
    assert rows["Every must"].split()[2:] == ["holds", "holds"]
    costs = [f"{each['best']['cost']:.2f}" for each in found["lines"]]
    assert rows["Cost of the preferences"].split()[-2:] == costs
    assert "never replaces, a qualified assessment" in text


def test_a_line_without_the_settled_codes_is_not_tried_and_says_why(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = client_file(tmp_path, "choices:\n  rear_wheel: W24\n")
    assert main(["fit", str(path), *BOTH]) == 0
    text = " ".join(capsys.readouterr().out.split())
    assert "light-rigid was not tried:" in text
    assert "settles the rear wheel to W24, which this line does not have. Its own are N24," in text
    found = document(capsys, path, *BOTH)
    assert [each["tried"] for each in found["lines"]] == [True, False]
    assert "set_up" not in found["lines"][1]


def test_an_extra_that_a_line_lacks_is_told(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Line files: crutch holder EC 0.3 kg on everyday, crutch clip XC 0.2 kg on light-rigid."""
    path = client_file(tmp_path, f"{WHEELS}extras: [EC, XC]\n")
    found = document(capsys, path, *BOTH)
    assert [each["set_up"]["extras"] for each in found["lines"]] == [["EC"], ["XC"]]
    assert [each["without"] for each in found["lines"]] == [["XC"], ["EC"]]
    assert main(["fit", str(path), *BOTH]) == 0
    assert "everyday has no XC: mass, price and balance" in capsys.readouterr().out


def test_a_line_that_cannot_gives_its_reasons_below(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """The line files: no chair of the rigid line folds, the everyday line folds up to 580 mm."""
    more = (
        "targets:\n  - {figure: folded_width_mm, at_most: 400, must: true, reason: a small car}\n"
    )
    path = client_file(tmp_path, WHEELS + more)
    assert main(["fit", str(path), *BOTH]) == 0
    text = capsys.readouterr().out
    (row,) = [line for line in text.splitlines() if line.startswith("Every must")]
    assert row.split()[2:] == ["holds", "cannot", "be", "met"]
    after = text[text.index("\nlight-rigid:\n") :]
    assert "Give up one of these groups" in after
    assert "Folded width at most 400 mm: the set-up has no such figure" in after


def test_out_writes_the_files_of_each_line(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path, out = client_file(tmp_path, WHEELS), tmp_path / "out"
    found = document(capsys, path, *BOTH, "--out", str(out))
    for each in found["lines"]:
        name = each["line"]["name"]
        setup = read_setup(out / f"t-1-{name}-setup.yaml")
        assert setup.line == name
        assert setup.choices == each["set_up"]["choices"]
    assert len(list(out.iterdir())) == 12
    assert main(["fit", str(path), *BOTH, "--out", str(out)]) == 2
    assert "t-1-light-rigid-sheet.pdf: the file must not exist yet" in capsys.readouterr().err


@pytest.mark.parametrize(
    ("more", "words", "message"),
    [
        (
            "choices:\n  rear_wheel: W24Q\n", BOTH,
            "client.yaml:9: choices.rear_wheel: a settled choice must name options of one of the "
            "lines; got 'W24Q'. Did you mean W24?",
        ),
        ("extras: [EQ9]\n", BOTH, "client.yaml:9: extras: it must be an extra of one of the lines"),
        ("", (*BOTH, "--trade", "price,lead_days"), "--trade: it must go with one line"),
        ("", ("--line", "everyday", "--line", "ever"), "the line must be a shipped one"),
    ],
)  # fmt: skip
def test_what_cannot_be_meant_is_refused(
    more: str,
    words: tuple[str, ...],
    message: str,
    tmp_path: Path,
    capsys: pytest.CaptureFixture[str],
) -> None:
    assert main(["fit", str(client_file(tmp_path, more)), *words]) == 2
    captured = capsys.readouterr()
    assert captured.out == ""
    assert message in captured.err


def test_one_line_named_twice_is_one_line(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = client_file(tmp_path, "choices:\n  rear_wheel: W24\n")
    found = document(capsys, path, "--no-front", "--line", "everyday", "--line", "everyday")
    assert found["set_up"]["choices"]["rear_wheel"] == "W24"
