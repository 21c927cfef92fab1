"""Keeping and forgetting a draft."""

from __future__ import annotations

from urllib.parse import urlsplit

from django.contrib import messages
from django.http import Http404, HttpResponse, JsonResponse
from django.shortcuts import redirect, render

from chairwright_desk.base.access import page
from chairwright_desk.base.requests import Request
from chairwright_desk.drafts.kept import KEY, LEFT_MARK, drop, has_arrived, keep, typed


def _back(request: Request) -> str:
    came_from = urlsplit(request.headers.get("Referer", ""))
    return came_from.path if came_from.netloc == request.get_host() else "/"


@page("draft.own", "POST")
def keep_draft(request: Request, form_key: str) -> HttpResponse:
    """Keep what stands in the form; answer with a word, or with the page without script."""
    if not KEY.fullmatch(form_key):
        raise Http404
    draft = keep(request.user, form_key, typed(request.POST), request.POST.get(LEFT_MARK, ""))
    if request.htmx:
        return render(request, "drafts/said.html", {"draft": draft})
    messages.success(request, "Your draft is kept. It will be here when you come back.")
    return redirect(_back(request))


@page("draft.own")
def left_draft(request: Request, form_key: str, mark: str) -> HttpResponse:
    """Tell whether what a page sent while it was being left has arrived."""
    return JsonResponse({"arrived": has_arrived(request, form_key, mark)})


@page("draft.own", "POST")
def forget_draft(request: Request, form_key: str) -> HttpResponse:
    """Forget a draft and show the form as it was saved."""
    if not KEY.fullmatch(form_key):
        raise Http404
    drop(request, form_key)
    return redirect(_back(request))
