"""Long work of the bench: the trade-off front, and the reasons when nothing fits."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import asdict
from math import isnan, nan
from typing import Any

from chairwright_desk.bench.bridge import find, sketch_of
from chairwright_desk.bench.models import Setup
from chairwright_desk.bench.shown import bench_of
from chairwright_desk.bench.texts import texts_of
from chairwright_desk.jobs.work import Progress, work

STEPS = 4


@work("bench.trade")
def trade(arguments: Mapping[str, Any], progress: Progress) -> dict[str, Any]:
    """Find the best set-up and the front, or the reasons why there is none.

    Parameters
    ----------
    arguments : mapping
        ``setup`` (id) and ``units`` ("mm" or "in").
    progress : Progress
    """
    setup = Setup.objects.select_related("client").get(pk=arguments["setup"])
    texts = texts_of(setup.client)
    if texts is None:
        return {}
    bench, done = bench_of(setup, texts), iter(range(1, STEPS))
    units = arguments["units"]

    def told(words: str) -> None:
        progress(next(done, STEPS - 1), STEPS, words)

    found = find(bench, units, front=True, progress=told)
    now = sketch_of(bench, setup.codes, None).setup
    figures = {} if now is None else now.figures
    here = {aim.name: figures.get(aim.name, nan) for aim in found.aims}
    return {
        "key": bench.key,
        "found": asdict(found),
        "now": {name: None if isnan(value) else value for name, value in here.items()},
    }
