"""The first page."""

from __future__ import annotations

from django.http import HttpResponse
from django.shortcuts import redirect

from chairwright_desk.base.access import page
from chairwright_desk.base.places import all_places
from chairwright_desk.base.requests import Request


@page("account.own")
def home(request: Request) -> HttpResponse:
    """Go to the first place that the visitor's role has."""
    first = next((each.view for each in all_places() if request.user.may(each.action)), None)
    return redirect(first or "accounts:own")
