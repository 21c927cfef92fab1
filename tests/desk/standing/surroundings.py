"""Places of a client."""

from __future__ import annotations

from typing import Any, cast

from django.core.files.uploadedfile import SimpleUploadedFile

from chairwright_desk.surroundings.bridge.brought import places_brought
from chairwright_desk.surroundings.models import Spot

from ..kit.standing import Standing
from ..kit.world import EXAMPLES, World
from .bench import made as made_setup


def made(world: World) -> Spot:
    """The places of AVG-001, made once a world, with a set-up to stand in them."""
    if "spot" not in world.made:
        made_setup(world)
        raw = (EXAMPLES / "places" / "avg-001.yaml").read_bytes()
        _, spots, _ = places_brought(raw)
        for kind, name, fields in reversed(spots):
            world.made["spot"] = Spot.objects.create(
                client=world.client, kind=kind, name=name, fields=fields
            )
    return cast(Spot, world.made["spot"])


def _client(world: World) -> tuple[str]:
    made(world)
    return (world.client.pk,)


def _kind(world: World) -> tuple[str, str]:
    return (world.client.pk, "ramp")


def _spot(world: World) -> tuple[str, str]:
    return (world.client.pk, made(world).pk)


def _ramp(_world: World) -> dict[str, Any]:
    return {"name": "back ramp", "rise": "300", "slope": "1:12", "alone": "mm", "must": "true"}


def _door(world: World) -> dict[str, Any]:
    made(world).refresh_from_db()
    fields = {"name": "bathroom door", "clear_width": "24 in", "alone": "mm", "must": "true"}
    return {**fields, "revision": made(world).revision}


def _helpers(_world: World) -> dict[str, Any]:
    return {"helper": "yes", "carer_push_keep": "70", "own_lift": "8", "alone": "mm"}


def _file(_world: World) -> dict[str, Any]:
    raw = (EXAMPLES / "places" / "car-009.yaml").read_bytes()
    return {"file": SimpleUploadedFile("places.yaml", raw)}


ENTRIES = [
    Standing("surroundings:show", _client),
    Standing("surroundings:new", _kind, _ramp),
    Standing("surroundings:live", _kind, _ramp, posted=200, look=False),
    Standing("surroundings:change", _spot, _door),
    Standing("surroundings:remove", _spot, look=False),
    Standing("surroundings:helpers", _client, _helpers),
    Standing("surroundings:file", _client, look=False),
    Standing("surroundings:bring", _client, _file),
]
