"""``weights`` of a client file: read with their lines, refused when they cannot be meant."""

from __future__ import annotations

from pathlib import Path

import pytest

from chairwright.errors import InputError
from chairwright.files.client import read_client

from .samples import client_file

OWN = "targets:\n  - {figure: toe_deg, at_most: 1, reason: tried}\n"


def test_weights_are_read_with_their_lines(tmp_path: Path) -> None:
    path = client_file(tmp_path, "weights:\n  seat_angle_deg: 3\n  overall_width_mm: 0\n")
    client = read_client(path)
    assert client.weights == {"seat_angle_deg": 3.0, "overall_width_mm": 0.0}
    assert client.where["weights.overall_width_mm"] == f"{path}:11"


def test_without_weights_there_are_none(tmp_path: Path) -> None:
    assert read_client(client_file(tmp_path)).weights == {}


@pytest.mark.parametrize(
    ("more", "line", "part"),
    [
        ("weights:\n  seat_angel_deg: 3\n", 10, "Did you mean seat_angle_deg?"),
        ("weights:\n  seat_angle_deg: -1\n", 10, "from 0 to 1000"),
        ("weights:\n  seat_angle_deg: 3 kg\n", 10, "from 0 to 1000"),
        ("weights:\n  seat_angle_deg:\n", 10, "got nothing"),
        ("weights: 3\n", 9, "it must hold keys and values"),
        (f"{OWN}weights:\n  toe_deg: 2\n", 12, "must stand in that target"),
    ],
)
def test_what_cannot_be_meant_is_refused(more: str, line: int, part: str, tmp_path: Path) -> None:
    path = client_file(tmp_path, more)
    with pytest.raises(InputError) as caught:
        read_client(path)
    (problem,) = caught.value.problems
    assert problem.where.startswith(f"{path}:{line}")
    assert part in str(problem)
