"""The way from teaching to the engineering: nothing else of teaching imports it.

The bench's bridge is used as it is; what is added is the demo client and the working of a step.
"""

from __future__ import annotations

from chairwright_desk.bench.bridge import (
    InputError,
    State,
    Units,
    change,
    follows_of,
    pictures_of,
    sketch_of,
    swept,
)
from chairwright_desk.teach.bridge.demo import CODES, NAME, base, demo_bench, state_with
from chairwright_desk.teach.bridge.paper import lesson_paper
from chairwright_desk.teach.bridge.worked import Worked, worked

__all__ = [
    "CODES",
    "NAME",
    "InputError",
    "State",
    "Units",
    "Worked",
    "base",
    "change",
    "demo_bench",
    "follows_of",
    "lesson_paper",
    "pictures_of",
    "sketch_of",
    "state_with",
    "swept",
    "worked",
]
