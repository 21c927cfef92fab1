"""The payer's scheme: what is missing is asked for, what is told is kept, errors at the field."""

from __future__ import annotations

from typing import Any

import pytest

from chairwright_desk.orders.models import Order

from ..kit.world import World
from .made import client_file, order_of, paper, setup_of, text_of


@pytest.fixture
def order(world: World) -> Order:
    client_file(world)
    return order_of(world, setup_of(world))


def send(world: World, order: Order, to: str, **data: Any) -> Any:
    order.refresh_from_db()
    address = f"/orders/{order.pk}/payer/{to}/"
    answer = world.visitor("clinician").post(address, {"revision": order.revision, **data})
    order.refresh_from_db()
    return answer


def page(world: World, order: Order, role: str = "clinician") -> str:
    return str(world.visitor(role).get(f"/orders/{order.pk}/payer/").content.decode())


def test_a_fact_that_is_told_is_not_missing_any_more(world: World, order: Order) -> None:
    assert send(world, order, "scheme", scheme="us-hcpcs").status_code == 302
    told = page(world, order)
    assert "Still to find out: 8" in told  # as `chairwright payer examples/setups/avg-001.yaml`
    assert send(world, order, "facts", **{"fact:hours_a_day": "6"}).status_code == 302
    assert order.facts == {"hours_a_day": "6"}
    assert "Still to find out: 7" in page(world, order)
    assert "K00" in text_of(paper(world, order, "letter").content)


def test_a_wrong_answer_comes_back_to_its_field(world: World, order: Order) -> None:
    send(world, order, "scheme", scheme="us-hcpcs")
    answer = send(world, order, "facts", **{"fact:hours_a_day": "many"})
    assert answer.status_code == 422
    assert 'id="id_fact:hours_a_day_error"' in answer.content.decode()
    assert order.facts == {}


def test_who_may(world: World, order: Order) -> None:
    send(world, order, "scheme", scheme="us-hcpcs")
    assert "Keep what was found out" not in page(world, order, "reader")
    for role in ("reader", "builder"):
        for to in ("scheme", "facts"):
            data = {"revision": order.revision, "scheme": "demo"}
            address = f"/orders/{order.pk}/payer/{to}/"
            assert world.visitor(role).post(address, data).status_code == 403
    assert world.visitor("builder").get(f"/orders/{order.pk}/payer/").status_code == 403


def test_two_at_once(world: World, order: Order) -> None:
    seen = order.revision
    send(world, order, "scheme", scheme="us-hcpcs")
    data = {"revision": seen, "scheme": "demo"}
    answer = world.visitor("specialist").post(f"/orders/{order.pk}/payer/scheme/", data)
    assert answer.status_code == 409
