"""The way from the chair as it stands to the engineering: nothing else here imports it."""

from __future__ import annotations

from chairwright.errors import ChairwrightError, InputError
from chairwright_desk.chair_now.bridge.measured import (
    Asked,
    Judged,
    MeasuredShown,
    Slip,
    asked_groups,
    feet_choices,
    gained,
    judged,
    open_of,
    shown_measured,
    slips_of,
)
from chairwright_desk.chair_now.bridge.weighing import (
    Pads,
    PadsShown,
    shown_pads,
    weighed_bench,
    weighed_client,
    weighed_of,
)

__all__ = [
    "Asked",
    "ChairwrightError",
    "InputError",
    "Judged",
    "MeasuredShown",
    "Pads",
    "PadsShown",
    "Slip",
    "asked_groups",
    "feet_choices",
    "gained",
    "judged",
    "open_of",
    "shown_measured",
    "shown_pads",
    "slips_of",
    "weighed_bench",
    "weighed_client",
    "weighed_of",
]
