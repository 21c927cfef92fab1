"""Targets of a client."""

from __future__ import annotations

from typing import Any, cast

from chairwright_desk.targets.models import OwnTarget, TargetChange

from ..kit.standing import Standing
from ..kit.world import World
from . import measures, surroundings

FIGURE = "overall_width_mm"


def made(world: World) -> OwnTarget:
    """A changed target of AVG-001, made once a world, with its measures and places."""
    if "target" not in world.made:
        surroundings.made(world)
        measures.made(world)
        world.made["target"] = OwnTarget.objects.create(
            client=world.client,
            figure=FIGURE,
            must=True,
            at_most="25 1/2 in",
            reason="the office door leaves 26 1/4 in",
            changed_by=world.people["clinician"],
        )
        TargetChange.objects.create(
            client=world.client,
            figure=FIGURE,
            words="must: at most 25 1/2 in",
            reason="the office door leaves 26 1/4 in",
            by=world.people["clinician"],
        )
    return cast(OwnTarget, world.made["target"])


def _client(world: World) -> tuple[str]:
    made(world)
    return (world.client.pk,)


def _figure(world: World) -> tuple[str, str, str]:
    made(world)
    return (world.client.pk, "seat_width_mm", "wish")


def _target(world: World) -> tuple[str, str]:
    return (world.client.pk, made(world).pk)


def _changed(_world: World) -> dict[str, Any]:
    return {"at_most": "42 cm", "alone": "mm", "weight": "2", "reason": "sits very firmly"}


def _new(_world: World) -> dict[str, Any]:
    return {
        "figure": "chair_mass_kg",
        "kind": "wish",
        "at_most": "13",
        "alone": "mm",
        "reason": "is lifted daily",
    }


def _rules(_world: World) -> dict[str, Any]:
    return {"rule_set": "who", "reason": "the clinic teaches it"}


ENTRIES = [
    Standing("targets:show", _client),
    Standing("targets:change", _figure, _changed),
    Standing("targets:new", _client, _new),
    Standing("targets:rules", _client, _rules),
    Standing("targets:back", _target, look=False),
]
