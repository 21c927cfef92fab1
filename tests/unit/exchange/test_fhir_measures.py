"""Height and mass from a bundle: units, the newest, what is left out, what is refused and where."""

from __future__ import annotations

import copy
from pathlib import Path
from typing import Any

import pytest

from chairwright.errors import InputError
from chairwright.exchange.fhir_bundle import bundle
from chairwright.exchange.fhir_measures import Imported, line_of, read_height_and_mass
from chairwright.person.measures import BODY_MASS, STATURE

from .fhir import HEIGHT, MASS, Resource, bundle_of, observation, refusals, written
from .orders import NAMES, opened, order_of


def imported(folder: Path, *resources: Resource) -> Imported:
    return read_height_and_mass(written(folder, bundle_of(*resources)))


def refused(folder: Path, *resources: Resource) -> str:
    with pytest.raises(InputError) as error:
        imported(folder, *resources)
    return str(error.value)


def test_the_bundles_of_these_tests_are_valid() -> None:
    whole = bundle_of(observation(HEIGHT, 176, "cm"), observation(MASS, 78.5, "kg"))
    assert refusals(whole) == []


@pytest.mark.parametrize(
    ("code", "value", "unit", "base", "line"),
    [
        # 1 in = 25.4 mm and 1 lb = 0.45359237 kg exactly: 69.5 x 25.4, 160 x 0.45359237.
        (HEIGHT, 176, "cm", 1760.0, "stature: 176 cm"),
        (HEIGHT, 1.76, "m", 1760.0, "stature: 1.76 m"),
        (HEIGHT, 1760, "mm", 1760.0, "stature: 1760 mm"),
        (HEIGHT, 69.5, "[in_i]", 1765.3, "stature: 69.5 in"),
        ("8306-3", 175.5, "cm", 1755.0, "stature: 175.5 cm"),
        (MASS, 78.5, "kg", 78.5, "body_mass: 78.5 kg"),
        (MASS, 78500, "g", 78.5, "body_mass: 78500 g"),
        (MASS, 160, "[lb_av]", 72.5747792, "body_mass: 160 lb"),
    ],
)
def test_units_are_converted(
    code: str, value: float, unit: str, base: float, line: str, tmp_path: Path
) -> None:
    (seen,) = imported(tmp_path, observation(code, value, unit)).seen
    assert seen.quantity.value == pytest.approx(base, abs=1e-9)
    assert line_of(seen) == line


@pytest.mark.parametrize("name", NAMES)
def test_our_own_bundle_gives_back_the_clients_values(name: str, tmp_path: Path) -> None:
    found = opened(name)
    whole = bundle(order_of(found), found.person.measures, measured="2026-11-20")
    seen = {each.measure: each for each in read_height_and_mass(written(tmp_path, whole)).seen}
    for measure in found.person.client.measures:
        if measure.name in (STATURE, BODY_MASS):
            got = seen[measure.name]
            # Three digits behind the point of a centimetre or a kilogram.
            assert got.quantity.value == pytest.approx(measure.value, abs=0.006)
            assert got.when is not None
            assert got.when.text == "2026-11-20"


def test_an_estimate_is_not_taken_for_a_measure(tmp_path: Path) -> None:
    found = opened()
    whole = copy.deepcopy(bundle(order_of(found), found.person.measures))
    for entry in whole["entry"]:
        resource = entry["resource"]
        if resource.get("code", {}).get("text") == "Body height":
            resource["method"]["coding"][0]["code"] = "estimated"
    result = read_height_and_mass(written(tmp_path, whole))
    assert [each.measure for each in result.seen] == ["body_mass"]
    assert any("it is an estimate" in remark for remark in result.remarks)


def test_the_newest_is_taken_and_said(tmp_path: Path) -> None:
    result = imported(
        tmp_path,
        observation(MASS, 80, "kg", "2026-01-10"),
        observation(MASS, 76, "kg", "2026-03-01T09:30:00+01:00"),
        observation(MASS, 82, "kg", "2024"),
    )
    (seen,) = result.seen
    assert seen.quantity.typed == "76 kg"
    assert "3 values of body mass: the newest is taken, of 2026-03-01T09:30:00+01:00." in (
        result.remarks
    )
    assert "The bundle has no body height." in result.remarks


def test_one_with_a_day_goes_before_one_without(tmp_path: Path) -> None:
    for order in (0, 1):
        pair = [observation(MASS, 76, "kg", "2020"), observation(MASS, 80, "kg", None)]
        (seen,) = imported(tmp_path, *(pair if order else reversed(pair))).seen
        assert seen.quantity.typed == "76 kg"


