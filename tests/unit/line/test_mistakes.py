"""Mistakes in a line file beyond its form: each is told with its line and what to do."""

from __future__ import annotations

from importlib.resources import files
from pathlib import Path

import pytest

from chairwright.errors import InputError, Problem
from chairwright.line.load import load_line

LINE = (files("chairwright.line") / "lines" / "everyday.yaml").read_text("utf-8")
WHEEL_RULE = "when: {rear_wheel: [W20]}"
LOCK_NEED = "need: {wheel_lock: [LL, LX]}"
FRAME_OF_400 = "code: SFS, name: short side frame"
ODD_FRAME = (
    "  - {code: SFX, name: odd frame, caster_tube_x_mm: 300, hanger_pivot_mm: [330, -45], "
    "depth_from_mm: 301, depth_to_mm: 309, load_limit_kg: 100, mass_kg: 3.5, at_mm: [150, -120]}"
)
COLUMNS = "columns_mm: {A: -45, B: -20, C: 5, D: 30, E: 55, F: 80}"
PADS = "pad_heights_mm: {from_mm: 200, to_mm: 275, step_mm: 25}"


def line_number(text: str, part: str) -> int:
    return text[: text.index(part)].count("\n") + 1


def problems_of(text: str, folder: Path) -> tuple[Problem, ...]:
    path = folder / "line.yaml"
    path.write_text(text, encoding="utf-8")
    with pytest.raises(InputError) as caught:
        load_line(str(path))
    return caught.value.problems


def changed(old: str, new: str) -> str:
    assert LINE.count(old) == 1, old
    return LINE.replace(old, new)


@pytest.mark.parametrize(
    ("old", "new", "place", "parts"),
    [
        (
            WHEEL_RULE,
            "when: {rear_wheel: [W2O]}",
            "rules.when.rear_wheel",
            ["'W2O'", "Did you mean W2"],
        ),
        (WHEEL_RULE, "when: {rear_whel: [W20]}", "rules.when.rear_whel", ["mean rear_wheel?"]),
        (
            LOCK_NEED,
            "need: {wheel_lock: [XX]}",
            "rules.need.wheel_lock",
            ["Known here: LP, LL, LX."],
        ),
        (LOCK_NEED, "need: {fork: [FX-2]}", "rules.need.fork", ["FX-2", "Did you mean F"]),
        (LOCK_NEED, "need: {wheel_lock: []}", "rules.need.wheel_lock", ["at least 1 item"]),
        ("{code: B8, angle_deg: 8}", "{code: B4, angle_deg: 8}", "", ["back_angle code B4"]),
        ("code: TL, name: long", "code: TS, name: long", "", ["anti_tip code TS-1", "second time"]),
        (PADS, "pad_heights_mm: [200, 225, 200]", "", ["arm_support code AW-200"]),
        ("[0, -2, -4, -6, -8, -10, 2]", "[0, -2, -2]", "", ["stem_setting code NF2"]),
        ("{code: XB, name: bolts", "{code: XH, name: bolts", "", ["fixed part code XH"]),
        ("holes_mm: {1: 64, 2: 78", 'holes_mm: {1: 64, "1.0": 78', "forks.holes_mm.1.0", ["'1.0'"]),
        ("holes_mm: {1: 64, 2: 78", 'holes_mm: {1: 64, "1": 78', "forks.holes_mm.1", ["'1' a sec"]),
        (
            COLUMNS,
            f"closed: [A10]\n    {COLUMNS}",
            "axle_plates.closed",
            ["A10", "Did you mean A1?"],
        ),
        ("{U: -95, V: -70}", "{U: -95, A: -70}", None, ["axle_hole code A1 and 8 more a second"]),
        (
            "{from_mm: 280, to_mm: 620",
            "{from_mm: 620, to_mm: 280",
            "custom_sizes.seat_width",
            ["from_mm must not exceed to_mm", "620 and 280 mm"],
        ),
        (
            PADS,
            "pad_heights_mm: {from_mm: 275, to_mm: 200, step_mm: 25}",
            "arm_supports.pad_heights_mm",
            ["275 and 200 mm", "Swap the two"],
        ),
        (
            "angle_deg: 70, swings",
            "angles_deg: [70], angle_deg: 70, swings",
            "hangers",
            ["H70 must have either angle_deg or angles_deg", "got both"],
        ),
        (
            "behind_post_mm: 30, mass_kg",
            "mass_kg",
            None,
            ["BS must have either behind_post_mm or settings", "got neither"],
        ),
        (
            "{seat_width: {from: 521}}",
            "{seat_width: {from: 621}}",
            "rules.when.seat_width",
            ["(width_mm) must hold at least one option", "from 621 to open"],
        ),
        (
            "{seat_width: {from: 521}}",
            "{wheel_lock: {from: 1}}",
            "rules.when.wheel_lock",
            ["wheel_lock has no size of its own"],
        ),
        ("{code: ET, name: swing", "{code: EB, name: swing", "", ["extra code EB a second time"]),
        ("currency: EUR", "currency: Eur", "currency", ["'Eur'"]),
        ("anti_tip_required: false\n", "", None, ["anti_tip_required must be given"]),
        (
            "{seat_width: {from: 521}}",
            "{seat_width: {}}",
            "rules.when.seat_width",
            ["a range must have an end: from, to or both"],
        ),
        (
            "{seat_width: {from: 521}}",
            "{seat_width: {form: 521}}",
            "rules.when.seat_width.form",
            ["Did you mean from?"],
        ),
        (
            LOCK_NEED,
            "need: {wheel_lock: LL}",
            "rules.need.wheel_lock",
            ["must be a list; got 'LL'"],
        ),
        (
            "pad_heights_mm: [235]",
            "pad_heights_mm: {from_mm: 200, to_mm: 300}",
            "arm_supports.pad_heights_mm",
            ["step_mm must be given"],
        ),
        (
            "to_mm: 500, step_mm: 20",
            "to_mm: 500, step_mm: 0.001",
            "leg_lengths.lengths_mm.step_mm",
            ["greater than or equal to 1"],
        ),
    ],
)
def test_a_mistake_is_told_by_line(
    old: str, new: str, place: str | None, parts: list[str], tmp_path: Path
) -> None:
    text = changed(old, new)
    (problem,) = problems_of(text, tmp_path)
    if place is not None:
        where = f"{tmp_path / 'line.yaml'}:{line_number(text, new)}"
        assert problem.where == (f"{where}: {place}" if place else where)
    for part in parts:
        assert part in str(problem)


