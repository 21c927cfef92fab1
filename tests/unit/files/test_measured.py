"""Measured-chair files: values, half widths and places, and every mistake by line."""

from __future__ import annotations

from pathlib import Path

import pytest

from chairwright.errors import InputError
from chairwright.files.chair_measures import CHAIR_MEASURES
from chairwright.files.measured import read_measured

TEXT = """\
format: chairwright measured chair 1
client: client.yaml
foot_supports: both
measures:
  seat_to_floor_front: 50 cm
  seat_to_floor_rear: 480 mm
  seat_depth: 17 in
  rear_wheel_diameter: {value: 600 mm, tolerance: 3 mm}
  caster_diameter: 200 mm
  wheelbase: 410 mm
  axle_ahead_of_post: -5 mm
"""


def written(folder: Path, text: str = TEXT) -> Path:
    path = folder / "chair.yaml"
    path.write_text(text, encoding="utf-8")
    return path


def test_values_half_widths_and_places(tmp_path: Path) -> None:
    found = read_measured(written(tmp_path))
    assert found.values["seat_to_floor_front"] == 500.0
    assert found.values["seat_depth"] == pytest.approx(431.8)
    assert found.values["axle_ahead_of_post"] == -5.0
    assert found.tolerances["rear_wheel_diameter"] == 3.0
    assert found.tolerances["wheelbase"] == CHAIR_MEASURES["wheelbase"].tolerance
    assert found.readings["wheelbase"].where.endswith("chair.yaml:10")
    assert found.client_path == tmp_path / "client.yaml"


@pytest.mark.parametrize(
    ("old", "new", "line", "part"),
    [
        ("measured chair 1", "measured chair 2", 1, "format: chairwright measured chair 1"),
        ("client: client.yaml\n", "", 1, "client must be given"),
        ("foot_supports: both", "foot_supports: two", 3, "both, left, right, none"),
        ("  wheelbase: 410 mm", "  wheelbase: 410", 10, "a length must be a number with a unit"),
        ("  wheelbase: 410 mm", "  wheelbase: 410 kg", 10, "a length must be"),
        ("  wheelbase: 410 mm", "  wheelbase: -410 mm", 10, "must not be negative"),
        ("  wheelbase: 410 mm", "  wheel_base: 410 mm", 10, "a key must be one"),
        ("  wheelbase: 410 mm\n", "", 4, "wheelbase must be given"),
        ("tolerance: 3 mm", "half: 3 mm", 8, "a key must be one"),
        ("measures:", "measures: 3\nmore:", 4, "it must hold keys and values"),
    ],
)
def test_mistakes_are_told_by_line(
    tmp_path: Path, old: str, new: str, line: int, part: str
) -> None:
    with pytest.raises(InputError) as caught:
        read_measured(written(tmp_path, TEXT.replace(old, new)))
    told = [str(problem) for problem in caught.value.problems]
    assert any(f"chair.yaml:{line}" in each and part in each for each in told), told
