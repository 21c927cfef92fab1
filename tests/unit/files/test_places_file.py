"""Places files: what is understood, and what each mistake is answered with."""

from __future__ import annotations

import math
import re
from dataclasses import fields
from pathlib import Path

import pytest

from chairwright.errors import InputError
from chairwright.files.client import read_client
from chairwright.files.place_keys import CARER, COMMON, KEYS, OWN, PlaceKey
from chairwright.files.places import TOP_KEYS, read_places
from chairwright.places.codes import CODES, judge_all
from chairwright.places.kinds import KINDS, Boot, CrossSlope, Door, Ramp, Table
from chairwright.places.model import Carer, OwnLimits

ROOT = Path(__file__).resolve().parents[3]
PAGE = (ROOT / "docs" / "reference" / "places-file.md").read_text("utf-8")
HEAD = "format: chairwright places 1\nreference: T-1\n"
DOOR = "places:\n  - {kind: door, name: front door, clear_width: 80 cm}\n"
"""Lines 3 and 4 of a file that has nothing wrong."""


def write(folder: Path, text: str) -> Path:
    path = folder / "places.yaml"
    path.write_text(text, encoding="utf-8")
    return path


def refused(folder: Path, text: str) -> list[str]:
    path = write(folder, text)
    with pytest.raises(InputError) as caught:
        read_places(path)
    return [str(problem).removeprefix(f"{folder}/") for problem in caught.value.problems]


def test_the_least_that_a_places_file_needs(tmp_path: Path) -> None:
    path = write(tmp_path, HEAD + DOOR)
    found = read_places(path)
    assert (found.reference, found.codes, found.carer, found.note) == ("T-1", (), None, "")
    (door,) = found.places
    assert door == Door(name="front door", clear_width_mm=800.0)
    assert (door.must, door.site, door.building) == (True, "existing", "dwelling")
    assert door.where == f"{path}:4"
    assert door.typed == {"clear_width_mm": "80 cm"}
    assert found.where["places"] == f"{path}:3"


def test_units_and_words(tmp_path: Path) -> None:
    more = """\
site: new
building: public
codes: [ada_2010, ireland_tgd_m]
carer: {shoulder_height: 135 cm, limits: men, push_start: 20 kgf, push_keep: 15 lbf, lift: 27 lb}
places:
  - {kind: table, name: desk, clear_height: 27 1/2 in, knee_depth: 0.5 m, must: false}
  - kind: boot
    name: car
    opening_width: 1 m
    opening_height: 70 cm
    depth: 900 mm
    lifted_by: carer
    site: existing
"""
    found = read_places(write(tmp_path, HEAD + more))
    desk, boot = found.places
    assert isinstance(desk, Table)
    assert isinstance(boot, Boot)
    assert desk.clear_height_mm == pytest.approx(698.5, abs=1e-9)  # 27.5 in x 25.4 mm/in
    assert (desk.knee_depth_mm, desk.must, desk.site, desk.building) == (
        500,
        False,
        "new",
        "public",
    )
    assert (boot.wheels_off, boot.lifted_by, boot.site) == (True, "carer", "existing")
    assert found.codes == ("ada_2010", "ireland_tgd_m")
    carer = found.carer
    assert isinstance(carer, Carer)
    assert (carer.shoulder_height_mm, carer.limits) == (1350.0, "men")
    assert carer.push_start_n == pytest.approx(196.133, abs=1e-6)  # 20 x 9.80665
    assert carer.push_keep_n == pytest.approx(66.7233, abs=1e-4)  # 15 x 4.44822
    assert carer.lift_kg == pytest.approx(12.24699, abs=1e-5)  # 27 x 0.45359237
    assert found.of("car") is boot


def test_own_limits(tmp_path: Path) -> None:
    path = write(tmp_path, HEAD + "own: {push: 10 lbf, lift: 22 lb}\n" + DOOR)
    own = read_places(path).own
    assert own.push_n == pytest.approx(44.4822, abs=1e-4)  # 10 x 4.44822
    assert own.lift_kg == pytest.approx(9.979, abs=1e-4)  # 22 x 0.45359237
    assert own.where == {"push": f"{path}:3", "lift": f"{path}:3"}
    one = read_places(write(tmp_path, HEAD + "own: {push: 30 N}\n" + DOOR)).own
    assert one == OwnLimits(push_n=30.0)
    assert read_places(write(tmp_path, HEAD + DOOR)).own == OwnLimits()


