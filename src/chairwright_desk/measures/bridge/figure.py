"""The seated figure drawn to the measures, from the side and from the front, with its tapes.

Where a tape goes is drawn where it is held on the person; the body between the joints has
drawing proportions chosen by eye, and no figure comes from them.
"""

from __future__ import annotations

import re
from math import asin, hypot
from typing import Any
from xml.etree import ElementTree as ET

from chairwright.chair.shape import Figurine
from chairwright.drawing.dimensions import Units, lay_out
from chairwright.drawing.limbs import capsule, chain
from chairwright.drawing.person import body_side, near_arm
from chairwright.drawing.scene import Dimension, Group, Line, Point, Silhouette
from chairwright.drawing.sheet import Box, Placement, Sheet, groups_box, shifted
from chairwright.drawing.svg import to_svg
from chairwright.person.body import Body
from chairwright.person.estimates import MeasureSet
from chairwright.person.posture import SIDES, leg_points, upper_body_points
from chairwright_desk.measures.bridge.catalogue import kinds
from chairwright_desk.measures.bridge.numbers import large_numbers, natural_px
from chairwright_desk.measures.bridge.understood import Understood

SCALE = 10.0
MARGIN = 3.0
PREFIX = "tape"
_AWAY_MM = 330.0
_SHARES = {"hip_width": 30.0, "trochanter_width": 95.0, "external_knee_width": -60.0}
"""Height above the seat at which a width is drawn from the front [mm]."""


def figure_svg(told: Understood, units: Units) -> str:
    """Draw the figure.

    Parameters
    ----------
    told : Understood
    units : {"mm", "in"}
        ``"in"`` adds inches.

    Returns
    -------
    str
        SVG text; the group of each tape has the id ``tape-dimension-NAME`` and, where nobody
        measured it, the class ``estimated``.
    """
    measures, body = told.stand_in, told.body
    figurine = _seated(body, measures)
    floor = -_value(measures, "lower_leg_length", 430.0)
    side = Placement(SCALE)
    drawn = tuple(
        side.group(g)
        for g in (*_seat(floor, figurine), body_side(figurine), near_arm(figurine))
        if g.items
    )
    box = groups_box(drawn)
    tapes = lay_out(_side_tapes(told, figurine, floor), side, box, units)
    front = Placement(SCALE, (box[2] + _AWAY_MM / SCALE, 0.0))
    person = front.group(_front(body, measures, floor))
    across = lay_out(_front_tapes(told, floor), front, groups_box((person,)), units)
    groups = (*drawn, person, *tapes, *across)
    groups = (*groups, *_lying(told, groups_box(groups), side, units))
    return _marked(_sheet(groups, told), told)


def _sheet(groups: tuple[Group, ...], told: Understood) -> Sheet:
    left, top, right, bottom = groups_box(groups)
    moved = tuple(shifted(group, MARGIN - left, MARGIN - top) for group in groups)
    taken = ", ".join(kinds()[n].label.lower() for n in kinds() if n in told.measured) or "nothing"
    words = f"From the side and from the front, drawn to scale. Measured: {taken}."
    size = (right - left + 2 * MARGIN, bottom - top + 2 * MARGIN)
    return Sheet("The client, seated", words, *size, moved)


def _marked(sheet: Sheet, told: Understood) -> str:
    """Size the drawing for a screen, mark what nobody measured, add the large numbers."""
    svg = to_svg(sheet, PREFIX)
    wide, high = natural_px(sheet)
    size = f' width="{wide:.0f}" height="{high:.0f}"'
    svg = re.sub(r' width="[\d.]+mm" height="[\d.]+mm"', size, svg, count=1)
    for group, number in large_numbers(sheet).items():
        before, there, after = svg.partition(f'<g id="{PREFIX}-{group}">')
        svg = f"{before}{there}{after.replace('</g>', f'{number}</g>', 1)}"
    for name in kinds():
        there = f'id="{PREFIX}-dimension-{name.replace("_", "-")}"'
        kind = "tape" if name in told.measured else "tape estimated"
        svg = svg.replace(there, f'{there} class="{kind}"')
    ET.fromstring(svg)  # noqa: S314 - made here; a slip shows at once
    return svg


