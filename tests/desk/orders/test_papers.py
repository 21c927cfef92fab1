"""Papers and files of an order: by permission, the same bytes again, noted in the trail."""

from __future__ import annotations

import io
import json
import zipfile
from typing import Any

import pytest
from django.urls import reverse
from openpyxl import load_workbook
from pypdf import PdfReader

from chairwright_desk.audit.models import Entry
from chairwright_desk.bench.models import Setup
from chairwright_desk.orders.bridge import EXPORTS, FOR_THE_WORKSHOP, WORDS
from chairwright_desk.orders.models import Order

from ..kit.world import World
from .made import client_file, order_of, paper, setup_of, text_of

NEVER = {"quotation", "letter", "handover", "set-up-sheet"}


@pytest.fixture
def order(world: World) -> Order:
    client_file(world)
    setup_of(world, "as it is", cushion="Q50")
    Setup.objects.filter(name="as it is").update(present=True)
    return order_of(world, setup_of(world))


def export(world: World, order: Order, kind: str, role: str = "clinician") -> Any:
    return world.visitor(role).get(reverse("orders:export", args=[order.pk, 1, kind]))


def test_each_paper_by_role(world: World, order: Order) -> None:
    assert set(WORDS) - FOR_THE_WORKSHOP == NEVER
    for name in WORDS:
        for role in ("clinician", "specialist", "reader", "builder"):
            answer = paper(world, order, name, role)
            refused = role == "builder" and name in NEVER
            assert answer.status_code == (403 if refused else 200), (name, role)
            if not refused:
                assert answer.content.startswith(b"%PDF")
                assert answer.headers["Content-Disposition"].startswith("inline")
        link = reverse("orders:paper", args=[order.pk, 1, name])
        page = world.visitor("builder").get(f"/orders/{order.pk}/").content.decode()
        assert (link in page) == (name in FOR_THE_WORKSHOP)


def test_sizes_units_places(world: World, order: Order) -> None:
    for size, width in (("a4", 595.28), ("us-letter", 612.0)):  # ISO 216; ANSI Y14.1
        content = paper(world, order, "order", size=size).content
        assert float(PdfReader(io.BytesIO(content)).pages[0].mediabox.width) == pytest.approx(
            width, abs=0.1
        )
    assert " in" in text_of(paper(world, order, "order", units="in").content)
    for wrong in ({"size": "a5"}, {"units": "ft"}):
        assert paper(world, order, "order", **wrong).status_code == 404


def test_the_same_bytes_again(world: World, order: Order) -> None:
    for name in WORDS:
        assert paper(world, order, name).content == paper(world, order, name).content, name


def test_files_for_other_programs(world: World, order: Order) -> None:
    book = load_workbook(io.BytesIO(export(world, order, "xlsx").content))
    assert "Parts" in book.sheetnames
    whole = json.loads(export(world, order, "json").content)
    assert whole["order"] == {"number": "N-1", "revision": 1, "dated": "2026-08-03",
                              "set_up": "first idea", "client": "AVG-001"}  # fmt: skip
    bundle = json.loads(export(world, order, "fhir").content)
    assert bundle["resourceType"] == "Bundle"
    for kind, ending in (("csv", ".csv"), ("dxf", ".dxf"), ("parts", ".csv")):
        with zipfile.ZipFile(io.BytesIO(export(world, order, kind).content)) as pack:
            assert all(name.endswith(ending) for name in pack.namelist())
            assert pack.testzip() is None
    assert export(world, order, "docx").status_code == 404


def test_files_by_role(world: World, order: Order) -> None:
    for kind, wanted in EXPORTS.items():
        assert export(world, order, kind, "builder").status_code == (
            403 if wanted.clinical else 200
        )
    assert {kind for kind, wanted in EXPORTS.items() if not wanted.clinical} == {"parts", "dxf"}


def test_what_leaves_is_noted(world: World, order: Order) -> None:
    paper(world, order, "letter")
    export(world, order, "xlsx", "reader")
    lines = Entry.objects.filter(kind="export", record=order.pk).order_by("id")
    assert [(each.who_shown, each.fields) for each in lines] == [
        ("Clinician", ["letter, revision 1"]),
        ("Reader", ["xlsx, revision 1"]),
    ]


def test_adjusting_the_delivered_chair(world: World, order: Order) -> None:
    Order.objects.filter(pk=order.pk).update(status="delivered")
    other = setup_of(world, "softer", cushion="Q50")
    page = world.visitor("builder").get(f"/orders/{order.pk}/adjust/", {"to": other.pk})
    told = page.content.decode()
    assert "Q30" in told
    assert "Q50" in told
    sheet = world.visitor("builder").get(f"/orders/{order.pk}/adjust/{other.pk}/")
    assert "Q50" in text_of(sheet.content)
    same = setup_of(world, "the same")
    page = world.visitor("builder").get(f"/orders/{order.pk}/adjust/", {"to": same.pk})
    assert "Nothing differs" in page.content.decode()
