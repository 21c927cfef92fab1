"""Product lines."""

from __future__ import annotations

from chairwright_desk.api.shapes.base import Given, Taken, Text, WrongGiven


class LineGiven(Given):
    """A line that a set-up can be made on."""

    name: str
    words: str


class LinesGiven(Given):
    """Every line."""

    lines: list[LineGiven]


class LineText(Taken):
    """What a line file holds."""

    text: Text


class LineRead(Given):
    """What was read of a line file."""

    name: str
    options: dict[str, int]


class LineChecked(Given):
    """Whether a line file is good, and every message with its line."""

    good: bool
    problems: list[WrongGiven]
    line: LineRead | None
