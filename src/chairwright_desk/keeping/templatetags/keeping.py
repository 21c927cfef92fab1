"""The reminder of dates that are over."""

from __future__ import annotations

from typing import Any

from django import template

from chairwright_desk.accounts.models import User
from chairwright_desk.keeping.dates import ACTION, past_their_date

register = template.Library()


@register.inclusion_tag("keeping/reminder.html")
def dates_reminder(user: User) -> dict[str, Any]:
    """Tell how many clients are past their date, to those who may see it."""
    return {"count": past_their_date(user).count() if user.may(ACTION) else 0}
