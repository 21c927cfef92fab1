"""The lesson sheet of one choice on the demo set-up, to print."""

from __future__ import annotations

from functools import lru_cache

from chairwright.fitting.runs import runs_of
from chairwright.fitting.sweep import sweep
from chairwright.papers.lesson_from_sweep import lesson_of
from chairwright.papers.lesson_pdf import lesson_pdf
from chairwright.papers.typeset import Paper
from chairwright_desk.bench.bridge import Units
from chairwright_desk.teach.bridge.demo import NAME, base


@lru_cache(maxsize=32)
def lesson_paper(choice: str, run: str, units: Units, paper: Paper) -> bytes:
    """Try a choice in its options and typeset what moves; the same for everybody, so kept.

    Parameters
    ----------
    choice : str
    run : str
        One row of options; empty for the usual ones.
    units : {"mm", "in"}
    paper : {"a4", "us-letter"}
    """
    state = base()
    if state.setup is None:
        raise AssertionError
    options = state.bench.line.choices[choice]
    runs = runs_of(options, state.index[choice], run or None)
    swept = sweep(state.bench.person, state.setup, choice, runs)
    return lesson_pdf(lesson_of(swept, NAME, units, paper), paper)