def _value(measures: MeasureSet, name: str, otherwise: float = 0.0) -> float:
    """A measure of the longer side; of a body that has none, what it would have."""
    both = [each.value for each in measures.both(name) if each is not None]
    if both:
        return max(both)
    return float(measures.intact.get(name, otherwise))


def _seated(body: Body, measures: MeasureSet) -> Figurine:
    """Trunk upright, seat level, forearms level, soles on one floor."""
    hip = (body.hip_ahead_of_back_mm, body.hip_above_seat_mm)
    _, upper = upper_body_points(body, *hip, 0.0)
    legs = {}
    for side in SIDES:
        thigh = body.thigh_mm[side]
        knee, lower = measures.find("knee_height", side), measures.find("lower_leg_length", side)
        rise = (knee.value - lower.value) / 2.0 - hip[1] if knee and lower and thigh else 0.0
        turn = asin(max(-0.5, min(0.5, rise / thigh))) if thigh else 0.0
        _, legs[side] = leg_points(body, side, *hip, turn, 0.0)
    return Figurine(
        hip=hip,
        shoulder=_point(upper.shoulder) or hip,
        head_centre=_point(upper.head_centre) or hip,
        head_radius_mm=upper.head_radius_mm,
        elbow={side: _point(upper.elbow[side]) for side in SIDES},
        hand={side: _point(upper.hand[side]) for side in SIDES},
        knee={side: _point(legs[side].knee) for side in SIDES},
        ankle={side: _point(legs[side].ankle) for side in SIDES},
        heel={side: _point(legs[side].heel) for side in SIDES},
        toe={side: _point(legs[side].toe) for side in SIDES},
        half_shoulder_mm=body.half_shoulder_mm,
        half_hip_mm=body.half_hip_mm,
    )


def _point(joint: Any) -> Point | None:
    return None if joint is None else (float(joint[0]), float(joint[1]))


def _seat(floor: float, figurine: Figurine) -> tuple[Group, ...]:
    """Floor, firm seat and back plane, from which the tape is held."""
    toes = [toe[0] for toe in figurine.toe.values() if toe]
    far = max([*toes, figurine.hip[0] + 420.0]) + 60.0
    knee = max([k[0] for k in figurine.knee.values() if k] or [figurine.hip[0] + 380.0])
    top = figurine.shoulder[1] + 40.0
    lines = (
        Line((-140.0, floor), (far, floor), "outline"),
        Line((0.0, 0.0), (knee - 90.0, 0.0), "hidden"),
        Line((0.0, 0.0), (0.0, top), "hidden"),
    )
    return (Group("ground", lines),)


def _taped(
    told: Understood, name: str, start: Point, end: Point, side: str, **more: float
) -> list[Dimension]:
    """A tape, when the part is there."""
    if name in ("shoe_sole", "foot_width") and not any(told.body.foot_length_mm.values()):
        return []
    found = told.stand_in.find(name, "right") or told.stand_in.find(name)
    if found is None or hypot(end[0] - start[0], end[1] - start[1]) < 1.0:
        return []
    left, right = told.stand_in.both(name)
    differ = left is not None and right is not None and left.value != right.value
    words = f"right, {left.value:.0f} left" if differ and left is not None else ""
    return [Dimension(name, start, end, found.value, words, side, **more)]  # type: ignore[arg-type]


def _near(told: Understood, name: str) -> float:
    found = told.stand_in.find(name, "right") or told.stand_in.find(name)
    return found.value if found else 0.0


