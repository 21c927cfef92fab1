"""Client files: what is understood, and what each mistake is answered with."""

from __future__ import annotations

from pathlib import Path

import pytest

from chairwright.errors import InputError
from chairwright.files.client import read_client
from chairwright.person.client import Amputation, Measure, OwnTarget

from .samples import CLIENT, client_file


def refused(path: Path) -> list[str]:
    with pytest.raises(InputError) as caught:
        read_client(path)
    return [str(problem).removeprefix(f"{path.parent}/") for problem in caught.value.problems]


def by_side(measures: tuple[Measure, ...], name: str) -> dict[str, float]:
    return {measure.side: measure.value for measure in measures if measure.name == name}


def test_the_least_that_a_client_file_needs(tmp_path: Path) -> None:
    path = client_file(tmp_path)
    client = read_client(path)
    assert (client.reference, client.sex, client.propulsion) == ("T-1", "female", "hands")
    assert (client.rule_set, client.leg_mass_factor, client.note) == ("envelope", 1.0, "")
    hips = client.measures[2]
    assert (hips.name, hips.side, hips.where) == ("hip_width", "middle", f"{path}:8")
    assert hips.value == pytest.approx(393.7, abs=1e-9)  # 15.5 in x 25.4 mm/in
    assert hips.quantity.typed == "15 1/2 in"
    assert client.where["measures"] == f"{path}:5"


def test_a_sided_measure_as_one_value_counts_for_both_sides(tmp_path: Path) -> None:
    client = read_client(
        client_file(tmp_path, "  lower_leg_length: {value: 42 cm, tolerance: 8 mm}\n")
    )
    assert by_side(client.measures, "lower_leg_length") == {"left": 420.0, "right": 420.0}
    assert {m.tolerance for m in client.measures if m.name == "lower_leg_length"} == {8.0}


def test_sides_apart_and_one_side_alone(tmp_path: Path) -> None:
    more = "  foot_length: {left: 25 cm, right: 26 cm}\n  knee_height: {right: 50 cm}\n"
    client = read_client(client_file(tmp_path, more))
    assert by_side(client.measures, "foot_length") == {"left": 250.0, "right": 260.0}
    assert by_side(client.measures, "knee_height") == {"right": 500.0}


def test_one_value_counts_only_for_the_side_that_is_left(tmp_path: Path) -> None:
    more = "  lower_leg_length: 42 cm\namputations:\n  - {side: left, level: below_knee}\n"
    client = read_client(client_file(tmp_path, more))
    assert by_side(client.measures, "lower_leg_length") == {"right": 420.0}
    assert client.amputations == (Amputation("left", "below_knee", 0.5),)


def test_loads_targets_and_choices(tmp_path: Path) -> None:
    more = """\
carries:
  - {name: day bag, mass: 11 lb, place: backpack}
targets:
  - {figure: tip_rear_locked_deg, at_least: 10, must: true, reason: kerbs}
  - {figure: seat_width_mm, at_most: 16 1/2 in, weight: 2, reason: narrow door}
choices:
  seat_width: [S400, 420]
  cushion: Q50
"""
    path = client_file(tmp_path, more)
    client = read_client(path)
    (bag,) = client.carries
    assert (bag.name, bag.place) == ("day bag", "backpack")
    assert bag.mass_kg == pytest.approx(4.98951607, abs=1e-9)  # 11 lb x 0.45359237 kg/lb
    balance, width = client.own_targets
    assert balance == OwnTarget("tip_rear_locked_deg", 10.0, None, True, 1.0, "kerbs", f"{path}:12")
    assert (width.figure, width.low, width.must, width.weight) == ("seat_width_mm", None, False, 2)
    assert width.high == pytest.approx(419.1, abs=1e-9)  # 16.5 in x 25.4 mm/in
    assert client.fixed_choices == {"cushion": ("Q50",), "seat_width": ("S400", "420")}


