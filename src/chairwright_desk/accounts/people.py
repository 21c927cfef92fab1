"""The people of the desk, for administrators: who may sign in, and as what."""

from __future__ import annotations

from typing import Any

from django.contrib import messages
from django.db import transaction
from django.db.models import QuerySet
from django.http import Http404, HttpResponse
from django.shortcuts import redirect, render

from chairwright_desk.accounts.forms import PersonForm, RoleForm
from chairwright_desk.accounts.links import make_link
from chairwright_desk.accounts.models import Membership, Team, User
from chairwright_desk.accounts.roles import Role
from chairwright_desk.audit.trail import note_change
from chairwright_desk.base.access import page
from chairwright_desk.base.requests import Request
from chairwright_desk.drafts.kept import drop, filled

NEW = "people.new"


def _person(user_id: str) -> User:
    found = User.objects.filter(pk=user_id).first()
    if found is None:
        raise Http404
    return found


@page("people.change", "GET", "POST")
def people(request: Request) -> HttpResponse:
    """List the people; add one."""
    form = filled(request, NEW, PersonForm)
    if request.method == "POST" and form.is_valid():
        user = _added(request, form.cleaned_data)
        drop(request, NEW)
        messages.success(request, f"{user} is added. Make a sign-in link for the first visit.")
        return redirect("accounts:person", user.pk)
    everybody = User.objects.prefetch_related("memberships__team")
    return render(request, "accounts/people.html", {"form": form, "people": everybody})


def _added(request: Request, data: dict[str, Any]) -> User:
    with transaction.atomic():
        user = User.objects.make(str(data["name"]), None, str(data["shown"]))
        team = data["team"] or Team.objects.get_or_create(name=str(data["new_team"]).strip())[0]
        Membership.objects.create(user=user, team=team, role=data["role"])
        note_change(request, user, ["name", "shown", "roles"])
    return user


@page("people.change")
def person(request: Request, user_id: str) -> HttpResponse:
    """Show one person's roles."""
    user = _person(user_id)
    roles = user.memberships.select_related("team").order_by("team__name", "role")
    context = {"person": user, "roles": roles, "form": RoleForm()}
    return render(request, "accounts/person.html", context)


@page("people.change", "POST")
def add_role(request: Request, user_id: str) -> HttpResponse:
    """Add a role in a team."""
    user, form = _person(user_id), RoleForm(request.POST)
    if form.is_valid():
        with transaction.atomic():
            Membership.objects.get_or_create(user=user, **form.cleaned_data)
            note_change(request, user, ["roles"])
        messages.success(request, "The role is added.")
    else:
        messages.error(request, "Choose a team and a role from the lists.")
    return redirect("accounts:person", user.pk)


@page("people.change", "POST")
def drop_role(request: Request, user_id: str, membership_id: int) -> HttpResponse:
    """Take a role away; the desk keeps at least one administrator."""
    user = _person(user_id)
    with transaction.atomic():
        mine = user.memberships.filter(pk=membership_id).first()
        if mine is None:
            raise Http404
        if mine.role == Role.ADMINISTRATOR and _administrators().exclude(pk=mine.pk).count() == 0:
            messages.error(request, "The desk needs one administrator; name another one first.")
            return redirect("accounts:person", user.pk)
        mine.delete()
        note_change(request, user, ["roles"])
    messages.success(request, "The role is taken away.")
    return redirect("accounts:person", user.pk)


@page("people.change", "POST")
def entry(request: Request, user_id: str) -> HttpResponse:
    """Let a person sign in, or no longer; one's own entry stays."""
    user = _person(user_id)
    if user.pk == request.user.pk:
        messages.error(request, "You cannot close your own entry; another administrator can.")
        return redirect("accounts:person", user.pk)
    with transaction.atomic():
        user.is_active = request.POST.get("open") == "yes"
        user.save(update_fields=["is_active"])
        note_change(request, user, ["is_active"])
    messages.success(request, "Saved.")
    return redirect("accounts:person", user.pk)


@page("people.change", "POST")
def new_link(request: Request, user_id: str) -> HttpResponse:
    """Make a sign-in link and show it once."""
    user = _person(user_id)
    address = request.build_absolute_uri(make_link(user))
    note_change(request, user, ["sign-in link"])
    return render(request, "accounts/new_link.html", {"person": user, "address": address})


def _administrators() -> QuerySet[Membership]:
    return Membership.objects.filter(role=Role.ADMINISTRATOR, user__is_active=True)
