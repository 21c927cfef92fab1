"""Body segments: share of the mass, centre of mass and radius of gyration, from the tables."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from typing import Literal

from chairwright.person.client import Sex, Side
from chairwright.tables.load import find_row

Table = Literal["de_leva", "winter"]
Link = Literal[
    "trunk", "head", "head_and_trunk", "upper_arm", "forearm", "hand", "thigh", "shank", "foot"
]
SEX_LETTER: dict[Sex, str] = {"male": "M", "female": "F"}
SIDED_LINKS: tuple[Link, ...] = ("upper_arm", "forearm", "hand", "thigh", "shank", "foot")


@dataclass(frozen=True)
class SegmentKind:
    """One row of a segment table, turned so that fractions count from the proximal end.

    Parameters
    ----------
    link : str
        Link of the body that the segment lies on.
    mass_share : float
        Share of the body's mass.
    com_fraction : float
        CoM from the proximal end, fraction of the segment's length.
    gyration_fraction : float
        Radius of gyration about the side-to-side axis, fraction of the length.
    """

    link: Link
    mass_share: float
    com_fraction: float
    gyration_fraction: float


@dataclass(frozen=True)
class Segment:
    """One segment of one person.

    Parameters
    ----------
    name : str
        For people to read, for example ``"left thigh"``.
    side : {"left", "right", "middle"}
    link : str
        Link of the body that it lies on.
    mass_kg : float [kg]
        What is left of it.
    length_mm : float [mm]
        Length of the whole segment.
    com_fraction : float
        CoM from the proximal end, fraction of ``length_mm``.
    gyration_mm : float [mm]
        Radius of gyration about the side-to-side axis through its own CoM.
    """

    name: str
    side: Side
    link: Link
    mass_kg: float
    length_mm: float
    com_fraction: float
    gyration_mm: float

    @property
    def com_mm(self) -> float:
        """CoM from the proximal end [mm]."""
        return self.com_fraction * self.length_mm


_DE_LEVA_ROWS: dict[Link, tuple[str, str]] = {
    "trunk": ("MIDS", "MIDH"),
    "head": ("VERT", "CERV"),
    "upper_arm": ("SJC", "EJC"),
    "forearm": ("EJC", "WJC"),
    "hand": ("WJC", "MET3"),
    "thigh": ("HJC", "KJC"),
    "shank": ("KJC", "AJC"),
    "foot": ("HEEL", "TTIP"),
}
_TOP_DOWN: frozenset[Link] = frozenset({"trunk", "head"})
_WINTER_ROWS: dict[Link, str] = {
    "head_and_trunk": "trunk_head_neck",
    "upper_arm": "upper_arm",
    "forearm": "forearm",
    "hand": "hand",
    "thigh": "thigh",
    "shank": "leg",
    "foot": "foot",
}


@cache
def segment_kinds(sex: Sex, table: Table) -> Mapping[Link, SegmentKind]:
    """Return the segments of one table, proximal end first.

    Parameters
    ----------
    sex : {"female", "male"}
        Ignored by the Winter table, which has one column.
    table : {"de_leva", "winter"}

    Returns
    -------
    mapping of link to SegmentKind
        Trunk and head count upward from the hip and from the neck.

    References
    ----------
    de Leva 1996, Table 4; Winter 2009, Table 4.1.
    """
    if table == "winter":
        return {link: _winter_kind(link, row) for link, row in _WINTER_ROWS.items()}
    return {link: _de_leva_kind(sex, link) for link in _DE_LEVA_ROWS}


@cache
def de_leva_length_mm(sex: Sex, end_from: str, end_to: str) -> float:
    """Length between two landmarks of the reference person [mm].

    Parameters
    ----------
    sex : {"female", "male"}
    end_from, end_to : str
        Landmarks as in the table, for example ``"HJC"`` and ``"KJC"``.

    Returns
    -------
    float [mm]
    """
    row = find_row(
        "body",
        "de_leva1996_segments",
        sex=SEX_LETTER[sex],
        end_from=end_from,
        end_to=end_to,
    )
    return float(row["length_mm"])


def _de_leva_kind(sex: Sex, link: Link) -> SegmentKind:
    end_from, end_to = _DE_LEVA_ROWS[link]
    row = find_row(
        "body", "de_leva1996_segments", sex=SEX_LETTER[sex], end_from=end_from, end_to=end_to
    )
    com = float(row["com_pct_from_first_end"]) / 100.0
    return SegmentKind(
        link=link,
        mass_share=float(row["mass_pct"]) / 100.0,
        com_fraction=1.0 - com if link in _TOP_DOWN else com,
        gyration_fraction=float(row["rg_transverse_pct"]) / 100.0,
    )


def _winter_kind(link: Link, segment: str) -> SegmentKind:
    row = find_row("body", "winter2009_segments", segment=segment)
    return SegmentKind(
        link=link,
        mass_share=float(row["mass_fraction"]),
        com_fraction=float(row["com_prox"]),
        gyration_fraction=float(row["k_com"]),
    )
