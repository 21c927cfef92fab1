"""The options that a client's settled choices leave, checked against the line."""

from __future__ import annotations

from chairwright.chair.occupant import Occupant
from chairwright.errors import InputError, Problem
from chairwright.line.codes import matching_codes
from chairwright.line.model import Line
from chairwright.person.client import Client
from chairwright.search.space import Space, open_space
from chairwright.validation import suggest


def space_for(
    client: Client, line: Line, occupant: Occupant, *, made_to_order: bool = False
) -> Space:
    """Open the space of a line for a client.

    Parameters
    ----------
    client : Client
        ``fixed_choices`` narrow the space; a code without its hole means every hole.
    line : Line
    occupant : Occupant
    made_to_order : bool
        Whether the sizes made to order are open as well.

    Returns
    -------
    Space

    Raises
    ------
    InputError
        With the client file's line, when a settled code is not in the line, or when the
        settled foot supports contradict the feet that push and rest.
    """
    unknown = [
        Problem(
            where=where_settled(client, name),
            must=f"a settled choice must name options of the line {line.name}",
            got=repr(code),
            remedy=suggest(code, line.choices[name].codes),
        )
        for name, codes in client.fixed_choices.items()
        for code in codes
        if not matching_codes(line.choices[name], [code])
    ]
    if unknown:
        raise InputError(*unknown)
    try:
        return open_space(line, occupant, client.fixed_choices, made_to_order=made_to_order)
    except InputError as error:
        (problem,) = error.problems
        raise InputError(_nothing_left(client, line, problem)) from None


BODY_NEEDS = {
    "foot_supports": (
        "a foot that rests must have a foot support, and one that pushes must have none",
        "Choose the sides that rest, or leave the choice open.",
    ),
    "hand_rim": (
        "a hand that pushes must have a hand rim",
        "Choose a hand rim, or leave the choice open.",
    ),
}
"""What the client's way of moving asks of a choice, and what to do."""


def _nothing_left(client: Client, line: Line, problem: Problem) -> Problem:
    """Say why a choice has no option left, at the client file's line."""
    name = problem.where.removeprefix("choices.")
    if name not in BODY_NEEDS:
        codes = ", ".join(line.choices[name].codes)
        return Problem(
            where=where_settled(client, name),
            must=f"all options of the line {line.name} are on request, and one must be named",
            got="none",
            remedy=f"Name one under choices: {codes}.",
        )
    must, remedy = BODY_NEEDS[name]
    got = " or ".join(client.fixed_choices.get(name, ("nothing that suits",)))
    return Problem(where_settled(client, name), must, got, remedy)


def where_settled(client: Client, name: str) -> str:
    """Return ``file:line: choices.NAME`` of a settled choice."""
    place = client.where.get("choices")
    return f"{place}: choices.{name}" if place else f"choices.{name}"
