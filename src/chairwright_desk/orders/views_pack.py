"""All papers of a revision as one zip: asked for, made beside the pages, then kept."""

from __future__ import annotations

from dataclasses import asdict

from django.core.exceptions import PermissionDenied
from django.http import HttpResponse
from django.shortcuts import redirect
from django.urls import reverse

from chairwright_desk.audit.trail import note_export
from chairwright_desk.base.access import find, page
from chairwright_desk.base.requests import Request
from chairwright_desk.jobs.models import Job
from chairwright_desk.jobs.work import start
from chairwright_desk.orders.bridge import FOR_THE_WORKSHOP, WORDS, Asked
from chairwright_desk.orders.jobs import PACK
from chairwright_desk.orders.models import Order, PaperPack
from chairwright_desk.orders.opened import open_order, order_of, sees_clinical, told
from chairwright_desk.orders.papers import SIZES, asked_of, file_answer, file_stem, names_for
from chairwright_desk.orders.views_papers import no_papers

UNITS = {"mm": "mm", "in": "mm and inches"}


@page("papers.build", "GET", "POST")
def pack(request: Request, order_id: str, number: int) -> HttpResponse:
    """Show the zip that is ready or under way; POST begins to make one."""
    opened = open_order(request, order_id, number)
    order, asked = opened.order, asked_of(request, opened.order)
    if opened.worked is None or opened.worked.order.refused:
        return no_papers(request, order)
    if request.method == "POST":
        return _begin(request, order, number, asked)
    ready = PaperPack.objects.filter(order=order, owner=request.user, number=number).defer(
        "content"
    )
    return told(
        request,
        "orders/pack.html",
        opened,
        asked=asked,
        how=_how(asdict(asked)),
        names=[WORDS[name] for name in names_for(request, order)],
        running=_running(request, order, number),
        ready=[(each, len(each.names), _how(each.asked)) for each in ready],
    )


def _begin(request: Request, order: Order, number: int, asked: Asked) -> HttpResponse:
    running = _running(request, order, number)
    if running is not None:
        return redirect("jobs:show", running.pk)
    back = reverse("orders:pack", args=[order.pk, number])
    names = names_for(request, order)
    arguments = {"order": order.pk, "owner": request.user.pk, "number": number,
                 "names": list(names), "asked": asdict(asked)}  # fmt: skip
    words = f"Papers of order {order.number}, revision {number}, as one zip"
    job = start(request, PACK, words, arguments, team=order.team, record=order, back=back)
    done = job.state == Job.State.DONE
    return redirect(back) if done else redirect("jobs:show", job.pk)


def _running(request: Request, order: Order, number: int) -> Job | None:
    states = [Job.State.WAITING, Job.State.RUNNING]
    mine = Job.objects.filter(owner=request.user, record=order.pk, kind=PACK, state__in=states)
    return next((job for job in mine if job.arguments["number"] == number), None)


def _how(asked: dict[str, object]) -> str:
    places = ", with the client's places" if asked["places"] else ""
    size = next(words for name, words in SIZES if name == asked["size"])
    return f"{size}, lengths in {UNITS[str(asked['units'])]}{places}"


@page("papers.build")
def pack_file(request: Request, order_id: str, pack_id: str) -> HttpResponse:
    """Take a zip that is ready out of the desk."""
    order = order_of(request, order_id)
    found = find(request, PaperPack.objects.filter(owner=request.user, order=order), pack_id)
    if set(found.names) - FOR_THE_WORKSHOP and not sees_clinical(request, order):
        raise PermissionDenied
    note_export(request, order, [f"{name}, revision {found.number}" for name in found.names])
    name = f"{file_stem(order, found.number)}-papers.zip"
    return file_answer(bytes(found.content), "application/zip", name, shown=False)