def test_a_first_use_is_named_by_its_line(tmp_path: Path) -> None:
    (problem,) = problems_of(
        changed("{code: B8, angle_deg: 8}", "{code: B4, angle_deg: 8}"), tmp_path
    )
    assert f"first at line {line_number(LINE, '{code: B4, angle_deg: 4}')}" in problem.got


def test_several_mistakes_are_told_in_the_order_of_the_file(tmp_path: Path) -> None:
    text = changed(WHEEL_RULE, "when: {rear_wheel: [W99]}")
    text = text.replace("{code: B8, angle_deg: 8}", "{code: B4, angle_deg: 8}")
    double, unknown = problems_of(text, tmp_path)
    assert "B4" in double.got
    assert "W99" in unknown.got


def test_a_plate_with_every_hole_closed_is_refused(tmp_path: Path) -> None:
    holes = ", ".join(f"{column}{row}" for column in "ABCDEF" for row in range(1, 10))
    problems = problems_of(changed(COLUMNS, f"closed: [{holes}]\n    {COLUMNS}"), tmp_path)
    assert "one hole of a plate must be open" in problems[0].must


def test_a_closed_hole_is_no_option(tmp_path: Path) -> None:
    path = tmp_path / "line.yaml"
    path.write_text(changed(COLUMNS, f"closed: [B3, F9]\n    {COLUMNS}"), encoding="utf-8")
    codes = set(load_line(str(path)).choices["axle_hole"].codes)
    assert set(load_line("everyday").choices["axle_hole"].codes) - codes == {"B3", "F9"}


def test_a_depth_range_that_runs_backwards_names_the_frame(tmp_path: Path) -> None:
    old = "depth_from_mm: 360, depth_to_mm: 440"
    text = changed(old, "depth_from_mm: 440, depth_to_mm: 360")
    (problem,) = problems_of(text, tmp_path)
    assert problem.where.endswith(f":{line_number(text, FRAME_OF_400)}: side_frames.depth_from_mm")
    assert problem.got == "440 and 360 mm"


@pytest.mark.parametrize(
    ("old", "new", "line", "part"),
    [
        # No fork is made for so large a caster.
        ("8 in air caster, diameter_mm: 200", "8 in air caster, diameter_mm: 210",
         "code: C8", "caster C8"),
        # No side frame reaches so deep; no seat depth is so short.
        ("{code: D520, depth_mm: 520", "{code: D520, depth_mm: 530",
         "code: D520", "seat_depth D520"),
        ("  - {code: SFS, name", f"{ODD_FRAME}\n  - {{code: SFS, name",
         "code: SFX", "side_frame SFX"),
        # The 20 in wheel needs a lock that only another wheel may have.
        ("because: the short lever does not reach the tyre of a 20 in wheel",
         "because: the short lever does not reach the tyre of a 20 in wheel\n"
         "  - when: {wheel_lock: [LL, LX]}\n    need: {rear_wheel: [W24]}\n    because: so it is",
         "code: W20", "rear_wheel W20"),
    ],
)  # fmt: skip
def test_a_part_that_no_set_up_can_have_is_named(
    old: str, new: str, line: str, part: str, tmp_path: Path
) -> None:
    text = changed(old, new)
    (problem,) = problems_of(text, tmp_path)
    assert problem.where == f"{tmp_path / 'line.yaml'}:{line_number(text, line)}"
    assert problem.must == f"{part} must be possible in at least one set-up"
    assert "(line " in problem.got


def test_rules_that_leave_nothing_are_told_as_one_group(tmp_path: Path) -> None:
    wheels = "[W24, W24P, W22, W20]"
    text = (
        f"{LINE}"
        f"  - when: {{rear_wheel: {wheels}}}\n    need: {{camber: [K0]}}\n    because: first\n"
        f"  - when: {{camber: [K0]}}\n    need: {{back_angle: [B4]}}\n    because: second\n"
        f"  - when: {{rear_wheel: {wheels}}}\n    need: {{back_angle: [B8]}}\n    because: third\n"
    )
    (problem,) = problems_of(text, tmp_path)
    assert problem.must == "the rules must allow at least one set-up"
    last = text.count("\n")
    lines = (last - 8, last - 5, last - 2)
    told = "; ".join(
        f"{why} (line {at})" for why, at in zip(("first", "second", "third"), lines, strict=True)
    )
    assert problem.got == f"none: {told}"


def test_options_and_rules_know_their_lines() -> None:
    line = load_line("everyday")
    places = [option.where for choice in line.choices.values() for option in choice.options]
    places += [rule.where for rule in line.rules]
    assert all(place.startswith(f"{line.path}:") for place in places)
    (caster,) = [o for o in line.choices["caster"].options if o.code == "C6"]
    assert caster.where == f"{line.path}:{line_number(LINE, 'code: C6')}"
    assert line_number(LINE, "reinforced frame carries") - 2 == int(
        next(r for r in line.rules if "reinforced frame" in r.because).where.rpartition(":")[2]
    )
