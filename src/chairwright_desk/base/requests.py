"""The request as the pages see it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from django.http import HttpRequest

if TYPE_CHECKING:
    from django_htmx.middleware import HtmxDetails

    from chairwright_desk.accounts.models import User
    from chairwright_desk.drafts.models import Draft


class Request(HttpRequest):
    """A request of a person who is signed in; `htmx` is true when only a part is wanted."""

    user: User
    htmx: HtmxDetails
    action: str
    kept_drafts: dict[str, Draft]