@pytest.mark.parametrize(
    ("typed", "ratio"),
    [("1:12", 1 / 12), ("1 in 12", 1 / 12), ("'2:25'", 0.08), ("8 %", 0.08), ("8 per cent", 0.08),
     ("5 deg", math.tan(math.radians(5))), ("0 %", 0.0)],
)  # fmt: skip
def test_slopes(tmp_path: Path, typed: str, ratio: float) -> None:
    text = f"{HEAD}places:\n  - {{kind: cross_slope, name: yard, slope: {typed}}}\n"
    (way,) = read_places(write(tmp_path, text)).places
    assert isinstance(way, CrossSlope)
    assert way.slope.ratio == pytest.approx(ratio, abs=1e-12)
    assert way.slope.typed == typed.strip("'")


@pytest.mark.parametrize(
    "two", ["rise: 30 in, run: 360 in", "rise: 30 in, slope: 1:12", "run: 360 in, slope: 1:12"]
)
def test_two_of_rise_run_and_slope_give_the_third(tmp_path: Path, two: str) -> None:
    text = f"{HEAD}places:\n  - {{kind: ramp, name: ramp, {two}}}\n"
    (ramp,) = read_places(write(tmp_path, text)).places
    assert isinstance(ramp, Ramp)
    assert ramp.rise_mm == pytest.approx(762.0, abs=1e-9)
    assert ramp.run_mm == pytest.approx(9144.0, abs=1e-9)
    assert ramp.slope_deg == pytest.approx(4.7636, abs=5e-5)  # atan(1/12)


