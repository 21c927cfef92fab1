"""A team's own product lines, each in all the versions that were brought in."""

from __future__ import annotations

from typing import ClassVar

from django.conf import settings
from django.db import models
from django.utils import timezone

from chairwright_desk.accounts.models import Team
from chairwright_desk.base.ids import new_id
from chairwright_desk.base.revised import Revised


class OwnLine(Revised):
    """A line by its plain name; ``latest`` is the number of its newest version."""

    TEAM_PATH: ClassVar[str] = "team"

    team = models.ForeignKey(Team, models.PROTECT, related_name="own_lines")
    name = models.CharField(max_length=60)
    latest = models.PositiveIntegerField(default=0)
    offered = models.BooleanField("set-ups can be made on it", default=True)
    created = models.DateTimeField(default=timezone.now, editable=False)

    class Meta:
        ordering = ("name", "id")
        constraints: ClassVar = [
            models.UniqueConstraint(fields=["team", "name"], name="one_line_a_name_and_team")
        ]

    def __str__(self) -> str:
        return self.name

    @property
    def in_use(self) -> Version | None:
        """The last version without a mistake."""
        return self.versions.filter(good=True).order_by("-number").first()


class Version(models.Model):
    """What a line file held at one time, with what its check said."""

    TEAM_PATH: ClassVar[str] = "line__team"

    id = models.CharField(primary_key=True, max_length=16, default=new_id, editable=False)
    line = models.ForeignKey(OwnLine, models.CASCADE, related_name="versions")
    number = models.PositiveIntegerField()
    text = models.TextField()
    title = models.CharField(max_length=200, blank=True)
    named = models.CharField("version as the file names it", max_length=80, blank=True)
    told = models.JSONField(default=list)
    more = models.PositiveIntegerField("messages left out", default=0)
    good = models.BooleanField(default=False)
    at = models.DateTimeField(default=timezone.now, editable=False)
    by = models.ForeignKey(settings.AUTH_USER_MODEL, models.PROTECT, null=True, related_name="+")

    class Meta:
        ordering = ("-number",)
        constraints: ClassVar = [
            models.UniqueConstraint(fields=["line", "number"], name="one_version_a_number")
        ]

    def __str__(self) -> str:
        return f"{self.line_id}, version {self.number}"
