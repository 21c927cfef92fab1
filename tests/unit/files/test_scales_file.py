"""Scales files: what is read, and what no chair can give is refused by line."""

from __future__ import annotations

from pathlib import Path

import pytest

from chairwright.errors import InputError, Problem
from chairwright.files.scales import read_scales

EXAMPLES = Path(__file__).resolve().parents[3] / "examples" / "scales"
PLAIN = """\
format: chairwright scales 1
client: WR-014
method: two pads
wheelbase: 400 mm
rear_axle_height: 305 mm
caster_axle_height: 75 mm
scale_step: 100 g
tape: 1 mm
level:
  rear: 63.0 kg
  casters: 27.0 kg
raised:
  block: 62 mm
  casters: 15.0 kg
"""
FOUR = """\
format: chairwright scales 1
client: WR-014
method: four pads
wheelbase: 16 in
rear_axle_height: 305 mm
caster_axle_height: 75 mm
rear_track: 56 cm
caster_track: 440 mm
level:
  rear_left: 32.0 kg
  rear_right: 31.0 kg
  caster_left: 14.0 kg
  caster_right: 13.0 kg
"""
EMPTY = """\
empty:
  level:
    rear: 12.0 kg
    casters: 4.0 kg
  raised:
    block: 62 mm
    casters: 3.5 kg
"""


def written(folder: Path, text: str) -> Path:
    path = folder / "scales.yaml"
    path.write_text(text, encoding="utf-8")
    return path


def problems(folder: Path, text: str) -> tuple[Problem, ...]:
    with pytest.raises(InputError) as caught:
        read_scales(written(folder, text))
    return caught.value.problems


def only(folder: Path, text: str, line: int) -> Problem:
    (problem,) = problems(folder, text)
    where = problem.where.split(": ")[0]
    assert where == f"{folder / 'scales.yaml'}:{line}"
    assert problem.remedy
    return problem


def test_a_plain_file(tmp_path: Path) -> None:
    file = read_scales(written(tmp_path, PLAIN))
    assert file.client == "WR-014"
    assert file.session.occupied.level == {"rear": 63.0, "casters": 27.0}
    assert file.session.occupied.raised == {"casters": 15.0}
    assert (file.session.occupied.block_mm, file.session.resolution_kg) == (62.0, 0.1)
    assert file.session.empty is None
    assert file.setup_path is None


def test_four_pads_with_what_holds_when_nothing_is_said(tmp_path: Path) -> None:
    session = read_scales(written(tmp_path, FOUR)).session
    assert session.wheelbase_mm == pytest.approx(406.4)
    assert session.rear_track_mm == 560.0
    assert (session.resolution_kg, session.tape_mm, session.level_deg) == (0.1, 2.0, 0.5)
    assert session.occupied.raised == {}


def test_one_axle_and_the_whole(tmp_path: Path) -> None:
    text = PLAIN.replace("two pads", "one axle").replace("rear: 63.0", "total: 90.0")
    assert read_scales(written(tmp_path, text)).session.occupied.level["total"] == 90.0


def test_an_empty_chair_and_its_seat(tmp_path: Path) -> None:
    seat = "seat:\n  ahead_of_axle: -30 mm\n  above_floor: 455 mm\n  angle: 4 deg\n"
    session = read_scales(written(tmp_path, PLAIN + EMPTY + seat)).session
    assert session.empty is not None
    assert session.seat is not None
    assert (session.seat.x_mm, session.seat.angle_deg) == (-30.0, 4.0)


@pytest.mark.parametrize("path", sorted(EXAMPLES.glob("*.yaml")), ids=lambda path: path.stem)
def test_the_examples_are_read(path: Path) -> None:
    assert read_scales(path).session.occupied.raised


def test_the_page_shows_an_example_that_is_read(tmp_path: Path) -> None:
    page = EXAMPLES.parents[1] / "docs" / "reference" / "scales-file.md"
    shown = page.read_text("utf-8").split("```yaml\n")[1].split("```")[0]
    assert (
        read_scales(written(tmp_path, shown)).session
        == read_scales(EXAMPLES / "avg-001.yaml").session
    )


def test_a_negative_load(tmp_path: Path) -> None:
    problem = only(tmp_path, PLAIN.replace("27.0 kg", "-27.0 kg"), 11)
    assert "must not be negative" in problem.must


def test_a_wheel_that_does_not_press(tmp_path: Path) -> None:
    problem = only(tmp_path, FOUR.replace("13.0 kg", "0 kg"), 13)
    assert "every wheel must press" in problem.must


def test_loads_that_do_not_sum(tmp_path: Path) -> None:
    text = PLAIN.replace("  casters: 27.0 kg\n", "  casters: 27.0 kg\n  total: 96.0 kg\n")
    problem = only(tmp_path, text, 12)
    assert "90.0 kg" in problem.must
    assert problem.got == "96.0 kg"