@pytest.mark.parametrize(
    ("more", "line", "part", "remedy"),
    [
        ("plcaes: []\n", 5, "got 'plcaes'", "Did you mean places?"),
        ("name: Anna\n", 5, "got 'name'", "reference number"),
        ("address: High Street\n", 5, "got 'address'", "reference number"),
        ("site: old\n", 5, "must be one of new, existing", "Known here"),
        ("codes: [ada_2100]\n", 5, "a code that is held here", "Did you mean ada_2010?"),
        ("codes: [ada_2010, ada_2010]\n", 5, "each code must stand once", "Take one out"),
        ("codes: 12\n", 5, "a code that is held here", "Known here"),
        ("carer:\n", 5, "must hold keys and values", "limits: women or men"),
        ("carer: anna\n", 5, "must hold keys and values", "Indent"),
        ("carer: {limits: woman}\n", 5, "one of women, men", "Did you mean women?"),
        ("carer: {push_keep: 70}\n", 5, "a force must be a number with a unit", "70 N"),
        ("carer: {push_keep: 70 kg}\n", 5, "a force must be a number with a unit", "70 N"),
        ("carer: {push_keep: 7000 N}\n", 5, "from 5 to 800 N", "unit"),
        ("carer: {push_start: 80 N, push_keep: 90 N}\n", 5, "push_keep must not be above", "Swap"),
        ("carer: {shoulder_height: 13 cm}\n", 5, "between 900 and 1800 mm", "unit"),
        ("carer: {lift: 90 kg}\n", 5, "between 0.5 and 60 kg", "unit"),
        ("carer: {lifts: 9 kg}\n", 5, "got 'lifts'", "Did you mean lift?"),
        ("own:\n", 5, "own must hold keys and values", "push: 60 N"),
        ("own: 60 N\n", 5, "must hold keys and values", "Indent"),
        ("own: {push: 60}\n", 5, "a force must be a number with a unit", "70 N"),
        ("own: {push: 4 N}\n", 5, "from 5 to 400 N", "unit"),
        ("own: {lift: 61 kg}\n", 5, "between 0.5 and 60 kg", "unit"),
        ("own: {pull: 60 N}\n", 5, "got 'pull'", "Known here: push, lift"),
        ("  - {kind: doors, name: a}\n", 5, "it must be one of", "Did you mean door?"),
        ("  - {kind: curb, name: a, height: 9 cm}\n", 5, "kind of place", "Did you mean kerb?"),
        ("  - {kind: elevator, name: a}\n", 5, "kind of place", "Did you mean lift?"),
        ("  - {name: a}\n", 5, "kind must be given", "Add kind"),
        ("  - {kind: kerb, height: 9 cm}\n", 5, "name must be given", "Add name"),
        ("  - {kind: kerb, name: front door, height: 9 cm}\n", 5, "a name of its own", "Add where"),
        ("  - {kind: kerb, name: a}\n", 5, "height must be given", "Add height: 82 cm"),
        ("  - {kind: kerb, name: a, height: 9}\n", 5, "a length must be a number with", "Write it"),
        ("  - {kind: kerb, name: a, height: -9 cm}\n", 5, "must not be negative", "minus"),
        ("  - {kind: kerb, name: a, height: 9 m}\n", 5, "between 5 and 400 mm; got 9 m", "unit"),
        ("  - {kind: kerb, name: a, hieght: 9 cm, height: 9 cm}\n", 5, "'hieght'", "mean height?"),
        ("  - {kind: kerb, name: a, height: 9 cm, must: yes}\n", 5, "true or false", "Write true"),
        ("  - {kind: kerb, name: a, height: 9 cm, carer: true}\n", 5, "must be described",
         "Add carer: at the top"),
        ("  - {kind: boot, name: a, opening_width: 1 m, opening_height: 1 m, depth: 1 m,"
         " lifted_by: carer}\n", 5, "must be described", "Add carer: at the top"),
        ("  - {kind: door, name: a, width: 80 cm, clear_width: 80 cm}\n", 5, "got 'width'",
         "Did you mean clear_width?"),
        ("  - {kind: door, name: a, clear_width: 80 cm, approach: corridor}\n", 5,
         "corridor_width must be given", "approach: straight"),
        ("  - {kind: door, name: a, clear_width: 80 cm, approach_side: hinge}\n", 5,
         "only with approach: corridor", "Take it out"),
        ("  - {kind: door, name: a, clear_width: 80 cm, closer: true}\n", 5,
         "an opening without a door must have no closer", "swing"),
        ("  - {kind: ramp, name: a, rise: 1 m}\n", 5, "two of rise, run and slope", "Add one"),
        ("  - {kind: ramp, name: a}\n", 5, "two of rise, run and slope; got none", "Add one"),
        ("  - {kind: ramp, name: a, rise: 1 m, run: 9 m, slope: 1:9}\n", 5, "two of rise, run",
         "Take one out"),
        ("  - {kind: ramp, name: a, rise: 1 m, run: 1 m}\n", 5, "not be steeper than 1:2", "both"),
        ("  - {kind: ramp, name: a, rise: 1 m, slope: 0 %}\n", 5, "a ramp must rise", "1:12"),
        ("  - {kind: ramp, name: a, rise: 1 m, slope: 12}\n", 5, "a slope must be", "1:12, 8 %"),
        ("  - {kind: ramp, name: a, rise: 1 m, slope: 1:0}\n", 5, "a slope must be", "1:12, 8 %"),
        ("  - {kind: ramp, name: a, rise: 1 m, slope: 90 deg}\n", 5, "a slope must be", "1:12"),
        ("  - {kind: ramp, name: a, rise: 1 m, slope: -8 %}\n", 5, "a slope must be", "1:12"),
        ("  - {kind: ramp, name: a, rise: 1 m, slope: 80 %}\n", 5, "from 0 to 0.5", "Check"),
        ("  - {kind: ramp, name: a, rise: 1 m, gradient: 8 %, run: 9 m}\n", 5, "got 'gradient'",
         "Did you mean slope?"),
        ("  - {kind: table, name: a, clear_height: 70 cm, top_height: 69 cm}\n", 5,
         "must not be below clear_height; got 690 and 700 mm", "Swap"),
        ("  - {kind: basin, name: a, clear_height: 70 cm, reach_over: 50 cm}\n", 5,
         "reach_height must be given", "Add reach_height"),
        ("  - {kind: bed, name: a, height: 50 cm, transfer: hoist, side: left}\n", 5,
         "only with transfer: side; got transfer: hoist", "transfer: side"),
        ("  - {kind: bed, name: a, height: 50 cm, transfer: jump}\n", 5, "it must be one of",
         "side, front, standing, hoist"),
        ("  - {kind: lift, name: a, door_width: 2 m, width: 1 m, depth: 1 m}\n", 5,
         "must not be wider than the lift", "Correct"),
        ("  - door\n", 5, "it must hold keys and values", "Indent"),
        ("  -\n", 5, "must hold keys and values; got nothing", "take it out"),
    ],
)  # fmt: skip
def test_each_mistake_is_answered_with_its_line_and_a_remedy(
    tmp_path: Path, more: str, line: int, part: str, remedy: str
) -> None:
    (message,) = refused(tmp_path, HEAD + DOOR + more)
    assert message.startswith(f"places.yaml:{line}: ")
    assert part in message
    assert remedy in message


