"""A team's price lists: read with every mistake at its line, kept, removed."""

from __future__ import annotations

from typing import Any

from django.core.files.uploadedfile import SimpleUploadedFile

from chairwright_desk.orders.models import Order, PriceText

from ..kit.world import World
from .made import PRICES, client_file, order_of, price_list, setup_of, text_of


def bring(world: World, **data: Any) -> Any:
    return world.visitor("specialist").post("/orders/prices/", {"name": "winter", **data})


def test_as_text_or_file(world: World) -> None:
    assert bring(world, text=PRICES).status_code == 302
    file = SimpleUploadedFile("list.yaml", PRICES.encode())
    assert bring(world, file=file, text="").status_code == 302
    assert [each.text.strip() for each in PriceText.objects.all()] == [PRICES.strip()] * 2


def test_mistakes_come_back_to_the_field(world: World) -> None:
    told = bring(world, text=PRICES.replace("currency: EUR", "currency: euro"))
    assert told.status_code == 200
    assert "winter:8: currency" in told.content.decode()
    picture = SimpleUploadedFile("list.png", b"\x89PNG\xff\xfe")
    assert "no text file" in bring(world, file=picture).content.decode()
    assert "Paste the list here" in bring(world, text=" ").content.decode()
    assert not PriceText.objects.exists()


def test_an_order_keeps_the_list_that_is_removed(world: World) -> None:
    client_file(world)
    prices = price_list(world)
    order = order_of(world, setup_of(world), prices)
    answer = world.visitor("clinician").post(f"/orders/prices/{prices.pk}/remove/")
    assert answer.status_code == 302
    page = world.visitor("clinician").get(f"/orders/{order.pk}/revision/1/paper/quotation/")
    assert "810.70 EUR" in text_of(page.content)
    assert Order.objects.get(pk=order.pk).prices_name == "winter"
