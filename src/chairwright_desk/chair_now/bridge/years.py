"""The years to come: how long a set-up lasts while the client changes, as plain data."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any

from chairwright.errors import InputError, Problem
from chairwright.order.life_plan import Asked, plan_life
from chairwright.papers.pack.life_sheet import TEMPLATE, life_content
from chairwright.papers.typeset import Paper, typeset
from chairwright_desk.bench.bridge import Bench
from chairwright_desk.bench.bridge.opened import index_of

Data = dict[str, Any]
STARTED = "expected.over_years"


def planned(
    bench: Bench,
    codes: Mapping[str, str] | None,
    asked: Mapping[str, Any],
    progress: Callable[[str], None] = lambda _: None,
) -> Data:
    """Plan the years to come.

    Parameters
    ----------
    bench : Bench
        Its weighing counts, where it has one.
    codes : mapping of str to str, or None
        A set-up that is there already; None looks for one on the bench's line.
    asked : mapping
        ``years``, ``lasts`` (numbers or None), ``mass_change`` (per cent or None), ``delivered``.
    progress : callable

    Returns
    -------
    dict
        ``content`` of the sheet, and the ``codes`` and ``extras`` of what is planned for.

    Raises
    ------
    InputError
        When nothing holds every must now, or nothing lasts as long as is asked.
    """
    person, share = bench.person, asked.get("mass_change")
    wanted = Asked(
        years=asked.get("years"),
        mass_share=None if share is None else share / 100.0,
        lasts_years=asked.get("lasts"),
        setup=None if codes is None else index_of(bench.line, codes),
        delivered=asked.get("delivered") or "",
    )
    try:
        plan = plan_life(
            person.client, bench.line, wanted, person.surroundings, progress, person.weighed
        )
    except InputError as error:
        raise InputError(*(_told(each) for each in error.problems)) from None
    return {
        "content": life_content(plan),
        "codes": plan.setup.codes,
        "extras": [extra.code for extra in plan.setup.extras],
    }


def _told(problem: Problem) -> Problem:
    """The same without the command line's words."""
    remedy = problem.remedy
    if "chairwright refit" in remedy:
        remedy = "Fit the chair again first."
    elif "chairwright fit" in remedy:
        remedy = "See on the bench what stands against it."
    return Problem(problem.where, problem.must, problem.got, remedy)


def sheet(content: Mapping[str, Any], paper: Paper) -> bytes:
    """The sheet over the years as a PDF.

    Parameters
    ----------
    content : mapping
        From `planned`.
    paper : {"a4", "us-letter"}
    """
    return typeset(TEMPLATE, content, paper)
