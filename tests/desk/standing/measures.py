"""Measures: sets over time, how a client moves, files."""

from __future__ import annotations

from typing import Any, cast

from django.core.files.uploadedfile import SimpleUploadedFile

from chairwright_desk.measures.models import Measuring

from ..kit.standing import Standing
from ..kit.world import EXAMPLES, World

BODY = {
    "sex": "male",
    "stature": "176 cm",
    "body_mass": "78 kg",
    "hip_width": "15 in",
    "lower_leg_length_left": "45 cm",
    "lower_leg_length_right": "45 cm",
    "elbow_height": "24.5 cm",
}


def made(world: World) -> Measuring:
    """A set of measures of AVG-001 and an older one, made once a world."""
    if "measuring" not in world.made:
        for day, mass in (("2026-03-02", "75 kg"), ("2026-11-20", "78 kg")):
            world.made["measuring"] = Measuring.objects.create(
                client=world.client, taken_on=day, fields={**BODY, "body_mass": mass}
            )
    return cast(Measuring, world.made["measuring"])


def _client(world: World) -> tuple[str]:
    made(world)
    return (world.client.pk,)


def _set(world: World) -> tuple[str, str]:
    return (world.client.pk, made(world).pk)


def _typed(_world: World) -> dict[str, Any]:
    return {**BODY, "taken_on": "2026-11-24", "alone": "mm"}


def _corrected(world: World) -> dict[str, Any]:
    made(world).refresh_from_db()
    return {**_typed(world), "revision": made(world).revision}


def _moving(_world: World) -> dict[str, Any]:
    return {"propulsion": "feet", "alone": "mm", "load_name_0": "bag", "load_mass_0": "3"}


def _file(_world: World) -> dict[str, Any]:
    raw = (EXAMPLES / "clients" / "avg-001.yaml").read_bytes()
    return {"file": SimpleUploadedFile("client.yaml", raw)}


ENTRIES = [
    Standing("measures:show", _client),
    Standing("measures:new", _client, _typed),
    Standing("measures:change", _set, _corrected),
    Standing("measures:live", _client, _typed, posted=200, look=False),
    Standing("measures:abilities", _client, _moving),
    Standing("measures:file", _client, look=False),
    Standing("measures:bring", _client, _file),
    Standing("measures:remove", _set, look=False),
]
