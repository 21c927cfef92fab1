"""Signing in, one's own account, people."""

from __future__ import annotations

from functools import partial
from typing import Any

from chairwright_desk.accounts.links import make_link

from ..kit.standing import Standing
from ..kit.world import PASSWORD, World


def _token(world: World) -> tuple[str]:
    return (make_link(world.people["clinician"]).rstrip("/").rpartition("/")[2],)


def _reader(world: World) -> tuple[str]:
    return (world.people["reader"].pk,)


def _reader_role(world: World) -> tuple[Any, ...]:
    reader = world.people["reader"]
    return (reader.pk, reader.memberships.get().pk)


def _sign_in(_world: World) -> dict[str, Any]:
    return {"name": "reader", "password": PASSWORD}


def _own(_world: World) -> dict[str, Any]:
    return {"shown": "Somebody", "units": "inch", "language": "en-us"}


def _password(_world: World) -> dict[str, Any]:
    return dict.fromkeys(("new_password", "new_password_again"), "a caster and a fork")


def _person(world: World) -> dict[str, Any]:
    return {"name": "new", "shown": "New", "team": world.team.pk, "role": "reader"}


def _role(world: World) -> dict[str, Any]:
    return {"team": world.team.pk, "role": "builder"}


_shared = partial(Standing, shared=True)
_looked_after = partial(Standing, shared=True, role="administrator")
ENTRIES = [
    _shared("home", status=302, look=False),
    _shared("accounts:sign-in", data=_sign_in),
    _shared("accounts:link", _token),
    _shared("accounts:sign-out", look=False),
    _shared("accounts:own", data=_own),
    _shared("accounts:password", data=_password, look=False),
    _looked_after("accounts:people", data=_person),
    _looked_after("accounts:person", _reader),
    _looked_after("accounts:add-role", _reader, _role, look=False),
    _looked_after("accounts:drop-role", _reader_role, look=False),
    _looked_after("accounts:entry", _reader, look=False),
    _looked_after("accounts:new-link", _reader, posted=200, look=False),
    _looked_after("audit:list"),
]
