"""A weighing with the set-up that was on the pads: worked out, shown, and put to the client."""

from __future__ import annotations

import hashlib
from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace

from chairwright.chair.occupant import Occupant
from chairwright.errors import InputError, Problem
from chairwright.figures.evaluate import realise
from chairwright.files.scales import read_scales
from chairwright.fitting.described import one_row
from chairwright.fitting.settled import space_for
from chairwright.fitting.weighed import WeighedClient, as_weighed
from chairwright.papers.scales_words import (
    SHARE,
    WHOLE,
    Row,
    Weighed,
    beyond,
    half_words,
    notes,
)
from chairwright.reading import FileText
from chairwright.scales.carried import occupant_shift
from chairwright.scales.from_setup import with_setup
from chairwright.scales.propagate import measured
from chairwright.units import inches_text
from chairwright_desk.bench.bridge import Bench, Kept, Units, open_bench, state_of
from chairwright_desk.chair_now.bridge.pads_picture import pads_picture

SCALES = "scales"


@dataclass(frozen=True)
class Pads:
    """All that one weighing is worked out from, as it was on its day.

    Parameters
    ----------
    text : str
        What a scales file would hold.
    client : str
        Text of the client file.
    line : str or FileText
    codes : mapping of str to str
        Of the set-up that was on the pads.
    extras : tuple of str
    dated : str
    """

    text: str
    client: str
    line: str | FileText
    codes: Mapping[str, str]
    extras: tuple[str, ...]
    dated: str

    @property
    def key(self) -> str:
        """Stands for everything; the same content has the same key."""
        line = (self.line.name, self.line.text) if isinstance(self.line, FileText) else self.line
        told = repr((self.text, self.client, line, sorted(self.codes.items()), self.extras))
        return hashlib.sha256(told.encode("utf-8", "surrogatepass")).hexdigest()


@dataclass(frozen=True)
class PadsRow:
    """One result: as weighed, and as estimated where there is an estimate."""

    label: str
    unit: str
    value: str
    half: str
    estimate: str
    off: str
    beyond: bool


@dataclass(frozen=True)
class PadsShown:
    """What one weighing says.

    Parameters
    ----------
    whole, share : tuple of PadsRow
        The chair with its occupant, and the occupant alone.
    svg : str
        Side drawing.
    notes : tuple of str
    shift : str
        What goes along to other set-ups; empty when the height is not known.
    """

    whole: tuple[PadsRow, ...]
    share: tuple[PadsRow, ...]
    svg: str
    notes: tuple[str, ...]
    shift: str


_WEIGHED: Kept[Weighed] = Kept(64)
_BENCHES: Kept[Bench] = Kept(64)


def weighed_of(pads: Pads) -> Weighed:
    """Work a weighing out, once for each content.

    Parameters
    ----------
    pads : Pads

    Returns
    -------
    Weighed

    Raises
    ------
    InputError
        When readings cannot belong to one chair, or not to the set-up.
    """
    return _WEIGHED.of(pads.key, lambda: _weighed(pads))


def _weighed(pads: Pads) -> Weighed:
    file = read_scales(FileText(SCALES, pads.text))
    bench = open_bench(pads.client, pads.line, "", pads.extras)
    state = state_of(bench, pads.codes)
    if state.setup is None:
        must = "the set-up on the pads must be one that stands"
        raise InputError(Problem("setup", must, "; ".join(state.against), "Choose another set-up."))
    occupant = bench.person.occupant
    rows, points = realise(bench.line, occupant, one_row(state.index))
    session = with_setup(file.session, rows, points, occupant, loads_on=file.loads_on)
    found = measured(session)
    if found.values["occupant_mass_kg"] <= 0.0:
        total, chair = found.values["total_mass_kg"], found.values["chair_mass_kg"]
        must = f"the set-up on the pads must weigh less than was read, {total:.1f} kg"
        remedy = "Read the pads again, or choose the set-up that was weighed."
        raise InputError(Problem("setup", must, f"{chair:.1f} kg for the empty chair", remedy))
    shift = occupant_shift(found, points, occupant)
    return Weighed(replace(file, session=session), found, state.setup, shift, occupant)


