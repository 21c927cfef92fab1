"""Places of a client, and who helps there."""

from __future__ import annotations

from typing import ClassVar

from django.db import models
from django.utils import timezone

from chairwright_desk.base.revised import Revised
from chairwright_desk.clients.models import Client


class Helpers(Revised):
    """What holds for every place: building, codes, the carer, what the client manages alone."""

    TEAM_PATH: ClassVar[str] = "client__team"

    client = models.OneToOneField(Client, models.CASCADE, related_name="helpers")
    fields = models.JSONField(default=dict)

    def __str__(self) -> str:
        return f"helpers of {self.client_id}"


class Spot(Revised):
    """One place; ``fields`` holds what was typed, with the unit written out."""

    TEAM_PATH: ClassVar[str] = "client__team"

    client = models.ForeignKey(Client, models.CASCADE, related_name="spots")
    kind = models.CharField(max_length=20)
    name = models.CharField(max_length=60)
    fields = models.JSONField(default=dict)
    created = models.DateTimeField(default=timezone.now, editable=False)

    class Meta:
        ordering = ("created", "id")

    def __str__(self) -> str:
        return self.name
