"""One client's body as segments with masses, lengths and centres of mass."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from chairwright.person.amputation import kept_share, partial_segment
from chairwright.person.client import Amputation, Client, Sex, Side
from chairwright.person.estimates import MeasureSet
from chairwright.person.proportions import SIDES, Lengths, derive_lengths
from chairwright.person.segments import (
    SIDED_LINKS,
    Link,
    Segment,
    SegmentKind,
    Table,
    segment_kinds,
)

MIDDLE: tuple[Side, ...] = ("middle",)
LEG_LINKS: frozenset[Link] = frozenset({"thigh", "shank", "foot"})


@dataclass(frozen=True)
class Body:
    """A body ready to be seated.

    Parameters
    ----------
    sex : {"female", "male"}
    table : {"de_leva", "winter"}
        Segment table that the masses come from.
    mass_kg : float [kg]
        Measured mass; the segments sum to it.
    hip_above_seat_mm : float [mm]
        Middle of the hip joints above the surface that carries the buttocks.
    hip_ahead_of_back_mm : float [mm]
        Middle of the hip joints ahead of the plane behind the buttocks.
    trunk_length_mm : float [mm]
        Mid-hip to mid-shoulder.
    neck_mm, head_top_mm : float [mm]
        Mid-hip up the trunk line to the seventh neck vertebra and to the vertex.
    head_radius_mm : float [mm]
        For drawing.
    half_shoulder_mm, half_hip_mm : float [mm]
        Shoulder and hip joints off the mid-plane.
    upper_arm_mm, thigh_mm : mapping of side to float or None [mm]
        Joint to joint; None when the elbow or the knee is lost.
    forearm_to_grip_mm : mapping of side to float or None [mm]
        Elbow to centre of grip; None when the hand is lost.
    shank_mm : mapping of side to float or None [mm]
        Knee joint to ankle joint; None when the ankle is lost.
    foot_length_mm : mapping of side to float or None [mm]
        With the shoe; None when the foot is lost.
    wrist_mm : mapping of side to float [mm]
        Elbow to wrist, where the hand segment starts.
    ankle_height_mm : float [mm]
        Ankle joint above the sole of the shoe.
    heel_behind_ankle_mm : float [mm]
    segments : tuple of Segment
        What is left of each segment; lost ones are absent.
    """

    sex: Sex
    table: Table
    mass_kg: float
    hip_above_seat_mm: float
    hip_ahead_of_back_mm: float
    trunk_length_mm: float
    neck_mm: float
    head_top_mm: float
    head_radius_mm: float
    half_shoulder_mm: float
    half_hip_mm: float
    upper_arm_mm: Mapping[Side, float | None]
    forearm_to_grip_mm: Mapping[Side, float | None]
    thigh_mm: Mapping[Side, float | None]
    shank_mm: Mapping[Side, float | None]
    foot_length_mm: Mapping[Side, float | None]
    wrist_mm: Mapping[Side, float]
    ankle_height_mm: float
    heel_behind_ankle_mm: float
    segments: tuple[Segment, ...]

    @property
    def gyration_mm(self) -> dict[str, float]:
        """Each segment's own radius of gyration about its side-to-side axis, by name [mm]."""
        return {segment.name: segment.gyration_mm for segment in self.segments}


def build_body(client: Client, measures: MeasureSet, table: Table = "de_leva") -> Body:
    """Build the body of one client.

    Parameters
    ----------
    client : Client
    measures : MeasureSet
        From `chairwright.person.estimates.complete`.
    table : {"de_leva", "winter"}
        Segment table for masses and centres of mass.

    Returns
    -------
    Body
        Lost parts are removed, stumps kept by the partial-segment formula, the legs'
        mass multiplied by the client's leg mass factor; the masses are then scaled so
        that they sum to the measured body mass.

    Raises
    ------
    InputError
        When the measures leave no room behind the hip joints.

    References
    ----------
    de Leva 1996, Table 4; Winter 2009, Table 4.1; partial segments: first principles.
    """
    return assemble_body(
        sex=client.sex,
        table=table,
        mass_kg=measures.get("body_mass").value,
        lengths=derive_lengths(client.sex, measures),
        amputations=client.amputations,
        leg_mass_factor=client.leg_mass_factor,
    )