def test_raised_loads_that_do_not_sum(tmp_path: Path) -> None:
    # 63 + 27 = 90 kg on the level, 65 + 15 = 80 kg raised.
    problem = only(tmp_path, PLAIN + "  rear: 65.0 kg\n", 14)
    assert problem.got == "80.0 kg"


def test_casters_that_carry_more_than_the_whole(tmp_path: Path) -> None:
    text = PLAIN.replace("two pads", "one axle").replace("rear: 63.0", "total: 26.0")
    problem = only(tmp_path, text.split("raised:")[0], 11)
    assert "less than the whole, 26.0 kg" in problem.must


def test_left_and_right_that_do_not_sum(tmp_path: Path) -> None:
    text = FOUR + "  rear: 73.0 kg\n"
    problem = only(tmp_path, text, 14)
    assert "left and right must sum to rear, 73.0 kg" in problem.must
    assert problem.got == "63.0 kg"


def test_sums_as_fine_as_the_display_are_taken(tmp_path: Path) -> None:
    text = PLAIN.replace("  casters: 27.0 kg\n", "  casters: 27.0 kg\n  total: 90.2 kg\n")
    assert read_scales(written(tmp_path, text))


@pytest.mark.parametrize("load", ["25.2", "27.0", "40.0"])
def test_more_on_raised_casters_than_physics_allows(tmp_path: Path, load: str) -> None:
    # On a 62 mm block, L1 = 429.74 mm: a centre of mass at axle height, 305 mm, gives
    # 90 x 120 x cos(8.547 deg) / 429.74 = 24.85 kg.
    problem = only(tmp_path, PLAIN.replace("casters: 15.0", f"casters: {load}"), 14)
    assert "less than 24.9 kg" in problem.must
    assert "below the rear axle" in problem.must


def test_less_on_raised_casters_than_physics_allows(tmp_path: Path) -> None:
    # 1500 mm high on a block of 20 mm (sin 0.0493, cos 0.9988, L1 410.85 mm):
    # 90 x (120 x 0.9988 - 1195 x 0.0493) / 410.85 = 13.349 kg.
    text = PLAIN.replace("62 mm", "20 mm").replace("casters: 15.0", "casters: 2.0")
    problem = only(tmp_path, text, 14)
    assert "more than 13.3 kg" in problem.must
    assert "above 1500 mm" in problem.must


def test_a_block_that_no_chair_stands_on(tmp_path: Path) -> None:
    text = PLAIN.replace("wheelbase: 400", "wheelbase: 150").replace("62 mm", "399 mm")
    text = text.replace("caster_axle_height: 75", "caster_axle_height: 300")
    problem = only(tmp_path, text, 13)
    assert "stand with its casters on the block" in problem.must


def test_an_empty_chair_heavier_than_the_occupied_one(tmp_path: Path) -> None:
    heavy = EMPTY.replace("12.0 kg", "112.0 kg").replace("4.0 kg", "34.0 kg")
    problem = only(tmp_path, PLAIN + heavy.replace("3.5 kg", "20.0 kg"), 15)
    assert "must weigh less" in problem.must


def test_an_empty_chair_on_the_level_only(tmp_path: Path) -> None:
    problem = only(tmp_path, PLAIN + EMPTY.split("  raised:", maxsplit=1)[0], 15)
    assert "casters raised as well" in problem.must


def test_a_missing_pad(tmp_path: Path) -> None:
    problem = only(tmp_path, FOUR.replace("  caster_right: 13.0 kg\n", ""), 9)
    assert "caster_right must be given" in problem.must


def test_every_problem_at_once(tmp_path: Path) -> None:
    text = PLAIN.replace("400 mm", "40 mm").replace("75 mm", "75").replace("63.0 kg", "63.0 stone")
    lines = [int(each.where.split(":")[1]) for each in problems(tmp_path, text)]
    assert lines == [4, 6, 10]


def test_a_seat_beside_a_set_up(tmp_path: Path) -> None:
    seat = "setup: a.yaml\nseat:\n  ahead_of_axle: 0 mm\n  above_floor: 455 mm\n  angle: 4 deg\n"
    problem = only(tmp_path, PLAIN + seat, 16)
    assert "must not be given when a set-up is named" in problem.must


def test_a_key_that_is_not_known(tmp_path: Path) -> None:
    problem = only(tmp_path, PLAIN + "wheelbas: 3 mm\n", 15)
    assert problem.remedy == "Did you mean wheelbase?"


def test_another_kind_of_file(tmp_path: Path) -> None:
    problem = only(tmp_path, PLAIN.replace("scales 1", "client 1"), 1)
    assert "chairwright scales 1" in problem.must
