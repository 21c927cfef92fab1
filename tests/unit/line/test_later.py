"""What a line file says of changing a chair in use: read, left out, refused by line."""

from __future__ import annotations

from pathlib import Path

import pytest

from chairwright.line.load import load_line

from .test_mistakes import changed, line_number, problems_of

FRAME = "frame: [side_frame]"
MONEY = "part_prices: {rear_wheel: 170"


def test_it_is_read_as_it_is_written() -> None:
    later = load_line("everyday").later
    assert later.frame == {"side_frame"}
    assert (later.frame_price, later.frame_minutes) == (620, 150)
    assert later.part_prices["seat_width"] == 190
    assert load_line("heavy-duty").later.minutes == {"wheels_off": 10, "front_up": 8}
    assert load_line("light-rigid").later.frame == {"side_frame", "seat_width", "hanger"}


@pytest.mark.parametrize(
    ("old", "new", "wrong", "said"),
    [
        (FRAME, "frame: [side_frames]", "frame: [side_frames]", "a choice"),
        (FRAME, "frame: []", "frame: []", ""),
        (MONEY, "part_prices: {rear_wheels: 170", "part_prices: {rear_wheels", "a choice"),
        (MONEY, f"minutes: {{stances: 3}}\n  {MONEY}", "minutes: {stances", "shared work"),
        (MONEY, "part_prices: {rear_wheel: -1", "part_prices: {rear_wheel: -1", ""),
    ],
)
def test_a_mistake_is_refused_at_its_line(
    old: str, new: str, wrong: str, said: str, tmp_path: Path
) -> None:
    text = changed(old, new)
    (problem,) = problems_of(text, tmp_path)
    assert said in problem.must
    assert f":{line_number(text, wrong)}:" in f"{problem.where}:"


def test_left_out_a_rigid_seat_belongs_to_the_frame(tmp_path: Path) -> None:
    source = Path(load_line("light-rigid").path).read_text("utf-8")
    head, _, rest = source.partition("\nlater:")
    path = tmp_path / "line.yaml"
    path.write_text(head + "\nrules:" + rest.partition("\nrules:")[2], encoding="utf-8")
    later = load_line(str(path)).later
    assert later.frame == {"side_frame", "seat_width"}
    assert later.source == ""
