"""A line of an address: one that comes with the desk, or one of a team's own, in one version."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from django.http import Http404

from chairwright_desk.base.access import find
from chairwright_desk.base.requests import Request
from chairwright_desk.lines.bridge import SHIPPED, Told, checked_here, line_from, shipped_text
from chairwright_desk.lines.models import OwnLine, Version


@dataclass(frozen=True)
class Held:
    """One line in one version.

    Parameters
    ----------
    key : str
        Its part of the address.
    number : int
        Of the version; a line that comes with the desk has only one.
    text : str
    title, named : str
        Title and version as the file says; the plain name when it cannot be read.
    good : bool
        Whether set-ups can be made on it.
    own : OwnLine or None
        None for one that comes with the desk.
    version : Version or None
    """

    key: str
    number: int
    text: str
    title: str
    named: str
    good: bool
    own: OwnLine | None = None
    version: Version | None = None

    @property
    def name(self) -> str:
        """The plain name."""
        return self.own.name if self.own else self.key

    @property
    def told(self) -> tuple[Told, ...]:
        """What the check said, by line."""
        if self.version is None:
            return checked_here(self.text).told
        return tuple(Told(**each) for each in self.version.told)

    @property
    def more(self) -> int:
        """How many messages are left out."""
        return 0 if self.version is None else self.version.more


def own_line(request: Request, line_id: str) -> OwnLine:
    """A team's own line.

    Parameters
    ----------
    request : Request
    line_id : str
    """
    return find(request, OwnLine.objects.select_related("team"), line_id)


def held(request: Request, line_id: str, number: int | None = None) -> Held:
    """The line of an address.

    Parameters
    ----------
    request : Request
    line_id : str
        The plain name of a line that comes with the desk, or the id of a team's own.
    number : int or None
        None for the version in use, or the newest when none is.

    Raises
    ------
    Http404
    """
    if line_id in SHIPPED:
        if number not in (None, 1):
            raise Http404
        return shipped(line_id)
    own = own_line(request, line_id)
    version = _version(own, number)
    return Held(
        own.pk,
        version.number,
        version.text,
        version.title or own.name,
        version.named,
        version.good,
        own,
        version,
    )


def _version(own: OwnLine, number: int | None) -> Version:
    versions = own.versions.select_related("by").order_by("-number")
    if number is None:
        found = versions.filter(good=True).first() or versions.first()
    else:
        found = versions.filter(number=number).first()
    if found is None:
        raise Http404
    return found


def shipped(name: str) -> Held:
    """A line that comes with the desk.

    Parameters
    ----------
    name : str
    """
    text = shipped_text(name)
    line: Any = line_from(text)
    return Held(name, 1, text, line.title, line.version, good=True)
