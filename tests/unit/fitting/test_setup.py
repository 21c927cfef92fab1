"""A set-up file beside its line: unknown codes, broken rules, feet, floor."""

from __future__ import annotations

from pathlib import Path

import pytest

from chairwright.errors import InputError
from chairwright.files.setup import SetupFile, read_setup
from chairwright.fitting.setup import check_setup, index_of
from chairwright.line.load import load_line
from chairwright.person.client import Propulsion
from tests.unit.chair.seated import CODES, person

LINE = load_line("everyday")
NO_SUPPORT = {"foot_supports": "none", "hanger": "none", "foot_plate": "none", "leg_length": "none"}


def made(folder: Path, **other: str) -> SetupFile:
    rows = ["format: chairwright set-up 2", "client: c.yaml", "line: everyday", "choices:"]
    rows += [f"  {name}: {code}" for name, code in (CODES | other).items()]
    path = folder / "setup.yaml"
    path.write_text("\n".join(rows) + "\n", encoding="utf-8")
    return read_setup(path)


def refusal(setup: SetupFile, propulsion: Propulsion = "hands") -> str:
    with pytest.raises(InputError) as refused:
        check_setup(setup, LINE, person(propulsion), index_of(setup, LINE))
    return str(refused.value)


def test_a_good_set_up_passes(tmp_path: Path) -> None:
    setup = made(tmp_path)
    check_setup(setup, LINE, person(), index_of(setup, LINE))


def test_every_unknown_code_is_named_with_its_line_and_a_near_one(tmp_path: Path) -> None:
    setup = made(tmp_path, caster="C66", axle_hole="G4")
    with pytest.raises(InputError) as refused:
        index_of(setup, LINE)
    text = str(refused.value)
    line = {name: number for number, name in enumerate(CODES, 5)}
    assert f"setup.yaml:{line['caster']}: choices.caster: " in text
    assert "Did you mean C6?" in text
    assert f"setup.yaml:{line['axle_hole']}: choices.axle_hole: " in text


def test_a_broken_rule_is_told_with_its_reason_and_line(tmp_path: Path) -> None:
    setup = made(tmp_path, rear_wheel="W20", camber="K0")
    text = refusal(setup)
    assert f"{setup.where['wheel_lock']}: choices.wheel_lock: " in text
    assert "rear wheel W20" in text
    assert "the short lever does not reach the tyre of a 20 in wheel" in text
    assert "got wheel lock LP. Use LL" in text


def test_a_rule_that_follows_from_the_geometry_is_told(tmp_path: Path) -> None:
    text = refusal(made(tmp_path, fork="FS-1"))
    assert "choices.fork: caster C6" in text
    assert "clear of its crown" in text


@pytest.mark.parametrize(
    ("propulsion", "other", "words"),
    [
        ("feet", {}, "left foot pushes and must have no foot support"),
        ("hand_and_foot_right", {}, "right foot pushes and must have no foot support"),
        ("hands", NO_SUPPORT, "right foot rests and must have a foot support"),
        ("hands", {"foot_supports": "left"}, "right foot rests and must have a foot support"),
    ],
)
def test_feet_and_foot_supports_must_agree(
    propulsion: Propulsion, other: dict[str, str], words: str, tmp_path: Path
) -> None:
    assert words in refusal(made(tmp_path, **other), propulsion)


def test_a_chair_that_cannot_stand_is_told_why(tmp_path: Path) -> None:
    text = refusal(made(tmp_path, leg_length="G500"))
    assert "footplate would stand in the floor" in text
    assert "a shorter hanger length" in text
