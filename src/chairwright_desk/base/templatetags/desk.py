"""Tags of every template: ``{% keep form_key %}`` keeps what is typed."""

from __future__ import annotations

from datetime import datetime
from typing import Any

from django import template
from django.template import Context
from django.urls import reverse
from django.utils.formats import date_format
from django.utils.timezone import localtime

from chairwright_desk.base.places import all_tabs

register = template.Library()


@register.inclusion_tag("drafts/keep.html", takes_context=True)
def keep(context: Context, form_key: str) -> dict[str, Any]:
    """Keep every change of the form around this tag, under `form_key` (see `drafts.kept`)."""
    request = context.get("request")
    drafts = getattr(request, "kept_drafts", {})
    return {"form_key": form_key, "request": request, "kept": drafts.get(form_key)}


@register.inclusion_tag("clients/tabs.html", takes_context=True)
def client_tabs(context: Context, client: Any) -> dict[str, Any]:
    """Show the parts of a client's file that the visitor may open."""
    request = context["request"]
    tabs = [
        {
            "words": tab.words,
            "address": reverse(tab.view, args=[client.pk]),
            "app": tab.view.partition(":")[0],
        }
        for tab in all_tabs()
        if request.user.may(tab.action, client.team_id)
    ]
    here = [tab["address"] for tab in tabs if request.path.startswith(tab["address"])]
    app = getattr(request.resolver_match, "app_name", "")
    beside = [tab["address"] for tab in tabs if tab["app"] == app]
    return {"tabs": tabs, "here": max(here or beside[:1], key=len, default="")}


@register.filter
def begins(path: str, address: str) -> bool:
    """Return whether a page stands below an address: ``{% if request.path|begins:address %}``."""
    return path.startswith(address)


@register.filter
def may(user: Any, action: str) -> bool:
    """Return whether the person may do `action` in some team: ``{% if user|may:"..." %}``."""
    return bool(user.is_authenticated and user.may(action))


@register.filter
def moment(value: datetime | None) -> str:
    """Return a date in the person's order with the hour: ``25 Nov 2026, 19:33``."""
    if value is None:
        return ""
    here = localtime(value)
    return f"{date_format(here, 'DATE_FORMAT')}, {here:%H:%M}"
