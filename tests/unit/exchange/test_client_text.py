"""A client file with new values: every other line as it was, or a refusal."""

from __future__ import annotations

from pathlib import Path

import pytest

from chairwright.errors import InputError
from chairwright.exchange.client_text import with_measures
from chairwright.exchange.fhir_measures import Seen
from chairwright.files.client import read_client
from chairwright.units import parse_quantity
from tests.laws.example_sweeps import SETUPS

CLIENTS = sorted((SETUPS.parent / "clients").glob("*.yaml"))
HEAD = "format: chairwright client 1\nreference: WR-014\nsex: female\n"


def seen(stature: str = "171.5 cm", mass: str = "64 kg") -> tuple[Seen, ...]:
    return (
        Seen("stature", parse_quantity(stature, "length", ""), None, "", "final"),
        Seen("body_mass", parse_quantity(mass, "mass", ""), None, "", "final"),
    )


def changed(folder: Path, text: str, *new: Seen) -> str:
    path = folder / "client.yaml"
    path.write_bytes(text.encode("utf-8"))
    return with_measures(path, new or seen())


@pytest.mark.parametrize("path", CLIENTS, ids=lambda path: path.stem)
def test_only_two_lines_of_an_example_change(path: Path, tmp_path: Path) -> None:
    text = with_measures(path, seen())
    before, after = path.read_text("utf-8").splitlines(), text.splitlines()
    differ = [new for old, new in zip(before, after, strict=True) if old != new]
    assert len(differ) == 2
    assert all(each in line for each, line in zip(("171.5 cm", "64 kg"), differ, strict=True))
    out = tmp_path / path.name
    out.write_text(text, encoding="utf-8")
    old, new = read_client(path), read_client(out)
    assert {m.name: m.value for m in new.measures} == {m.name: m.value for m in old.measures} | {
        "stature": 1715.0,
        "body_mass": 64.0,
    }


def test_comments_line_ends_and_tolerances_stay(tmp_path: Path) -> None:
    text = HEAD + (
        "measures:\n"
        "  body_mass:   70 kg   # on the chair scales\n"
        "  stature:\n"
        "    value: '170 cm'  # lying\n"
        "    tolerance: 20 mm\n"
        "  hip_width: 38 cm\n"
    )
    wanted = text.replace("70 kg", "64 kg").replace("'170 cm'", "171.5 cm")
    assert changed(tmp_path, text) == wanted
    windows = text.replace("\n", "\r\n")
    assert changed(tmp_path, windows) == wanted.replace("\n", "\r\n")


def test_what_is_not_there_comes_first(tmp_path: Path) -> None:
    text = HEAD + "measures:\n    hip_width: 38 cm\n    body_mass: 70 kg\n"
    assert changed(tmp_path, text) == HEAD + (
        "measures:\n    stature: 171.5 cm\n    hip_width: 38 cm\n    body_mass: 64 kg\n"
    )
    both = HEAD + "measures:\n  hip_width: 38 cm\n"
    assert changed(tmp_path, both) == HEAD + (
        "measures:\n  stature: 171.5 cm\n  body_mass: 64 kg\n  hip_width: 38 cm\n"
    )


def test_values_between_braces_are_found(tmp_path: Path) -> None:
    text = HEAD + 'measures: {body_mass: "70 kg", stature: {value: 170 cm, tolerance: 20 mm}}\n'
    assert changed(tmp_path, text) == HEAD + (
        "measures: {body_mass: 64 kg, stature: {value: 171.5 cm, tolerance: 20 mm}}\n"
    )


@pytest.mark.parametrize(
    "measures",
    [
        "measures: {hip_width: 38 cm}\n",
        "measures:\n  stature:\n    170 cm\n  body_mass: 70 kg\n",
        "measures:\n",
        "note: none are there\n",
    ],
)
def test_another_way_of_writing_is_left_to_a_person(measures: str, tmp_path: Path) -> None:
    with pytest.raises(InputError, match="Change the file by hand") as error:
        changed(tmp_path, HEAD + measures)
    assert "client.yaml:" in str(error.value)
