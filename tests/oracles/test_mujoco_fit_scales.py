"""``fit --scales`` from a chair weighed in a rigid-body engine to the same person in another chair.

The person who sits in the engine is not the one whom the client file describes. The set-up that
``fit`` finds with the scales is weighed again in the engine, with the same person.
"""

from __future__ import annotations

import argparse
import json
from pathlib import Path
from typing import Any

import numpy as np
import pytest

from chairwright.chair.occupant import Occupant
from chairwright.cli import figures as figures_command
from chairwright.cli import fit as fit_command
from chairwright.cli.report import run_quietly
from chairwright.figures.evaluate import realise
from chairwright.line.load import load_line
from chairwright.scales.propagate import measured

from .draws import Index
from .independent import on_floor
from .mujoco_scales import weigh
from .people import client, seated
from .test_mujoco_scales import frame_of, session_of, stands_on_block, table

EXAMPLES = Path(__file__).resolve().parents[2] / "examples"
BLOCK_MM = 60.0
PEOPLE = {
    "taller": client("male", "1830 mm", "84 kg"),
    "another sex": client("female", "1700 mm", "74 kg"),
    "shorter and heavy": client("male", "1690 mm", "88 kg"),
}
COMPARED = ("com_x_mm", "com_z_mm", "total_mass_kg", "tip_rear_locked_deg", "tip_forward_deg")


def index_of(codes: dict[str, str]) -> Index:
    line = load_line("everyday")
    return {name: np.array([line.choices[name].codes[code]]) for name, code in codes.items()}


def scales_file(folder: Path, truth: Occupant) -> Path:
    """Weigh the person in the present set-up, loads read to 0.1 kg and lengths to 1 mm."""
    text = (EXAMPLES / "setups" / "avg-001.yaml").read_text(encoding="utf-8")
    rows = [row.split(": ") for row in text.split("choices:\n")[1].splitlines()]
    codes = {name.strip(): code.strip() for name, code in rows}
    chair = realise(load_line("everyday"), truth, index_of(codes))
    assert stands_on_block(*chair, BLOCK_MM)
    frame, points = frame_of(chair[0]), table(on_floor(*chair))
    loads = {at: weigh(frame, points, at) for at in (0.0, BLOCK_MM)}
    lines = [
        "format: chairwright scales 1",
        "client: AVG-001",
        f"setup: {EXAMPLES / 'setups' / 'avg-001.yaml'}",
        "method: four pads",
        f"wheelbase: {frame.wheelbase:.0f} mm",
        f"rear_axle_height: {frame.rear_radius:.0f} mm",
        f"caster_axle_height: {frame.caster_radius:.0f} mm",
        f"rear_track: {frame.rear_track:.0f} mm",
        f"caster_track: {frame.caster_track:.0f} mm",
        "scale_step: 100 g",
        "tape: 1 mm",
        "level:",
        *(f"  {name}: {load:.1f} kg" for name, load in loads[0.0].items()),
        "raised:",
        f"  block: {BLOCK_MM:.0f} mm",
        *(f"  {name}: {load:.1f} kg" for name, load in loads[BLOCK_MM].items()),
    ]
    path = folder / "scales.yaml"
    path.write_text("\n".join(lines) + "\n", encoding="utf-8")
    return path


def document(command: Any, capsys: pytest.CaptureFixture[str], *words: str | Path) -> Any:
    parser = argparse.ArgumentParser()
    command.add_arguments(parser)
    args = parser.parse_args([str(word) for word in (*words, "--json")])
    assert run_quietly(lambda: command.run(args)) == 0
    return json.loads(capsys.readouterr().out)


@pytest.mark.parametrize("name", PEOPLE)
def test_the_set_up_found_with_scales_agrees_with_a_direct_weighing_there(
    name: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    truth = seated(PEOPLE[name])
    scales = scales_file(tmp_path, truth)
    own = EXAMPLES / "clients" / "avg-001.yaml"
    found = document(
        fit_command, capsys, own, "--no-front", "--scales", scales, "--out", tmp_path / "out"
    )
    assert found["client"]["centre_of_mass"]["known_by"] == "scales"
    there = realise(load_line("everyday"), truth, index_of(found["set_up"]["choices"]))
    direct = measured(session_of(frame_of(there[0]), table(on_floor(*there)), BLOCK_MM, digits=1))
    written = tmp_path / "out" / "avg-001-setup.yaml"
    said, spreads = found["set_up"]["figures"], found["set_up"]["spreads"]
    again = document(figures_command, capsys, written, "--scales", scales)["figures"]
    estimated = document(figures_command, capsys, written)["figures"]
    for figure in COMPARED:
        allowed = spreads[figure] + direct.half_width(figure)
        assert said[figure] == pytest.approx(direct.values[figure], abs=allowed), figure
        assert again[figure] == said[figure]
    off, guessed = (
        np.hypot(*(each[f] - direct.values[f] for f in ("com_x_mm", "com_z_mm")))
        for each in (said, estimated)
    )
    assert off < guessed
