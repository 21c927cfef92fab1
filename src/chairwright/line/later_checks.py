"""What a line file can get wrong about changing a chair in use: choices and work unheard of."""

from __future__ import annotations

from collections.abc import Iterator

from chairwright.errors import Problem
from chairwright.line.choices import CHOICES
from chairwright.line.schema import WrittenLater
from chairwright.reading import YamlSource
from chairwright.validation import place, shown, suggest
from chairwright.yaml_events import KeyPath

SHARED_WORK = ("wheels_off", "front_up", "stance", "locks", "last_check")
"""Work that several choices share, and that is done once."""


def later_mistakes(later: WrittenLater | None, source: YamlSource) -> list[Problem]:
    """Names under ``later`` that are no choice, nor work that choices share.

    Parameters
    ----------
    later : WrittenLater or None
    source : YamlSource
        The file, for each problem's ``file:line``.

    Returns
    -------
    list of Problem
    """
    return [] if later is None else list(_unknown(later, source))


def _unknown(later: WrittenLater, source: YamlSource) -> Iterator[Problem]:
    named: list[tuple[KeyPath, str, tuple[str, ...]]] = [
        *((("later", "frame", at), name, ()) for at, name in enumerate(later.frame)),
        *((("later", "part_prices", name), name, ()) for name in later.part_prices or ()),
        *((("later", "minutes", name), name, SHARED_WORK) for name in later.minutes or ()),
    ]
    for path, name, more in named:
        known = (*CHOICES, *more)
        if name not in known:
            must = "it must be a choice" + (" or shared work" if more else "")
            yield Problem(place(source, path), must, shown(name), suggest(name, known))
