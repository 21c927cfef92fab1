"""``chairwright line count``: exact, by what has to be asked for."""

from __future__ import annotations

import json
from collections import Counter
from itertools import product
from pathlib import Path
from typing import Any

import pytest
from ruamel.yaml import YAML

from chairwright.cli.main import main
from chairwright.line.load import SHIPPED, load_line
from chairwright.line.model import Line, Rule
from tests.oracles.lines import everyday_as_written

KINDS = {
    "standard": ("standard",),
    "made_to_order": ("standard", "made to order"),
    "on_request": ("standard", "on request"),
    "every": ("standard", "made to order", "on request"),
}
FEW = {
    "seat_widths": 1, "seat_depths": 2, "back_angles": 1, "back_heights": 1, "casters": 2,
    "cushions": 1, "wheel_locks": 2, "rear_wheels": 2, "foot_plates": 1, "arm_supports": 1,
}  # fmt: skip


def counted(line: str, capsys: pytest.CaptureFixture[str]) -> dict[str, Any]:
    assert main(["line", "count", line, "--json"]) == 0
    found: dict[str, Any] = json.loads(capsys.readouterr().out)
    return found


def small_file(folder: Path) -> Path:
    """The shipped line with so few parts that every set-up can be tried."""
    data = everyday_as_written()
    for name, count in FEW.items():
        data[name] = data[name][-count:]
    data["side_frames"] = data["side_frames"][-2:]
    data["axle_plates"] = [data["axle_plates"][0] | {"columns_mm": {"A": -45}, "rows_mm": {1: -56}}]
    data["forks"] = data["forks"][-1:]
    data["forks"][0]["holes_mm"] = {1: 134, 2: 150}
    data["caster_housings"] |= {"rows_mm": {4: -260}, "stem_settings_deg": [0]}
    data["leg_lengths"] = {"lengths_mm": [300, 320]}
    data["anti_tips"] = []
    data["stem_spacers"] = []
    data["custom_sizes"] = {
        "seat_depth": {"from_mm": 480, "to_mm": 520, "step_mm": 10, "surcharge": 1, "days": 1}
    }
    data["hand_rims"] = data["hand_rims"][1:]
    data["rules"] = [
        {"when": {"side_frame": ["SFR"]}, "need": {"rear_wheel": ["W22"]}, "because": "a test"},
        {"when": {"wheel_lock": ["LX"], "caster": ["C8"]}, "need": {"belt": ["YP"]},
         "because": "a test"},
        {"when": {"finish": ["FK"]}, "need": {"seat_depth": {"from": 500}}, "because": "a test"},
    ]  # fmt: skip
    path = folder / "small.yaml"
    with path.open("w", encoding="utf-8") as stream:
        YAML(typ="safe").dump(data, stream)
    return path


def obeys(setup: dict[str, str], rule: Rule) -> bool:
    meets = all(setup[name] in codes for name, codes in rule.when.items())
    return not meets or all(setup[name] in codes for name, codes in rule.need.items())


def tried_one_by_one(line: Line, kinds: tuple[str, ...]) -> int:
    """Every combination of the choices that rules speak of, times the options of all others."""
    spoken = {name for rule in line.rules for name in rule.choices}
    codes = {
        name: [option.code for option in choice.options if option.kind in kinds]
        for name, choice in line.choices.items()
    }
    names = [name for name in line.choices if name in spoken]
    setups = (dict(zip(names, some, strict=True)) for some in product(*(codes[n] for n in names)))
    total = sum(all(obeys(setup, rule) for rule in line.rules) for setup in setups)
    for name in line.choices:
        total *= 1 if name in spoken else len(codes[name])
    return total


def test_a_small_line_is_counted_as_by_trying_every_set_up(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = small_file(tmp_path)
    line = load_line(str(path))
    found = counted(str(path), capsys)["set_ups"]
    assert found == {name: tried_one_by_one(line, kinds) for name, kinds in KINDS.items()}
    assert 0 < found["standard"] < min(found["made_to_order"], found["on_request"])


@pytest.mark.parametrize("name", SHIPPED)
def test_the_options_of_each_choice_are_counted_by_kind(
    name: str, capsys: pytest.CaptureFixture[str]
) -> None:
    line, found = load_line(name), counted(name, capsys)
    assert [each["name"] for each in found["choices"]] == list(line.choices)
    for each in found["choices"]:
        kinds = Counter(option.kind for option in line.choices[each["name"]].options)
        told = (each["standard"], each["made_to_order"], each["on_request"])
        assert told == (kinds["standard"], kinds["made to order"], kinds["on request"])


@pytest.mark.parametrize("name", SHIPPED)
def test_the_text_shows_the_same_numbers(name: str, capsys: pytest.CaptureFixture[str]) -> None:
    found = counted(name, capsys)["set_ups"]
    assert main(["line", "count", name]) == 0
    out = capsys.readouterr().out
    assert out.startswith(f"{load_line(name).title}, version ")
    for words, number in zip(("standard range", "with sizes made to order",
                              "with options on request", "with both"), found.values(),
                             strict=True):  # fmt: skip
        (row,) = [line for line in out.splitlines() if line.startswith(words)]
        assert row.removeprefix(words).strip() == f"{number:,}"


def test_the_everyday_line_holds_more_than_a_thousand_million(
    capsys: pytest.CaptureFixture[str],
) -> None:
    assert counted("everyday", capsys)["set_ups"]["standard"] >= 10**9


def test_a_line_with_a_mistake_is_not_counted(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = small_file(tmp_path)
    text = path.read_text(encoding="utf-8").replace("base_price", "base_prize")
    path.write_text(text, encoding="utf-8")
    assert main(["line", "count", str(path)]) == 2
    captured = capsys.readouterr()
    assert captured.out == ""
    assert "Did you mean base_price?" in captured.err
