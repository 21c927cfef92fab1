"""What the bench asks of the lines: their texts, and which of them a team can make set-ups on."""

from __future__ import annotations

from chairwright_desk.lines.models import OwnLine, Version

AT = "@"
"""Between name and version number, as a set-up keeps its line: ``our-line@3``."""


def line_text(team_id: str, name: str) -> str:
    """The text of a team's own line.

    Parameters
    ----------
    team_id : str
    name : str
        ``our-line@3`` for that version; ``our-line`` for the last good one.

    Returns
    -------
    str
        Empty when there is no such line or no good version.
    """
    plain, _, number = name.partition(AT)
    found = Version.objects.filter(line__team_id=team_id, line__name=plain, good=True)
    if number.isdigit():
        found = found.filter(number=int(number))
    version = found.order_by("-number").first()
    return version.text if version else ""


def lines_known(team_id: str) -> tuple[tuple[str, str], ...]:
    """Name and words of every line of its own on which a team can make set-ups.

    Parameters
    ----------
    team_id : str

    Returns
    -------
    tuple of (str, str)
        Each name holds its version: a set-up stays on the version on which it was made.
    """
    lines = OwnLine.objects.filter(team_id=team_id, offered=True).order_by("name")
    used = ((line, line.in_use) for line in lines)
    return tuple(
        (f"{line.name}{AT}{version.number}", f"{version.title}, version {version.named}")
        for line, version in used
        if version
    )
