"""Targets that no body measure sets: stability, casters, overall sizes, mass."""

from __future__ import annotations

from collections.abc import Mapping

from chairwright.tables.load import load_table
from chairwright.targets.target import Target


def limit_targets(who: frozenset[str]) -> list[Target]:
    """Return the limits of ``tables/sizing/chair_limits`` that speak to a client.

    Parameters
    ----------
    who : frozenset of str
        From `chairwright.targets.audience.audience`.

    Returns
    -------
    list of Target
        In the table's order.
    """
    rows = load_table("sizing", "chair_limits")
    return [_target(row) for row in rows if row["applies_to"] in who]


def _target(row: Mapping[str, str]) -> Target:
    return Target(
        figure=row["figure"],
        low=_end(row["low"]),
        high=_end(row["high"]),
        must=row["kind"] == "must",
        weight=float(row["weight"]),
        source=_citation(row),
        reason=row["reason"],
    )


def _citation(row: Mapping[str, str]) -> str:
    if row["source"] == row["certainty"]:
        return f"{row['source']}: {row['place']}"
    return f"{row['source']}, {row['place']} ({row['certainty']})"


def _end(text: str) -> float | None:
    return float(text) if text else None
