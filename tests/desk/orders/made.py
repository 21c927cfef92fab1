"""Orders for these tests, made through the pages as a person makes them."""

from __future__ import annotations

import io
from typing import Any

from django.urls import reverse
from pypdf import PdfReader

from chairwright.files.setup import read_setup
from chairwright_desk.bench.models import ClientFile, Setup
from chairwright_desk.orders.models import Order, PriceText

from ..kit.world import EXAMPLES, World

PRICES = (EXAMPLES / "orders" / "everyday-2026.yaml").read_text()


def client_file(world: World, *, places: bool = False) -> None:
    """AVG-001 as the examples have it."""
    text, there = ((EXAMPLES / name / "avg-001.yaml").read_text() for name in ("clients", "places"))
    ClientFile.objects.create(
        client=world.client, client_text=text, places_text=there if places else ""
    )


def setup_of(world: World, name: str = "first idea", **codes: str) -> Setup:
    """A kept set-up of AVG-001: the example's, with some codes changed."""
    known = read_setup(EXAMPLES / "setups" / "avg-001.yaml").choices
    return Setup.objects.create(client=world.client, name=name, codes={**known, **codes})


def low_arms(world: World) -> Setup:
    """The example with its arm pads too low: one must fails."""
    return setup_of(world, "low arms", **read_setup(
        EXAMPLES / "orders" / "avg-001-low-arms.yaml").choices)  # fmt: skip


def price_list(world: World) -> PriceText:
    """The invented dealer's list."""
    return PriceText.objects.create(team=world.team, name="winter", text=PRICES)


def order_of(world: World, setup: Setup, prices: PriceText | None = None, **more: Any) -> Order:
    """An order made through its page."""
    data = {"setup": setup.pk, "number": "N-1", "dated": "2026-08-03",
            "prices": "" if prices is None else prices.pk, **more}  # fmt: skip
    address = reverse("orders:new", args=[world.client.pk])
    answer = world.visitor("clinician").post(address, data)
    assert answer.status_code == 302, answer.content.decode()
    return Order.objects.get(team=world.team, number=data["number"])


def step(world: World, order: Order, to: str, role: str = "clinician", **more: Any) -> Any:
    """Take a step through the page; the answer."""
    order.refresh_from_db()
    data = {"to": to, "revision": order.revision, **more}
    answer = world.visitor(role).post(reverse("orders:step", args=[order.pk]), data)
    order.refresh_from_db()
    return answer


def paper(world: World, order: Order, name: str, role: str = "clinician", **how: str) -> Any:
    """Ask for one paper of an order's latest revision."""
    address = reverse("orders:paper", args=[order.pk, order.latest, name])
    return world.visitor(role).get(address, how)


def text_of(content: bytes) -> str:
    """What a PDF says."""
    pages = PdfReader(io.BytesIO(content)).pages
    return " ".join(" ".join(page.extract_text() for page in pages).replace("\u200b", "").split())
