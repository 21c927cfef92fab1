"""The way from the bench to the engineering: nothing else of the bench imports it.

All that comes back is plain: words, numbers, tuples, and SVG text made here.
"""

from __future__ import annotations

from chairwright.errors import ChairwrightError, InputError
from chairwright.line.load import SHIPPED
from chairwright.reading import FileText
from chairwright_desk.bench.bridge.changes import Changed, Effect, change, effects_of
from chairwright_desk.bench.bridge.compared import MOST as MOST_COMPARED
from chairwright_desk.bench.bridge.compared import Beside, beside
from chairwright_desk.bench.bridge.follows import AskedShown, FigureShown, Follows, follows_of
from chairwright_desk.bench.bridge.found import Found, find, first_codes
from chairwright_desk.bench.bridge.front import PURPOSE, axes_of, front_cautions, front_picture
from chairwright_desk.bench.bridge.holes import HolePicture, Spot, hole_picture
from chairwright_desk.bench.bridge.kept import Kept
from chairwright_desk.bench.bridge.opened import (
    Bench,
    State,
    Units,
    extras_of,
    open_bench,
    open_line,
    sketch_of,
    state_of,
)
from chairwright_desk.bench.bridge.options import (
    ChoiceShown,
    ThingShown,
    choice_shown,
    choices_shown,
    table_of,
)
from chairwright_desk.bench.bridge.paid import PayerShown, payer_shown
from chairwright_desk.bench.bridge.pictures import Pictures, pictures_of
from chairwright_desk.bench.bridge.placed import PlaceShown, places_shown
from chairwright_desk.bench.bridge.scatter import Scatter
from chairwright_desk.bench.bridge.swept import SweptShown, swept
from chairwright_desk.bench.bridge.why import WhyNot, why_not

__all__ = [
    "MOST_COMPARED",
    "PURPOSE",
    "SHIPPED",
    "AskedShown",
    "Bench",
    "Beside",
    "ChairwrightError",
    "Changed",
    "ChoiceShown",
    "Effect",
    "FigureShown",
    "FileText",
    "Follows",
    "Found",
    "HolePicture",
    "InputError",
    "Kept",
    "PayerShown",
    "Pictures",
    "PlaceShown",
    "Scatter",
    "Spot",
    "State",
    "SweptShown",
    "ThingShown",
    "Units",
    "WhyNot",
    "axes_of",
    "beside",
    "change",
    "choice_shown",
    "choices_shown",
    "effects_of",
    "extras_of",
    "find",
    "first_codes",
    "follows_of",
    "front_cautions",
    "front_picture",
    "hole_picture",
    "open_bench",
    "open_line",
    "payer_shown",
    "pictures_of",
    "places_shown",
    "sketch_of",
    "state_of",
    "swept",
    "table_of",
    "why_not",
]
