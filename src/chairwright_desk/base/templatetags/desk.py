"""Tags of every template: ``{% keep form_key %}`` keeps what is typed."""

from __future__ import annotations

from typing import Any

from django import template
from django.template import Context

register = template.Library()


@register.inclusion_tag("drafts/keep.html", takes_context=True)
def keep(context: Context, form_key: str) -> dict[str, Any]:
    """Keep every change of the form around this tag, under `form_key` (see `drafts.kept`)."""
    return {"form_key": form_key, "request": context.get("request"), "kept": context.get("kept")}


@register.filter
def may(user: Any, action: str) -> bool:
    """Return whether the person may do `action` in some team: ``{% if user|may:"..." %}``."""
    return bool(user.is_authenticated and user.may(action))
