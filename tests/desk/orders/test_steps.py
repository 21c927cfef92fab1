"""Steps from draft to review: only those of the table, each by who may, each written down."""

from __future__ import annotations

from datetime import date, timedelta

import pytest
from django.utils import timezone

from chairwright_desk.audit.models import Entry
from chairwright_desk.orders.models import Order, OrderStep
from chairwright_desk.orders.statuses import RULES, Status, rule_of

from ..kit.world import World
from .made import client_file, order_of, setup_of, step

ON = ["quoted", "accepted", "ordered", "building", "built", "delivered", "review due", "closed"]


@pytest.fixture
def order(world: World) -> Order:
    client_file(world)
    return order_of(world, setup_of(world))


def test_every_status_is_come_to_and_none_twice_in_the_table() -> None:
    pairs = [(rule.before, rule.after) for rule in RULES]
    assert len(pairs) == len(set(pairs))
    reached, left = {Status.DRAFT}, True
    while left:
        more = {after for before, after in pairs if before in reached} - reached
        reached, left = reached | more, bool(more)
    assert reached == set(Status)
    assert all(rule.before != Status.CLOSED for rule in RULES)


def test_the_whole_way_with_who_and_when(world: World, order: Order) -> None:
    asks = {"ordered": "2026-09-01", "delivered": "2026-08-31"}
    for to in ON:
        role = "builder" if to in ("building", "built") else "clinician"
        given = {"day": asks[to]} if to in asks else {}
        assert step(world, order, to, role, **given).status_code == 302, to
        assert order.status == to
    taken = OrderStep.objects.filter(order=order)
    assert taken.get(after="ordered").words == "Promised for 1 Sep 2026."
    assert [each.after for each in taken] == ["draft", *ON]
    assert [each.by.shown for each in taken if each.after in ("building", "built")] == [
        "Builder", "Builder",
    ]  # fmt: skip
    lines = Entry.objects.filter(record=order.pk, kind="change")
    assert sum("status" in each.fields for each in lines) == 1 + len(ON)
    page = world.visitor("clinician").get(f"/orders/{order.pk}/").content.decode()
    assert page.count("<td>Builder</td>") == 2


def test_the_review_is_six_months_after_delivery(world: World, order: Order) -> None:
    # Handover rule: a first chair is reviewed after 6 to 12 months; 31 August and six months is
    # 28 February 2027, by hand: February has no 31st.
    Order.objects.filter(pk=order.pk).update(status="built")
    assert step(world, order, "delivered", day="2026-08-31", serial="S-9").status_code == 302
    assert (order.delivered, order.review_due) == (date(2026, 8, 31), date(2027, 2, 28))
    assert order.serial == "S-9"
    assert OrderStep.objects.get(order=order, after="delivered").words == (
        "Delivered on 31 Aug 2026. A first chair is reviewed after the first 6 to 12 months, says "
        "NSW, Spinal Seating, Module 9; that rule was read in the source."
    )


def test_a_review_that_is_due_is_said_in_the_list(world: World, order: Order) -> None:
    today = timezone.localdate()
    Order.objects.filter(pk=order.pk).update(status="delivered", review_due=today)
    visitor = world.visitor("clinician")
    assert "What is due" in visitor.get("/orders/").content.decode()
    Order.objects.filter(pk=order.pk).update(review_due=today + timedelta(days=31))
    assert "What is due" not in visitor.get("/orders/").content.decode()


def test_no_step_beside_the_table(world: World, order: Order) -> None:
    for before in Status:
        for after in Status:
            if rule_of(before, after) is None:
                Order.objects.filter(pk=order.pk).update(status=before)
                step(world, order, after, day="2026-08-31")
                assert order.status == before, (before, after)
    assert OrderStep.objects.filter(order=order).count() == 1


def test_a_builder_takes_the_steps_of_the_workshop_only(world: World, order: Order) -> None:
    for rule in RULES:
        Order.objects.filter(pk=order.pk).update(status=rule.before)
        answer = step(world, order, rule.after, "builder", day="2026-08-31")
        mine = rule.action == "order.build"
        assert answer.status_code == (302 if mine else 403), rule
        assert order.status == (rule.after if mine else rule.before)


def test_delivery_is_not_still_to_come(world: World, order: Order) -> None:
    Order.objects.filter(pk=order.pk).update(status="built")
    late = (timezone.localdate() + timedelta(days=1)).isoformat()
    for day, words in (
        (late, "still to come"),
        ("", "required"),
        ("31.8.", "valid date"),
        ("0001-01-01", "Look at the year"),
    ):
        answer = step(world, order, "delivered", day=day)
        assert answer.status_code == 422
        assert words in answer.content.decode()
        assert order.status == "built"


def test_two_people_take_a_step_at_once(world: World, order: Order) -> None:
    seen = order.revision
    assert step(world, order, "quoted").status_code == 302
    data = {"to": "closed", "revision": seen}
    answer = world.visitor("specialist").post(f"/orders/{order.pk}/step/", data)
    assert answer.status_code == 409
    told = answer.content.decode()
    assert "Clinician saved revision" in told
    assert "closed" in told
    order.refresh_from_db()
    assert order.status == "quoted"
    again = {"to": "closed", "revision": order.revision}  # what "save yours" sends
    assert world.visitor("specialist").post(f"/orders/{order.pk}/step/", again).status_code == 302


def test_the_workshop_sees_number_and_reference_and_its_own_orders(
    world: World, order: Order
) -> None:
    builder = world.visitor("builder")
    assert "N-1" not in builder.get("/orders/").content.decode()
    Order.objects.filter(pk=order.pk).update(status="ordered")
    told = builder.get("/orders/").content.decode()
    assert "N-1" in told
    assert "AVG-001" in told
    assert "N-1" in builder.get("/orders/?status=all").content.decode()
    Order.objects.filter(pk=order.pk).update(promised=None)
    assert "N-1" not in builder.get("/orders/?status=draft").content.decode()