def assemble_body(
    *,
    sex: Sex,
    table: Table,
    mass_kg: float,
    lengths: Lengths,
    amputations: tuple[Amputation, ...] = (),
    leg_mass_factor: float = 1.0,
) -> Body:
    """Put masses on given lengths.

    Parameters
    ----------
    sex : {"female", "male"}
    table : {"de_leva", "winter"}
    mass_kg : float [kg]
        What the body weighs as it is, lost parts missing.
    lengths : Lengths [mm]
        Of the body with every limb whole.
    amputations : tuple of Amputation
    leg_mass_factor : float
        Share of the table's leg mass that is there.

    Returns
    -------
    Body
    """

    def whole(side_lengths: Mapping[Side, float], link: Link) -> dict[Side, float | None]:
        there = {side: kept_share(amputations, side, link) for side in SIDES}
        return {side: side_lengths[side] if there[side] == 1.0 else None for side in SIDES}

    return Body(
        sex=sex,
        table=table,
        mass_kg=mass_kg,
        hip_above_seat_mm=lengths.hip_above_seat,
        hip_ahead_of_back_mm=lengths.hip_ahead_of_back,
        trunk_length_mm=lengths.trunk,
        neck_mm=lengths.neck,
        head_top_mm=lengths.head_top,
        head_radius_mm=lengths.head_radius,
        half_shoulder_mm=lengths.half_shoulder,
        half_hip_mm=lengths.half_hip,
        upper_arm_mm=whole(lengths.upper_arm, "upper_arm"),
        forearm_to_grip_mm=whole(lengths.grip, "hand"),
        thigh_mm=whole(lengths.thigh, "thigh"),
        shank_mm=whole(lengths.shank, "shank"),
        foot_length_mm=whole(lengths.foot, "foot"),
        wrist_mm=dict(lengths.forearm),
        ankle_height_mm=lengths.ankle_height,
        heel_behind_ankle_mm=lengths.heel_behind_ankle,
        segments=_segments(sex, table, mass_kg, lengths, amputations, leg_mass_factor),
    )


def _shares(
    sex: Sex, table: Table, amputations: tuple[Amputation, ...], leg_mass_factor: float
) -> list[tuple[SegmentKind, Side, float, float]]:
    # Segment, side, kept share of body mass and CoM fraction; lost segments left out.
    rows: list[tuple[SegmentKind, Side, float, float]] = []
    for link, kind in segment_kinds(sex, table).items():
        factor = leg_mass_factor if link in LEG_LINKS else 1.0
        for side in SIDES if link in SIDED_LINKS else MIDDLE:
            kept, com = _kept(kind, side, amputations)
            if kept > 0.0:
                rows.append((kind, side, kind.mass_share * kept * factor, com))
    return rows


def _kept(
    kind: SegmentKind, side: Side, amputations: tuple[Amputation, ...]
) -> tuple[float, float]:
    if kind.link in ("trunk", "head", "head_and_trunk"):
        return 1.0, kind.com_fraction
    return partial_segment(kind.com_fraction, kept_share(amputations, side, kind.link))


def _segments(
    sex: Sex,
    table: Table,
    mass_kg: float,
    lengths: Lengths,
    amputations: tuple[Amputation, ...],
    leg_mass_factor: float,
) -> tuple[Segment, ...]:
    shares = _shares(sex, table, amputations, leg_mass_factor)
    total = sum(share for _, _, share, _ in shares)
    return tuple(
        _segment(kind, side, mass_kg * share / total, com, _link_length(lengths, kind.link, side))
        for kind, side, share, com in shares
    )


def _segment(kind: SegmentKind, side: Side, mass: float, com: float, length: float) -> Segment:
    words = kind.link.replace("_", " ")
    name = words if side == "middle" else f"{side} {words}"
    return Segment(name, side, kind.link, mass, length, com, kind.gyration_fraction * length)


def _link_length(lengths: Lengths, link: Link, side: Side) -> float:
    if link in ("trunk", "head_and_trunk"):
        return lengths.trunk
    if link == "head":
        return lengths.head_top - lengths.neck
    sided: dict[Link, Mapping[Side, float]] = {
        "upper_arm": lengths.upper_arm,
        "forearm": lengths.forearm,
        "hand": {s: lengths.grip[s] - lengths.forearm[s] for s in SIDES},
        "thigh": lengths.thigh,
        "shank": lengths.shank,
        "foot": lengths.foot,
    }
    return sided[link][side]
