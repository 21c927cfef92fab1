"""Clients and drafts."""

from __future__ import annotations

from typing import Any

from ..kit.standing import Standing
from ..kit.world import World


def _client(world: World) -> tuple[str]:
    return (world.client.pk,)


def _new(world: World) -> dict[str, Any]:
    return {"reference": "TAL-002", "team": world.team.pk, "keep_until": "2031-01-01"}


def _change(world: World) -> dict[str, Any]:
    return {"reference": "AVG-001", "keep_until": "2032-01-01", "revision": world.client.revision}


def _who(world: World) -> dict[str, Any]:
    return {"name": "Ada Pflaume", "born": "1960-05-06", "diagnosis": "", "revision": 1}


def _key(_world: World) -> tuple[str]:
    return ("clients.new",)


def _left(_world: World) -> tuple[str, str]:
    return ("clients.new", "m1")


ENTRIES = [
    Standing("clients:list", shared=True, posted=200),
    Standing("clients:new", data=_new, shared=True),
    Standing("clients:show", _client),
    Standing("clients:change", _client, _change),
    Standing("clients:who", _client),
    Standing("clients:change-who", _client, _who),
    Standing("drafts:keep", _key, shared=True, look=False),
    Standing("drafts:left", _left, shared=True, look=False),
    Standing("drafts:forget", _key, shared=True, look=False),
]
