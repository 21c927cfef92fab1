"""One order: what it is, its steps, its revisions, and what is accepted by name."""

from __future__ import annotations

from django.contrib import messages
from django.http import HttpResponse
from django.shortcuts import redirect
from django.urls import reverse

from chairwright_desk.audit.trail import note_read
from chairwright_desk.base.access import page
from chairwright_desk.base.requests import Request
from chairwright_desk.base.revised import Overtaken, both_versions
from chairwright_desk.bench.shown import units_of
from chairwright_desk.drafts.kept import drop, filled
from chairwright_desk.orders.bridge import EXPORTS, Acceptance, InputError, Shown, shown
from chairwright_desk.orders.forms import AcceptForm, ChangeForm, StepForm
from chairwright_desk.orders.making import Wanted, accept, revise
from chairwright_desk.orders.models import Order, OrderRevision, OrderStep, PriceText
from chairwright_desk.orders.opened import LABELS, Opened, open_order, order_of, told
from chairwright_desk.orders.papers import papers_for
from chairwright_desk.orders.statuses import WITH_THE_CLIENT, Rule, Status, rule_of
from chairwright_desk.orders.steps import open_steps, suggested_day, take
from chairwright_desk.orders.views_list import add_errors

NO_STEP = "There is no such step from where the order stands. Nothing is changed."
NO_REASON = "Write a reason for each that is accepted, or change the set-up."
BUILD_BEGUN = "The build has begun: take that back first."


@page("order.see")
def show(request: Request, order_id: str) -> HttpResponse:
    """Show an order as it stands."""
    opened = open_order(request, order_id)
    note_read(request, opened.order)
    return whole(request, opened)


def whole(
    request: Request,
    opened: Opened,
    *,
    form: StepForm | None = None,
    status: int = 200,
) -> HttpResponse:
    """The whole page of an order.

    Parameters
    ----------
    request : Request
    opened : Opened
    form : StepForm or None
        A step that was refused, with its remarks.
    status : int
    """
    order = opened.order
    seen = None if opened.worked is None else shown(opened.worked, units_of(request))
    return told(
        request,
        "orders/show.html",
        opened,
        seen=seen,
        steps=_step_forms(request, order, form),
        taken=OrderStep.objects.filter(order=order).select_related("by"),
        revisions=OrderRevision.objects.filter(order=order).select_related("made_by"),
        who={row.number: row for row in OrderRevision.objects.filter(order=order)},
        statuses=Status.choices,
        papers=papers_for(request, order) if seen is not None else (),
        exports=_exports(request, order, seen),
        with_client=order.status in WITH_THE_CLIENT,
        status=status,
    )


def _step_forms(
    request: Request, order: Order, refused: StepForm | None
) -> list[tuple[Rule, StepForm]]:
    rows = []
    for rule in open_steps(request, order):
        initial = {
            "to": rule.after.value,
            "revision": order.revision,
            "serial": order.serial,
            "day": suggested_day(order, rule),
        }
        form = StepForm(asks=rule.asks, initial=initial, auto_id=f"{rule.after.name.lower()}_%s")
        if refused is not None and refused.data.get("to") == rule.after:
            form = refused
        rows.append((rule, form))
    return rows


def _exports(request: Request, order: Order, seen: Shown | None) -> list[tuple[str, str]]:
    if seen is None:
        return []
    clinical = request.user.may("papers.clinical", order.team_id)
    return [(n, e.words) for n, e in EXPORTS.items() if clinical or not e.clinical]


@page("order.build", "POST")
def step(request: Request, order_id: str) -> HttpResponse:
    """Take a step; which roles may take which stands in the one table of steps."""
    order = order_of(request, order_id)
    rule = rule_of(order.status, request.POST.get("to", ""))
    if request.POST.get("revision", "") not in ("", str(order.revision)):
        return _overtaken(request, order)
    if rule is None or (rule.ready and order.waiting):
        messages.error(request, NO_STEP)
        return redirect("orders:show", order.pk)
    form = StepForm(request.POST, asks=rule.asks, auto_id=f"{rule.after.name.lower()}_%s")
    if not form.is_valid():
        return whole(request, open_order(request, order_id), form=form, status=422)
    try:
        take(request, order, form.cleaned_data["revision"], rule, form.cleaned_data)
    except Overtaken as error:
        return _both(request, error, order)
    messages.success(request, f"Order {order.number}: {rule.after.label.lower()}.")
    return redirect("orders:show", order.pk)


def _overtaken(request: Request, order: Order) -> HttpResponse:
    to = request.POST.get("to", "")
    mine = {"status": to if to in Status.values else ""}
    return _both(request, Overtaken(order, mine), order)


