"""The papers of a weighing and of a measured chair."""

from __future__ import annotations

from django.db.models import Model
from django.http import Http404, HttpResponse

from chairwright_desk.audit.trail import note_export
from chairwright_desk.base.access import page
from chairwright_desk.base.requests import Request
from chairwright_desk.bench.shown import units_of
from chairwright_desk.chair_now.bridge import InputError, judged
from chairwright_desk.chair_now.bridge import papers as sheets
from chairwright_desk.chair_now.known import pads_of
from chairwright_desk.chair_now.models import MeasuredChair, Weighing
from chairwright_desk.chair_now.opened import Known, client_of, known_of, record_of, setups_of
from chairwright_desk.chair_now.views_measured import proposed_of


@page("setup.see")
def weighing(request: Request, client_id: str, weighing_id: str) -> HttpResponse:
    """Give the weighing sheet."""
    held = record_of(Weighing, client_of(request, client_id), weighing_id)
    try:
        pdf = sheets.weighing_sheet(pads_of(held), held.setup_name, units_of(request))
    except InputError as error:
        raise Http404 from error
    return _given(request, held, pdf, "weighing-sheet.pdf")


@page("setup.see")
def measured(request: Request, client_id: str, chair_id: str) -> HttpResponse:
    """Give the sheet of a measured chair, with what a kept set-up would bring when one is named."""
    client = client_of(request, client_id)
    chair = record_of(MeasuredChair, client, chair_id)
    known = known_of(request, client)
    if not isinstance(known, Known):
        return known
    beside = proposed_of(request, known, setups_of(client))
    named = None if beside is None else (beside[0].name, beside[1])
    try:
        found = judged(chair.text, known.bench)
        day = f"{chair.measured_on:%Y-%m-%d}"
        pdf = sheets.measured_sheet(found, day, units_of(request), named)
    except InputError as error:
        raise Http404 from error
    return _given(request, chair, pdf, "measured-chair-sheet.pdf")


def _given(request: Request, record: Model, pdf: bytes, name: str) -> HttpResponse:
    note_export(request, record, [name])
    answer = HttpResponse(pdf, content_type="application/pdf")
    answer["Content-Disposition"] = f'inline; filename="{name}"'
    return answer
