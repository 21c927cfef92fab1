"""The codes of a product line, with what each is."""

from __future__ import annotations

from dataclasses import dataclass

from chairwright.reading import FileText
from chairwright_desk.bench.bridge import open_line


@dataclass(frozen=True)
class LineCodes:
    """Code and what it is, of each option and of each accessory of a line."""

    choices: tuple[tuple[str, str], ...]
    extras: tuple[tuple[str, str], ...]


def codes_of_line(line: str | FileText) -> LineCodes:
    """Read the codes of a line.

    Parameters
    ----------
    line : str or FileText

    Raises
    ------
    InputError
        When the line cannot be read.
    """
    read = open_line(line)
    choices = [
        (option.code, f"{choice.label}: {option.name}")
        for choice in read.choices.values()
        for option in choice.options
    ]
    return LineCodes(tuple(choices), tuple((each.code, each.name) for each in read.extras))
