"""The chair as it is, and the client today, from what a re-fit holds."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from chairwright_desk.chair_now.bridge import judged
from chairwright_desk.chair_now.bridge.refit import from_measured, from_setup
from chairwright_desk.chair_now.known import bench_from


def present_of(asked: Mapping[str, Any]) -> tuple[Any, Any]:
    """The client and the chair of a re-fit.

    Parameters
    ----------
    asked : mapping
        From `known.snapshot`, with ``line``, ``name``, and either ``codes``, ``extras`` and
        ``then``, or ``measured`` and ``kept``.

    Returns
    -------
    tuple of Person and Present

    Raises
    ------
    InputError
        When what it holds does not go together.
    """
    if asked.get("measured"):
        bench = bench_from(asked)
        found = judged(asked["measured"], bench)
        return bench.person, from_measured(found, bench.person, bench.line, asked["kept"])
    bench = bench_from(asked, extras=tuple(asked["extras"]))
    present = from_setup(bench, asked["name"], asked["codes"], asked["then"])
    return bench.person, present
