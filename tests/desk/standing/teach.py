"""Lessons and the bench on the demo client."""

from __future__ import annotations

from functools import partial
from typing import Any

from ..kit.standing import Standing
from ..kit.world import World


def _step(_world: World) -> tuple[str, int]:
    return ("axle", 1)


def _slug(_world: World) -> tuple[str]:
    return ("camber",)


def _answer(_world: World) -> dict[str, Any]:
    return {"answer": "0"}


def _pick(_world: World) -> dict[str, Any]:
    return {"pick": "cushion=Q50"}


_shared = partial(Standing, shared=True)
ENTRIES = [
    _shared("teach:list"),
    _shared("teach:step", _step, _answer),
    _shared("teach:again", _slug, look=False),
    _shared("teach:print", _slug),
    _shared("teach:paper", _slug, look=False),
    _shared("teach:bench"),
    _shared("teach:bench-step", data=_pick, look=False),
]