def _side_tapes(told: Understood, figurine: Figurine, floor: float) -> tuple[Dimension, ...]:
    made: list[Dimension] = []
    for name in (
        "elbow_height",
        "scapula_height",
        "axilla_height",
        "shoulder_height",
        "sitting_height",
    ):
        made += _taped(told, name, (0.0, 0.0), (0.0, _near(told, name)), "left")
    depth, knee = _near(told, "buttock_thigh_depth"), _near(told, "buttock_knee_length")
    made += _taped(told, "buttock_thigh_depth", (0.0, 0.0), (depth, 0.0), "below")
    made += _taped(told, "buttock_knee_length", (0.0, 30.0), (knee, 30.0), "below")
    heel = next((h for h in (figurine.heel["right"], figurine.heel["left"]) if h), (0.0, floor))
    foot = (heel[0] + _near(told, "foot_length"), heel[1])
    made += _taped(told, "foot_length", heel, foot, "below")
    base = (depth, heel[1])
    made += _taped(
        told, "lower_leg_length", base, (depth, heel[1] + _near(told, "lower_leg_length")), "right"
    )
    made += _taped(
        told, "knee_height", (knee, heel[1]), (knee, heel[1] + _near(told, "knee_height")), "right"
    )
    return (*made, *_body_tapes(told, figurine, heel))


def _body_tapes(told: Understood, figurine: Figurine, heel: Point) -> list[Dimension]:
    """Tapes that lie on the body itself."""
    made: list[Dimension] = []
    chest, belly = _near(told, "axilla_height") - 40.0, _near(told, "elbow_height") - 20.0
    made += _taped(
        told, "chest_depth", (0.0, chest), (_near(told, "chest_depth"), chest), "parallel"
    )
    made += _taped(
        told, "abdomen_depth", (0.0, belly), (_near(told, "abdomen_depth"), belly), "parallel"
    )
    x = figurine.hip[0] + 150.0
    made += _taped(
        told, "thigh_clearance", (x, 0.0), (x, _near(told, "thigh_clearance")), "parallel"
    )
    elbow = figurine.elbow["right"] or figurine.elbow["left"]
    if elbow:
        top = (elbow[0], elbow[1] + _near(told, "upper_arm_length"))
        made += _taped(told, "upper_arm_length", elbow, top, "parallel", offset_mm=-7.0)
        grip = (elbow[0] + _near(told, "forearm_length"), elbow[1])
        made += _taped(told, "forearm_length", elbow, grip, "parallel", offset_mm=-6.0)
        wrist = (grip[0] - 60.0, grip[1])
        tip = (wrist[0] + _near(told, "hand_length"), wrist[1])
        made += _taped(told, "hand_length", wrist, tip, "parallel", offset_mm=6.0)
    sole = (heel[0] - 30.0, heel[1])
    made += _taped(
        told,
        "shoe_sole",
        sole,
        (sole[0], sole[1] + _near(told, "shoe_sole")),
        "parallel",
        offset_mm=-1.0,
    )
    return made


def _front(body: Body, measures: MeasureSet, floor: float) -> Group:
    """The person from the front, sitting, hands on the thighs."""

    def of(name: str) -> float:
        return _value(measures, name)

    shoulder = body.hip_above_seat_mm + body.trunk_length_mm
    head = body.hip_above_seat_mm + body.head_top_mm - body.head_radius_mm
    half, chest, hips = of("shoulder_width") / 2.0, of("chest_width") / 2.0, of("hip_width") / 2.0
    radius = body.head_radius_mm
    axilla = min(of("axilla_height"), shoulder - 60.0)
    waist = min(of("elbow_height"), axilla - 40.0)
    right = ((hips, 40.0), (hips * 0.97, 110.0), (0.93 * chest, waist), (chest, axilla))
    ring = (*right, (half - 70.0, shoulder), (70.0 - half, shoulder))
    trunk = (
        (*ring, *((-x, z) for x, z in reversed(right)), (-hips + 40.0, 5.0), (hips - 40.0, 5.0)),
    )
    yoke = capsule((-half + 60.0, shoulder - 40.0), (half - 60.0, shoulder - 40.0), 58.0)
    neck = capsule((0.0, shoulder - 10.0), (0.0, head), 0.5 * radius)
    skull = chain(
        ((0.0, head - 0.35 * radius), (0.0, head + 0.2 * radius)), (0.62 * radius, 0.8 * radius)
    )
    far = [_front_arm(body, side, half, shoulder) for side in SIDES]
    middle = Silhouette((*trunk, yoke, neck, *skull))
    legs = [
        Silhouette(rings) for side in SIDES if (rings := _front_leg(body, measures, side, floor))
    ]
    arms = [Silhouette(rings) for rings in far if rings]
    return Group("front", (*arms, middle, *legs))