@pytest.mark.parametrize(
    ("more", "line", "part", "remedy"),
    [
        ("propulsio: feet\n", 9, "got 'propulsio'", "Did you mean propulsion?"),
        ("name: Anna\n", 9, "got 'name'", "no name"),
        ("weight: 70 kg\n", 9, "got 'weight'", "body_mass"),
        ("  hip_widht: 40 cm\n", 9, "got 'hip_widht'", "Did you mean hip_width?"),
        ("  shoulder_width: 40\n", 9, "a number with a unit", "Write it like"),
        ("  shoulder_width: 40 kg\n", 9, "a number with a unit", "Write it like"),
        ("  shoulder_width: nan mm\n", 9, "a number with a unit", "Write it like"),
        ("  shoulder_width: -40 cm\n", 9, "must not be negative", "minus"),
        ("  shoulder_width: 4 m\n", 9, "between 250 and 850 mm; got 4 m", "unit"),
        ("  shoulder_width:\n", 9, "a value must be given", "take the line out"),
        ("  shoulder_width: {left: 20 cm}\n", 9, "no left and right", "one value"),
        ("  knee_height: {left: 5 dm, right: 50 cm}\n", 9, "a number with a unit", "Write it"),
        ("  knee_height: {value: 50 cm, left: 49 cm}\n", 9, "value and left", "not both"),
        ("  knee_height: {tolerance: 1 cm}\n", 9, "must have a value", "Add value"),
        ("  knee_height: {value: 50 cm, tolerance: -1 cm}\n", 9, "negative", "minus"),
        ("  knee_height: {value: 50 cm, tolerence: 1 cm}\n", 9, "'tolerence'", "tolerance?"),
        ("  knee_height: [50 cm]\n", 9, "got ['50 cm']", "Write it like"),
        ("leg_mass_factor: 0.5\n", 9, "from 0.7 to 1; got 0.5", "Correct"),
        ("leg_mass_factor: 0.9 kg\n", 9, "plain number", "unit"),
        ("amputations: left\n", 9, "it must be a list", "- "),
        ("amputations:\n  - left\n", 10, "it must hold keys and values", "Indent"),
        ("amputations:\n  -\n", 10, "must hold keys and values; got nothing", "take it out"),
        ("amputations:\n  - {side: left, level: below_the_knee}\n", 10, "it must be one of",
         "Did you mean below_knee?"),
        ("amputations:\n  - {level: hand}\n", 10, "side must be given", "left or right"),
        ("amputations:\n  - {side: left, level: below_knee, residual: 1.5}\n", 10, "from 0 to 1",
         "Correct"),
        ("amputations:\n  - {side: left, level: foot, residual: 0.5}\n", 10, "only for below_knee",
         "Take residual out."),
        ("amputations:\n  - {side: left, level: foot}\n  - {side: left, level: hip}\n", 11,
         "must have one amputation; got hip besides foot", "higher"),
        ("amputations:\n  - {side: left, level: hand}\n", 4, "left hand must be there",
         "hand_and_foot_right or carer"),
        ("carries:\n  - {name: bag, mass: 3, place: lap}\n", 10, "a mass must be", "kg"),
        ("carries:\n  - {name: bag, mass: 300 kg, place: lap}\n", 10, "at most 60 kg", "unit"),
        ("carries:\n  - {name: bag, mass: 3 kg, place: roof}\n", 10, "it must be one of", "lap"),
        ("targets:\n  - {figure: tip_rear_lockd_deg, at_least: 9, reason: x}\n", 10,
         "a figure that there is", "Did you mean tip_rear_locked_deg?"),
        ("targets:\n  - {figure: com_x_mm, at_least: 9, at_most: 8, reason: x}\n", 10,
         "at_least must not be above at_most; got 9 and 8", "Swap"),
        ("targets:\n  - {figure: com_x_mm, reason: x}\n", 10, "at_least or at_most", "Add"),
        ("targets:\n  - {figure: com_x_mm, at_least: 9}\n", 10, "reason must be given", "reason:"),
        ("targets:\n  - {figure: com_x_mm, at_least: 9 kg, reason: x}\n", 10, "a length must be",
         "Write it like"),
        ("targets:\n  - {figure: com_x_mm, at_least: 9, must: yes, reason: x}\n", 10,
         "true or false; got 'yes'", "true or false"),
        ("targets:\n  - {figure: com_x_mm, at_least: 9, reason: x}\n"
         "  - {figure: com_x_mm, at_most: 99, reason: x}\n", 11, "at most one preference", "Join"),
        ("choices:\n  cushon: Q50\n", 10, "got 'cushon'", "Did you mean cushion?"),
        ("choices:\n  cushion: []\n", 10, "must keep an option", "Add a code"),
        ("choices:\n  cushion: [Q50, Q50]\n", 10, "each code must stand once", "Take one out"),
        ("choices: Q50\n", 9, "it must hold keys and values", "Indent"),
    ],
)  # fmt: skip
def test_each_mistake_is_answered_with_its_line_and_a_remedy(
    tmp_path: Path, more: str, line: int, part: str, remedy: str
) -> None:
    (message,) = refused(client_file(tmp_path, more))
    assert message.startswith(f"client.yaml:{line}: ")
    assert part in message
    assert remedy in message


