"""The trail, for administrators."""

from __future__ import annotations

from django.core.paginator import Paginator
from django.http import HttpResponse
from django.shortcuts import render

from chairwright_desk.audit.models import Entry
from chairwright_desk.base.access import page
from chairwright_desk.base.requests import Request

A_PAGE = 100


@page("trail.see")
def trail(request: Request) -> HttpResponse:
    """Show the trail, newest first; of one kind, one person or one record when asked."""
    asked = {name: request.GET.get(name, "") for name in ("kind", "who", "record")}
    lines = Entry.objects.filter(**{name: value for name, value in asked.items() if value})
    shown = Paginator(lines, A_PAGE).get_page(request.GET.get("page"))
    context = {"lines": shown, "asked": asked, "kinds": [kind for kind, _ in Entry.KINDS]}
    return render(request, "audit/trail.html", context)
