"""``chairwright compare``: what differs, who differs, the sheet, and refusals."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from chairwright.cli.main import main
from tests.laws.example_sweeps import EXAMPLES, SETUPS, example

FILES = [str(SETUPS / f"{name}.yaml") for name in EXAMPLES]
FIRST, SECOND = (example(name).setup for name in EXAMPLES[:2])


def changed(folder: Path, name: str, **codes: str) -> str:
    """A copy of the first example with other codes."""
    opened = example(EXAMPLES[0])
    text = Path(FILES[0]).read_text("utf-8")
    client = opened.file.client_path.resolve().as_posix()
    text = text.replace(f"../clients/{EXAMPLES[0]}.yaml", client)
    for choice, code in codes.items():
        text = text.replace(f"{choice}: {opened.setup.codes[choice]}\n", f"{choice}: {code}\n")
    path = folder / f"{name}.yaml"
    path.write_text(text, encoding="utf-8")
    return str(path)


def test_the_json_gives_what_differs(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["compare", *FILES[:2], "--json"]) == 0
    found = json.loads(capsys.readouterr().out)
    assert [side["name"] for side in found["set_ups"]] == list(EXAMPLES[:2])
    assert found["same_line"]
    assert not found["same_client"]
    assert found["choices_that_differ"] == {
        name: [FIRST.codes[name], SECOND.codes[name]]
        for name in FIRST.codes
        if FIRST.codes[name] != SECOND.codes[name]
    }
    for name, each in found["figures_that_differ"].items():
        one, two = each["values"]
        for value, setup in ((one, FIRST), (two, SECOND)):
            assert value is None or value == setup.figures[name]
        if None not in (one, two):
            assert each["differences"] == [0.0, pytest.approx(two - one)]
    assert "wheelbase_mm" in found["figures_that_differ"]


def test_the_text_tells_that_the_clients_differ(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["compare", *FILES[:3]]) == 0
    text = capsys.readouterr().out
    assert "The set-ups are for different clients" in text
    assert "3 - 1" in text
    assert all(name in text for name in EXAMPLES[:3])


def test_one_choice_changed_for_one_client(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    options = example(EXAMPLES[0]).line.choices["cushion"].codes
    other = next(code for code in options if code != FIRST.codes["cushion"])
    path = changed(tmp_path, "thicker", cushion=other)
    assert main(["compare", FILES[0], path, "--json"]) == 0
    found = json.loads(capsys.readouterr().out)
    assert found["same_client"]
    assert found["choices_that_differ"] == {"cushion": [FIRST.codes["cushion"], other]}
    assert main(["compare", FILES[0], path]) == 0
    text = capsys.readouterr().out
    assert "different clients" not in text
    assert "more figures do not differ; --all shows them." in text
    assert main(["compare", FILES[0], path, "--all"]) == 0
    assert "do not differ" not in capsys.readouterr().out


def test_a_set_up_beside_itself(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["compare", FILES[0], FILES[0], "--out", str(tmp_path / "same.pdf")]) == 0
    text = capsys.readouterr().out
    assert "No choice differs: the set-ups are built alike." in text
    assert "No figure differs." in text


def test_the_sheet_is_written_once(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = tmp_path / "pair.pdf"
    words = ["compare", *FILES[:2], "--units", "in", "--out", str(path)]
    assert main(words) == 0
    assert path.read_bytes().startswith(b"%PDF")
    capsys.readouterr()
    assert main(words) == 2
    assert "the file must not exist yet" in capsys.readouterr().err
    assert main([*words, "--replace", "--paper", "letter"]) == 0


@pytest.mark.parametrize("count", [1, 5])
def test_two_to_four_are_compared(count: int, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["compare", *FILES[:count]]) == 2
    assert f"a comparison needs 2 to 4 set-ups; got {count}" in capsys.readouterr().err


def test_a_missing_client_is_told_at_its_line(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = tmp_path / "setup.yaml"
    text = Path(FILES[0]).read_text("utf-8").replace("../clients/", "")
    path.write_text(text, encoding="utf-8")
    assert main(["compare", FILES[0], str(path)]) == 2
    assert f"{path}:2: client: the set-up's client file must be there" in capsys.readouterr().err
