"""One's own account: name shown, units, dates, password."""

from __future__ import annotations

from django.contrib import messages
from django.contrib.auth import update_session_auth_hash
from django.http import HttpResponse
from django.shortcuts import redirect, render

from chairwright_desk.accounts.forms import OwnForm, PasswordForm
from chairwright_desk.audit.trail import note_change
from chairwright_desk.base.access import page
from chairwright_desk.base.requests import Request


@page("account.own", "GET", "POST")
def own(request: Request) -> HttpResponse:
    """Show and change one's own settings."""
    form = OwnForm(request.POST or None, instance=request.user)
    if request.method == "POST" and form.is_valid():
        form.save()
        note_change(request, request.user, form.changed_data)
        messages.success(request, "Your settings are saved.")
        return redirect("accounts:own")
    return _shown(request, form, PasswordForm())


@page("account.own", "POST")
def password(request: Request) -> HttpResponse:
    """Set a new password; other sessions of the same person end."""
    form = PasswordForm(request.POST)
    if not form.is_valid():
        return _shown(request, OwnForm(instance=request.user), form)
    request.user.set_password(form.cleaned_data["new_password"])
    request.user.save(update_fields=["password"])
    update_session_auth_hash(request, request.user)
    note_change(request, request.user, ["password"])
    messages.success(request, "Your password is changed.")
    return redirect("accounts:own")


def _shown(request: Request, form: OwnForm, new: PasswordForm) -> HttpResponse:
    request.user.refresh_from_db()
    roles = request.user.memberships.select_related("team").order_by("team__name", "role")
    context = {"form": form, "password_form": new, "roles": roles}
    return render(request, "accounts/own.html", context)
