"""The bench: set-ups of a client."""

from __future__ import annotations

from typing import Any, cast

from chairwright.files.setup import read_setup
from chairwright_desk.bench.models import ClientFile, Setup

from ..kit.standing import Standing
from ..kit.world import EXAMPLES, World


def made(world: World) -> Setup:
    """A set-up of AVG-001, made once a world, with the client's files."""
    if "setup" not in world.made:
        texts = {
            f"{kind}_text": (EXAMPLES / folder / "avg-001.yaml").read_text()
            for kind, folder in (("client", "clients"), ("places", "places"))
        }
        ClientFile.objects.create(client=world.client, **texts)
        codes = read_setup(EXAMPLES / "setups" / "avg-001.yaml").choices
        for name in ("other", "setup"):
            world.made[name] = Setup.objects.create(
                client=world.client, name=f"the {name}", codes=codes
            )
    return cast(Setup, world.made["setup"])


def _client(world: World) -> tuple[str]:
    made(world)
    return (world.client.pk,)


def _setup(world: World) -> tuple[str, str]:
    return (world.client.pk, made(world).pk)


def _choice(world: World) -> tuple[str, str, str]:
    return (world.client.pk, made(world).pk, "cushion")


def _revision(world: World) -> dict[str, Any]:
    made(world).refresh_from_db()
    return {"revision": made(world).revision}


def _step(world: World) -> dict[str, Any]:
    return {**_revision(world), "pick": "cushion=Q50"}


def _name(world: World) -> dict[str, Any]:
    return {**_revision(world), "name": "shorter", "present": "on", "extras": ["EB"]}


def _new(_world: World) -> dict[str, Any]:
    return {"name": "first idea", "line": "everyday"}


def _file(world: World) -> dict[str, Any]:
    held = ClientFile.objects.get(client=world.client)
    return {"client_text": held.client_text, "places_text": "", "revision": held.revision}


ENTRIES = [
    Standing("bench:list", _client),
    Standing("bench:new", _client, _new),
    Standing("bench:file", _client, _file),
    Standing("bench:compare", _client),
    Standing("bench:show", _setup),
    Standing("bench:step", _setup, _step, look=False),
    Standing("bench:undo", _setup, _revision, look=False),
    Standing("bench:sure", _setup, look=False),
    Standing("bench:name", _setup, _name),
    Standing("bench:copy", _setup, look=False),
    Standing("bench:remove", _setup, look=False),
    Standing("bench:best", _setup, _revision, look=False),
    Standing("bench:trade", _setup),
    Standing("bench:why", _setup),
    Standing("bench:try", _choice),
]
