"""Lost limb parts: their mass, the mass the body would have whole, and what a stump keeps."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from chairwright.errors import InputError, Problem
from chairwright.person.client import Amputation
from chairwright.tables.load import find_row

TableFamily = Literal["osterkamp", "de_leva", "winter"]
LimbLink = Literal["upper_arm", "forearm", "hand", "thigh", "shank", "foot"]

LEG: tuple[LimbLink, ...] = ("thigh", "shank", "foot")
ARM: tuple[LimbLink, ...] = ("upper_arm", "forearm", "hand")
CUT: dict[str, LimbLink] = {
    "below_knee": "shank",
    "above_knee": "thigh",
    "below_elbow": "forearm",
    "above_elbow": "upper_arm",
}
_WHOLE_LOST: dict[str, tuple[LimbLink, ...]] = {
    "foot": ("foot",),
    "below_knee": ("foot",),
    "through_knee": ("shank", "foot"),
    "above_knee": ("shank", "foot"),
    "hip": LEG,
    "hand": ("hand",),
    "below_elbow": ("hand",),
    "through_elbow": ("forearm", "hand"),
    "above_elbow": ("forearm", "hand"),
    "shoulder": ARM,
}
_OSTERKAMP_PART: dict[LimbLink, str] = {
    "upper_arm": "upper_arm",
    "forearm": "forearm",
    "hand": "hand",
    "thigh": "thigh",
    "shank": "lower_leg",
    "foot": "foot",
}


@dataclass(frozen=True)
class LostPart:
    """Share of the whole body's mass that one amputation took.

    Parameters
    ----------
    fraction : float
        Share of intact body mass, 0 to 1.
    family : {"osterkamp", "de_leva", "winter"}
        The table it comes from; families disagree and are never mixed.
    """

    fraction: float
    family: TableFamily


def kept_share(amputations: Sequence[Amputation], side: str, link: str) -> float:
    """Share of a limb segment's length that is left.

    Parameters
    ----------
    amputations : sequence of Amputation
    side : {"left", "right"}
    link : str
        Limb segment, for example ``"shank"``.

    Returns
    -------
    float
        1 whole, 0 lost, between for a cut segment.
    """
    share = 1.0
    for amputation in (a for a in amputations if a.side == side):
        if link in _WHOLE_LOST[amputation.level]:
            return 0.0
        if CUT.get(amputation.level) == link:
            share = min(share, amputation.residual)
    return share


def partial_segment(com_fraction: float, kept_length: float) -> tuple[float, float]:
    """Mass kept and centre of mass of a segment cut across.

    Parameters
    ----------
    com_fraction : float
        CoM of the whole segment from its proximal end, fraction of its length.
    kept_length : float
        Share of the length that is left, 0 to 1.

    Returns
    -------
    mass_share : float
        Share of the whole segment's mass.
    com : float
        CoM from the proximal end, fraction of the **whole** length.

    Notes
    -----
    First principles: a mass per length that grows linearly along the segment, with the
    slope that gives the whole segment its published CoM. For CoM fractions between 1/3
    and 2/3 the mass per length stays positive.

    Examples
    --------
    >>> [round(value, 4) for value in partial_segment(0.4095, 0.75)]
    [0.8518, 0.3302]
    """
    f, k = kept_length, 12.0 * (com_fraction - 0.5)
    if f <= 0.0:
        return 0.0, 0.0
    mass_share = f + (k / 2.0) * f * (f - 1.0)
    return mass_share, (f**2 / 2.0 * (1.0 - k / 2.0) + k * f**3 / 3.0) / mass_share


def osterkamp_lost_part(amputation: Amputation, com_fraction: float = 0.5) -> LostPart:
    """Mass that one amputation took, after Osterkamp 1995.

    Parameters
    ----------
    amputation : Amputation
    com_fraction : float
        CoM of the cut segment, for the partial-segment formula; 0.5 spreads it evenly.

    Returns
    -------
    LostPart
        Share of intact body mass, family ``"osterkamp"``.
    """
    lost = sum(_osterkamp_fraction(link) for link in _WHOLE_LOST[amputation.level])
    cut = CUT.get(amputation.level)
    if cut is not None:
        kept, _ = partial_segment(com_fraction, amputation.residual)
        lost += (1.0 - kept) * _osterkamp_fraction(cut)
    return LostPart(lost, "osterkamp")


def intact_equivalent_mass_kg(mass_kg: float, lost: Sequence[LostPart]) -> float:
    """Mass that the person would have with every limb whole.

    Parameters
    ----------
    mass_kg : float [kg]
        Measured, without prostheses.
    lost : sequence of LostPart
        All from one table family.

    Returns
    -------
    float [kg]
        Measured mass divided by what is left of 1.

    Raises
    ------
    InputError
        When the parts come from different table families, or nothing would be left.

    References
    ----------
    Osterkamp 1995 (``tables/body/osterkamp1995_amputation``).
    """
    families = sorted({part.family for part in lost})
    if len(families) > 1:
        raise InputError(_mixed_problem(families))
    left = 1.0 - sum(part.fraction for part in lost)
    if left <= 0.0:
        raise InputError(_nothing_left_problem(left))
    return mass_kg / left


def client_intact_mass_kg(mass_kg: float, amputations: Sequence[Amputation]) -> float:
    """Intact-equivalent mass of a client, after Osterkamp 1995.

    Parameters
    ----------
    mass_kg : float [kg]
        Measured body mass.
    amputations : sequence of Amputation

    Returns
    -------
    float [kg]
    """
    return intact_equivalent_mass_kg(mass_kg, [osterkamp_lost_part(a) for a in amputations])


def _osterkamp_fraction(link: LimbLink) -> float:
    row = find_row("body", "osterkamp1995_amputation", part=_OSTERKAMP_PART[link])
    return float(row["mass_pct_of_intact_body"]) / 100.0


def _mixed_problem(families: Sequence[str]) -> Problem:
    return Problem(
        where="amputations",
        must="the mass of every lost part must come from one table family",
        got=" and ".join(families),
        remedy="Take all lost parts from the same table.",
    )


def _nothing_left_problem(left: float) -> Problem:
    return Problem(
        where="amputations",
        must="the lost parts must leave some of the body",
        got=f"a share of {left:.3f} left",
        remedy="Check the list of amputations for parts named twice.",
    )
