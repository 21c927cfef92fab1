"""What it takes to make one set-up into another: pieces, minutes and money, choice by choice."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from decimal import Decimal

from chairwright.line.choices import CHOICES, NONE
from chairwright.line.model import FixedPart
from chairwright.order.adjust import check_lines
from chairwright.order.change_table import ChangeKind, ChangeTable, change_table, new_chair_table
from chairwright.order.change_work import (
    EXTRA_MINUTES,
    SHARED,
    SOURCE,
    frame_minutes,
    shared_minutes,
)
from chairwright.order.chosen import SetUp
from chairwright.order.parts import PARTS, Side, is_part, part_name, pieces
from chairwright.order.price_money import USUAL_DIGITS, from_line, rounded, total
from chairwright.order.steps_words import Move, move

EXTRAS = "extras"


@dataclass(frozen=True)
class ChangeItem:
    """One choice that changes, or an accessory that comes or goes.

    Parameters
    ----------
    choice, label : str
        ``extras`` for an accessory.
    kind : {"set", "bought", "frame"}
    move : Move
        From which option to which, and how far.
    part, words : str
        Code and name of the part that is bought; empty when none is.
    quantity : int
        Pieces; 0 when none is bought.
    side : {"left and right", "left", "right", "one"}
    money : Decimal
        The line's currency.
    minutes : float
        Of this choice alone.
    """

    choice: str
    label: str
    kind: ChangeKind
    move: Move
    part: str
    words: str
    quantity: int
    side: Side
    money: Decimal
    minutes: float


@dataclass(frozen=True)
class SharedItem:
    """Work or a frame that several choices share."""

    name: str
    words: str
    money: Decimal
    minutes: float


@dataclass(frozen=True)
class Change:
    """The whole change from one set-up to another.

    Parameters
    ----------
    first : SetUp or None
        None when the whole chair is new.
    last : SetUp
    items : tuple of ChangeItem
        In the order of the choices; empty when nothing changes.
    shared : tuple of SharedItem
        What is due once.
    money : Decimal
        Parts bought, at the line's prices, before discount and tax.
    minutes : float
    """

    first: SetUp | None
    last: SetUp
    items: tuple[ChangeItem, ...]
    shared: tuple[SharedItem, ...]
    money: Decimal
    minutes: float

    @property
    def new_chair(self) -> bool:
        """Whether the whole chair is new."""
        return self.first is None

    @property
    def money_source(self) -> str:
        """Where the prices come from."""
        if self.new_chair:
            return "prices of the line with a new chair"
        return self.last.line.later.source or "prices of the line with a new chair"

    @property
    def minutes_source(self) -> str:
        """Where the minutes come from."""
        if self.new_chair:
            return "the maker builds it"
        later = self.last.line.later
        own = ", ".join(later.minutes)
        return f"{SOURCE}; {own}: {later.source}" if own else SOURCE

    @property
    def currency(self) -> str:
        """Three letters, as ISO 4217."""
        return self.last.line.currency

    @property
    def bought(self) -> tuple[ChangeItem, ...]:
        """Parts that are bought, those of a new frame among them."""
        return tuple(item for item in self.items if item.kind in ("bought", "frame"))

    @property
    def moved(self) -> tuple[ChangeItem, ...]:
        """Holes and settings that are moved, and parts that only come off."""
        return tuple(item for item in self.items if item.kind == "set")

    @property
    def new_frame(self) -> bool:
        """Whether the frame itself is another one."""
        return any(item.kind == "frame" for item in self.items)

    @property
    def kept(self) -> tuple[str, ...]:
        """Choices whose part stays in use: nothing about them changes, or only its hole does."""
        changed = {item.choice for item in self.bought}
        return tuple(
            name
            for name, option in self.last.options.items()
            if name not in changed and is_part(name, option)
        )


def change_between(first: SetUp, last: SetUp) -> Change:
    """Say what it takes to make one set-up into another of the same line.

    Parameters
    ----------
    first, last : SetUp
        The chair as it is and as it shall be.

    Returns
    -------
    Change

    Raises
    ------
    InputError
        When the set-ups are of different lines or versions.
    """
    check_lines(first, last)
    table = change_table(last.line, first.index)
    items = (*_items(table, last), *_extras(first, last))
    shared = tuple(_shared(table, last))
    if not any(item.choice != EXTRAS for item in items) and items:
        shared = (*shared, _last_check(table))
    return Change(
        first=first,
        last=last,
        items=items,
        shared=shared,
        money=total([each.money for each in items] + [each.money for each in shared], USUAL_DIGITS),
        minutes=sum(each.minutes for each in items) + sum(each.minutes for each in shared),
    )


def new_chair(last: SetUp, kept: Mapping[str, str]) -> Change:
    """Say what a chair takes of which nothing is there but what is named.

    Parameters
    ----------
    last : SetUp
        The chair as it shall be.
    kept : mapping of str to str
        What is there already: choice to code of the line.

    Returns
    -------
    Change
    """
    table = new_chair_table(last.line, kept)
    items = tuple(
        _item(table, last, name, "bought")
        for name in CHOICES
        if table.kind(name, last.index[name]) == "bought"
    )
    line = last.line
    base = line.base_price + sum(part.price for part in line.fixed_parts if part not in line.extras)
    shared = (SharedItem("base", f"{line.title}, before any option", _money(base), 0.0),)
    extras = tuple(_extra(extra, "bought") for extra in last.extras)
    extras = tuple(replace(each, minutes=0.0) for each in extras)
    money = [each.money for each in (*items, *extras)] + [each.money for each in shared]
    return Change(None, last, (*items, *extras), shared, total(money, USUAL_DIGITS), 0.0)


def _items(table: ChangeTable, last: SetUp) -> Iterator[ChangeItem]:
    for name in CHOICES:
        at = last.index[name]
        kind = table.kind(name, at)
        if kind != "kept":
            yield _item(table, last, name, kind)


def _item(table: ChangeTable, last: SetUp, name: str, kind: ChangeKind) -> ChangeItem:
    at, option = last.index[name], last.options[name]
    bought = kind in ("bought", "frame")
    count, side = pieces(name, last) if bought else (0, "one")
    if name == "foot_supports" and bought:
        count = 1
    label = PARTS.get(name, CHOICES[name].label)
    words = part_name(table.line.choices[name], option) if bought else ""
    return ChangeItem(
        choice=name,
        label=label[:1].upper() + label[1:] if bought else CHOICES[name].label,
        kind=kind,
        move=_move(table, name, at),
        part=(option.part or option.code) if bought else "",
        words="foot support for the second side" if name == "foot_supports" and bought else words,
        quantity=count,
        side=side,
        money=_money(float(table.money.own[name][at])),
        minutes=float(table.minutes.own[name][at]) if table.minutes.own else 0.0,
    )


def _move(table: ChangeTable, name: str, at: int) -> Move:
    option = table.line.choices[name].options[at]
    if table.index[name] < 0:
        return Move(name, CHOICES[name].label, NONE, option.code, "not there", option.name)
    return move(table.line, name, table.index[name], at)


def _shared(table: ChangeTable, last: SetUp) -> Iterator[SharedItem]:
    line, changed = table.line, {n for n in CHOICES if table.kind(n, last.index[n]) != "kept"}
    for work in SHARED:
        if changed & work.choices:
            yield SharedItem(work.name, work.words, _money(0.0), shared_minutes(line, work))
    if any(table.kind(name, last.index[name]) == "frame" for name in changed):
        words = "new frame: everything moves over to it"
        yield SharedItem("frame", words, _money(line.later.frame_price), frame_minutes(line))


def _last_check(table: ChangeTable) -> SharedItem:
    work = SHARED[-1]
    return SharedItem(work.name, work.words, _money(0.0), shared_minutes(table.line, work))


def _extras(first: SetUp, last: SetUp) -> Iterator[ChangeItem]:
    for extra in last.extras:
        if extra not in first.extras:
            yield _extra(extra, "bought")
    for extra in first.extras:
        if extra not in last.extras:
            yield _extra(extra, "set")


def _extra(extra: FixedPart, kind: ChangeKind) -> ChangeItem:
    on = kind == "bought"
    before, after = (NONE, extra.code) if on else (extra.code, NONE)
    words = ("not fitted", extra.name) if on else (extra.name, "not fitted")
    return ChangeItem(
        choice=EXTRAS,
        label="Extra",
        kind=kind,
        move=Move(EXTRAS, "Extra", before, after, *words),
        part=extra.code if on else "",
        words=extra.name if on else "",
        quantity=int(on),
        side="one",
        money=_money(extra.price if on else 0.0),
        minutes=EXTRA_MINUTES,
    )


def _money(amount: float) -> Decimal:
    return rounded(from_line(amount), USUAL_DIGITS)
