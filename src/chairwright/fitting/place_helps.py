"""What would help in each place: one change of the set-up, another set-up, or the place itself."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from chairwright.fitting.described import Described
from chairwright.fitting.fit import fit_person
from chairwright.fitting.person import Person
from chairwright.fitting.place_changes import Change, cheapest_setup_change, place_change
from chairwright.fitting.place_verdicts import PlaceVerdict, place_verdicts
from chairwright.line.model import Line

HELD = ("holds", "holds on nominal values", "nothing asked")


@dataclass(frozen=True)
class PlaceHelp:
    """One place with its verdict and what would help.

    Parameters
    ----------
    verdict : PlaceVerdict
    setup_change : Change or None
        One change of this set-up, or else the best set-up of the line for all places.
    place_change : Change or None
        What the place would have to be for this set-up.
    """

    verdict: PlaceVerdict
    setup_change: Change | None
    place_change: Change | None


def place_helps(
    person: Person, line: Line, setup: Described, progress: Callable[[str], None]
) -> tuple[PlaceHelp, ...]:
    """Judge every place, and say what would help where something is missed.

    Parameters
    ----------
    person : Person
        With surroundings.
    line : Line
        With the client's extras.
    setup : Described
        Judged by the places as well.
    progress : callable
        Told in a few words what is being done.

    Returns
    -------
    tuple of PlaceHelp
        In the order of the file.
    """
    verdicts = place_verdicts(person, setup)
    single = {
        each.place.name: cheapest_setup_change(person, line, setup, each)
        for each in verdicts
        if each.word not in HELD
    }
    other = None
    failing = [each for each in verdicts if each.word == "fails"]
    if any(single[each.place.name] is None for each in failing):
        progress("no single change helps: looking for another set-up")
        other = _another(person, line, setup)
    return tuple(
        PlaceHelp(
            each,
            single.get(each.place.name) or (other if each in failing else None),
            None if each.word in HELD else place_change(person, setup, each),
        )
        for each in verdicts
    )


def _another(person: Person, line: Line, setup: Described) -> Change | None:
    """The best set-up of the line for all that is asked, as a change; None when there is none."""
    fit = fit_person(person, line, objectives=None, most_corrections=1)
    if fit.best is None or fit.setup is None:
        return None
    before, after = setup.codes, fit.setup.codes
    codes = {name: (before[name], code) for name, code in after.items() if before[name] != code}
    price = fit.setup.figures["price"] - setup.figures["price"]
    words = "the best set-up for all places, see chairwright fit --places"
    return Change("set-up", words, price, codes)
