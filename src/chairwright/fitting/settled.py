"""The options that a client's settled choices leave, checked against the line."""

from __future__ import annotations

from chairwright.chair.occupant import Occupant
from chairwright.errors import InputError, Problem
from chairwright.line.expand import matching_codes
from chairwright.line.model import Line
from chairwright.person.client import Client
from chairwright.search.space import Space, open_space
from chairwright.validation import suggest


def space_for(client: Client, line: Line, occupant: Occupant) -> Space:
    """Open the space of a line for a client.

    Parameters
    ----------
    client : Client
        ``fixed_choices`` narrow the space; a code without its hole means every hole.
    line : Line
    occupant : Occupant

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
            where=_where(client, name),
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
        return open_space(line, occupant, client.fixed_choices)
    except InputError:
        raise InputError(_feet_problem(client)) from None


def _feet_problem(client: Client) -> Problem:
    """Say why known codes leave nothing: only the foot supports also depend on the client."""
    return Problem(
        where=_where(client, "foot_supports"),
        must="a foot that rests must have a foot support, and one that pushes must have none",
        got=" or ".join(client.fixed_choices.get("foot_supports", ("nothing that suits",))),
        remedy="Choose the sides that rest, or leave the choice open.",
    )


def _where(client: Client, name: str) -> str:
    place = client.where.get("choices")
    return f"{place}: choices.{name}" if place else f"choices.{name}"
