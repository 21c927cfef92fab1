"""Client and places files: text and JSON, there and back; two at once; mistakes by line."""

from __future__ import annotations

import json
from typing import Any

from ruamel.yaml import YAML

from chairwright_desk.api.calls.files import _given
from chairwright_desk.audit.models import Entry
from chairwright_desk.measures.models import Measuring
from chairwright_desk.surroundings.models import Spot

from ..kit.world import EXAMPLES, World


def _call(world: World, method: str, part: str, **sent: Any) -> Any:
    visitor = world.visitor("clinician")
    address = f"/api/clients/{world.client.pk}/{part}"
    return visitor.generic(method, address, json.dumps(sent), content_type="application/json")


def _text(kind: str) -> str:
    return (EXAMPLES / kind / "avg-001.yaml").read_text("utf-8")


def test_measures_go_in_as_text_and_come_back(world: World) -> None:
    assert _call(world, "GET", "measures").json() == {"text": "", "revision": 0}
    answer = _call(world, "PUT", "measures", revision=0, text=_text("clients"))
    assert answer.status_code == 200, answer.content
    told = answer.json()
    assert told == _call(world, "GET", "measures").json()
    again = _call(world, "PUT", "measures", **told)
    assert again.json() == told, "what comes out goes in again as the same"
    assert Measuring.objects.filter(client=world.client).count() == 2
    assert Entry.objects.filter(kind="change", record_kind="measures.measuring").count() == 2


def test_measures_go_in_as_json(world: World) -> None:
    by_text = _call(world, "PUT", "measures", revision=0, text=_text("clients")).json()
    plain = json.loads(json.dumps(YAML(typ="safe").load(_text("clients")), default=str))
    other = world.add_client("AVG-002")
    address = f"/api/clients/{other.pk}/measures"
    sent = json.dumps({"revision": 0, "file": plain})
    visitor = world.visitor("clinician")
    answer = visitor.put(address, sent, content_type="application/json")
    assert answer.status_code == 200, answer.content
    assert answer.json()["text"] == by_text["text"].replace("AVG-001", "AVG-002")


def test_an_older_revision_is_told_both_versions(world: World) -> None:
    first = _call(world, "PUT", "measures", revision=0, text=_text("clients")).json()
    answer = _call(world, "PUT", "measures", revision=0, text=_text("clients"))
    assert answer.status_code == 409
    told = answer.json()
    assert told["saved"] == first
    assert told["yours"] == {"text": _text("clients")}
    assert Measuring.objects.filter(client=world.client).count() == 1


def test_a_mistake_is_told_by_its_line_and_keeps_nothing(world: World) -> None:
    broken = _text("clients").replace("format: chairwright client 1", "format: another")
    told = _call(world, "PUT", "measures", revision=0, text=broken)
    assert told.status_code == 422
    assert told.json()["problems"][0]["where"].startswith("file:")
    assert not Measuring.objects.filter(client=world.client).exists()
    both = _call(world, "PUT", "measures", revision=0, text="a", file={})
    assert both.status_code == 422
    assert _call(world, "PUT", "measures", revision=0).status_code == 422


def test_places_become_those_of_the_file(world: World) -> None:
    _call(world, "PUT", "measures", revision=0, text=_text("clients"))
    told = _call(world, "PUT", "surroundings", revision=0, text=_text("places")).json()
    names = list(Spot.objects.filter(client=world.client).values_list("name", "pk"))
    assert names
    assert _call(world, "PUT", "surroundings", **told).json() == told
    assert list(Spot.objects.filter(client=world.client).values_list("name", "pk")) == names
    fewer = YAML(typ="safe").load(told["text"])
    fewer["places"] = fewer["places"][:1]
    answer = _call(
        world, "PUT", "surroundings", revision=told["revision"],
        file=json.loads(json.dumps(fewer, default=str)),
    )  # fmt: skip
    assert answer.status_code == 200, answer.content
    assert Spot.objects.filter(client=world.client).count() == 1
    assert Entry.objects.filter(kind="removal", record_kind="surroundings.spot").exists()


def test_places_put_before_any_measures_are_read_back(world: World) -> None:
    told = _call(world, "PUT", "surroundings", revision=0, text=_text("places")).json()
    assert told["text"]
    assert told["revision"] > 0
    assert _call(world, "GET", "surroundings").json() == told
    assert _call(world, "GET", "measures").json() == {"text": "", "revision": 0}
    late = _call(world, "PUT", "surroundings", revision=0, text=_text("places"))
    assert late.status_code == 409, "what stands is not overwritten unseen"
    _call(world, "PUT", "measures", revision=0, text=_text("clients"))
    assert _call(world, "GET", "surroundings").json() == told, "measures do not change places"


def test_a_change_on_the_pages_is_a_new_revision(world: World) -> None:
    first = _call(world, "PUT", "measures", revision=0, text=_text("clients")).json()
    held = Measuring.objects.get(client=world.client)
    (mass,) = (name for name, typed in held.fields.items() if typed.endswith(" kg"))
    Measuring.objects.filter(pk=held.pk).update(fields={**held.fields, mass: "91 kg"})
    assert _given(world.client, "client").revision != first["revision"]
