"""Every example client goes through the desk's fields and comes out as it was."""

from __future__ import annotations

from pathlib import Path

import pytest

from chairwright.files.client import read_client
from chairwright.person.client import Client as Read
from chairwright.reading import FileText
from chairwright_desk.measures.bridge import kinds, troubles_of
from chairwright_desk.measures.bridge.brought import brought_in
from chairwright_desk.measures.text import Parts, units_written, written
from chairwright_desk.measures.typed import with_unit

from ..kit.world import EXAMPLES

FILES = sorted((EXAMPLES / "clients").glob("*.yaml"))
ELSEWHERE = """format: chairwright client 1
reference: ODD-1
sex: female
age: 9.5
propulsion: carer
leg_mass_factor: 0.8
rule_set: who
note: "with: a colon, a # and a \\"quote\\""
measures:
  stature: 168 cm
  body_mass: {value: 62 kg, tolerance: 500 g}
  lower_leg_length: {right: 16 1/4 in, tolerance: 5 mm}
amputations: [{side: left, level: below_knee, residual: 0.3}, {side: right, level: shoulder}]
carries: [{name: day bag, mass: 3 kg, place: backpack}]
targets:
  - {figure: tip_rear_locked_deg, at_least: 10, must: true, reason: alone}
  - {figure: overall_width_mm, at_most: 25 1/2 in, weight: 2, reason: the door}
weights: {chair_mass_kg: 3}
choices: {cushion: [Q50, Q75]}
extras: [EC]
expected: {over_years: 3, body_mass: [60 kg, 70 kg], reason: gains}
"""


def told(client: Read) -> dict[str, object]:
    """What a client file says, apart from lines."""
    measures = sorted((m.name, m.side, m.value, m.tolerance) for m in client.measures)
    own = [(t.figure, t.low, t.high, t.must, t.weight, t.reason) for t in client.own_targets]
    plain = ("reference", "sex", "propulsion", "amputations", "carries", "rule_set", "note")
    more = ("leg_mass_factor", "fixed_choices", "weights", "extras", "age_years", "expected")
    same = {name: getattr(client, name) for name in (*plain, *more)}
    return {**same, "measures": measures, "own": own}


def through_the_desk(text: str) -> str:
    found = brought_in(text.encode())
    assert found.troubles == ()
    reference = read_client(FileText("client", text)).reference
    own = tuple({**t, "key": str(at), "must": "yes" if t["must"] else ""}
                for at, t in enumerate(found.targets) if "must" in t)  # fmt: skip
    weights = {t["figure"]: t["weight"] for t in found.targets if "must" not in t}
    parts = Parts(reference, found.body, found.abilities, found.rule_set, own, weights)
    return written(parts).text


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_an_example_client_comes_back_as_it_was(path: Path) -> None:
    before = path.read_text("utf-8")
    after = through_the_desk(before)
    assert told(read_client(FileText("client", after))) == told(read_client(path))


def test_a_client_file_that_uses_every_key_comes_back_as_it_was() -> None:
    after = through_the_desk(ELSEWHERE)
    assert told(read_client(FileText("client", after))) == told(
        read_client(FileText("client", ELSEWHERE))
    )


BODY = {"sex": "female", "stature": "168 cm", "body_mass": "62 kg"}
NAMES = [name for kind in kinds().values() for _, name in kind.fields]


@pytest.mark.parametrize("name", [*NAMES, *(f"{kind}_give" for kind in kinds())])
def test_what_cannot_be_read_comes_back_to_its_field(name: str) -> None:
    kind = name.removesuffix("_give")
    body = dict(BODY)
    if name.endswith("_give"):
        first = kinds()[kind].fields[0][1]
        body.setdefault(
            first, "60 kg" if kinds()[kind].dimension == "mass" else f"{kinds()[kind].usual}"
        )
    body[name] = "about so"
    to = written(Parts("X-1", body, {"propulsion": "carer"}))
    assert name in troubles_of(to.text, to.field_at)


@pytest.mark.parametrize(
    ("typed", "alone", "mm"),
    [
        ("16 1/4", "in", 412.75),
        ('16 1/4"', "mm", 412.75),
        ("16-1/4", "in", 412.75),
        ("16¼ in", "mm", 412.75),
        ("3/4 inch", "mm", 19.05),
        ("41,5", "cm", 415.0),
        ("415", "mm", 415.0),
        ("41.5 CM", "in", 415.0),
        ("0.415m", "in", 415.0),
    ],
)
def test_lengths_are_read_as_people_type_them(typed: str, alone: str, mm: float) -> None:
    """Expected values by hand: 1 in = 25.4 mm exactly (agreement of 1959)."""
    body = {**BODY, "lower_leg_length_left": with_unit(typed, "length", alone)}
    text = written(Parts("X-1", body)).text.replace("lower_leg_length", "hip_width")
    if not 200 <= mm <= 850:
        text = text.replace("hip_width", "shoe_sole")
    text = text.replace("left:", "value:")
    measures = {m.name: m.value for m in read_client(FileText("client", text)).measures}
    assert mm in [pytest.approx(value) for value in measures.values()]


def test_a_thousands_comma_is_not_taken_for_a_decimal_one() -> None:
    assert with_unit("1,680", "length", "mm") == "1,680"


def test_units_are_written_out_for_every_kind_of_field() -> None:
    typed = {"body_mass": "137", "hip_width": "15", "hip_width_give": "1/4", "load_mass_0": "5",
             "range_measure_0": "body_mass", "range_least_0": "130", "age": "9"}  # fmt: skip
    assert units_written(typed, "in") == {
        "body_mass": "137 lb",
        "hip_width": "15 in",
        "hip_width_give": "1/4 in",
        "load_mass_0": "5 lb",
        "range_measure_0": "body_mass",
        "range_least_0": "130 lb",
        "age": "9",
    }
