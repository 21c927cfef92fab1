"""Sets of measures over time, and how a client moves and what goes along."""

from __future__ import annotations

import datetime as dt
from typing import ClassVar

from django.db import models
from django.utils import timezone

from chairwright_desk.base.revised import Revised
from chairwright_desk.clients.models import Client


def today() -> dt.date:
    """Return the day on which a set is begun."""
    return timezone.localdate()


class Measuring(Revised):
    """The body as it was found on one day; the newest set of a client is in use.

    ``fields`` holds what was typed, by the form's field, with the unit written out.
    """

    TEAM_PATH: ClassVar[str] = "client__team"

    client = models.ForeignKey(Client, models.CASCADE, related_name="measurings")
    taken_on = models.DateField("measured on", default=today)
    fields = models.JSONField(default=dict)
    created = models.DateTimeField(default=timezone.now, editable=False)

    class Meta:
        ordering = ("-taken_on", "-created", "id")

    def __str__(self) -> str:
        return f"measures of {self.client_id}"


class Abilities(Revised):
    """How the client moves, what goes along, wishes, and what is expected to change."""

    TEAM_PATH: ClassVar[str] = "client__team"

    client = models.OneToOneField(Client, models.CASCADE, related_name="abilities")
    fields = models.JSONField(default=dict)

    def __str__(self) -> str:
        return f"abilities of {self.client_id}"
