"""Orders, their papers and price lists."""

from __future__ import annotations

from typing import Any, cast

from django.urls import reverse

from chairwright_desk.orders.models import Order, PaperPack, PriceText

from ..kit.standing import Standing
from ..kit.world import EXAMPLES, World
from .bench import made as made_setup

PRICES = (EXAMPLES / "orders" / "everyday-2026.yaml").read_text()


def made(world: World) -> Order:
    """An order of AVG-001, made once a world through its page, with everything accepted."""
    if "order" not in world.made:
        setup, visitor = made_setup(world), world.visitor("clinician")
        data = {"setup": setup.pk, "number": "N-17", "dated": "2026-11-25", "prices": ""}
        answer = visitor.post(reverse("orders:new", args=[world.client.pk]), data)
        assert answer.status_code == 302, answer.content.decode()[:3000]
        world.made["order"] = Order.objects.get(client=world.client, number="N-17")
    order = cast(Order, world.made["order"])
    order.refresh_from_db()
    return order


def in_status(world: World, status: str) -> Order:
    """The same order, put into a status."""
    order = made(world)
    Order.objects.filter(pk=order.pk).update(status=status, waiting=0)
    return made(world)


def _client(world: World) -> tuple[str]:
    made(world)
    return (world.client.pk,)


def _shared(world: World) -> tuple[()]:
    made(world)
    PriceText.objects.create(team=world.team, name="summer", text=PRICES)
    return ()


def _order(world: World) -> tuple[str]:
    return (made(world).pk,)


def _ordered(world: World) -> tuple[str]:
    return (in_status(world, "ordered").pk,)


def _revision(world: World) -> tuple[str, int]:
    return (made(world).pk, 1)


def _paper(world: World) -> tuple[str, int, str]:
    return (made(world).pk, 1, "build-sheet")


def _file(world: World) -> tuple[str, int, str]:
    return (made(world).pk, 1, "parts")


def _pack(world: World) -> tuple[str, str]:
    order = made(world)
    pack = PaperPack.objects.create(order=order, number=1, owner=world.people["clinician"],
                                    names=["letter"], content=b"PK")  # fmt: skip
    return order.pk, pack.pk


def _adjust(world: World) -> tuple[str, str]:
    return (made(world).pk, cast(Any, world.made["other"]).pk)


def _prices(world: World) -> tuple[str]:
    found = PriceText.objects.create(team=world.team, name="winter", text=PRICES)
    return (found.pk,)


def _new(world: World) -> dict[str, Any]:
    return {"setup": made_setup(world).pk, "number": "N-18", "dated": "2026-11-26", "prices": ""}


def _change(world: World) -> dict[str, Any]:
    return {**_new(world), "number": "N-19", "revision": made(world).revision}


def _accept(world: World) -> dict[str, Any]:
    return {"by": "R. Amadi", "revision": made(world).revision}


def _step(world: World) -> dict[str, Any]:
    return {"to": "building", "revision": made(world).revision}


def _scheme(world: World) -> dict[str, Any]:
    return {"scheme": "demo", "revision": made(world).revision}


def _with_scheme(world: World) -> tuple[str]:
    order = made(world)
    Order.objects.filter(pk=order.pk).update(scheme="us-hcpcs")
    return (order.pk,)


def _facts(world: World) -> dict[str, Any]:
    return {"revision": made(world).revision}


def _list(_world: World) -> dict[str, Any]:
    return {"name": "winter 2026", "text": PRICES}


ENTRIES = [
    Standing("orders:of-client", _client),
    Standing("orders:new", _client, _new),
    Standing("orders:list", _shared, shared=True),
    Standing("orders:prices", _shared, _list, shared=True),
    Standing("orders:drop-prices", _prices, look=False),
    Standing("orders:show", _order),
    Standing("orders:step", _ordered, _step, look=False),
    Standing("orders:accept", _order, _accept, posted=200),
    Standing("orders:change", _order, _change),
    Standing("orders:payer", _with_scheme),
    Standing("orders:scheme", _order, _scheme, look=False),
    Standing("orders:facts", _with_scheme, _facts, look=False),
    Standing("orders:adjust", _order),
    Standing("orders:adjust-sheet", _adjust, look=False),
    Standing("orders:revision", _revision),
    Standing("orders:paper", _paper, look=False),
    Standing("orders:pack", _revision),
    Standing("orders:pack-file", _pack, look=False, personal=True),
    Standing("orders:export", _file, look=False),
]
