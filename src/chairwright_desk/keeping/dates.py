"""Clients whose date is over: told, never removed by the desk itself."""

from __future__ import annotations

from django.db.models import QuerySet
from django.utils import timezone

from chairwright_desk.accounts.models import User
from chairwright_desk.clients.models import Client

ACTION = "retention.see"


def past_their_date(user: User) -> QuerySet[Client]:
    """Return the clients of a person's teams that were to be kept until a day before today.

    Parameters
    ----------
    user : User
    """
    found = Client.objects.filter(
        team__in=user.teams_for(ACTION), keep_until__lt=timezone.localdate()
    )
    return found.select_related("team").order_by("keep_until", "reference", "pk")
