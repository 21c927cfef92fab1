"""One row for each piece of work; the row is the queue, the progress and the result."""

from __future__ import annotations

from typing import ClassVar

from django.conf import settings
from django.db import models
from django.utils import timezone

from chairwright_desk.accounts.models import Team
from chairwright_desk.base.ids import new_id


class Job(models.Model):
    """Work that runs beside the pages."""

    class State(models.TextChoices):
        """Where the work stands."""

        WAITING = "waiting", "waiting its turn"
        RUNNING = "running", "under way"
        DONE = "done", "done"
        FAILED = "failed", "failed"
        CANCELLED = "cancelled", "stopped by you"
        INTERRUPTED = "interrupted", "broken off when the desk stopped"

    ENDED: ClassVar = (State.DONE, State.FAILED, State.CANCELLED, State.INTERRUPTED)

    id = models.CharField(primary_key=True, max_length=16, default=new_id, editable=False)
    kind = models.CharField(max_length=40)
    words = models.CharField(max_length=120)
    owner = models.ForeignKey(settings.AUTH_USER_MODEL, models.CASCADE, related_name="jobs")
    team = models.ForeignKey(Team, models.CASCADE, related_name="jobs")
    record = models.CharField(max_length=16, blank=True, db_index=True)
    back = models.CharField(max_length=200, blank=True)
    arguments = models.JSONField(default=dict)
    state = models.CharField(max_length=12, choices=State.choices, default=State.WAITING)
    done = models.PositiveIntegerField(default=0)
    whole = models.PositiveIntegerField(default=0)
    said = models.CharField(max_length=120, blank=True)
    result = models.JSONField(null=True)
    trouble = models.TextField(blank=True)
    cancel_asked = models.BooleanField(default=False)
    beat = models.DateTimeField(null=True)
    created = models.DateTimeField(default=timezone.now)
    started = models.DateTimeField(null=True)
    finished = models.DateTimeField(null=True)

    class Meta:
        ordering = ("-created",)
        indexes: ClassVar = [models.Index(fields=["state", "created"], name="job_queue")]

    def __str__(self) -> str:
        return self.words

    @property
    def ended(self) -> bool:
        """Whether nothing more will happen."""
        return self.state in self.ENDED

    @property
    def open(self) -> bool:
        """Whether it waits or runs."""
        return not self.ended
