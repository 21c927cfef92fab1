"""Bad input on the command line: exit 2, place and remedy, no traceback, no file touched."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from chairwright.cli.main import main
from tests.unit.files.samples import CLIENT, client_file

Maker = Callable[[Path], Path]


def added(text: str) -> Maker:
    return lambda folder: client_file(folder, text)


def swapped(old: str, new: str) -> Maker:
    return lambda folder: client_file(folder, swap=(old, new))


def raw(content: bytes) -> Maker:
    def make(folder: Path) -> Path:
        path = folder / "client.yaml"
        path.write_bytes(content)
        return path

    return make


def noise(folder: Path) -> Path:
    path = folder / "client.yaml"
    block = bytes((n * 97 + 13) % 251 for n in range(100_000))
    with path.open("wb") as stream:
        for _ in range(500):
            stream.write(block)
    return path


CASES: dict[str, tuple[Maker, str, str]] = {
    "empty file": (raw(b""), "client.yaml: the file must not be empty", "Fill it in"),
    "folder": (lambda folder: folder, ": a file is needed; got a folder", "Name a file"),
    "missing file": (lambda folder: folder / "client.yaml", "no such file", "Check the name"),
    "not UTF-8": (raw(CLIENT.encode() + b"note: caf\xe9\n"), "client.yaml:9: ", "Save it as UTF-8"),
    "50 MB of noise": (noise, "got 50,000,000 bytes", "Check that it is the right file"),
    "unknown key": (added("notes: x\n"), "client.yaml:9: notes: ", "Did you mean note?"),
    "duplicate key": (added("sex: male\n"), "client.yaml:9: ", "Keep one of the two."),
    "wrong unit": (swapped("168 cm", "168 kg"), "client.yaml:6: measures.stature: ", "Write it"),
    "NaN": (swapped("168 cm", ".nan"), "client.yaml:6: ", "Write the number"),
    "infinity": (swapped("168 cm", ".inf"), "client.yaml:6: ", "Write the number"),
    "NaN with a unit": (swapped("168 cm", "nan cm"), "client.yaml:6: ", "Write it like"),
    "negative": (swapped("168 cm", "-168 cm"), "client.yaml:6: ", "Take the minus sign out."),
    "absurd": (swapped("168 cm", "17 m"), "client.yaml:6: ", "Check the number and its unit."),
    "contradictory sides": (
        added("  knee_height: {value: 50 cm, left: 49 cm, right: 51 cm}\n"),
        "client.yaml:9: measures.knee_height: ",
        "Keep the sides or the value, not both.",
    ),
    "a measure of a lost part": (
        added("  foot_length: {left: 25 cm}\namputations:\n  - {side: left, level: foot}\n"),
        "client.yaml:9: measures.foot_length.left: ",
        "Take it out, or correct the amputation.",
    ),
    "body mass missing": (swapped("body_mass: 62 kg", "elbow_height: 24 cm"), "client.yaml:5: ",
                          "Measure body mass"),
}  # fmt: skip


@pytest.mark.parametrize("case", CASES)
def test_a_bad_client_file_ends_with_2_a_place_and_a_remedy(
    case: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    make, place, remedy = CASES[case]
    path = make(tmp_path)
    assert main(["person", str(path)]) == 2
    captured = capsys.readouterr()
    assert captured.out == ""
    assert str(path) in captured.err
    assert place in captured.err
    assert remedy in captured.err
    assert "Traceback" not in captured.err
