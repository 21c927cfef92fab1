"""Tokens: how a person's own programs come in, without the person's password."""

from __future__ import annotations

from typing import ClassVar

from django.conf import settings
from django.db import models
from django.utils import timezone

from chairwright_desk.base.ids import new_id


class Token(models.Model):
    """One token of one person; only its hash is stored, and it ends by itself."""

    id = models.CharField(primary_key=True, max_length=16, default=new_id, editable=False)
    user = models.ForeignKey(settings.AUTH_USER_MODEL, models.CASCADE, related_name="tokens")
    words = models.CharField("what it is for", max_length=60)
    token_hash = models.CharField(max_length=64, unique=True)
    reads_only = models.BooleanField("may only read", default=True)
    created = models.DateTimeField(default=timezone.now, editable=False)
    expires = models.DateTimeField()
    used_at = models.DateTimeField(null=True)
    revoked_at = models.DateTimeField(null=True)

    class Meta:
        ordering: ClassVar = ["-created", "id"]

    def __str__(self) -> str:
        return self.words

    @property
    def good(self) -> bool:
        """Whether it still opens the desk."""
        return self.revoked_at is None and self.expires > timezone.now()
