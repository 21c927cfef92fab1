"""The amputations of a client file, and what they contradict."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal, cast, get_args

from chairwright.files.fields import Fields
from chairwright.person.amputation import CUT
from chairwright.person.client import Amputation, AmputationLevel, Propulsion
from chairwright.validation import shown

LEVELS: tuple[AmputationLevel, ...] = get_args(AmputationLevel)
LEG_LEVELS = frozenset(LEVELS[:5])
USUAL_RESIDUAL = 0.5
_LimbSide = Literal["left", "right"]
_PUSHING_FEET: dict[Propulsion, tuple[str, ...]] = {
    "feet": ("left", "right"),
    "hand_and_foot_left": ("left",),
    "hand_and_foot_right": ("right",),
}
_PUSHING_HANDS: dict[Propulsion, tuple[str, ...]] = {
    "hands": ("left", "right"),
    "hand_and_foot_left": ("left",),
    "hand_and_foot_right": ("right",),
}


def read_amputations(fields: Fields) -> list[Amputation]:
    """Read the list of amputations, one a limb.

    Parameters
    ----------
    fields : Fields
        The file's top mapping.

    Returns
    -------
    list of Amputation
    """
    found: dict[tuple[str, bool], Amputation] = {}
    for entry in fields.children("amputations"):
        amputation = _read_one(entry)
        if amputation is None:
            continue
        limb = (amputation.side, amputation.level in LEG_LEVELS)
        if limb in found:
            kind = "leg" if limb[1] else "arm"
            must = f"the {amputation.side} {kind} must have one amputation"
            got = f"{amputation.level} besides {found[limb].level}"
            entry.refuse("level", must, got, "Keep the higher of the two.")
        else:
            found[limb] = amputation
    return list(found.values())


def _read_one(entry: Fields) -> Amputation | None:
    entry.check_keys("side", "level", "residual")
    side = entry.choice("side", ("left", "right"))
    level = entry.choice("level", LEVELS)
    residual = entry.number("residual", 0.0, 1.0)
    if level is not None and level not in CUT and entry.has("residual"):
        must = f"residual must be given only for {', '.join(CUT)}"
        entry.refuse("residual", must, shown(entry.data["residual"]), "Take residual out.")
    if side is None or level is None:
        return None
    return Amputation(
        cast(_LimbSide, side),
        cast(AmputationLevel, level),
        USUAL_RESIDUAL if residual is None else residual,
    )


def check_propulsion(
    fields: Fields, propulsion: Propulsion, amputations: Sequence[Amputation]
) -> None:
    """Note a problem when the chair would be pushed by a foot or a hand that is lost.

    Parameters
    ----------
    fields : Fields
        The file's top mapping.
    propulsion : Propulsion
    amputations : sequence of Amputation
    """
    for amputation in amputations:
        leg = amputation.level in LEG_LEVELS
        pushing = (_PUSHING_FEET if leg else _PUSHING_HANDS).get(propulsion, ())
        if amputation.side in pushing:
            part = "foot" if leg else "hand"
            must = f"the {amputation.side} {part} must be there for propulsion {propulsion}"
            got = f"an amputation of it ({amputation.level})"
            fields.refuse("propulsion", must, got, _remedy(amputations))


def _remedy(amputations: Sequence[Amputation]) -> str:
    options: tuple[Propulsion, ...] = get_args(Propulsion)
    open_to = [option for option in options if _can(option, amputations)]
    return f"Choose {' or '.join(open_to)}, or correct the amputation."


def _can(propulsion: Propulsion, amputations: Sequence[Amputation]) -> bool:
    return not any(
        amputation.side in table.get(propulsion, ())
        for amputation in amputations
        for table in ([_PUSHING_FEET] if amputation.level in LEG_LEVELS else [_PUSHING_HANDS])
    )
