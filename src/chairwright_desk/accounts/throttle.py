"""Guessing of passwords is slowed down: a few tries, then a wait."""

from __future__ import annotations

from django.utils import timezone

from chairwright_desk.accounts.links import hashed
from chairwright_desk.accounts.models import FailedSignIn

MOST_A_NAME = 5
MOST_IN_ALL = 100


def _key(name: str) -> str:
    return hashed(name.strip().lower())


def must_wait(name: str) -> bool:
    """Return whether this name, or the whole desk, has had too many wrong tries lately."""
    recent = FailedSignIn.objects.filter(at__gte=timezone.now() - FailedSignIn.WINDOW)
    if recent.filter(name_hash=_key(name)).count() >= MOST_A_NAME:
        return True
    return recent.count() >= MOST_IN_ALL


def note_failure(name: str) -> None:
    """Count a wrong try; forget those of long ago."""
    FailedSignIn.objects.filter(at__lt=timezone.now() - FailedSignIn.WINDOW).delete()
    FailedSignIn.objects.create(name_hash=_key(name))


def forget(name: str) -> None:
    """Forget the wrong tries of a name after it signed in."""
    FailedSignIn.objects.filter(name_hash=_key(name)).delete()
