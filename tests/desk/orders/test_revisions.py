"""A change is a new revision; the old one stays as it was."""

from __future__ import annotations

import json
from typing import Any

import pytest
from django.urls import reverse

from chairwright_desk.bench.models import ClientFile
from chairwright_desk.drafts.kept import keep
from chairwright_desk.orders.bridge import EXPORTS
from chairwright_desk.orders.making import worked_of
from chairwright_desk.orders.models import Order, OrderRevision

from ..kit.world import World
from ..standing.chair_now import readings
from .made import client_file, order_of, price_list, setup_of, step, text_of


@pytest.fixture
def order(world: World) -> Order:
    client_file(world)
    return order_of(world, setup_of(world))


def change(world: World, order: Order, role: str = "clinician", **more: Any) -> Any:
    row = OrderRevision.objects.get(order=order, number=order.latest)
    data = {"setup": row.setup, "number": order.number, "dated": order.dated.isoformat(),
            "prices": "", "revision": order.revision, **more}  # fmt: skip
    return world.visitor(role).post(reverse("orders:change", args=[order.pk]), data)


def pdf(world: World, order: Order, number: int, name: str = "order", size: str = "a4") -> bytes:
    address = reverse("orders:paper", args=[order.pk, number, name])
    answer = world.visitor("clinician").get(address, {"size": size, "units": "mm"})
    assert answer.headers["Content-Type"] == "application/pdf"
    return bytes(answer.content)


def test_the_price_and_the_days_are_those_of_the_example(world: World) -> None:
    # examples/orders/avg-001-order.yaml and tests/hand/test_order.py: 810.70 EUR, 20 days.
    client_file(world)
    order = order_of(world, setup_of(world), price_list(world))
    assert (order.total, order.currency, order.days) == ("810.70", "EUR", 20)
    assert str(order.promised) == "2026-08-23"
    page = world.visitor("clinician").get(f"/orders/{order.pk}/").content.decode()
    assert "810.70 EUR" in page


def test_a_change_is_a_revision_and_says_what_changed(world: World, order: Order) -> None:
    step(world, order, "quoted")
    before = pdf(world, order, 1)
    other = setup_of(world, "shorter", finish="FB")
    assert change(world, order, setup=other.pk).status_code == 302
    order.refresh_from_db()
    assert (order.latest, order.status, order.setup_name) == (2, "draft", "shorter")
    page = world.visitor("clinician").get(f"/orders/{order.pk}/").content.decode()
    assert "What revision 2 changed" in page
    assert "FG" in page
    assert "<td>FB, " in page
    assert pdf(world, order, 1) == before
    assert "revision 2" in text_of(pdf(world, order, 2)).lower()


def test_the_bench_and_the_client_file_do_not_reach_a_revision(world: World, order: Order) -> None:
    before = {n: pdf(world, order, 1, n) for n in ("order", "letter", "handover", "set-up-sheet")}
    held = ClientFile.objects.get(client=world.client)
    held.client_text = held.client_text.replace("mass: 78 kg", "mass: 95 kg")
    held.save()
    world.client.setups.update(codes={}, name="emptied")
    for name, content in before.items():
        assert pdf(world, order, 1, name) == content, name


def test_a_revision_gives_the_same_files_as_it_gave_when_it_counted(
    world: World, order: Order
) -> None:
    def whole(number: int) -> Any:
        address = reverse("orders:export", args=[order.pk, number, "json"])
        return json.loads(world.visitor("clinician").get(address).content)

    before = whole(1)
    assert before["order"]["revision"] == 1
    change(world, order, setup=setup_of(world, "blue", finish="FB").pk)
    assert whole(1) == before
    assert whole(2) != before
    for role, kinds in (("clinician", set(EXPORTS)), ("builder", {"parts", "dxf"})):
        page = world.visitor(role).get(f"/orders/{order.pk}/revision/1/").content.decode()
        links = {kind: reverse("orders:export", args=[order.pk, 1, kind]) for kind in EXPORTS}
        assert {kind for kind, link in links.items() if link in page} == kinds


def test_measures_that_changed_make_a_revision(world: World, order: Order) -> None:
    held = ClientFile.objects.get(client=world.client)
    held.client_text += "\n# measured again\n"
    held.save()
    assert change(world, order).status_code == 302
    order.refresh_from_db()
    row = OrderRevision.objects.get(order=order, number=2)
    assert row.changes == [["Measures and targets", "as in revision 1", "as on file now"]]
    assert "revision 2" in text_of(pdf(world, order, 2)).lower()


def test_nothing_differs_nothing_is_saved(world: World, order: Order) -> None:
    answer = change(world, order)
    assert answer.status_code == 302
    order.refresh_from_db()
    assert (order.latest, order.revision) == (1, 1)


