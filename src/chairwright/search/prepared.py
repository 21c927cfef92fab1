"""What several searches of one space share: tables that depend on the space alone."""

from __future__ import annotations

from collections.abc import Hashable
from dataclasses import dataclass, field
from functools import cached_property

from chairwright.figures.registry import FIGURES
from chairwright.figures.terms import TERMS
from chairwright.mass_points import FloatArray
from chairwright.search.early import Early
from chairwright.search.grid import Known
from chairwright.search.look_ahead import LookAhead, OptionLookAhead
from chairwright.search.narrowing import narrowed, of_device, of_must, of_term
from chairwright.search.open_mass import OpenMasses
from chairwright.search.outline_ends import OutlineEnds, outline_ends
from chairwright.search.relevance import relevant_space
from chairwright.search.space import Space
from chairwright.targets.target import Target

OPTION_FIGURES = ("pitch_to_anti_tip_deg",)
"""Figures that the pose settles but for one late choice, and that need it made."""

OPTION_FAMILIES = ("device_spare_deg",)
"""Families of such figures that have a value whatever is chosen."""


@dataclass(frozen=True)
class Shared:
    """What a space and the parts of it have in common: the line, the occupant, and these."""

    outlines: dict[str, OutlineEnds | None] = field(default_factory=dict)
    values: dict[Hashable, FloatArray] = field(default_factory=dict)
    columns: Known = field(default_factory=dict)


class Prepared:
    """A space with its tables, each made when first asked for.

    Parameters
    ----------
    space : Space
    musts : tuple of Target
        Musts that every search of it holds.
    shared : Shared or None
        That of the space that this one is a part of.
    """

    def __init__(
        self,
        space: Space,
        musts: tuple[Target, ...] = (),
        shared: Shared | None = None,
    ) -> None:
        self.space = space
        self._musts = musts
        self._shared = shared or Shared()
        self._look_ahead: dict[str, LookAhead] = {}
        self._relevant: dict[frozenset[str], Prepared] = {}

    def __reduce__(self) -> tuple[type[Prepared], tuple[Space, tuple[Target, ...]]]:
        """What is sent to another process: the tables are made there when they are asked for."""
        return Prepared, (self.space, self._musts)

    @cached_property
    def open_masses(self) -> OpenMasses:
        """Bounds on the masses still open."""
        return OpenMasses(self.space, self._shared.columns)

    @cached_property
    def early(self) -> Early:
        """Early ends of figures."""
        return Early(self.space, self._musts, self.outline_ends, self._shared.columns)

    def outline_ends(self, name: str) -> OutlineEnds | None:
        """Ends of what a corner or a door needs; None for any other figure."""
        if name not in self._shared.outlines:
            self._shared.outlines[name] = outline_ends(name)
        return self._shared.outlines[name]

    def look_ahead(self, name: str) -> LookAhead | None:
        """Table of a figure of few choices; None for any other figure."""
        if not FIGURES[name].depends:
            return None
        if name not in self._look_ahead:
            self._look_ahead[name] = LookAhead(self.space, name, self._shared.values)
        return self._look_ahead[name]

    def option_look_ahead(self, name: str) -> OptionLookAhead | None:
        """Trial of one late choice for a figure that hangs on it alone; None for any other."""
        known = name.partition("@")[0] in (*OPTION_FIGURES, *OPTION_FAMILIES)
        return OptionLookAhead(self.space, name) if known else None

    def relevant(self, figures: frozenset[str]) -> Prepared:
        """The smaller space for a question about some figures, prepared."""
        if figures not in self._relevant:
            self._relevant[figures] = Prepared(
                relevant_space(self.space, figures), shared=self._shared
            )
        return self._relevant[figures]

    def under(self, musts: tuple[Target, ...]) -> Prepared:
        """The smaller space that some musts leave, prepared."""
        tables = (self.look_ahead(must.figure) for must in musts)
        pairs = zip(musts, tables, strict=True)
        limits = [of_must(must, table) for must, table in pairs if table is not None]
        for must in musts:
            if must.figure in TERMS:
                limits += of_term(must, self.space)
        if any(must.figure in OPTION_FIGURES for must in musts):
            limits.append(of_device(self.space))
        return Prepared(narrowed(self.space, limits), musts, self._shared)


def prepare(space: Space | Prepared) -> Prepared:
    """A space with its tables; one that has them is returned as it is."""
    return space if isinstance(space, Prepared) else Prepared(space)
