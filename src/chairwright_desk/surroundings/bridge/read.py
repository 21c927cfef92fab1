"""What the engineering makes of a text of places."""

from __future__ import annotations

from collections.abc import Callable

from chairwright.errors import InputError, Problem
from chairwright.files.places import read_places
from chairwright.places.model import Place, Surroundings
from chairwright.reading import FileText

_REMEDY = {
    "Add carer: at the top of the file, with limits: women or men under it.": (
        "Describe the carer under 'Carer and building' first."
    ),
}


def places_in(text: str) -> Surroundings:
    """Read a text of places.

    Parameters
    ----------
    text : str

    Raises
    ------
    InputError
        With every problem.
    """
    return read_places(FileText("places", text))


def place_in(text: str) -> Place | None:
    """Read the one place of a text; None when it cannot be read."""
    try:
        return places_in(text).places[0]
    except (InputError, IndexError):
        return None


def troubles_of(text: str, field_at: Callable[[str], str]) -> dict[str, list[str]]:
    """What cannot be read, by the field that it stands in; under ``""`` what is about none.

    Parameters
    ----------
    text : str
    field_at : callable
        From where a message points to.
    """
    try:
        places_in(text)
    except InputError as error:
        found: dict[str, list[str]] = {}
        for problem in error.problems:
            found.setdefault(field_at(problem.where), []).append(_sentence(problem))
        return found
    return {}


def _sentence(problem: Problem) -> str:
    got = "" if problem.got in ("nothing", "none", "no carer:", "") else f" It says {problem.got}."
    must = problem.must.replace("_", " ")
    remedy = _REMEDY.get(problem.remedy, problem.remedy.replace("_", " "))
    return f"{must[:1].upper()}{must[1:]}.{got} {remedy}"
