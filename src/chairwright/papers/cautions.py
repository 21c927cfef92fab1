"""Cautions, each printed beside the figures that it limits."""

from __future__ import annotations

from chairwright.fitting.weighed import WeighedClient
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
        "The centre of mass is an estimate, good to about 25 mm fore and aft and 30 mm in height.",
        "Angles are for sitting still on a firm slope. Leaning, reaching, a bag on the back, "
        "kerbs, braking and pushing all tip a chair earlier. Try it with a helper behind.",
    ),
    PLACES: ("Measure the real door, ramp and table before relying on these lengths.",),
    WEIGHT: ("The maker's rated load is a limit, whatever else holds.",),
}


def beside(question: str, weighed: WeighedClient | None) -> tuple[str, ...]:
    """The cautions that belong beside the figures of one question.

    Parameters
    ----------
    question : str
    weighed : WeighedClient or None
        What scales said of the occupant, where they were asked; None for an estimate.

    Returns
    -------
    tuple of str
    """
    words = BESIDE.get(question, ())
    if weighed is None or question != STEADY:
        return words
    return (f"{centre_words(weighed)} The spread beside each angle follows from it.", *words[1:])


def centre_words(weighed: WeighedClient) -> str:
    """Say that the centre of mass was measured, when, and how far it can be off.

    Parameters
    ----------
    weighed : WeighedClient
    """
    centre = weighed.shift.centre
    _, ahead, _, up = centre.half_widths
    day = f" ({weighed.dated})" if weighed.dated else ""
    return (
        f"Centre of mass measured on the scales{day}, ± {ahead:.0f} mm fore and aft and "
        f"± {up:.0f} mm in height; the occupant is counted with {centre.mass_kg:.1f} kg."
    )


def figure_group(
    question: str, rows: tuple[FigureRow, ...], weighed: WeighedClient | None = None
) -> FigureGroup:
    """Figures under one question, with the cautions that belong beside them.

    Parameters
    ----------
    question : str
    rows : tuple of FigureRow
    weighed : WeighedClient or None
        The occupant, where scales were asked.
    """
    return FigureGroup(question, rows, beside(question, weighed))
