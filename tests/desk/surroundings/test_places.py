"""Places: every example comes back as it was, mistakes come back to their field, pictures."""

from __future__ import annotations

import re
from pathlib import Path
from typing import Any

import pytest
from django.core.files.uploadedfile import SimpleUploadedFile
from django.urls import reverse

from chairwright.files.place_keys import KEYS
from chairwright.files.places import read_places
from chairwright.places.model import Surroundings
from chairwright.reading import FileText
from chairwright_desk.bench.models import Setup
from chairwright_desk.surroundings.bridge import keys_of, picture_of
from chairwright_desk.surroundings.bridge.brought import places_brought
from chairwright_desk.surroundings.models import Helpers, Spot
from chairwright_desk.surroundings.text import written
from chairwright_desk.surroundings.texts import places_text

from ..kit.world import EXAMPLES, World
from ..standing.surroundings import made

FILES = sorted((EXAMPLES / "places").glob("*.yaml"))
SEAT = {"height": "50 cm", "transfer": "side"}
BOOT = {"opening_width": "1 m", "opening_height": "80 cm", "depth": "1 m", "lifted_by": "self"}
GOOD: dict[str, dict[str, str]] = {
    "door": {"clear_width": "82 cm"},
    "corridor": {"width": "105 cm"},
    "corner": {"width_in": "105 cm", "width_out": "95 cm"},
    "room": {"width": "165 cm", "depth": "190 cm"},
    "ramp": {"rise": "30 cm", "slope": "1:12"},
    "cross_slope": {"slope": "2 %"},
    "threshold": {"height": "15 mm"},
    "kerb": {"height": "60 mm"},
    "table": {"clear_height": "71 cm"},
    "basin": {"clear_height": "70 cm"},
    **dict.fromkeys(("bed", "toilet", "seat", "car_seat"), SEAT),
    "boot": BOOT,
    "lift": {"door_width": "80 cm", "width": "110 cm", "depth": "140 cm"},
}


def told(found: Surroundings) -> dict[str, Any]:
    """What a places file says, apart from lines and from how a limit was typed."""

    def plain(thing: Any) -> Any:
        skipped = ("where", "typed")
        return None if thing is None else {k: v for k, v in vars(thing).items() if k not in skipped}

    places = [(type(place).__name__, plain(place)) for place in found.places]
    return {"places": places, "carer": plain(found.carer), "own": plain(found.own),
            "codes": found.codes, "note": found.note, "reference": found.reference}  # fmt: skip


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_an_example_comes_back_as_it_was(path: Path) -> None:
    before = read_places(path)
    around, spots, troubles = places_brought(path.read_bytes())
    assert troubles == []
    after = read_places(FileText("places", written(before.reference, around, spots).text))
    assert told(after) == told(before)


def test_every_kind_that_the_engineering_knows_has_a_form() -> None:
    assert set(GOOD) == set(KEYS)


def post(world: World, view: str, data: dict[str, Any], *more: str) -> Any:
    address = reverse(f"surroundings:{view}", args=[world.client.pk, *more])
    return world.visitor("clinician").post(address, {"alone": "mm", "must": "true", **data})


@pytest.mark.parametrize("kind", GOOD)
def test_every_kind_is_added_drawn_and_read(kind: str, world: World) -> None:
    assert post(world, "new", {"name": f"the {kind}", **GOOD[kind]}, kind).status_code == 302
    found = read_places(FileText("places", str(places_text(world.client))))
    assert [place.kind for place in found.places] == [kind]
    page = world.visitor("builder").get(reverse("surroundings:show", args=[world.client.pk]))
    assert f'id="place-{Spot.objects.get().pk}-place"' in page.content.decode()


@pytest.mark.parametrize("kind", GOOD)
def test_a_bad_value_is_said_at_its_field_and_nothing_typed_is_lost(
    kind: str, world: World
) -> None:
    for key in keys_of(kind):
        if key.sort in ("word", "flag"):
            continue
        data = {**GOOD[kind], key.name: "about so"}
        if kind == "ramp" and key.name == "run":
            data.pop("slope")
        answer = post(world, "new", {"name": "a place", **data}, kind)
        assert answer.status_code == 200, key.name
        told = answer.content.decode()
        assert f'id="id_{key.name}_error"' in told, key.name
        assert 'value="about so"' in told
    assert not Spot.objects.exists()


