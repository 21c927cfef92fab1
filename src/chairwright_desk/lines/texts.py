"""What the bench asks of the lines: their texts, and which of them a team can make set-ups on."""

from __future__ import annotations

from chairwright_desk.lines.models import OwnLine, Version

AT = "@"
"""Between a line's plain name and the id of its version, as a set-up keeps its line."""


def line_text(name: str, team_id: str = "") -> str:
    """The text of a team's own line.

    Parameters
    ----------
    name : str
        ``our-line@`` with the id of a version, as `lines_known` names it: ids are of all teams, so
        that a set-up's line is found without its team. Or ``our-line`` for the last good version,
        which needs the team.
    team_id : str
        Only a line of this team; empty for any.

    Returns
    -------
    str
        Empty when there is no such line or no good version.
    """
    plain, _, version_id = name.partition(AT)
    if not (version_id or team_id):
        return ""
    found = Version.objects.filter(line__name=plain, good=True)
    if version_id:
        found = found.filter(pk=version_id)
    if team_id:
        found = found.filter(line__team_id=team_id)
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
        (f"{line.name}{AT}{version.pk}", f"{version.title}, version {version.named}")
        for line, version in used
        if version
    )