def test_a_period_counts_with_its_end(tmp_path: Path) -> None:
    long_stay = observation(
        MASS, 76, "kg", None, effectivePeriod={"start": "2026-01-01", "end": "2026-05-01"}
    )
    (seen,) = imported(tmp_path, long_stay, observation(MASS, 80, "kg", "2026-04-01")).seen
    assert seen.quantity.typed == "76 kg"


def test_the_same_value_twice_is_no_question(tmp_path: Path) -> None:
    pair = (observation(MASS, 78, "kg"), observation(MASS, 78000, "g"))
    assert imported(tmp_path, *pair).seen[0].quantity.value == 78.0


@pytest.mark.parametrize(
    ("one", "other"), [("2026-03-01", "2026-03-01"), ("2026", "2026-03-01"), (None, None)]
)
def test_it_is_refused_when_the_newest_is_not_clear(
    one: str | None, other: str | None, tmp_path: Path
) -> None:
    text = refused(tmp_path, observation(MASS, 76, "kg", one), observation(MASS, 80, "kg", other))
    assert "it must be clear which body mass is the newest" in text
    assert "entry[" in text


@pytest.mark.parametrize("status", ["entered-in-error", "cancelled", "registered", "unknown", None])
def test_a_status_that_cannot_be_relied_on_is_left_out(status: str | None, tmp_path: Path) -> None:
    wrong = observation(MASS, 76, "kg", "2026-05-01", status=status)
    result = imported(tmp_path, wrong, observation(MASS, 80, "kg", "2025-01-01"))
    assert result.seen[0].quantity.typed == "80 kg"
    assert any("entry[1]" in remark and "status" in remark for remark in result.remarks)
    assert "neither" not in refused(tmp_path, wrong)
    assert f"its status is {status}" in refused(tmp_path, wrong)


@pytest.mark.parametrize("status", ["final", "amended", "corrected", "preliminary"])
def test_other_statuses_are_taken(status: str, tmp_path: Path) -> None:
    (seen,) = imported(tmp_path, observation(MASS, 76, "kg", status=status)).seen
    assert seen.status == status


@pytest.mark.parametrize(
    ("more", "words"),
    [
        ({"valueQuantity": {"value": 76, "system": "http://unitsofmeasure.org", "code": "[st_av]"}},
         "kg, g, [lb_av]; got the code '[st_av]'"),
        ({"valueQuantity": {"value": 76, "unit": "kg"}}, "must be one of UCUM"),
        ({"valueQuantity": {"value": 76, "system": "http://example.org", "code": "kg"}},
         "must be one of UCUM"),
        ({"valueQuantity": {"value": 176, "system": "http://unitsofmeasure.org", "code": "cm"}},
         "the unit of a mass"),
        ({"valueQuantity": {"value": "76", "system": "http://unitsofmeasure.org", "code": "kg"}},
         "a value that is a number"),
        ({"valueQuantity": None}, "a value that is a number"),
        ({"valueQuantity": [1]}, "a value that is a number"),
        ({"valueQuantity": {"value": 76, "comparator": ">", "code": "kg",
                            "system": "http://unitsofmeasure.org"}}, "the value must be exact"),
        ({"valueQuantity": {"value": 760, "system": "http://unitsofmeasure.org", "code": "kg"}},
         "body mass must lie between 20 and 350 kg; got 760 kg"),
        ({"valueQuantity": {"value": -76, "system": "http://unitsofmeasure.org", "code": "kg"}},
         "must lie between 20 and 350 kg"),
        ({"valueQuantity": {"value": 1e300, "system": "http://unitsofmeasure.org", "code": "kg"}},
         "must be believable"),
        ({"valueQuantity": {"value": 1e-300, "system": "http://unitsofmeasure.org", "code": "kg"}},
         "must lie between 20 and 350 kg"),
        ({"effectiveDateTime": "last week"}, "effectiveDateTime: a day must be written as FHIR"),
        ({"effectiveDateTime": 2026}, "effectiveDateTime: a day must be written as FHIR"),
    ],
)  # fmt: skip
def test_what_the_newest_must_not_be(more: dict[str, Any], words: str, tmp_path: Path) -> None:
    text = refused(tmp_path, observation(MASS, 76, "kg") | more)
    assert words in text
    assert "bundle.json: entry[1].resource" in text


