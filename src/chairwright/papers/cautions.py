"""Cautions, each printed beside the figures that it limits."""

from __future__ import annotations

from chairwright.papers.payload import FigureGroup, FigureRow

PURPOSE = (
    "This calculation supports, and never replaces, a qualified assessment and a supervised trial. "
    "A measured test and the maker's limits win over any figure here. Local codes and licensed "
    "practice decide."
)

SEAT = "Does the seat come out right?"
REACH = "Do hands and feet reach?"
STEADY = "Is it steady?"
PLACES = "Does it fit the places?"
WEIGHT = "What does it weigh?"

BESIDE: dict[str, tuple[str, ...]] = {
    SEAT: (
        "Heights are on a level floor with the cushion loaded and the casters trailing. "
        "Check them with a tape on the finished chair.",
    ),
    REACH: (
        "Taken with the pelvis at the back support, thighs along the cushion, trunk along the back "
        "support and forearms level. A client who sits otherwise reaches otherwise.",
    ),
    STEADY: (
        "The centre of mass is an estimate, good to about 25 mm fore and aft and 30 mm in height; "
        "the spread beside each angle follows from it.",
        "Angles are for sitting still on a firm slope. Leaning, reaching, a bag on the back, "
        "kerbs, braking and pushing all tip a chair earlier. Try it with a helper behind.",
    ),
    PLACES: ("Measure the real door, ramp and table before relying on these lengths.",),
    WEIGHT: ("The maker's rated load is a limit, whatever else holds.",),
}


def figure_group(question: str, rows: tuple[FigureRow, ...]) -> FigureGroup:
    """Figures under one question, with the cautions that belong beside them."""
    return FigureGroup(question, rows, BESIDE.get(question, ()))
