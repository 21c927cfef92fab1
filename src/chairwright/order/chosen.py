"""A set-up as chosen, without its figures: enough to say what parts it is made of."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Protocol

from chairwright.fitting.extras import fitted_extras
from chairwright.line.choices import CHOICES
from chairwright.line.model import FixedPart, Line, Option


class SetUp(Protocol):
    """What is asked of a set-up to name its parts."""

    @property
    def line(self) -> Line:
        """The line, with the extras that are fitted among its fixed parts."""

    @property
    def index(self) -> dict[str, int]:
        """Option position of every choice."""

    @property
    def options(self) -> dict[str, Option]:
        """The chosen option of every choice, in the order of the choices."""

    @property
    def extras(self) -> tuple[FixedPart, ...]:
        """The accessories that are fitted."""


@dataclass(frozen=True)
class Chosen:
    """A set-up of which no figure is known yet.

    Parameters
    ----------
    line : Line
    index : dict of str to int
    """

    line: Line
    index: dict[str, int]

    @property
    def options(self) -> dict[str, Option]:
        """The chosen option of every choice, in the order of the choices."""
        return {name: self.line.choices[name].options[self.index[name]] for name in CHOICES}

    @property
    def codes(self) -> dict[str, str]:
        """The chosen code of every choice, in the order of the choices."""
        return {name: option.code for name, option in self.options.items()}

    @property
    def extras(self) -> tuple[FixedPart, ...]:
        """The accessories that are fitted."""
        return fitted_extras(self.line)


def chosen(line: Line, index: Mapping[str, int]) -> Chosen:
    """Put a line and option positions together."""
    return Chosen(line, dict(index))