def shown_pads(pads: Pads, units: Units) -> PadsShown:
    """What a weighing says, in words.

    Parameters
    ----------
    pads : Pads
    units : {"mm", "in"}

    Raises
    ------
    InputError
        As `weighed_of`.
    """
    weighed = weighed_of(pads)
    if weighed.setup is None:
        raise AssertionError
    return PadsShown(
        whole=tuple(_row(each, weighed, units) for each in _known(WHOLE, weighed)),
        share=tuple(_row(each, weighed, units) for each in _known(SHARE, weighed)),
        svg=pads_picture(weighed.setup, weighed.found, weighed.file.session),
        notes=tuple(each.replace("+/-", "±") for each in notes(weighed)),
        shift=_shift_words(weighed),
    )


def _known(rows: tuple[Row, ...], weighed: Weighed) -> list[Row]:
    return [row for row in rows if row.name in weighed.found.values]


def _row(row: Row, weighed: Weighed, units: Units) -> PadsRow:
    found, setup = weighed.found, weighed.setup
    value, half = found.values[row.name], found.half_width(row.name)
    there = setup is not None and row.name in setup.figures
    estimate = setup.figures[row.name] if setup is not None and there else 0.0
    inch = units == "in" and row.unit == "mm"
    words = (lambda each: inches_text(each).removesuffix(" in")) if inch else _words(row.digits)
    return PadsRow(
        label=row.label,
        unit="in" if inch else row.unit,
        value=words(value),
        half="± " + (words(half) if inch else half_words(half, row.digits)),
        estimate=words(estimate) if there else "",
        off=f"{value - estimate:+.{row.digits}f}" if there and not inch else "",
        beyond=setup is not None and there and beyond(weighed, setup, row.name),
    )


def _words(digits: int) -> Callable[[float], str]:
    return lambda value: f"{value:.{digits}f}"


def _shift_words(weighed: Weighed) -> str:
    shift, occupant = weighed.shift, weighed.occupant
    if shift is None or occupant is None:
        return ""
    heavier = shift.mass_kg - occupant.body.mass_kg
    ways = [
        f"{abs(shift.ahead_mm):.0f} mm farther {'forward' if shift.ahead_mm >= 0 else 'back'}",
        f"{abs(shift.up_mm):.0f} mm {'higher' if shift.up_mm >= 0 else 'lower'}",
        f"{abs(shift.left_mm):.0f} mm to the {'left' if shift.left_mm >= 0 else 'right'}",
    ]
    return (
        f"Against the estimate the client is {abs(heavier):.1f} kg "
        f"{'heavier' if heavier >= 0 else 'lighter'}, and the centre of mass lies "
        f"{', '.join(ways)}, as seen from the seat. This goes along to every other set-up."
    )


def weighed_bench(bench: Bench, pads: Pads) -> Bench:
    """The same bench with the client as weighed instead of the estimate.

    Parameters
    ----------
    bench : Bench
    pads : Pads

    Returns
    -------
    Bench

    Raises
    ------
    InputError
        When the height was not weighed, or the measures have changed since.
    """
    return _BENCHES.of((bench.key, pads.key), lambda: _bench(bench, pads))


def _bench(bench: Bench, pads: Pads) -> Bench:
    client = weighed_client(pads)
    occupant = as_weighed(bench.person.client.reference, bench.person.occupant, client)
    person = replace(bench.person, occupant=occupant, weighed=client)
    space = space_for(person.client, bench.line, occupant)
    return replace(bench, key=f"{bench.key}+{pads.key}", person=person, space=space)


def weighed_client(pads: Pads) -> WeighedClient:
    """What a weighing says of its client, for every set-up.

    Parameters
    ----------
    pads : Pads

    Raises
    ------
    InputError
        When the casters were not raised: the height is not known then.
    """
    weighed = weighed_of(pads)
    occupant: Occupant | None = weighed.occupant
    if weighed.shift is None or occupant is None:
        must = "the weighing must hold the loads with the casters raised"
        remedy = "Weigh again so: without, the client's height in the chair is not known."
        raise InputError(Problem("raised_casters", must, "nothing", remedy))
    where = f"the weighing of {pads.dated}"
    return WeighedClient(weighed.file.client, where, pads.dated, occupant, weighed.shift)
