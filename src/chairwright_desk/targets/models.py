"""Own targets of a client, the rule set, and every change with its reason."""

from __future__ import annotations

from typing import ClassVar

from django.conf import settings
from django.db import models
from django.utils import timezone

from chairwright_desk.base.revised import Revised
from chairwright_desk.clients.models import Client


class RuleChoice(Revised):
    """Which published rules turn the client's measures into targets."""

    TEAM_PATH: ClassVar[str] = "client__team"

    client = models.OneToOneField(Client, models.CASCADE, related_name="rule_choice")
    rule_set = models.CharField(max_length=40, default="envelope")

    def __str__(self) -> str:
        return f"rules of {self.client_id}"


class OwnTarget(Revised):
    """A target that somebody has set or changed; without it the rule's own counts.

    Both ends empty: only the weight of the rule's preference is another.
    """

    TEAM_PATH: ClassVar[str] = "client__team"

    client = models.ForeignKey(Client, models.CASCADE, related_name="own_targets")
    figure = models.CharField(max_length=80)
    must = models.BooleanField(default=False)
    at_least = models.CharField(max_length=40, blank=True)
    at_most = models.CharField(max_length=40, blank=True)
    weight = models.CharField(max_length=20, blank=True)
    reason = models.CharField(max_length=400)
    created = models.DateTimeField(default=timezone.now, editable=False)

    class Meta:
        ordering = ("figure", "-must")
        constraints: ClassVar = [
            models.UniqueConstraint(
                fields=["client", "figure", "must"], name="one_own_target_a_figure"
            )
        ]

    def __str__(self) -> str:
        return self.figure


class TargetChange(models.Model):
    """One line of the history: what was changed, by whom and why."""

    TEAM_PATH: ClassVar[str] = "client__team"

    client = models.ForeignKey(Client, models.CASCADE, related_name="target_changes")
    figure = models.CharField(max_length=80, blank=True)
    words = models.CharField(max_length=300)
    reason = models.CharField(max_length=400)
    at = models.DateTimeField(default=timezone.now, editable=False)
    by = models.ForeignKey(settings.AUTH_USER_MODEL, models.PROTECT, null=True, related_name="+")

    class Meta:
        ordering = ("-at", "-id")

    def __str__(self) -> str:
        return self.words
