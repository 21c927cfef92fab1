"""Fasteners of a line file: what is read, what is refused and where."""

from __future__ import annotations

import math
from pathlib import Path

import pytest

from chairwright.line.choices import CHOICES
from chairwright.line.load import load_line

from .test_mistakes import LINE, changed, line_number, problems_of

LOCK = "  - {choice: wheel_lock, what: M6 clamp bolt of the wheel lock"
HUGE = (
    "tool: hex key 5 mm, torque_nm: 9, source: this invented maker's own value}\n  - {choice: anti"
)


def test_a_fastener_is_read_as_it_is_written() -> None:
    line = load_line("everyday")
    (sleeve,) = [each for each in line.fasteners if each.what == "nut of the axle sleeve"]
    assert (sleeve.choice, sleeve.pieces, sleeve.torque_nm) == ("axle_hole", 1, 35.0)
    assert sleeve.tool == "spanner 24 mm"
    assert sleeve.note == "the sleeve must not turn in its hole"
    assert {code[0] for code in sleeve.codes} == set("ABCDEFUV")


def test_a_part_code_means_every_option_made_from_it() -> None:
    line = load_line("everyday")
    (clamp,) = [each for each in line.fasteners if each.choice == "back_support"]
    assert clamp.codes == {"BR-1", "BR-2", "BR-3"}


def test_nothing_holds_what_is_not_fitted() -> None:
    for name in ("everyday", "heavy-duty", "light-rigid"):
        assert not any("none" in each.codes for each in load_line(name).fasteners)


def test_a_torque_that_is_not_stated_has_no_number() -> None:
    (button,) = [each for each in load_line("everyday").fasteners if each.tool == "by hand"]
    assert math.isnan(button.torque_nm)


@pytest.mark.parametrize("name", ["everyday", "heavy-duty", "light-rigid"])
def test_the_shipped_lines_say_that_their_torques_are_invented(name: str) -> None:
    fasteners = load_line(name).fasteners
    assert {"axle_hole", "fork", "caster_housing", "back_angle"} <= {e.choice for e in fasteners}
    assert {each.source for each in fasteners} == {"this invented maker's own value"}


def test_a_file_without_fasteners_is_read_as_before(tmp_path: Path) -> None:
    head, _, rest = LINE.partition("\nfasteners:")
    path = tmp_path / "line.yaml"
    path.write_text(head + "\n\nrules:" + rest.partition("\nrules:")[2], encoding="utf-8")
    line = load_line(str(path))
    assert line.fasteners == ()
    assert len(line.choices) == len(CHOICES)


@pytest.mark.parametrize(
    ("new", "field", "parts"),
    [
        ("  - {choice: wheel_lok, what: a bolt", "choice", ["'wheel_lok'", "mean wheel_lock?"]),
        ("  - {choice: wheel_lock, of: [LQ], what: a bolt", "of", ["'LQ'", "Known here: LP, LL"]),
        ("  - {choice: wheel_lock, of: [none], what: a bolt", "of", ["'none'", "Known here: LP"]),
        ("  - {choice: wheel_lock, of: [], what: a bolt", "of", ["at least 1 item"]),
        ("  - {choice: wheel_lock, torque: 9, what: a bolt", "torque", ["Did you mean torque_nm?"]),
        ("  - {choice: wheel_lock", "what", ["Add what here."]),
    ],
)
def test_what_is_refused_is_told_with_its_line(
    new: str, field: str, parts: list[str], tmp_path: Path
) -> None:
    text = changed(LOCK, new)
    (problem,) = problems_of(text, tmp_path)
    assert f":{line_number(text, new)}: fasteners" in problem.where
    words = f"{problem.where} {problem.must} {problem.got} {problem.remedy}"
    assert field in words
    assert [part for part in parts if part not in words] == []


@pytest.mark.parametrize("torque", ["0", "-3", "201", "much"])
def test_a_torque_that_cannot_be_is_refused(torque: str, tmp_path: Path) -> None:
    text = changed(HUGE, HUGE.replace("torque_nm: 9", f"torque_nm: {torque}"))
    (problem,) = problems_of(text, tmp_path)
    assert problem.where.endswith(f":{line_number(text, LOCK)}: fasteners.torque_nm")


def test_a_fastener_stands_once_for_a_code(tmp_path: Path) -> None:
    again = f"{LOCK}, of: [LL], tool: hex key, source: mine}}\n"
    text = changed(LOCK, f"{again}{LOCK}")
    (problem,) = problems_of(text, tmp_path)
    first = line_number(text, again)
    assert problem.where.endswith(f":{first + 1}: fasteners")
    assert f"first at line {first}" in problem.got
