"""Sign-in links: random, hashed in the database, used once, gone after a while."""

from __future__ import annotations

import hashlib
import secrets
from datetime import timedelta

from django.urls import reverse
from django.utils import timezone

from chairwright_desk.accounts.models import SignInLink, User

LASTS = timedelta(minutes=10)


def hashed(text: str) -> str:
    """Return the hash under which a token or a name is stored."""
    return hashlib.sha256(text.encode()).hexdigest()


def make_link(user: User, lasts: timedelta = LASTS) -> str:
    """Make a link for a person and return its address on this desk, without the host."""
    token = secrets.token_urlsafe(32)
    SignInLink.objects.filter(expires__lt=timezone.now()).delete()
    SignInLink.objects.create(token_hash=hashed(token), user=user, expires=timezone.now() + lasts)
    return reverse("accounts:link", args=[token])


def good_link(token: str) -> SignInLink | None:
    """Return the link of a token that is neither used nor too old."""
    fresh = SignInLink.objects.filter(used_at=None, expires__gte=timezone.now())
    return fresh.filter(token_hash=hashed(token), user__is_active=True).first()


def use_link(token: str) -> User | None:
    """Use a link up and return whose it is; None when it is used, too old or unknown."""
    link = good_link(token)
    if link is None:
        return None
    mine = SignInLink.objects.filter(pk=link.pk, used_at=None).update(used_at=timezone.now())
    return link.user if mine else None
