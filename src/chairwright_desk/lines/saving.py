"""Bringing a line's text in: checked, kept as the next version of its line."""

from __future__ import annotations

import re
from dataclasses import asdict

from django.db import transaction

from chairwright_desk.accounts.models import Team
from chairwright_desk.audit.trail import note_change
from chairwright_desk.base.requests import Request
from chairwright_desk.base.revised import save_revised
from chairwright_desk.lines.bridge import SHIPPED, Checked, Told, checked_apart
from chairwright_desk.lines.models import OwnLine, Version

_NAME = re.compile(r"^name:[ \t]*[\"']?([a-z][a-z0-9-]{0,40})\b", re.MULTILINE)


class NameTaken(Exception):
    """The text names a line that comes with the desk."""


def name_in(text: str) -> str:
    r"""The plain name that a text gives its line, even when the rest cannot be read; or empty.

    Parameters
    ----------
    text : str

    Examples
    --------
    >>> name_in("format: x\nname: our-line\n")
    'our-line'
    """
    found = _NAME.search(text)
    return found[1] if found else ""


def name_line(text: str) -> int:
    """The line of a text on which the name stands; 1 when it does not."""
    found = _NAME.search(text)
    return text.count("\n", 0, found.start()) + 1 if found else 1


def bring_in(request: Request, team: Team, text: str) -> Version:
    """Keep a text as a new line, or as the next version of the team's line of that name.

    Parameters
    ----------
    request : Request
    team : Team
    text : str

    Returns
    -------
    Version

    Raises
    ------
    NameTaken
        When the name is that of a line that comes with the desk.
    """
    name = name_in(text) or "line-without-name"
    if name in SHIPPED:
        raise NameTaken(name)
    checked = checked_apart(text)
    with transaction.atomic():
        line, _ = OwnLine.objects.get_or_create(
            team=team, name=name, defaults={"changed_by": request.user}
        )
        return _kept(request, line, line.revision, text, checked)


def bring_version(request: Request, line: OwnLine, revision: int, text: str) -> Version:
    """Keep a text as the next version of a line.

    Parameters
    ----------
    request : Request
    line : OwnLine
    revision : int
        Which the form was made from.
    text : str

    Raises
    ------
    Overtaken
        Somebody else has brought a version in since; nothing is kept.
    """
    checked = checked_apart(text)
    if checked.name and checked.name != line.name:
        checked = _other_name(checked, line.name, text)
    with transaction.atomic():
        return _kept(request, line, revision, text, checked)


def _other_name(checked: Checked, name: str, text: str) -> Checked:
    told = Told(
        "mistake",
        name_line(text),
        "name",
        "a version must keep the name of its line",
        repr(checked.name),
        f"Write name: {name}; or bring the text in as a new line.",
    )
    rest = [each for each in checked.told if each.line < told.line]
    after = checked.told[len(rest) :]
    return Checked(checked.name, checked.title, checked.version, (*rest, told, *after),
                   checked.more)  # fmt: skip


def _kept(request: Request, line: OwnLine, revision: int, text: str, checked: Checked) -> Version:
    saved = save_revised(request, line, revision, {"latest": line.latest + 1})
    version = Version.objects.create(
        line=saved,
        number=saved.latest,
        text=text,
        title=checked.title[:200],
        named=checked.version[:80],
        told=[asdict(each) for each in checked.told],
        more=checked.more,
        good=checked.good,
        by=request.user,
    )
    note_change(request, version, ["text"])
    return version