@pytest.mark.parametrize(
    ("text", "line", "part"),
    [
        ("format: chairwright client 1\n" + DOOR, 1, "format: chairwright places 1"),
        ("reference: T-1\n" + DOOR, 1, "format: chairwright places 1"),
        ("format: chairwright places 1\n" + DOOR, 1, "reference must be given"),
        ("format: chairwright places 1\nreference: Anna\n" + DOOR, 2, "never a name"),
        (HEAD, 1, "at least one place"),
        (HEAD + "places: []\n", 3, "at least one place"),
        (HEAD + "places:\n", 3, "at least one place"),
        (HEAD + "places: door\n", 3, "it must be a list"),
        (HEAD + "places:\n" + "".join(f"  - {{kind: kerb, name: k{n}, height: 9 cm}}\n"
                                      for n in range(201)), 3, "at most 200 places; got 201"),
        (HEAD + "note: &a x\n" + DOOR, 3, "anchor"),
        (HEAD + DOOR + DOOR, 5, "a key must stand once"),
    ],
)  # fmt: skip
def test_a_file_that_cannot_be_meant(tmp_path: Path, text: str, line: int, part: str) -> None:
    (message, *_) = refused(tmp_path, text)
    assert message.startswith(f"places.yaml:{line}: ")
    assert part in message


def test_all_mistakes_are_told_at_once_in_the_order_of_the_lines(tmp_path: Path) -> None:
    text = """\
places:
  - {kind: kerb, name: a, height: 9 m}
  - {kind: door, name: a, clear_width: 80 cm, swing: pul}
codes: [none]
"""
    found = refused(tmp_path, HEAD + text)
    assert [message.split(": ")[0] for message in found] == [
        f"places.yaml:{line}" for line in (4, 5, 5, 6)
    ]


@pytest.mark.parametrize("kind", KINDS)
def test_every_kind_has_keys_for_what_it_holds(kind: str) -> None:
    keys = {key.attribute for key in (*KEYS[kind], *COMMON)}
    held = {each.name for each in fields(KINDS[kind])} - {"name", "reason", "where", "typed"}
    assert keys - {"slope"} == held - {"slope"}
    assert ("slope" in keys) == (kind in ("ramp", "cross_slope"))


def rows(keys: tuple[PlaceKey, ...]) -> list[str]:
    return [f"| `{k.name}` | {k.limits} | {k.left_out} | {k.meaning} |" for k in keys]


def test_the_page_lists_every_kind_and_key() -> None:
    assert list(KEYS) == list(KINDS)
    told = re.findall(r"^Kind (.*?)\. ", PAGE, re.MULTILINE)
    assert re.findall(r"`(\w+)`", " ".join(told)) == list(KINDS)
    for keys in (COMMON, CARER, OWN, *KEYS.values()):
        assert "\n".join(rows(keys)) in PAGE
    for key in TOP_KEYS:
        assert f"\n| `{key}` |" in PAGE


def test_the_page_shows_a_file_that_is_read(tmp_path: Path) -> None:
    (whole,) = re.findall(r"^```yaml\n(.*?)^```$", PAGE, re.MULTILINE | re.DOTALL)
    found = read_places(write(tmp_path, whole))
    assert [place.kind for place in found.places] == ["door", "ramp", "table"]


def test_the_codes_page_lists_every_code() -> None:
    page = (ROOT / "docs" / "reference" / "access-codes.md").read_text("utf-8")
    for code in CODES.values():
        assert f"\n| `{code.key}` | {code.title} |" in page


@pytest.mark.parametrize("path", sorted((ROOT / "examples" / "clients").glob("*.yaml")))
def test_every_example_client_has_surroundings(path: Path) -> None:
    found = read_places(ROOT / "examples" / "places" / path.name)
    assert found.reference == read_client(path).reference
    assert len(found.places) >= 5
    assert found.codes
    assert judge_all(found)
