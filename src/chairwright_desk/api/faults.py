"""What goes wrong in a call: always JSON, always what must hold, what was got, what to do."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import asdict, dataclass, field
from typing import Any

from django.http import JsonResponse

from chairwright_desk.api.bridge import InputError


@dataclass(frozen=True)
class Wrong:
    """One thing that is wrong with what was sent.

    Parameters
    ----------
    where : str
        The field, or ``file:line``.
    must, got, remedy : str
        What has to hold, what was found, what to do.
    """

    where: str
    must: str
    got: str
    remedy: str


@dataclass
class Fault(Exception):
    """A call that is refused.

    Parameters
    ----------
    status : int
    error, what, remedy : str
        In a few words; what happened; what to do.
    problems : tuple of Wrong
    headers : mapping of str to str
    more : mapping
        Further fields of the answer (both versions).
    """

    status: int
    error: str
    what: str
    remedy: str
    problems: tuple[Wrong, ...] = ()
    headers: Mapping[str, str] = field(default_factory=dict)
    more: Mapping[str, Any] = field(default_factory=dict)

    def response(self) -> JsonResponse:
        """Return the answer."""
        told = {
            "error": self.error,
            "what": self.what,
            "remedy": self.remedy,
            "problems": [asdict(each) for each in self.problems],
            **self.more,
        }
        return JsonResponse(told, status=self.status, headers=dict(self.headers))


def stranger(what: str = "The call says nothing of who asks.") -> Fault:
    """401."""
    return Fault(
        401,
        "Sign in first",
        what,
        "Send “Authorization: Bearer” with a token of your account page, or sign in to the desk.",
        headers={"WWW-Authenticate": 'Bearer realm="chairwright desk"'},
    )


def cross_site() -> Fault:
    """403 of a call with a session's cookie that no page of the desk has sent."""
    return Fault(
        403,
        "This call could not be accepted",
        "It came with a browser's session, but without the mark of a page of this desk. "
        "Nothing was changed.",
        "Send X-CSRFToken as the page holds it, or use a token instead of the session.",
    )


def not_allowed(what: str = "Your role does not include this call.") -> Fault:
    """403."""
    return Fault(403, "You may not do this", what, "Ask an administrator of the desk.")


def reads_only() -> Fault:
    """403 of a token that may only read."""
    what = "This token may only read. Nothing was changed."
    return Fault(403, "You may not do this", what, "Make a token that may change records too.")


def not_found() -> Fault:
    """404."""
    return Fault(
        404,
        "There is no such record",
        "The address does not exist, or the record belongs to another team.",
        "Begin with GET /api/clients.",
    )


def wrong_method(method: str, allowed: Iterable[str]) -> Fault:
    """405."""
    names = ", ".join(sorted(allowed))
    return Fault(
        405,
        "This address does not take this method",
        f"It takes {names}; got {method[:20]}.",
        "See /api/openapi.json for what each address takes.",
        headers={"Allow": names},
    )


def too_large(most: int) -> Fault:
    """413."""
    what = f"A call's body has up to {most / 1e6:.0f} MB. Nothing was changed."
    return Fault(413, "This body is too large", what, "Send less at once.")


def not_json(got: str) -> Fault:
    """415."""
    return Fault(
        415,
        "This is not JSON",
        f"The body must be application/json; got {got[:80] or 'no content type'}.",
        "Send “Content-Type: application/json”.",
    )


def broken_json(got: str) -> Fault:
    """400."""
    return Fault(400, "This JSON could not be read", got, "Send one JSON object in UTF-8.")


def too_many(seconds: int) -> Fault:
    """429."""
    what = "More calls have come in this minute than the desk takes."
    remedy = f"Wait {seconds} seconds, then go on more slowly."
    return Fault(429, "Too many calls", what, remedy, headers={"Retry-After": str(seconds)})


def not_good(*problems: Wrong) -> Fault:
    """422."""
    return Fault(
        422,
        "This could not be accepted",
        "Part of what was sent is not as it must be. Nothing was changed.",
        "Mend what “problems” names and send it again.",
        problems,
    )


def not_readable(error: InputError) -> Fault:
    """422 of what the engineering says of a file or a set-up."""
    return not_good(*(Wrong(p.where, p.must, p.got, p.remedy) for p in error.problems))


def in_the_way(what: str, remedy: str) -> Fault:
    """409 where something else has to come first."""
    return Fault(409, "This cannot be done now", what, remedy)


def overtaken(saved: Mapping[str, Any], yours: Mapping[str, Any]) -> Fault:
    """409 with both versions."""
    return Fault(
        409,
        "Somebody else saved first",
        "The record has changed since the revision that you name. Nothing was changed.",
        "Compare “saved” with “yours”; send yours again with the revision of “saved”.",
        more={"saved": dict(saved), "yours": dict(yours)},
    )
