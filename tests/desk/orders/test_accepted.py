"""What fails is accepted by name; a private reason leaves the page for nothing."""

from __future__ import annotations

import io
import zipfile
from typing import Any

import pytest
from django.urls import reverse

from chairwright_desk.orders.models import Order, OrderRevision

from ..kit.world import World
from .made import client_file, low_arms, order_of, paper, price_list, setup_of, step, text_of

WHY = "the pads go under the desk at work"
KEPT = "private: hurts since the tumble"
FIGURE = "arm_height_mm"


@pytest.fixture
def order(world: World) -> Order:
    client_file(world)
    return order_of(world, low_arms(world), price_list(world))


def accept(world: World, order: Order, reason: str, figure: str = FIGURE, **more: Any) -> Any:
    order.refresh_from_db()
    data = {"by": "R. Amadi", f"reason:{figure}": reason, "revision": order.revision, **more}
    return world.visitor("clinician").post(reverse("orders:accept", args=[order.pk]), data)


def told_by(content: bytes) -> str:
    """A file's text; of a packed one, that of every file inside."""
    if not content.startswith(b"PK"):
        return content.decode()
    with zipfile.ZipFile(io.BytesIO(content)) as pack:
        return "".join(pack.read(name).decode() for name in pack.namelist())


def test_without_acceptance_no_step_and_no_paper(world: World, order: Order) -> None:
    assert order.waiting == 1
    step(world, order, "quoted")
    assert order.status == "draft"
    for name in ("quotation", "build-sheet"):
        assert paper(world, order, name).status_code == 302
    for view, more in (("pack", ()), ("export", ("json",))):
        address = reverse(f"orders:{view}", args=[order.pk, 1, *more])
        assert world.visitor("clinician").get(address).status_code == 302


def test_the_warning_stands_beside_the_field(world: World, order: Order) -> None:
    address = reverse("orders:accept", args=[order.pk])
    told = world.visitor("clinician").get(address).content.decode()
    help_text = told.partition(f'id="id_reason:{FIGURE}_helptext"')[2][:200]
    assert "no diagnosis" in help_text


def test_accepted_by_name_in_a_revision_of_its_own(world: World, order: Order) -> None:
    assert accept(world, order, WHY).status_code == 302
    order.refresh_from_db()
    assert (order.latest, order.waiting) == (2, 0)
    (one,) = OrderRevision.objects.get(order=order, number=2).accepted
    assert (one["figure"], one["by"], one["reason"], one["revision"]) == (
        FIGURE, "R. Amadi", WHY, 2,
    )  # fmt: skip
    assert step(world, order, "quoted").status_code == 302
    assert order.status == "quoted"
    told = text_of(paper(world, order, "order").content)
    assert WHY in told
    assert "R. Amadi" in told
    page = world.visitor("builder").get(f"/orders/{order.pk}/").content.decode()
    assert WHY in page


def test_a_private_reason_stays_on_the_page(world: World, order: Order) -> None:
    assert accept(world, order, KEPT).status_code == 302
    order.refresh_from_db()
    page = world.visitor("clinician").get(f"/orders/{order.pk}/").content.decode()
    assert KEPT in page
    for name in ("quotation", "order", "build-sheet", "letter", "handover", "set-up-sheet"):
        content = paper(world, order, name, places="on").content
        assert "tumble" not in text_of(content), name
    for kind in ("json", "csv", "xlsx", "fhir", "parts", "dxf"):
        address = reverse("orders:export", args=[order.pk, 2, kind])
        answer = world.visitor("clinician").get(address)
        assert answer.status_code == 200
        assert "tumble" not in told_by(answer.content)
    for at in (f"/orders/{order.pk}/", f"/orders/{order.pk}/revision/2/"):
        assert "tumble" not in world.visitor("builder").get(at).content.decode()


def test_an_acceptance_goes_along_and_ends_when_the_must_holds(world: World, order: Order) -> None:
    accept(world, order, WHY)
    order.refresh_from_db()
    data = {"setup": setup_of(world, "right").pk, "number": "N-1", "dated": "2026-08-03",
            "prices": "", "revision": order.revision}  # fmt: skip
    address = reverse("orders:change", args=[order.pk])
    assert world.visitor("clinician").post(address, data).status_code == 302
    order.refresh_from_db()
    assert (order.latest, order.waiting) == (3, 0)
    assert OrderRevision.objects.get(order=order, number=3).accepted == []
    page = world.visitor("clinician").get(f"/orders/{order.pk}/").content.decode()
    assert "the acceptance is dropped" in page


def test_no_reason_no_name_too_long(world: World, order: Order) -> None:
    for reason, by in (("", "R. Amadi"), (WHY, ""), ("x" * 601, "R. Amadi"), ("a\x07b", "R.")):
        answer = accept(world, order, reason, by=by)
        assert answer.status_code == 200, reason[:9]
        assert "remark" in answer.content.decode()
    order.refresh_from_db()
    assert order.latest == 1


def test_two_people_at_once_keep_both(world: World, order: Order) -> None:
    seen = order.revision
    assert accept(world, order, WHY).status_code == 302
    answer = accept(world, order, "another reason", revision=seen)
    assert answer.status_code == 409
    assert "another reason" in answer.content.decode()
    order.refresh_from_db()
    assert order.latest == 2


def test_what_fails_at_a_place_is_accepted_too(world: World) -> None:
    client_file(world, places=True)
    order = order_of(world, setup_of(world))
    assert order.waiting == 1  # the bathroom door, 610 mm
    step(world, order, "quoted")
    assert order.status == "draft"
    told = world.visitor("clinician").get(f"/orders/{order.pk}/accept/").content.decode()
    assert "bathroom door" in told
    figure = told.partition('name="reason:')[2].partition('"')[0]
    assert accept(world, order, "a helper lifts the footrests", figure).status_code == 302
    order.refresh_from_db()
    assert order.waiting == 0
    assert step(world, order, "quoted").status_code == 302
    assert order.status == "quoted"
