"""Up to four set-ups beside each other, and their drawings over the first one."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from chairwright.chair.shape import Shape
from chairwright.drawing.overlay import overlay_sheet
from chairwright.drawing.overlay_plan import overlay_plan_sheet
from chairwright.drawing.sheet import Page
from chairwright.figures.registry import FIGURES, GROUPS, Figure
from chairwright.fitting.compare import MOST, Comparison, Side, compare
from chairwright.fitting.ledger import Row
from chairwright.line.choices import CHOICES
from chairwright.papers.cautions import PURPOSE
from chairwright.papers.cautions import beside as cautions
from chairwright_desk.bench.bridge.opened import State, Units
from chairwright_desk.bench.bridge.pictures import Picture, picture
from chairwright_desk.bench.bridge.words import change_shown, mark_of, range_shown, shown, unit_of

PAGE = Page(190.0, 190.0)

__all__ = ["MOST", "Beside", "ComparedCell", "ComparedGroup", "ComparedRow", "Laid", "beside"]


@dataclass(frozen=True)
class ComparedCell:
    """One figure of one set-up, with how far it lies from the first one's."""

    value: str
    change: str
    word: str
    mark: str


@dataclass(frozen=True)
class ComparedRow:
    """One figure across the set-ups."""

    label: str
    unit: str
    must: str
    cells: tuple[ComparedCell, ...]
    differs: bool


@dataclass(frozen=True)
class ComparedGroup:
    """The figures that answer one question, and the cautions that belong beside them."""

    question: str
    rows: tuple[ComparedRow, ...]
    cautions: tuple[str, ...]

    @property
    def differs(self) -> bool:
        """Whether any of them differs."""
        return any(row.differs for row in self.rows)


@dataclass(frozen=True)
class Laid:
    """Two set-ups drawn over each other."""

    name: str
    side: Picture
    plan: Picture


@dataclass(frozen=True)
class Beside:
    """Set-ups beside each other.

    Parameters
    ----------
    names : tuple of str
    choices : tuple of (str, tuple of str, bool)
        Choice, the option of each, and whether they are alike; those that differ first.
    groups : tuple of ComparedGroup
    laid : tuple of Laid
        Each other set-up over the first one.
    same_line, same_client : bool
    """

    names: tuple[str, ...]
    choices: tuple[tuple[str, tuple[str, ...], bool], ...]
    groups: tuple[ComparedGroup, ...]
    laid: tuple[Laid, ...]
    same_line: bool
    same_client: bool
    purpose: str = PURPOSE


def beside(named: Sequence[tuple[str, State]], units: Units) -> Beside:
    """Lay set-ups beside each other.

    Parameters
    ----------
    named : sequence of (str, State)
        Two to four that stand; the others are compared with the first.
    units : {"mm", "in"}

    Returns
    -------
    Beside

    Raises
    ------
    ValueError
        When there are fewer or more, or one of them is no chair that stands.
    """
    sides = []
    for name, state in named:
        if state.setup is None:
            message = f"{name} is no chair that stands on its wheels"
            raise ValueError(message)
        sides.append(Side(name, state.bench.person, state.setup))
    found = compare(sides)
    shapes = [setup.shape for setup in found.setups]
    return Beside(
        names=tuple(side.name for side in sides),
        choices=_choices(found),
        groups=tuple(_groups(found, units)),
        laid=tuple(
            _laid(shapes[0], shape, (sides[0].name, side.name), at)
            for at, (side, shape) in enumerate(zip(sides[1:], shapes[1:], strict=True), 2)
        ),
        same_line=found.same_line,
        same_client=found.same_client,
    )


def _choices(found: Comparison) -> tuple[tuple[str, tuple[str, ...], bool], ...]:
    rows = []
    for name, kind in CHOICES.items():
        options = [setup.options[name] for setup in found.setups]
        words = tuple(f"{each.code}  {each.name}" for each in options)
        rows.append((kind.label, words, name not in found.choices))
    return tuple(sorted(rows, key=lambda row: row[2]))


def _groups(found: Comparison, units: Units) -> list[ComparedGroup]:
    differ = {figure.name for figure in (*found.figures, *found.judged)}
    weighed, groups = found.sides[0].person.weighed, []
    for question in GROUPS:
        inside = [figure for figure in FIGURES.values() if figure.group == question]
        rows = tuple(_row(found, figure, units, figure.name in differ) for figure in inside)
        groups.append(ComparedGroup(question, rows, cautions(question, weighed)))
    return groups


def _row(found: Comparison, figure: Figure, units: Units, differs: bool) -> ComparedRow:
    rows = [each[figure.name] for each in found.ledgers]
    values = [row.value for row in rows]
    ranges = (
        range_shown(row.must.target, figure, units, *values) for row in rows if row.must is not None
    )
    return ComparedRow(
        label=figure.label,
        unit=unit_of(figure, found.first.line, units),
        must=" / ".join(dict.fromkeys(ranges)),
        cells=tuple(_cell(figure, rows[0], row, units) for row in rows),
        differs=differs,
    )


def _cell(figure: Figure, first: Row, row: Row, units: Units) -> ComparedCell:
    moved = "" if row is first else change_shown(figure, first.value, row.value, units)
    return ComparedCell(
        shown(figure, row.value, units, *row.targets), moved, row.word or "", mark_of(row.word)
    )


def _laid(first: Shape, other: Shape, names: tuple[str, str], number: int) -> Laid:
    side = overlay_sheet(first, other, names, PAGE, number)
    plan = overlay_plan_sheet(first, other, names, PAGE, number)
    return Laid(names[1], picture(side, f"over{number}"), picture(plan, f"overplan{number}"))