def _front_arm(
    body: Body, side: str, half: float, shoulder: float
) -> tuple[tuple[Point, ...], ...]:
    upper = body.upper_arm_mm[side]  # type: ignore[index]
    if upper is None:
        return ()
    way = -1.0 if side == "right" else 1.0
    x = way * (half - 45.0)
    elbow = (x, shoulder - upper)
    rings = (capsule((x, shoulder - 45.0), elbow, 45.0, 38.0),)
    grip = body.forearm_to_grip_mm[side]  # type: ignore[index]
    if grip is None:
        return rings
    hand = (0.72 * x, elbow[1] - 40.0)
    return (*rings, capsule(elbow, hand, 38.0, 34.0))


def _front_leg(
    body: Body, measures: MeasureSet, side: str, floor: float
) -> tuple[tuple[Point, ...], ...]:
    if body.thigh_mm[side] is None:  # type: ignore[index]
        return ()
    way = -1.0 if side == "right" else 1.0
    knee = measures.find("external_knee_width")
    x = way * max(60.0, (knee.value if knee else 300.0) / 2.0 - 62.0)
    top = _value(measures, "knee_height") + floor - 58.0
    thigh = capsule((x, top), (way * body.half_hip_mm, 70.0), 62.0, 80.0)
    shank, ground = body.shank_mm[side], floor  # type: ignore[index]
    if shank is None:
        return (thigh,)
    width = measures.find("foot_width")
    half = (width.value if width else 95.0) / 2.0
    calf = chain(((x, top), (x, top - 0.35 * shank), (x, ground + 75.0)), (60.0, 55.0, 36.0))
    if body.foot_length_mm[side] is None:  # type: ignore[index]
        return (thigh, *calf)
    return (
        thigh,
        *calf,
        capsule((x - half + 28.0, ground + 28.0), (x + half - 28.0, ground + 28.0), 28.0),
    )


def _front_tapes(told: Understood, floor: float) -> tuple[Dimension, ...]:
    axilla, shoulder = _near(told, "axilla_height"), _near(told, "shoulder_height")
    levels = {
        "biacromial_width": shoulder + 5.0,
        "shoulder_width": shoulder - 70.0,
        "chest_width": axilla - 60.0,
        **_SHARES,
    }
    made: list[Dimension] = []
    for name, level in levels.items():
        half = _near(told, name) / 2.0
        made += _taped(told, name, (-half, level), (half, level), "parallel")
    knee = told.stand_in.find("external_knee_width")
    x = max(60.0, (knee.value if knee else 300.0) / 2.0 - 62.0)
    half = _near(told, "foot_width") / 2.0
    made += _taped(told, "foot_width", (x - half, floor), (x + half, floor), "below")
    return tuple(made)


def _lying(told: Understood, box: Box, placement: Placement, units: Units) -> tuple[Group, ...]:
    """Body height, which is taken lying straight: one line under both views."""
    tall = told.stand_in.find("stature")
    if tall is None:
        return ()
    middle = (box[0] + box[2]) / 2.0 * SCALE
    ends = (middle - tall.value / 2.0, middle + tall.value / 2.0)
    level = -(box[3]) * SCALE
    words = "body height, lying straight"
    line = Dimension("stature", (ends[0], level), (ends[1], level), tall.value, words, "below")
    return lay_out((line,), placement, box, units)
