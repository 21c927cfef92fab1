"""Set-ups of a client: what is chosen, how it came to be, and what a search found for it."""

from __future__ import annotations

from typing import Any, ClassVar

from django.conf import settings
from django.db import models
from django.utils import timezone

from chairwright_desk.base.revised import Revised
from chairwright_desk.clients.models import Client

MOST_STEPS = 200


class Setup(Revised):
    """One set-up of a client on one line.

    ``past`` and ``ahead`` hold the steps that can be taken back and taken again: for each, the
    codes before and after of the choices that it changed.
    """

    TEAM_PATH: ClassVar[str] = "client__team"

    client = models.ForeignKey(Client, models.CASCADE, related_name="setups")
    name = models.CharField(max_length=80)
    line = models.CharField(max_length=60, default="everyday")
    codes = models.JSONField(default=dict)
    extras = models.JSONField(default=list)
    past = models.JSONField(default=list)
    ahead = models.JSONField(default=list)
    present = models.BooleanField("the chair that the client has now", default=False)
    created = models.DateTimeField(default=timezone.now, editable=False)
    created_by = models.ForeignKey(
        settings.AUTH_USER_MODEL, models.PROTECT, null=True, editable=False, related_name="+"
    )

    class Meta:
        ordering = ("-present", "created", "id")

    def __str__(self) -> str:
        return self.name

    @property
    def last_step(self) -> dict[str, Any] | None:
        """The step that would be taken back."""
        return self.past[-1] if self.past else None

    @property
    def next_step(self) -> dict[str, Any] | None:
        """The step that would be taken again."""
        return self.ahead[-1] if self.ahead else None


class ClientFile(Revised):
    """A client file and a places file, as texts, where the desk does not make them itself."""

    TEAM_PATH: ClassVar[str] = "client__team"

    client = models.OneToOneField(Client, models.CASCADE, related_name="bench_file")
    client_text = models.TextField(max_length=200_000)
    places_text = models.TextField(max_length=200_000, blank=True)

    def __str__(self) -> str:
        return f"file of {self.client_id}"