@pytest.mark.parametrize(
    ("swap", "line", "part"),
    [
        (("chairwright client 1", "chairwright client 9"), 1, "format: chairwright client 1"),
        (("chairwright client 1", "chairwright set-up 1"), 1, "format: chairwright client 1"),
        (("format: chairwright client 1\n", ""), 1, "format: chairwright client 1"),
        (("reference: T-1", "reference: Anna Smith"), 2, "never a name"),
        (("reference: T-1", "reference: Anna"), 2, "never a name"),
        (("reference: T-1", "reference: ../T-1"), 2, "never a name"),
        (("reference: T-1\n", ""), 1, "reference must be given"),
        (("sex: female", "sex: fmale"), 3, "Did you mean female?"),
        (("propulsion: hands", "propulsion: hand"), 4, "Did you mean hands?"),
        (("stature: 168 cm", "stature: 17 m"), 6, "between 900 and 2300 mm; got 17 m (17000 mm)"),
        (("stature: 168 cm", "stature: .nan"), 6, "a number must be finite"),
    ],
)
def test_each_mistake_at_the_top_is_answered(
    tmp_path: Path, swap: tuple[str, str], line: int, part: str
) -> None:
    (message,) = refused(client_file(tmp_path, swap=swap))
    assert message.startswith(f"client.yaml:{line}: ")
    assert part in message


def test_a_file_without_measures_is_refused(tmp_path: Path) -> None:
    path = tmp_path / "client.yaml"
    path.write_text(CLIENT[: CLIENT.index("measures:")] + "measures:\n", encoding="utf-8")
    assert "measures must be given" in refused(path)[0]


@pytest.mark.parametrize("level", ["foot", "below_knee", "through_knee", "above_knee", "hip"])
def test_a_lost_foot_neither_pushes_nor_is_measured(tmp_path: Path, level: str) -> None:
    more = (
        "  foot_length: {left: 25 cm, right: 25 cm}\n"
        f"amputations:\n  - {{side: right, level: {level}}}\n"
    )
    swap = ("propulsion: hands", "propulsion: hand_and_foot_right")
    messages = refused(client_file(tmp_path, more, swap))
    assert len(messages) == 2
    assert messages[0].startswith("client.yaml:4: propulsion: the right foot must be there")
    assert messages[1].startswith("client.yaml:9: measures.foot_length.right: ")
    assert f"that part is lost ({level})" in messages[1]


def test_a_measure_lost_on_both_sides_is_refused(tmp_path: Path) -> None:
    more = (
        "  foot_length: 25 cm\n"
        "amputations:\n  - {side: right, level: foot}\n  - {side: left, level: hip}\n"
    )
    assert "lost on both sides" in refused(client_file(tmp_path, more))[0]


def test_all_mistakes_are_reported_at_once_by_line(tmp_path: Path) -> None:
    more = "  foot_length: 25 kg\nchoices: {wheel: A}\nsexx: x\n"
    messages = refused(client_file(tmp_path, more, ("sex: female", "sex: x")))
    assert [message.split(": ")[0] for message in messages] == [
        "client.yaml:3", "client.yaml:9", "client.yaml:10", "client.yaml:11",
    ]  # fmt: skip
