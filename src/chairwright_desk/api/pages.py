"""Pages for people: one's tokens, the list of calls; and the document for programs."""

from __future__ import annotations

from django.contrib import messages
from django.db import transaction
from django.http import Http404, HttpRequest, HttpResponse, JsonResponse
from django.shortcuts import redirect, render

from chairwright_desk.accounts.roles import TABLE
from chairwright_desk.api.document import document as whole_document
from chairwright_desk.api.forms import TokenForm
from chairwright_desk.api.models import Token
from chairwright_desk.api.operations import operations
from chairwright_desk.api.tokens import MOST, make_token, revoke
from chairwright_desk.audit.trail import note_change, note_removal
from chairwright_desk.base.access import open_page, page
from chairwright_desk.base.requests import Request

TOO_MANY = f"You have {MOST} tokens that are good. End one that you do not need first."


@page("account.own", "GET", "POST")
def tokens(request: Request) -> HttpResponse:
    """List one's own tokens; POST makes one and shows it, once."""
    form = TokenForm(request.POST or None)
    mine, text = Token.objects.filter(user=request.user), ""
    if request.method == "POST" and form.is_valid():
        if sum(each.good for each in mine) >= MOST:
            form.add_error(None, TOO_MANY)
        else:
            text = _made(request, form)
            form, mine = TokenForm(), mine.all()
    context = {"form": form, "tokens": mine[:100], "text": text}
    return render(request, "api/tokens.html", context)


def _made(request: Request, form: TokenForm) -> str:
    data = form.cleaned_data
    reads_only = data["may"] == "read"
    with transaction.atomic():
        token, text = make_token(
            request.user, data["words"], int(data["days"]), reads_only=reads_only
        )
        note_change(request, token, ["expires", "reads_only"])
    return text


@page("account.own", "POST")
def end(request: Request, token_id: str) -> HttpResponse:
    """End one of one's own tokens."""
    token = Token.objects.filter(user=request.user, pk=token_id).first()
    if token is None:
        raise Http404
    with transaction.atomic():
        revoke(token)
        note_removal(request, token)
    messages.success(request, "The token is ended. A program that uses it is refused from now on.")
    return redirect("api:tokens")


@page("account.own")
def calls(request: Request) -> HttpResponse:
    """List what a program may ask, and who may."""
    rows = [
        {"each": each, "roles": ", ".join(sorted(role.label for role in TABLE[each.action]))}
        for each in operations()
    ]
    return render(request, "api/calls.html", {"rows": rows})


@open_page()
def document(request: HttpRequest) -> HttpResponse:
    """Give the OpenAPI document."""
    return JsonResponse(whole_document())
