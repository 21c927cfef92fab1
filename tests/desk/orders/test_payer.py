"""The payer's scheme: what is missing is asked for, what is told is kept, errors at the field."""

from __future__ import annotations

import re
from typing import Any

import pytest

from chairwright_desk.drafts.kept import keep
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


def words_of(told: str) -> str:
    """What a page says, its marks left off."""
    return " ".join(re.sub(r"<[^>]+>", "", told).split())


def test_the_rule_and_its_figures_stand_beside_the_class(world: World, order: Order) -> None:
    # By hand: its weakest part bears 130 kg / 0.45359237 = 286.6 lb; seat 400 mm / 25.4 = 15.75 in.
    send(world, order, "scheme", scheme="us-hcpcs")
    told = words_of(page(world, order))
    assert "Base code: K0006 heavy duty" in told
    assert "The chair's class stands" in told
    assert "Because: weight capacity 286.6 lb, is above 250 lb;" in told
    for rule in (
        "Weight capacity: 286.6 lb (least load limit of its parts), must be above 250 lb: holds. "
        "[1] restated by a secondary source",
        "seat frame width: 15.75 in (seat width S400), must be above 14 in: holds. "
        "[2] from memory, unverified",
        "Client&#x27;s weight: 172.0 lb (client file: 78 kg), must be above 250 lb: fails.",
        "Severe spasticity: not known, must be yes.",
        "[1] CMS policy article A52497, manual wheelchair bases (restated by a secondary source)",
        "K0007: weight capacity 286.6 lb, must be above 300 lb.",
    ):
        assert rule in told, rule
    send(world, order, "facts", **{"fact:severe_spasticity": "yes"})
    assert "Severe spasticity: yes" in words_of(page(world, order))


def test_every_payer_is_shown_also_before_one_is_chosen(world: World, order: Order) -> None:
    told = words_of(page(world, order))
    assert "Base code: K0006 heavy duty, because weight capacity 286.6 lb, is above 250 lb" in told
    assert "Load class: L1 up to 130 kg, because rated load 130 kg, is at most 130 kg." in told
    assert "These rules are invented for demonstration." in told
    assert "never a promise of payment" in told


def test_the_links_to_sources_lead_somewhere(world: World, order: Order) -> None:
    for scheme in ("us-hcpcs", "demo"):
        send(world, order, "scheme", scheme=scheme)
        told = page(world, order)
        named = set(re.findall(r'href="#(source-\d+)"', told))
        assert named
        assert all(told.count(f'id="{each}"') == 1 for each in named)


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


def test_a_fact_of_several_words_is_ticked_not_typed(world: World, order: Order) -> None:
    Order.objects.filter(pk=order.pk).update(scheme="us-hcpcs", facts={"extras": "tray"})

    def ticked() -> set[str]:
        boxes = re.findall(r'<input type="checkbox" name="fact:extras"[^>]*>', page(world, order))
        return {
            match[1]
            for box in boxes
            if "checked" in box and (match := re.search('value="(.*?)"', box))
        }

    assert ticked() == {"tray"}
    answer = send(world, order, "facts", **{"fact:extras": ["tray", "heel loop"]})
    assert answer.status_code == 302
    assert order.facts == {"extras": "tray, heel loop"}
    assert ticked() == {"tray", "heel loop"}
    clinician = world.people["clinician"]
    keep(clinician, f"orders.facts:{order.pk}", {"fact:extras": ["headrest", "toe loop"]})
    assert ticked() == {"headrest", "toe loop"}