def test_contradictions_are_said_at_the_field_that_causes_them(world: World) -> None:
    cases = [
        ("ramp", {"rise": "300"}, "rise"),
        ("door", {"clear_width": "820", "approach": "corridor"}, "approach"),
        ("kerb", {"height": "60", "carer": "true"}, "carer"),
        ("bed", {"height": "500", "transfer": "hoist", "side": "left"}, "side"),
        ("lift", {"door_width": "2000", "width": "1100", "depth": "1400"}, "door_width"),
    ]
    for kind, data, field in cases:
        answer = post(world, "new", {"name": "a place", **data}, kind).content.decode()
        assert f'id="id_{field}_error"' in answer, (kind, field)


def test_two_places_may_not_have_one_name(world: World) -> None:
    made(world)
    answer = post(world, "new", {"name": "bathroom door", "clear_width": "800"}, "door")
    assert "There is a place of this name already" in answer.content.decode()


def test_a_carer_is_described_once_and_may_then_help(world: World) -> None:
    assert post(world, "helpers", {"helper": "yes", "carer_push_keep": "16 lbf"}).status_code == 302
    assert Helpers.objects.get().fields["carer_push_keep"] == "16 lbf"
    data = {"name": "kerb", "height": "60", "carer": "true"}
    assert post(world, "new", data, "kerb").status_code == 302
    wrong = post(world, "helpers", {"helper": "yes", "carer_push_start": "5000"})
    assert 'id="id_carer_push_start_error"' in wrong.content.decode()


def test_a_file_adds_places_and_leaves_those_of_the_same_name(world: World) -> None:
    made(world)
    raw = (EXAMPLES / "places" / "avg-001.yaml").read_bytes()
    before = Spot.objects.count()
    assert post(world, "bring", {"file": SimpleUploadedFile("p.yaml", raw)}).status_code == 302
    assert Spot.objects.count() == before
    bad = SimpleUploadedFile(
        "p.yaml", b"format: chairwright places 1\nreference: A-1\nplaces: []\n"
    )
    assert "at least one place" in post(world, "bring", {"file": bad}).content.decode()


def test_the_chair_is_shown_in_the_place_when_there_is_a_set_up(world: World) -> None:
    made(world)
    door = Spot.objects.get(name="bathroom door")
    address = reverse("surroundings:change", args=[world.client.pk, door.pk])
    assert "The newest set-up in it" in world.visitor("clinician").get(address).content.decode()
    Setup.objects.all().delete()
    assert "The newest set-up" not in world.visitor("clinician").get(address).content.decode()


def test_the_picture_is_to_scale() -> None:
    """By hand: a room of 2.00 m by 3.00 m is drawn half as wide again as it is deep, to scale."""
    text = written("X-1", {}, [("room", "hall", {"width": "3 m", "depth": "2 m"})]).text
    svg = picture_of(text, "mm", "p")
    (points,) = re.findall(r'<polygon points="([^"]+)"[^>]*stroke-width="0.5"', svg)
    flat = [float(each) for each in re.split(r"[ ,]", points)]
    xs, ys = flat[0::2], flat[1::2]
    assert (max(xs) - min(xs)) / (max(ys) - min(ys)) == pytest.approx(1.5, abs=0.001)
    assert ">3000<" in svg
    assert ">2000<" in svg


def test_limits_of_a_length_are_said_in_millimetres_and_inches() -> None:
    """300 / 25.4 = 11.81 and 3000 / 25.4 = 118.11: rounded inward, 11.9 and 118.1."""
    (width,) = (key for key in keys_of("door") if key.name == "clear_width")
    assert "300 to 3000 mm (11.9 to 118.1 in)" in width.help
    (slope,) = (key for key in keys_of("ramp") if key.name == "slope")
    assert " in)" not in slope.help
