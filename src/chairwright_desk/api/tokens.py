"""Making a token, finding whose it is, ending it."""

from __future__ import annotations

import secrets
from datetime import timedelta

from django.utils import timezone

from chairwright_desk.accounts.links import hashed
from chairwright_desk.accounts.models import User
from chairwright_desk.api.models import Token

BEGINS = "desk_"
"""So that a search of a program's text finds a token that was left in it."""
NOTED_EACH = timedelta(minutes=5)
"""The last use is noted this often, not at each call."""
MOST = 20


def make_token(user: User, words: str, days: int, *, reads_only: bool) -> tuple[Token, str]:
    """Make a token; the text is returned once and stored nowhere.

    Parameters
    ----------
    user : User
        Whose it is; it may what the person may.
    words : str
        What it is for.
    days : int
        After which it ends.
    reads_only : bool
        Whether it may change nothing.
    """
    text = BEGINS + secrets.token_urlsafe(32)
    token = Token.objects.create(
        user=user,
        words=words,
        token_hash=hashed(text),
        reads_only=reads_only,
        expires=timezone.now() + timedelta(days=days),
    )
    return token, text


def token_of(text: str) -> Token | None:
    """Return the token of a text, if it is good and its person may sign in."""
    good = Token.objects.filter(revoked_at=None, expires__gt=timezone.now(), user__is_active=True)
    token = good.select_related("user").filter(token_hash=hashed(text)).first()
    if token is not None and _stale(token):
        Token.objects.filter(pk=token.pk).update(used_at=timezone.now())
    return token


def _stale(token: Token) -> bool:
    return token.used_at is None or timezone.now() - token.used_at > NOTED_EACH


def revoke(token: Token) -> None:
    """End a token now."""
    Token.objects.filter(pk=token.pk, revoked_at=None).update(revoked_at=timezone.now())
