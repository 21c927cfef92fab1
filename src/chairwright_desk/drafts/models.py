"""One draft for each person and form."""

from __future__ import annotations

from typing import ClassVar

from django.conf import settings
from django.db import models


class Draft(models.Model):
    """What a person typed into a form and has not saved."""

    user = models.ForeignKey(settings.AUTH_USER_MODEL, models.CASCADE, related_name="drafts")
    form_key = models.CharField(max_length=80)
    fields = models.JSONField(default=dict)
    left_mark = models.CharField(max_length=40, default="", blank=True)
    """Made by a page that is left before the desk answers; opened again, it waits for this."""
    kept_at = models.DateTimeField(auto_now=True)

    class Meta:
        constraints: ClassVar = [
            models.UniqueConstraint(fields=["user", "form_key"], name="one_draft_a_form")
        ]

    def __str__(self) -> str:
        return self.form_key
