"""One sweep as plain data for JSON, and as rows for a spreadsheet."""

from __future__ import annotations

import csv
import io
import math
from collections.abc import Sequence

from chairwright.figures.registry import FIGURES, Figure
from chairwright.fitting.moved import change, moved_figures
from chairwright.fitting.sweep import Sweep, SweptRun, Tried
from chairwright.papers.lesson_why import why
from chairwright.papers.lesson_words import run_words
from chairwright.papers.words import NO_VALUE, value_words

Data = dict[str, object]
LEAD = ("run", "option", "name", "kind", "status", "remark", "also", "musts_missed",
        "square_again_with", "stem_then_deg")  # fmt: skip


def sweep_data(sweep: Sweep, *, every: bool = False) -> Data:
    """The whole result of one sweep.

    Parameters
    ----------
    sweep : Sweep
    every : bool
        True gives the figures that do not move as well.

    Returns
    -------
    dict
        Keys ``client``, ``line``, ``choice``, ``option`` and ``runs``.
    """
    return {
        "client": sweep.person.client.reference,
        "line": {"name": sweep.line.name, "version": sweep.line.version},
        "choice": sweep.choice,
        "option": sweep.option.code,
        "runs": [_run_data(sweep, run, every=every) for run in sweep.runs],
    }


def sweep_csv(sweep: Sweep, *, every: bool = False) -> str:
    """One row an option: status, figures as printed, and how far each lies from now.

    Parameters
    ----------
    sweep : Sweep
    every : bool
        True gives the figures that do not move as well.

    Returns
    -------
    str
        With a head line; an empty cell where there is no value.
    """
    setups = [setup for run in sweep.runs for setup in run.setups()]
    figures = tuple(FIGURES.values()) if every else moved_figures(sweep.base, setups)
    names = [figure.name for figure in figures]
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\n")
    writer.writerow([*LEAD, *(cell for name in names for cell in (name, f"{name}_change"))])
    for run in sweep.runs:
        for each in run.tried:
            writer.writerow([*_lead(run, each), *_cells(sweep, each, figures)])
    return out.getvalue()


def _lead(run: SweptRun, each: Tried) -> list[str]:
    square = each.squared
    also = " ".join(f"{name}={code}" for name, code in (each.also or {}).items())
    return [
        run.run.name,
        each.option.code,
        each.option.name,
        each.option.kind,
        each.status,
        "; ".join(each.reasons),
        also,
        " ".join(figure.name for figure in each.missed),
        square.code if square else "",
        f"{square.stem_deg:.1f}" if square else "",
    ]


def _cells(sweep: Sweep, each: Tried, figures: Sequence[Figure]) -> list[str]:
    if each.setup is None:
        return [""] * (2 * len(figures))
    cells = []
    for figure in figures:
        now, value = sweep.base.figures[figure.name], each.setup.figures[figure.name]
        moved = change(figure, now, value)
        cells += [_plain(figure, value), _plain(figure, moved)]
    return cells


def _plain(figure: Figure, value: float) -> str:
    return value_words(figure, value).replace(NO_VALUE, "")


def _run_data(sweep: Sweep, run: SweptRun, *, every: bool) -> Data:
    moving = moved_figures(sweep.base, run.setups())
    figures = tuple(FIGURES.values()) if every else moving
    reasons = [why(sweep.choice, run, figure) for figure in moving]
    return {
        "run": run.run.name,
        "words": run_words(sweep, run),
        "options": [_option_data(sweep, each, figures) for each in run.tried],
        "why": {one.figure.name: {"text": one.text, "sources": one.sources} for one in reasons},
    }


def _option_data(sweep: Sweep, each: Tried, figures: Sequence[Figure]) -> Data:
    square, setup = each.squared, each.setup
    return {
        "code": each.option.code,
        "name": each.option.name,
        "kind": each.option.kind,
        "status": each.status,
        "reasons": each.reasons,
        "also": dict(each.also or {}),
        "musts_missed": [figure.name for figure in each.missed],
        "square_again": None
        if square is None
        else {"stem_setting": square.code, "caster_stem_angle_deg": square.stem_deg},
        "figures": None
        if setup is None
        else {figure.name: _number(setup.figures[figure.name]) for figure in figures},
        "changes": None
        if setup is None
        else {
            figure.name: _number(setup.figures[figure.name] - sweep.base.figures[figure.name])
            for figure in figures
        },
    }


def _number(value: float) -> float | None:
    return value if math.isfinite(value) else None
