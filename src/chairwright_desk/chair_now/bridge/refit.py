"""Fitting a chair again: searched once, kept as plain data, and put together again from it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import asdict, dataclass
from typing import Any

from chairwright.drawing.change_chart import Mark, change_chart_sheet
from chairwright.drawing.svg import to_svg
from chairwright.fitting.described import Described, describe
from chairwright.fitting.extras import with_extras
from chairwright.fitting.person import Person
from chairwright.line.choices import CHOICES
from chairwright.line.model import Line
from chairwright.order.change import change_between, new_chair
from chairwright.order.chosen import chosen
from chairwright.order.parts import is_part
from chairwright.order.price_money import money_words
from chairwright.order.refit import Present, Refit, RefitPoint, gains, refit
from chairwright.order.refit_chosen import ChosenRefit, choose
from chairwright.papers.measured_words import gain_words
from chairwright.papers.pack.refit_sheet import TEMPLATE, refit_content
from chairwright.papers.refit_words import answer_words, reason_head, reason_rows, row_words
from chairwright.papers.typeset import Paper, typeset
from chairwright_desk.bench.bridge import Bench, Units, open_bench, state_of
from chairwright_desk.bench.bridge.opened import index_of
from chairwright_desk.chair_now.bridge.measured import Judged

Data = dict[str, Any]
HEADS = (("gain", "Gains"), ("nearer", "Still missed, by less"), ("loss", "Losses"),
         ("farther", "Missed by more than now"))  # fmt: skip
NO_EARLIER = "The desk holds no earlier measures for this chair to compare with."


@dataclass(frozen=True)
class Row:
    """One row of the trade-off."""

    number: int
    money: str
    minutes: str
    missed: str
    bought: int
    moved: int
    words: str


@dataclass(frozen=True)
class RowShown:
    """One row, chosen, in words."""

    content: Data
    gains: tuple[tuple[str, tuple[str, ...]], ...]
    codes: dict[str, str]
    extras: tuple[str, ...]
    setup: Described
    steps: tuple[str, ...]


def from_setup(bench: Bench, name: str, codes: Mapping[str, str], client_then: str) -> Present:
    """The chair as it is, of a line of the desk.

    Parameters
    ----------
    bench : Bench
        Of the client today, on the chair's own line with its own extras.
    name : str
    codes : mapping of str to str
    client_then : str
        Text of the client file of the day when it was fitted; empty when none is known.

    Returns
    -------
    Present

    Raises
    ------
    InputError
        When the set-up does not go with its line, or was no chair that stands.
    """
    client = bench.person.client
    if client_then:
        then = open_bench(client_then, "everyday").person
        index = index_of(bench.line, codes)
        setup = describe(bench.line, then.occupant, index, then.targets)
        return Present(name, setup, then.client)
    found = state_of(bench, codes).setup
    if found is None:
        person = bench.person
        found = describe(bench.line, person.occupant, index_of(bench.line, codes), person.targets)
    return Present(name, found, client)


def from_measured(found: Judged, person: Person, line: Line, kept: Mapping[str, str]) -> Present:
    """The chair as it is, measured: a new one is bought.

    Parameters
    ----------
    found : Judged
        For the client today.
    person : Person
    line : Line
        Of which the new chair is.
    kept : mapping of str to str
        Choice to code of what goes on the new chair.
    """
    return Present(
        found.file.name, found.found.setup, person.client, line.name, line, dict(kept)
    )  # fmt: skip


@dataclass(frozen=True)
class Parts:
    """What of one choice of a line can go on a new chair: code and words of each part."""

    choice: str
    label: str
    options: tuple[tuple[str, str], ...]


def parts_to_keep(line: Line) -> tuple[Parts, ...]:
    """Every part of a line, by choice; mere settings are left out.

    Parameters
    ----------
    line : Line
    """
    found = (
        Parts(name, CHOICES[name].label, tuple(
            (option.code, f"{option.code}, {option.name}") for option in choice.options
            if is_part(name, option)
        ))
        for name, choice in line.choices.items()
    )  # fmt: skip
    return tuple(each for each in found if each.options)


def searched(person: Person, present: Present, units: Units) -> Data:
    """Search every smallest change, and keep what came out as plain data.

    Parameters
    ----------
    person : Person
    present : Present
    units : {"mm", "in"}

    Returns
    -------
    dict
        Enough for `put_together`, and what the page shows.

    Raises
    ------
    InputError
        When parts are kept that the line does not know, or decisions leave no option.
    """
    found = refit(person, present)
    content = refit_content(choose(found, 1), units)
    return {
        "points": [{"codes": _codes(each), "cost": each.cost} for each in found.points],
        "why_not": found.why_not,
        "count": found.count,
        "looked_at": found.looked_at,
        "extent": found.extent,
        "reason_head": reason_head(found),
        "reasons": [list(row) for row in reason_rows(found)],
        "answer": list(answer_words(found)),
        "person": content["person"],
        "person_none": "" if content["person"] else NO_EARLIER,
        "now": content["now"],
        "front_words": content["front_words"],
        "rows": [asdict(_row(found, each)) for each in found.points],
        "currency": found.points[0].change.currency if found.points else "",
        "chart": _chart(found),
        "chairs": content["line"],
    }


def _codes(point: RefitPoint) -> dict[str, str]:
    return {name: option.code for name, option in point.change.last.options.items()}


def _row(found: Refit, each: RefitPoint) -> Row:
    change = each.change
    return Row(
        number=each.number,
        money=money_words(change.money, "").strip(),
        minutes=f"{change.minutes:g}",
        missed=f"{each.cost:.1f}",
        bought=len(change.bought),
        moved=len(change.moved),
        words=row_words(found, each),
    )


def _chart(found: Refit, number: int = 0) -> str:
    if len(found.points) < 2:
        return ""
    marks = [
        Mark(p.number, float(p.change.money), p.change.minutes, p.cost, p.number == number)
        for p in found.points
    ]
    return to_svg(change_chart_sheet(marks, found.points[0].change.currency), "refit")


def put_together(person: Person, present: Present, kept: Mapping[str, Any]) -> Refit:
    """The re-fit again from what was kept of it, without a search; the reasons are left out.

    Parameters
    ----------
    person : Person
        The same as when it was searched.
    present : Present
    kept : mapping
        From `searched`.
    """
    line = with_extras(
        present.buys or present.setup.line, person.client.extras, person.client.where
    )
    points = []
    for number, point in enumerate(kept["points"], 1):
        last = chosen(line, index_of(line, point["codes"]))
        change = (
            change_between(present.setup, last)
            if present.buys is None
            else new_chair(last, present.kept)
        )
        points.append(RefitPoint(number, change, point["cost"]))
    now = None if kept["why_not"] else _now(person, present, line)
    return Refit(
        person=person, present=present, now=now, why_not=kept["why_not"], points=tuple(points),
        count=kept["count"], looked_at=kept["looked_at"], extent=kept["extent"], reasons=None,
    )  # fmt: skip


def _now(person: Person, present: Present, line: Line) -> Described:
    if present.buys is not None:
        return present.setup
    index = present.setup.index
    return describe(line, person.occupant, index, person.targets, person.surroundings)


def row_shown(found: Refit, kept: Mapping[str, Any], number: int, units: Units) -> RowShown:
    """One row of the trade-off with all that is said of it.

    Parameters
    ----------
    found : Refit
        From `put_together`.
    kept : mapping
        From `searched`.
    number : int
    units : {"mm", "in"}

    Raises
    ------
    InputError
        When there is no such row.
    """
    told = choose(found, number)
    if told.setup is None:
        raise AssertionError
    moved, content = gains(found, told.setup), _content(told, kept, units)
    groups = tuple(
        (head, tuple(gain_words(each) for each in moved if each.kind == kind))
        for kind, head in HEADS
    )
    return RowShown(
        content=content | {"drawn": _chart(found, number)},
        gains=tuple(each for each in groups if each[1]),
        codes=told.setup.codes,
        extras=tuple(extra.code for extra in told.setup.extras),
        setup=told.setup,
        steps=tuple(_step(title, moves) for _, title, moves in content["steps"]),
    )


def _step(title: str, moves: str) -> str:
    """A step in words: where, and what goes from what to what."""
    return f"{title.partition(':')[0]}: {moves}" if moves else title


def _content(told: ChosenRefit, kept: Mapping[str, Any], units: Units) -> Data:
    content = refit_content(told, units)
    more = {"reason_head": kept["reason_head"], "reasons": kept["reasons"]}
    none = {"person_none": "" if content["person"] else NO_EARLIER}
    return {**content, **more, **none}


def sheet(content: Mapping[str, Any], paper: Paper) -> bytes:
    """The re-fit sheet as a PDF.

    Parameters
    ----------
    content : mapping
        Of a `RowShown`.
    paper : {"a4", "us-letter"}
    """
    return typeset(TEMPLATE, {k: v for k, v in content.items() if k != "drawn"}, paper)
