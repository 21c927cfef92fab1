"""The trade-off as a picture of two of its figures, from what a search has found and stored."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from chairwright.figures.registry import FIGURES
from chairwright.papers.cautions import PURPOSE, beside
from chairwright_desk.bench.bridge.opened import Bench
from chairwright_desk.bench.bridge.scatter import Dot, Scatter, scatter_of

Data = Mapping[str, Any]

__all__ = ["PURPOSE", "axes_of", "front_cautions", "front_picture"]


def axes_of(aims: Sequence[Data], across: str, up: str) -> tuple[str, str]:
    """The two figures that the picture shows.

    Parameters
    ----------
    aims : sequence of mapping
        Figures of the trade-off, as `Found` has them; at least two.
    across, up : str
        Wished; a figure that there is not, or twice the same, gives way to the first that is left.
    """
    names = [aim["name"] for aim in aims]
    first = across if across in names else next(name for name in names if name != up)
    return first, up if up in names and up != first else next(n for n in names if n != first)


def front_picture(
    found: Data, now: Mapping[str, float | None], axes: tuple[str, str]
) -> Scatter | None:
    """The trade-off as a picture whose points can be chosen.

    Parameters
    ----------
    found : mapping
        As `Found`, in plain data.
    now : mapping of str to float or None
        Figures of the set-up on the bench, to be marked too; None where it has none.
    axes : tuple of str
        From `axes_of`.

    Returns
    -------
    Scatter or None
        None when there is no point that has both figures.
    """
    aims = {aim["name"]: (at, aim) for at, aim in enumerate(found["aims"])}
    (x, across), (y, up) = (aims[name] for name in axes)
    dots = tuple(
        Dot(trade["number"], trade["numbers"][x], trade["numbers"][y], _label(found, trade))
        for trade in found["trades"]
        if None not in (trade["numbers"][x], trade["numbers"][y])
    )
    if not dots:
        return None
    here = now.get(axes[0]), now.get(axes[1])
    cross = None if here[0] is None or here[1] is None else (here[0], here[1])
    digits = across["digits"], up["digits"]
    return scatter_of(dots, _words(across), _words(up), cross, digits)


def front_cautions(bench: Bench, found: Data) -> tuple[str, ...]:
    """What belongs beside the figures of the trade-off, each said once.

    Parameters
    ----------
    bench : Bench
    found : mapping
        As `Found`, in plain data.
    """
    groups = (FIGURES[aim["name"]].group for aim in found["aims"])
    told = (words for group in groups for words in beside(group, bench.person.weighed))
    return tuple(dict.fromkeys(told))


def _words(aim: Data) -> str:
    named = f"{aim['label']}, {aim['unit']}" if aim["unit"] else aim["label"]
    return f"{named} ({aim['way']})"


def _label(found: Data, trade: Data) -> str:
    pairs = zip(found["aims"], trade["values"], strict=True)
    told = (f"{aim['label']} {value} {aim['unit']}".rstrip() for aim, value in pairs)
    return f"Point {trade['number']}: {', '.join(told)}"
