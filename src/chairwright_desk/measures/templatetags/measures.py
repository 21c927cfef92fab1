"""Small helps of the measures' templates."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from django import template
from django.forms import BaseForm

register = template.Library()


@register.filter
def at(table: Mapping[str, Any] | None, key: str) -> Any:
    """Return what stands under a key; nothing when there is none."""
    return table.get(key) if table else None


@register.filter
def box(form: BaseForm, name: str) -> Any:
    """Return a field of a form by its name."""
    return form[name]