def test_two_people_change_the_same_order(world: World, order: Order) -> None:
    seen = order.revision
    assert change(world, order, number="N-2").status_code == 302
    answer = change(world, order, "specialist", number="N-3", revision=seen)
    assert answer.status_code == 409
    told = answer.content.decode()
    assert "N-2" in told
    assert "N-3" in told
    order.refresh_from_db()
    assert (order.number, order.latest) == ("N-2", 2)
    assert change(world, order, "specialist", number="N-3").status_code == 302
    order.refresh_from_db()
    assert (order.number, order.latest) == ("N-3", 3)


def test_the_build_has_begun(world: World, order: Order) -> None:
    Order.objects.filter(pk=order.pk).update(status="building")
    order.refresh_from_db()
    answer = change(world, order, number="N-2")
    assert answer.status_code == 200
    assert "The build has begun" in answer.content.decode()


def test_what_cannot_be_ordered_is_said_beside_its_field(world: World, order: Order) -> None:
    wrong = setup_of(world, "wrong", seat_width="S560")  # the line's rule: double cross-brace
    told = change(world, order, setup=wrong.pk).content.decode()
    assert 'id="id_setup_error"' in told
    assert "double" in told
    prices = price_list(world)
    prices.text = prices.text.replace("cushion.Q75", "cushion.Q99")
    prices.save()
    told = change(world, order, prices=prices.pk).content.decode()
    assert 'id="id_prices_error"' in told
    assert "winter:15: prices" in told
    order_of(world, setup_of(world), number="N-7")
    told = change(world, order, number="N-7").content.decode()
    assert 'id="id_number_error"' in told
    order.refresh_from_db()
    assert order.latest == 1


def test_an_order_without_measures_and_of_anothers_set_up(world: World) -> None:
    setup = setup_of(world)
    address = reverse("orders:new", args=[world.client.pk])
    data = {"setup": setup.pk, "number": "N-1", "dated": "2026-08-03", "prices": ""}
    told = world.visitor("clinician").post(address, data).content.decode()
    assert "needs the client&#x27;s measures" in told
    setup.client = world.add_client("TAL-002")
    setup.save()
    told = world.visitor("clinician").post(address, data).content.decode()
    assert not Order.objects.exists()


def test_an_order_takes_the_client_as_weighed_and_says_when_that_changed(world: World) -> None:
    client_file(world)
    order = order_of(world, setup_of(world))
    first = OrderRevision.objects.get(order=order, number=1)
    assert first.written["pads"] is None
    data = {**readings(), "weighed_on": "2026-11-25", "setup": first.setup, "loads_on": "on",
            "in_use": "on", "revision": 0}  # fmt: skip
    world.visitor("clinician").post(reverse("chair_now:weigh", args=[world.client.pk]), data)
    change(world, order)
    order.refresh_from_db()
    second = OrderRevision.objects.get(order=order, number=2)
    _, worked = worked_of(order)
    assert worked.person.weighed is not None
    assert worked_of(order, 1)[1].person.weighed is None
    assert "Weighing" in {label for label, _, _ in second.changes}
    assert "measured on the scales" in text_of(pdf(world, order, 2, "set-up-sheet"))
    assert "measured on the scales" not in text_of(pdf(world, order, 1, "set-up-sheet"))


def test_from_the_bench_to_a_new_order_of_the_set_up_shown_and_back(world: World) -> None:
    client_file(world)
    setup, other = setup_of(world), setup_of(world, "later idea")
    present = setup_of(world, "as it is")
    type(present).objects.filter(pk=present.pk).update(present=True)
    visitor = world.visitor("clinician")
    link = f"{reverse('orders:new', args=[world.client.pk])}?setup={setup.pk}"
    bench = visitor.get(reverse("bench:show", args=[world.client.pk, setup.pk])).content.decode()
    assert f'href="{link}"' in bench
    keep(world.people["clinician"], f"orders.new:{world.client.pk}", {"setup": [other.pk]})
    assert f'<option value="{setup.pk}" selected>' in visitor.get(link).content.decode()
    for role, shown in (("builder", setup), ("reader", setup), ("clinician", present)):
        address = reverse("bench:show", args=[world.client.pk, shown.pk])
        assert "?setup=" not in world.visitor(role).get(address).content.decode(), role
    order = order_of(world, setup)
    back = f'href="{reverse("bench:show", args=[world.client.pk, setup.pk])}"'
    for address in (f"/orders/{order.pk}/", f"/orders/{order.pk}/revision/1/"):
        told = visitor.get(address).content.decode()
        assert back in told
        assert "as on the bench now" in told
    type(setup).objects.filter(pk=setup.pk).update(codes={**setup.codes, "finish": "FB"})
    assert "has changed on the bench since" in visitor.get(f"/orders/{order.pk}/").content.decode()
    setup.delete()
    told = visitor.get(f"/orders/{order.pk}/").content.decode()
    assert back not in told
    assert "not kept on the bench any more" in told
