"""Tokens, and the list of what a program may ask. The calls themselves: tests/desk/api."""

from __future__ import annotations

from typing import Any

from chairwright_desk.api.tokens import make_token

from ..kit.standing import Standing
from ..kit.world import World


def _token(world: World) -> tuple[str]:
    token, _ = make_token(world.people["clinician"], "weekly list", 30, reads_only=True)
    return (token.pk,)


def _new(_world: World) -> dict[str, Any]:
    return {"words": "weekly list", "days": "30", "may": "read"}


ENTRIES = [
    Standing("api:tokens", data=_new, shared=True, posted=200),
    Standing("api:calls", shared=True),
    Standing("api:end-token", _token, personal=True, look=False),
    Standing("api:document", shared=True, look=False),
]
