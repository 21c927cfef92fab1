"""Codes of the lines that a team can order from, to choose from where codes are typed."""

from __future__ import annotations

from dataclasses import dataclass

from chairwright_desk.bench.texts import line_of, lines_known
from chairwright_desk.measures.bridge import InputError, LineCodes, codes_of_line


@dataclass(frozen=True)
class Known:
    """Every code with what it is: of choices, and of accessories."""

    codes: tuple[tuple[str, str], ...]
    extras: tuple[tuple[str, str], ...]


def known_codes(team_id: str) -> Known:
    """List the codes of every line, each once with each meaning.

    Parameters
    ----------
    team_id : str
        Whose own lines count as well.
    """
    lines = [(words, found) for name, words in lines_known(team_id) if (found := _codes(name))]
    codes = [(code, f"{what} ({line})") for line, found in lines for code, what in found.choices]
    extras = [(code, f"{what} ({line})") for line, found in lines for code, what in found.extras]
    return Known(tuple(dict.fromkeys(codes)), tuple(dict.fromkeys(extras)))


def _codes(name: str) -> LineCodes | None:
    try:
        return codes_of_line(line_of(name))
    except InputError:
        return None