def test_an_older_value_with_a_strange_unit_does_not_matter(tmp_path: Path) -> None:
    old = observation(MASS, 12, "[st_av]", "2020-01-01")
    (seen,) = imported(tmp_path, old, observation(MASS, 76, "kg")).seen
    assert seen.quantity.typed == "76 kg"


def test_every_problem_is_told_at_once(tmp_path: Path) -> None:
    text = refused(tmp_path, observation(MASS, 76, "stone"), observation(HEIGHT, 17.6, "m"))
    assert "the unit of a mass" in text
    assert "body height must lie between 900 and 2300 mm; got 17.6 m" in text


def test_two_patients_are_refused(tmp_path: Path) -> None:
    other = observation(HEIGHT, 176, "cm", subject={"reference": "Patient/p2"})
    text = refused(tmp_path, observation(MASS, 76, "kg"), other)
    assert "of one patient" in text
    assert "Patient/p2" in text


def test_one_patient_may_be_referred_to_in_two_ways(tmp_path: Path) -> None:
    whole = bundle_of(
        observation(MASS, 76, "kg"),
        observation(HEIGHT, 176, "cm", subject={"reference": "urn:uuid:1234"}),
    )
    whole["entry"][0]["fullUrl"] = "urn:uuid:1234"
    result = read_height_and_mass(written(tmp_path, whole))
    assert len(result.seen) == 2
    assert result.patients == ("H-2211",)


def test_other_resources_and_codes_are_passed_over(tmp_path: Path) -> None:
    text = refused(tmp_path, observation("39156-5", 24, "kg/m2"), {"resourceType": "Device"})
    assert "the bundle must have a body height (LOINC 8302-2) or mass (29463-7)" in text


@pytest.mark.parametrize(
    ("content", "words"),
    [
        ("<Bundle/>", "bundle.json:1: the file must be JSON"),
        ('{"resourceType": "Bundle",\n "entry": [}', "bundle.json:2: the file must be JSON"),
        ("[]", "the file must hold a Bundle"),
        ('"Bundle"', "the file must hold a Bundle"),
        ('{"resourceType": "Patient"}', "got the resourceType 'Patient'"),
        ('{"resourceType": ["Bundle"]}', "the file must hold a Bundle"),
        ('{"resourceType": "Bundle", "entry": {}}', "entry: it must be a list"),
        ('{"resourceType": "Bundle", "entry": [1]}', "entry[0]: an entry must be an object"),
        ('{"resourceType": "Bundle", "entry": [{"resource": 1}]}', "entry[0].resource"),
        ('{"resourceType": "Bundle", "entry": [{"resource": {}}]}', "entry[0].resource"),
        ('{"resourceType": "Bundle", "entry": [{}]}', "the bundle must have a body height"),
        ('{"resourceType": "Bundle"}', "the bundle must have a body height"),
        ('{"resourceType": "Bundle", "resourceType": "Bundle"}', "'resourceType' twice"),
        ('{"resourceType": "Bundle", "total": NaN}', "the number NaN"),
        ('{"resourceType": "Bundle", "total": -Infinity}', "the number -Infinity"),
        ('{"resourceType": "Bundle", "total": 1e99999999999999999999}', "the number 1e9999"),
        (f'{{"resourceType": "Bundle", "total": {"9" * 50000}}}', "the number 99999"),
        ("[" * 100_000, "the file must be JSON"),
        ("", "must not be empty"),
        (" " * 5_000_001, "must not be larger than 5,000,000 bytes"),
    ],
)  # fmt: skip
def test_what_is_no_bundle(content: str, words: str, tmp_path: Path) -> None:
    with pytest.raises(InputError) as error:
        read_height_and_mass(written(tmp_path, content))
    assert words in str(error.value)


@pytest.mark.parametrize(
    "more",
    [
        {"code": None}, {"code": "x"}, {"code": {"coding": {}}}, {"code": {"coding": [None, 3]}},
        {"method": "x"}, {"method": {"coding": [None]}}, {"subject": 5}, {"subject": None},
        {"subject": {"identifier": {"value": "H-2211"}}}, {"subject": {"reference": 7}},
        {"effectivePeriod": "x"},
    ],
)  # fmt: skip
def test_odd_shapes_are_results_or_refusals_but_never_a_crash(
    more: dict[str, Any], tmp_path: Path
) -> None:
    odd = observation(MASS, 76, "kg") | more
    try:
        values = [each.quantity.value for each in imported(tmp_path, odd).seen]
    except InputError as error:
        values = [76.0] if "bundle.json" in str(error) else []
    assert values == [76.0]
