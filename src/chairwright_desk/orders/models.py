"""Orders with their revisions, steps and packs of papers, and a team's price lists."""

from __future__ import annotations

from typing import Any, ClassVar

from django.conf import settings
from django.db import models
from django.utils import timezone

from chairwright_desk.accounts.models import Team
from chairwright_desk.base.ids import new_id
from chairwright_desk.base.revised import Revised
from chairwright_desk.clients.models import Client
from chairwright_desk.orders.statuses import OPEN_TO_CHANGE, WITH_THE_CLIENT, Status


class PriceText(Revised):
    """A price list of a team, as the text of its file."""

    TEAM_PATH: ClassVar[str] = "team"

    team = models.ForeignKey(Team, models.CASCADE, related_name="price_lists")
    name = models.CharField(max_length=80)
    text = models.TextField(max_length=200_000)

    class Meta:
        ordering = ("name", "id")

    def __str__(self) -> str:
        return self.name


class Order(Revised):
    """An order as it stands now; ``latest`` is the number of its last revision.

    ``revision`` counts the saves of this row, as with every record; what is printed as revision
    is ``latest``.
    """

    TEAM_PATH: ClassVar[str] = "team"

    team = models.ForeignKey(Team, models.PROTECT, related_name="orders")
    client = models.ForeignKey(Client, models.CASCADE, related_name="orders")
    number = models.CharField(max_length=40)
    status = models.CharField(max_length=12, choices=Status.choices, default=Status.DRAFT)
    latest = models.PositiveIntegerField(default=1)
    setup_name = models.CharField(max_length=80)
    line = models.CharField(max_length=60)
    dated = models.DateField()
    prices_name = models.CharField(max_length=80, blank=True)
    total = models.CharField(max_length=24)
    currency = models.CharField(max_length=3)
    days = models.PositiveIntegerField(default=0)
    waiting = models.PositiveIntegerField("musts that nobody has accepted", default=0)
    promised = models.DateField(null=True)
    delivered = models.DateField(null=True)
    review_due = models.DateField(null=True)
    serial = models.CharField(max_length=40, blank=True)
    scheme = models.CharField(max_length=40, blank=True)
    facts = models.JSONField(default=dict)
    created = models.DateTimeField(default=timezone.now, editable=False)

    class Meta:
        ordering = ("-created", "-id")
        constraints: ClassVar = [
            models.UniqueConstraint(fields=["team", "number"], name="one_number_a_team")
        ]

    def __str__(self) -> str:
        return f"order {self.number}"

    @property
    def may_change(self) -> bool:
        """Whether its set-up, prices and heading may still be changed."""
        return self.status in OPEN_TO_CHANGE

    @property
    def due(self) -> bool:
        """Whether its review is due."""
        if self.status == Status.REVIEW_DUE:
            return True
        day = self.review_due
        return self.status == Status.DELIVERED and day is not None and day <= timezone.localdate()

    @property
    def late(self) -> bool:
        """Whether its promised day is over and the chair is not delivered."""
        ended = self.status in WITH_THE_CLIENT or self.status == Status.CLOSED
        return not ended and self.promised is not None and self.promised < timezone.localdate()

    @property
    def shown(self) -> str:
        """Where it stands, in words."""
        return "Review due" if self.due else Status(self.status).label


class OrderRevision(models.Model):
    """One revision: all that it was worked out from, and what came out. Never changed."""

    TEAM_PATH: ClassVar[str] = "order__team"

    id = models.CharField(primary_key=True, max_length=16, default=new_id, editable=False)
    order = models.ForeignKey(Order, models.CASCADE, related_name="revisions")
    number = models.PositiveIntegerField()
    made = models.DateTimeField(default=timezone.now, editable=False)
    made_by = models.ForeignKey(settings.AUTH_USER_MODEL, models.PROTECT, related_name="+")
    setup = models.CharField("id of the set-up", max_length=16, blank=True)
    written = models.JSONField("what it was worked out from", default=dict)
    outcome = models.JSONField("what came out", default=dict)
    changes = models.JSONField(default=list)

    class Meta:
        ordering = ("number",)
        constraints: ClassVar = [
            models.UniqueConstraint(fields=["order", "number"], name="one_revision_a_number")
        ]

    def __str__(self) -> str:
        return f"revision {self.number}"

    @property
    def accepted(self) -> list[dict[str, Any]]:
        """What was accepted by name in this revision or before."""
        return list(self.outcome.get("accepted", []))


class OrderStep(models.Model):
    """One step of an order: from where to where, who, when, in which revision."""

    TEAM_PATH: ClassVar[str] = "order__team"

    id = models.CharField(primary_key=True, max_length=16, default=new_id, editable=False)
    order = models.ForeignKey(Order, models.CASCADE, related_name="steps")
    before = models.CharField(max_length=12, blank=True)
    after = models.CharField(max_length=12, choices=Status.choices)
    at = models.DateTimeField(default=timezone.now, editable=False)
    by = models.ForeignKey(settings.AUTH_USER_MODEL, models.PROTECT, related_name="+")
    number = models.PositiveIntegerField("revision")
    words = models.CharField(max_length=200, blank=True)

    class Meta:
        ordering = ("at", "id")

    def __str__(self) -> str:
        return f"{self.before} to {self.after}"


class PaperPack(models.Model):
    """Papers of one revision as one zip, made beside the pages; only who asked for it has it."""

    TEAM_PATH: ClassVar[str] = "order__team"

    id = models.CharField(primary_key=True, max_length=16, default=new_id, editable=False)
    order = models.ForeignKey(Order, models.CASCADE, related_name="packs")
    number = models.PositiveIntegerField("revision")
    owner = models.ForeignKey(settings.AUTH_USER_MODEL, models.CASCADE, related_name="+")
    made = models.DateTimeField(default=timezone.now, editable=False)
    names = models.JSONField("papers in it", default=list)
    asked = models.JSONField("size, units, places", default=dict)
    content = models.BinaryField()

    class Meta:
        ordering = ("-made", "-id")
        verbose_name = "papers as one zip"

    def __str__(self) -> str:
        return f"papers of revision {self.number}"
