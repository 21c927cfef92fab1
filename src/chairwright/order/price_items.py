"""What an order is made of, item by item, and by which names a price list speaks of each.

Names, the most specific first: ``cushion.Q75`` (an option or a part of a choice),
``made_to_order.seat_width``, ``made_to_order``, ``cushion`` (a whole choice), ``base``,
``fixed_parts.XB``, ``fixed_parts``, ``extras.ET``, ``extras``.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from chairwright.fitting.described import Described
from chairwright.line.choices import CHOICES, NONE
from chairwright.line.model import FixedPart, Line, Option, OptionKind
from chairwright.order.parts import part_name

BASE = "base"
FIXED = "fixed_parts"
EXTRAS = "extras"
TO_ORDER = "made_to_order"


@dataclass(frozen=True)
class Item:
    """One thing with a price or days of its own.

    Parameters
    ----------
    names : tuple of str
        By which a price list may speak of it, the most specific first.
    code : str
        Order code; empty for the chair itself.
    label, words : str
        What it is, for people.
    kind : {"standard", "made to order", "on request"}
    price : number
        As the line has it, in the line's currency.
    days : int
        That it takes before the chair is built.
    """

    names: tuple[str, ...]
    code: str
    label: str
    words: str
    kind: OptionKind
    price: object
    days: int

    @property
    def choice(self) -> str:
        """Its most general name: the choice, ``base``, ``fixed_parts`` or ``extras``."""
        return self.names[-1]


def items_of(setup: Described) -> tuple[Item, ...]:
    """Everything that a set-up is made of, the chair itself first.

    Parameters
    ----------
    setup : Described

    Returns
    -------
    tuple of Item
        Options that are not fitted are left out unless they cost something.
    """
    return tuple(_items(setup))


def _items(setup: Described) -> Iterator[Item]:
    line = setup.line
    yield from _base(line)
    for name, option in setup.options.items():
        if option.code != NONE or option.numbers["price"] or option.numbers["extra_days"]:
            yield _of_option(line, name, option)
    extras = setup.extras
    yield from (_of_part(FIXED, "Part", part) for part in line.fixed_parts if part not in extras)
    yield from (_of_part(EXTRAS, "Extra", part) for part in extras)


def _base(line: Line) -> tuple[Item, ...]:
    return (Item((BASE,), "", "Chair", line.title, "standard", line.base_price, 0),)


def _of_option(line: Line, name: str, option: Option) -> Item:
    names = [f"{name}.{option.code}"]
    if option.part and option.part != option.code:
        names.append(f"{name}.{option.part}")
    if option.kind == "made to order":
        names += [f"{TO_ORDER}.{name}", TO_ORDER]
    return Item(
        names=(*names, name),
        code=option.part or option.code,
        label=CHOICES[name].label,
        words=part_name(line.choices[name], option),
        kind=option.kind,
        price=option.numbers["price"],
        days=int(option.numbers["extra_days"]),
    )


def _of_part(group: str, label: str, part: FixedPart) -> Item:
    names = (f"{group}.{part.code}", group)
    return Item(names, part.code, label, part.name, "standard", part.price, int(part.extra_days))


def every_item(line: Line) -> tuple[Item, ...]:
    """Everything that a chair of a line can be made of."""
    return (
        *_base(line),
        *(_of_option(line, name, each) for name in CHOICES for each in line.choices[name].options),
        *(_of_part(FIXED, "Part", part) for part in line.fixed_parts if part not in line.extras),
        *(_of_part(EXTRAS, "Extra", part) for part in line.extras),
    )


def known_items(line: Line) -> tuple[str, ...]:
    """Every name by which a price list may speak of something of a line.

    Parameters
    ----------
    line : Line

    Returns
    -------
    tuple of str
        Whole choices and groups first.
    """
    names = dict.fromkeys(name for item in every_item(line) for name in item.names)
    groups = dict.fromkeys((BASE, *CHOICES, TO_ORDER, FIXED, EXTRAS))
    return tuple({**groups, **names})
