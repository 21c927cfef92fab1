"""Notes and pictures in a client's file."""

from __future__ import annotations

from typing import ClassVar

from django.db import models
from django.utils import timezone

from chairwright_desk.base.revised import Revised
from chairwright_desk.clients.models import Client


class Note(Revised):
    """A dated remark."""

    TEAM_PATH: ClassVar[str] = "client__team"

    client = models.ForeignKey(Client, models.CASCADE, related_name="notes")
    text = models.TextField(max_length=4000)
    created = models.DateTimeField(default=timezone.now, editable=False)

    class Meta:
        ordering = ("-created", "id")

    def __str__(self) -> str:
        return f"note on {self.client_id}"


class Picture(Revised):
    """A picture and what it shows; its bytes stand apart, so that a list does not load them."""

    TEAM_PATH: ClassVar[str] = "client__team"

    client = models.ForeignKey(Client, models.CASCADE, related_name="pictures")
    caption = models.CharField(max_length=200)
    kind = models.CharField(max_length=4)
    width = models.PositiveIntegerField()
    height = models.PositiveIntegerField()
    size = models.PositiveIntegerField()
    created = models.DateTimeField(default=timezone.now, editable=False)

    class Meta:
        ordering = ("-created", "id")

    def __str__(self) -> str:
        return f"picture of {self.client_id}"


class PictureBytes(models.Model):
    """The picture itself, in the database: it goes with every backup and with every removal."""

    TEAM_PATH: ClassVar[str] = "picture__client__team"

    picture = models.OneToOneField(Picture, models.CASCADE, related_name="held")
    content = models.BinaryField()

    def __str__(self) -> str:
        return f"bytes of {self.picture_id}"
