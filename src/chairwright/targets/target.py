"""One target: a figure, its range, and where the range comes from."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class Target:
    """A figure with a low and a high end.

    Parameters
    ----------
    figure : str
        Name in ``figures.registry.FIGURES``.
    low, high : float or None
        Ends in the figure's unit; None leaves that end open.
    must : bool
        True when a set-up outside the range is refused; False for a preference.
    weight : float
        Weight of a preference; 1 is usual. Ignored for a must.
    source : str
        Short citation, as in ``tables/sources.toml``, with the reference's certainty tag in words.
    reason : str
        Why this range, in plain words, with the client's own number in it.
    tolerance : float
        Spread that the ends inherit from the tape, in the figure's unit.
    place : str
        Name of the place that asks for it; empty when none does.
    """

    figure: str
    low: float | None
    high: float | None
    must: bool
    weight: float
    source: str
    reason: str
    tolerance: float = 0.0
    place: str = ""
