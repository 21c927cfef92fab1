"""Work that only takes time: to see that the worker is there."""

from __future__ import annotations

import time
from collections.abc import Mapping
from typing import Any

from chairwright_desk.jobs.work import Progress, work

STEP_S = 0.4


@work("jobs.rest")
def rest(arguments: Mapping[str, Any], progress: Progress) -> Any:
    """Take so many `seconds`, and say how far it is; with a minus sign, without a word."""
    seconds = float(arguments["seconds"])
    if seconds < 0:
        time.sleep(-seconds)
    steps = max(1, round(seconds / STEP_S))
    for number in range(steps):
        time.sleep(max(0.0, seconds) / steps)
        progress(number + 1, steps, "resting")
    return {"rested": seconds}
