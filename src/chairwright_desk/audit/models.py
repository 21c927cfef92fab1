"""The trail: lines are added, never changed or taken away."""

from __future__ import annotations

from typing import Any, ClassVar

from django.db import models
from django.utils import timezone


class Kept(Exception):
    """A line of the trail cannot be changed or taken away."""


class Entry(models.Model):
    """One line: who did what to which record, and which fields it touched (names only).

    Notes
    -----
    No line points at another table: a person or record that goes away later changes nothing here.
    """

    KINDS: ClassVar[list[tuple[str, str]]] = [
        (kind, kind)
        for kind in (
            "read",
            "change",
            "export",
            "removal",
            "sign-in",
            "sign-out",
            "sign-in failed",
            "sign-in refused",
        )
    ]

    at = models.DateTimeField(default=timezone.now, db_index=True)
    who = models.CharField(max_length=16, blank=True, db_index=True)
    who_shown = models.CharField(max_length=80, blank=True)
    kind = models.CharField(max_length=16, choices=KINDS)
    record_kind = models.CharField(max_length=40, blank=True)
    record = models.CharField(max_length=16, blank=True, db_index=True)
    team = models.CharField(max_length=16, blank=True)
    fields = models.JSONField(default=list)
    address = models.CharField(max_length=45, blank=True)

    class Meta:
        ordering = ("-at", "-id")

    def __str__(self) -> str:
        return f"{self.at:%Y-%m-%d %H:%M} {self.kind}"

    def save(self, *args: Any, **kwargs: Any) -> None:
        """Add the line; refuse to change one."""
        if self.pk is not None:
            msg = "a line of the trail cannot be changed"
            raise Kept(msg)
        super().save(*args, **kwargs)

    def delete(self, *args: Any, **kwargs: Any) -> tuple[int, dict[str, int]]:
        """Refuse."""
        msg = "a line of the trail cannot be taken away"
        raise Kept(msg)
