"""All papers as one zip: made beside the pages, by role, for its owner, stopped when asked."""

from __future__ import annotations

import io
import zipfile
from typing import Any

import pytest
from django.urls import reverse

from chairwright_desk.audit.models import Entry
from chairwright_desk.bench.models import Setup
from chairwright_desk.jobs.models import Job
from chairwright_desk.jobs.run import claim, perform
from chairwright_desk.orders.bridge import FOR_THE_WORKSHOP, WORDS
from chairwright_desk.orders.models import Order, PaperPack

from ..kit.world import World
from .made import client_file, order_of, setup_of, text_of


@pytest.fixture
def order(world: World) -> Order:
    client_file(world)
    setup_of(world, "as it is", cushion="Q50")
    Setup.objects.filter(name="as it is").update(present=True)
    return order_of(world, setup_of(world))


def begin(world: World, order: Order, role: str = "clinician", **how: str) -> Any:
    return world.visitor(role).post(reverse("orders:pack", args=[order.pk, 1]), how)


def shown(world: World, order: Order, role: str = "clinician", **how: str) -> str:
    answer = world.visitor(role).get(reverse("orders:pack", args=[order.pk, 1]), how)
    return str(answer.content.decode())


def kept(world: World, order: Order, role: str = "clinician") -> Any:
    pack = PaperPack.objects.get(owner=world.people[role])
    link = reverse("orders:pack-file", args=[order.pk, pack.pk])
    assert link in shown(world, order, role)
    return world.visitor(role).get(link)


def test_it_holds_what_the_role_may_have(world: World, order: Order) -> None:
    for role, names in (("clinician", set(WORDS)), ("builder", set(FOR_THE_WORKSHOP))):
        assert begin(world, order, role, size="us-letter", places="on").status_code == 302
        answer = kept(world, order, role)
        assert answer.headers["Content-Disposition"] == 'attachment; filename="N-1-r1-papers.zip"'
        with zipfile.ZipFile(io.BytesIO(answer.content)) as pack:
            assert pack.testzip() is None
            assert set(pack.namelist()) == {f"N-1-r1-{name}.pdf" for name in names}


def test_the_same_bytes_again_and_one_is_kept(world: World, order: Order) -> None:
    begin(world, order)
    one = kept(world, order).content
    begin(world, order)
    assert kept(world, order).content == one  # `get` finds that there is no second


def test_it_is_as_asked(world: World, order: Order) -> None:
    told = shown(world, order, size="us-letter", units="in", places="on")
    assert "US letter, lengths in mm and inches, with the client&#x27;s places" in told
    begin(world, order, units="in")
    with zipfile.ZipFile(io.BytesIO(kept(world, order).content)) as pack:
        assert " in" in text_of(pack.read("N-1-r1-order.pdf"))
    assert begin(world, order, size="a5").status_code == 404


def test_only_its_owner_has_it(world: World, order: Order) -> None:
    begin(world, order)
    link = reverse("orders:pack-file", args=[order.pk, PaperPack.objects.get().pk])
    for role in ("specialist", "builder"):
        assert world.visitor(role).get(link).status_code == 404
        assert link not in shown(world, order, role)


def test_who_may_not_see_the_clients_own_any_more_has_it_no_more(
    world: World, order: Order
) -> None:
    begin(world, order)
    PaperPack.objects.update(owner=world.people["builder"])
    link = reverse("orders:pack-file", args=[order.pk, PaperPack.objects.get().pk])
    assert world.visitor("builder").get(link).status_code == 403


def test_what_leaves_is_noted(world: World, order: Order) -> None:
    begin(world, order)
    assert not Entry.objects.filter(kind="export", record=order.pk).exists()
    kept(world, order)
    (line,) = Entry.objects.filter(kind="export", record=order.pk)
    assert line.fields == sorted(f"{name}, revision 1" for name in WORDS)


def test_under_way_it_can_be_stopped_and_is_not_begun_twice(
    world: World, order: Order, settings: Any
) -> None:
    settings.WORK_AT_ONCE = False
    answer = begin(world, order)
    job = Job.objects.get()
    assert answer.headers["Location"] == f"/work/{job.pk}/"
    assert f"/work/{job.pk}/" in shown(world, order)
    assert begin(world, order).headers["Location"] == f"/work/{job.pk}/"
    assert claim() == job.pk
    world.visitor("clinician").post(f"/work/{job.pk}/stop/")
    perform(job.pk)
    job.refresh_from_db()
    assert (job.state, job.whole, job.said) == ("cancelled", len(WORDS), "Quotation")
    assert not PaperPack.objects.exists()


def test_what_cannot_be_made_is_said_on_the_page_of_the_work(world: World, order: Order) -> None:
    Setup.objects.filter(name="as it is").update(codes={})
    answer = begin(world, order)
    told = world.visitor("clinician").get(answer.headers["Location"]).content.decode()
    assert Job.objects.get().state == "failed"
    assert "G360, G380" in told  # the codes of the present chair that are missing
    assert not PaperPack.objects.exists()
