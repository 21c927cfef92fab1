"""Weighings, measured chairs, and what was worked out at length, each as it was on its day."""

from __future__ import annotations

import datetime as dt
from typing import ClassVar

from django.conf import settings
from django.db import models
from django.utils import timezone

from chairwright_desk.base.revised import Revised
from chairwright_desk.clients.models import Client


def today() -> dt.date:
    """Return the day on which something is entered."""
    return timezone.localdate()


class Weighing(Revised):
    """Wheel loads of one set-up with its client, with all that they are worked out from.

    ``fields`` holds what was typed, by the form's field, with the unit written out. Set-up and
    measures are kept as they were on that day: a later change of them does not change a weighing.
    """

    TEAM_PATH: ClassVar[str] = "client__team"

    client = models.ForeignKey(Client, models.CASCADE, related_name="weighings")
    weighed_on = models.DateField("weighed on", default=today)
    fields = models.JSONField(default=dict)
    text = models.TextField(max_length=20_000)
    client_text = models.TextField(max_length=200_000)
    setup_name = models.CharField(max_length=80)
    line = models.CharField(max_length=60)
    codes = models.JSONField(default=dict)
    extras = models.JSONField(default=list)
    in_use = models.BooleanField("counts for this client's set-ups", default=False)
    created = models.DateTimeField(default=timezone.now, editable=False)

    class Meta:
        ordering = ("-weighed_on", "-created", "id")

    def __str__(self) -> str:
        return f"weighing of {self.client_id}"


class MeasuredChair(Revised):
    """A chair of any maker as it was measured on one day."""

    TEAM_PATH: ClassVar[str] = "client__team"

    client = models.ForeignKey(Client, models.CASCADE, related_name="measured_chairs")
    name = models.CharField(max_length=80)
    measured_on = models.DateField("measured on", default=today)
    fields = models.JSONField(default=dict)
    text = models.TextField(max_length=50_000)
    created = models.DateTimeField(default=timezone.now, editable=False)

    class Meta:
        ordering = ("-measured_on", "-created", "id")

    def __str__(self) -> str:
        return self.name


class Study(Revised):
    """Something worked out at length: a re-fit, the years to come, the surest set-up.

    ``asked`` holds all that it is worked out from, so that it comes out alike later; ``result``
    is None until the work is done.
    """

    class Kind(models.TextChoices):
        """What is worked out."""

        REFIT = "refit", "Fitted again"
        YEARS = "years", "Over the years"
        SUREST = "surest", "Best set-up that is sure"

    TEAM_PATH: ClassVar[str] = "client__team"

    client = models.ForeignKey(Client, models.CASCADE, related_name="studies")
    kind = models.CharField(max_length=8, choices=Kind.choices)
    title = models.CharField(max_length=120)
    asked = models.JSONField(default=dict)
    result = models.JSONField(null=True)
    created = models.DateTimeField(default=timezone.now, editable=False)
    created_by = models.ForeignKey(
        settings.AUTH_USER_MODEL, models.PROTECT, null=True, editable=False, related_name="+"
    )

    class Meta:
        ordering = ("-created", "id")

    def __str__(self) -> str:
        return self.title
