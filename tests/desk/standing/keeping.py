"""Export, removal, dates."""

from __future__ import annotations

from typing import Any

from ..kit.standing import Standing
from ..kit.world import World


def _client(world: World) -> tuple[str]:
    return (world.client.pk,)


def _reference(world: World) -> dict[str, Any]:
    return {"reference": world.client.reference}


ENTRIES = [
    Standing("keeping:past", shared=True),
    Standing("keeping:show", _client),
    Standing("keeping:export", _client, posted=200, look=False),
    Standing("keeping:remove", _client, _reference),
]