def _both(request: Request, error: Overtaken, order: Order) -> HttpResponse:
    labels = {name: words for name, words in LABELS.items() if name in error.mine}
    return both_versions(request, error, labels, reverse("orders:show", args=[order.pk]))


@page("order.change", "GET", "POST")
def accepted(request: Request, order_id: str) -> HttpResponse:
    """Accept by name what fails."""
    opened = open_order(request, order_id)
    order, key = opened.order, f"orders.accept:{order_id}"
    seen = None if opened.worked is None else shown(opened.worked, units_of(request))
    missed = () if seen is None else seen.open
    initial = {"by": request.user.shown, "revision": order.revision}
    form = filled(request, key, AcceptForm, missed=missed, initial=initial)
    if request.method == "POST" and form.is_valid():
        answer = _accept(request, order, form)
        if answer is not None:
            return answer
    context = {"form": form, "form_key": key, "seen": seen, "open": missed}
    return told(request, "orders/accept.html", opened, **context)


def _accept(request: Request, order: Order, form: AcceptForm) -> HttpResponse | None:
    data, reasons = form.cleaned_data, form.reasons()
    said = tuple(Acceptance(name, data["by"], text) for name, text in reasons.items())
    if order.revision == data["revision"] and not (said and order.may_change):
        form.add_error(None, NO_REASON if order.may_change else BUILD_BEGUN)
        return None
    if order.revision != data["revision"]:
        mine = "; ".join(f"{name} by {data['by']}: {text}" for name, text in reasons.items())
        order.said = ""  # type: ignore[attr-defined]
        return _both(request, Overtaken(order, {"latest": "", "said": mine}), order)
    try:
        accept(request, order, data["revision"], said)
    except InputError as error:
        for problem in error.problems:
            name = next((n for n in reasons if f"(of {n})" in problem.where), None)
            form.add_error(f"reason:{name}" if name else None, str(problem))
        return None
    except Overtaken as error:
        return _both(request, error, order)
    drop(request, f"orders.accept:{order.pk}")
    messages.success(request, f"Who accepts it, and why, is kept as revision {order.latest}.")
    return redirect("orders:show", order.pk)


@page("order.change", "GET", "POST")
def change(request: Request, order_id: str) -> HttpResponse:
    """Make the next revision of an order."""
    opened = open_order(request, order_id)
    order, key = opened.order, f"orders.change:{order_id}"
    initial = {
        "setup": opened.row.setup,
        "number": order.number,
        "dated": order.dated,
        "prices": _prices(order),
        "revision": order.revision,
    }
    form = filled(request, key, ChangeForm, client=order.client, order=order, initial=initial)
    if request.method == "POST" and form.is_valid():
        answer = _change(request, order, form)
        if answer is not None:
            return answer
    return told(request, "orders/change.html", opened, form=form, form_key=key)


def _prices(order: Order) -> str | None:
    found = PriceText.objects.filter(team=order.team, name=order.prices_name).first()
    return None if found is None else found.pk


def _change(request: Request, order: Order, form: ChangeForm) -> HttpResponse | None:
    data = form.cleaned_data
    wanted = Wanted(data["setup"], data["number"], data["dated"], data["prices"])
    if not order.may_change:
        form.add_error(None, BUILD_BEGUN)
        return None
    mine = {
        "setup_name": wanted.setup.name,
        "number": wanted.number,
        "dated": wanted.dated,
        "prices_name": "" if wanted.prices is None else wanted.prices.name,
    }
    if order.revision != data["revision"]:
        return _both(request, Overtaken(order, mine), order)
    try:
        differs = revise(request, order, data["revision"], wanted)
    except InputError as error:
        add_errors(form, error, wanted)
        return None
    except Overtaken as error:
        return _both(request, Overtaken(error.current, mine), order)
    drop(request, f"orders.change:{order.pk}")
    words = f"Revision {order.latest} is made." if differs else "Nothing differs: nothing is saved."
    messages.success(request, words)
    return redirect("orders:show", order.pk)


@page("order.see")
def revision(request: Request, order_id: str, number: int) -> HttpResponse:
    """Show one revision of an order and what it changed."""
    opened = open_order(request, order_id, number)
    note_read(request, opened.order)
    seen = None if opened.worked is None else shown(opened.worked, units_of(request))
    papers = papers_for(request, opened.order) if seen is not None else ()
    files = _exports(request, opened.order, seen)
    return told(request, "orders/revision.html", opened, seen=seen, papers=papers, exports=files)
