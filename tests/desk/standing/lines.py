"""Product lines."""

from __future__ import annotations

from typing import Any, cast

from chairwright_desk.lines.bridge import shipped_text
from chairwright_desk.lines.models import OwnLine, Version

from ..kit.standing import Standing
from ..kit.world import World


def own_text(name: str = "our-line") -> str:
    """A line of a team's own: the everyday one under another name."""
    return shipped_text("everyday").replace("name: everyday\n", f"name: {name}\n", 1)


def made(world: World) -> OwnLine:
    """A line with a good version and one with mistakes, made once a world."""
    if "line" not in world.made:
        line = OwnLine.objects.create(team=world.team, name="our-line", latest=2)
        Version.objects.create(
            line=line, number=1, text=own_text(), title="Our folding chair", named="1", good=True
        )
        told = {
            "severity": "mistake",
            "line": 15,
            "field": "side_frames.code",
            "must": "a code must stand once",
            "got": "'SFK' a second time",
            "remedy": "Keep one of the two.",
        }
        text = own_text().replace("code: SFS", "code: SFK", 1)
        Version.objects.create(line=line, number=2, text=text, told=[told])
        world.made["line"] = line
    return cast(OwnLine, world.made["line"])


def _line(world: World) -> tuple[str]:
    return (made(world).pk,)


def _version(world: World) -> tuple[str, int]:
    return (made(world).pk, 1)


def _wrong_version(world: World) -> tuple[str, int]:
    return (made(world).pk, 2)


def _new(world: World) -> dict[str, Any]:
    return {"team": world.team.pk, "text": own_text("second-line")}


def _change(world: World) -> dict[str, Any]:
    made(world).refresh_from_db()
    return {"text": own_text(), "revision": made(world).revision}


def _offered(world: World) -> dict[str, Any]:
    made(world).refresh_from_db()
    return {"offered": "no", "revision": made(world).revision}


ENTRIES = [
    Standing("lines:list", shared=True),
    Standing("lines:new", data=_new, shared=True, role="specialist"),
    Standing("lines:show", _line),
    Standing("lines:change", _line, _change, role="specialist"),
    Standing("lines:offered", _line, _offered, look=False, role="specialist"),
    Standing("lines:options", _version),
    Standing("lines:heights", _version),
    Standing("lines:heights-paper", _version, look=False),
    Standing("lines:file", _wrong_version),
    Standing("lines:download", _wrong_version, look=False),
]
