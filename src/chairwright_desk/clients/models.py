"""The client record, and who the client is, in two tables that no page joins for a builder."""

from __future__ import annotations

from typing import ClassVar

from django.db import models
from django.utils import timezone

from chairwright_desk.accounts.models import Team
from chairwright_desk.base.revised import Revised


class Client(Revised):
    """A client by reference number; holds nothing that says who it is."""

    TEAM_PATH: ClassVar[str] = "team"

    reference = models.CharField("reference number", max_length=40)
    team = models.ForeignKey(Team, models.PROTECT, related_name="clients")
    created = models.DateTimeField(default=timezone.now, editable=False)
    keep_until = models.DateField("kept until", null=True, blank=True)

    class Meta:
        ordering = ("reference",)
        constraints: ClassVar = [
            models.UniqueConstraint(fields=["team", "reference"], name="one_reference_a_team")
        ]

    def __str__(self) -> str:
        return self.reference


class Identity(Revised):
    """Name, birth and diagnosis; asked for with the action ``identity.see`` only."""

    TEAM_PATH: ClassVar[str] = "client__team"

    client = models.OneToOneField(Client, models.CASCADE, related_name="identity")
    name = models.CharField(max_length=120, blank=True)
    born = models.DateField("date of birth", null=True, blank=True)
    diagnosis = models.TextField(max_length=2000, blank=True)

    def __str__(self) -> str:
        return f"identity of {self.client_id}"
