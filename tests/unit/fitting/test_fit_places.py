"""Fitting with places: whose they are, what decides, and what is told without deciding."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from chairwright.errors import InputError
from chairwright.files.client import read_client
from chairwright.files.places import read_places
from chairwright.fitting.described import describe
from chairwright.fitting.fit import Fit, fit_client
from chairwright.fitting.person import read_person
from chairwright.fitting.settled import space_for
from chairwright.line.load import load_line
from chairwright.places.kinds import Door, Kerb, Table, Threshold
from chairwright.places.model import Carer, Place, Surroundings
from chairwright.search.best import find_best
from chairwright.search.prepared import prepare

EXAMPLES = Path(__file__).parents[3] / "examples"


def fitted(name: str, surroundings: Surroundings | None) -> Fit:
    client = read_client(EXAMPLES / "clients" / f"{name}.yaml")
    line = load_line("everyday")
    return fit_client(client, line, surroundings=surroundings, objectives=None, alone=True)


def test_what_is_only_told_never_changes_the_set_up() -> None:
    steps: tuple[Place, ...] = (
        Kerb(name="kerb", height_mm=120, helped=True),
        Threshold(name="sill", height_mm=25, helped=True),
        Threshold(name="step as high as a caster's axle", height_mm=200, helped=True),
    )
    where = Surroundings("CAR-009", steps, carer=Carer(push_start_n=10))
    client = read_client(EXAMPLES / "clients" / "car-009.yaml")
    person, line = read_person(client, where), load_line("everyday")
    told = [t for t in person.targets if t.place and t.weight == 0]
    assert {t.figure for t in told} == {
        "device_spare_deg@step_200",
        "tip_lever_n", "step_force_n@25", "step_force_n@200",
        "rear_step_force_n@25", "rear_step_force_n@120", "rear_step_force_n@200",
    }  # fmt: skip
    assert not any(t.must for t in told)
    prepared = prepare(space_for(client, line, person.occupant))
    best = find_best(prepared, person.targets)
    silent = find_best(prepared, [t for t in person.targets if t not in told])
    assert best is not None and silent is not None
    assert (best.index, best.cost) == (silent.index, silent.cost)
    setup = describe(line, person.occupant, best.index, person.targets)
    words = {each.verdict.word for each in setup.judged if each.target in told}
    assert {"fails", "not known"} <= words


def test_the_best_without_places_is_told_where_a_place_decides() -> None:
    narrow = Surroundings("AVG-001", (Door(name="larder", clear_width_mm=610),))
    plain, found = fitted("avg-001", None), fitted("avg-001", narrow)
    assert plain.setup is not None and found.setup is not None
    assert found.setup.figures["overall_width_mm"] <= 600
    alone = found.without_places
    assert alone is not None
    assert alone.codes == plain.setup.codes
    words = {each.target.place: each.verdict.word for each in alone.judged}
    assert words["larder"] == "fails"
    assert plain.without_places is None


def test_places_of_another_client_are_refused_with_file_and_line(tmp_path: Path) -> None:
    path = tmp_path / "places.yaml"
    path.write_text(
        "format: chairwright places 1\nnote: a flat\nreference: TAL-002\n"
        "places:\n  - {kind: door, name: front door, clear_width: 80 cm}\n",
        encoding="utf-8",
    )
    client = read_client(EXAMPLES / "clients" / "avg-001.yaml")
    with pytest.raises(InputError) as caught:
        read_person(client, read_places(path))
    (problem,) = caught.value.problems
    assert str(problem).startswith(f"{path}:3: ")
    assert "those of the client, AVG-001" in str(problem)
    assert "TAL-002" in str(problem)


def test_no_knees_no_table() -> None:
    """A client without a whole leg is not asked to put knees under a top."""
    client = read_client(EXAMPLES / "clients" / "amp-005.yaml")
    where = Surroundings("AMP-005", (Table(name="desk", clear_height_mm=400),))
    assert {a.side for a in client.amputations} == {"left", "right"}
    assert [t for t in read_person(client, where).targets if t.place] == []
    whole = replace(client, amputations=())
    (target,) = [t for t in read_person(whole, where).targets if t.place]
    assert (target.figure, target.high) == ("knee_top_mm", 385)
