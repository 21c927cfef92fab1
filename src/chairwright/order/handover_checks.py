"""The technician's part: what is measured and checked on the delivered chair."""

from __future__ import annotations

import math
from collections.abc import Iterator

from chairwright.figures.registry import FIGURES
from chairwright.fitting.person import Person
from chairwright.line.choices import NONE
from chairwright.order.handover import COMMON, GUIDE, SIZES, Check, CheckGroup, Measured
from chairwright.order.order import Order
from chairwright.order.order_dimensions import Dimension
from chairwright.places.kinds import Ramp
from chairwright.places.model import Surroundings
from chairwright.targets.audience import base_measure, foot_support_sides, pushing_hand_sides
from chairwright.targets.target import Target
from chairwright.units import inches_text

FINDINGS = "the set-up's figure"
CLEARANCE = "US lists (read in the source); Exam (read in the source); P&O (read in the source)"
POPLITEAL = "WHO WSTP (restated by a secondary source)"
FINGERS = "US lists (read in the source)"
ELBOW = "PVA Consortium 2005 (read in the source)"
RATED = "the maker's rated load, product line file"


def measured(order: Order) -> tuple[Measured, ...]:
    """Every dimension with the range that is allowed as delivered.

    Parameters
    ----------
    order : Order

    Returns
    -------
    tuple of Measured
        The tolerance either way, kept inside a must of the client that the order holds.
    """
    musts = {item.target.figure: item.target for item in order.setup.judged if item.target.must}
    return tuple(_measured(each, musts.get(each.name)) for each in order.dimensions)


def _measured(dimension: Dimension, must: Target | None) -> Measured:
    value = round(dimension.value, dimension.digits)
    low, high = value - dimension.tolerance, value + dimension.tolerance
    if must is None:
        return Measured(dimension, low, high, must=False, source=SIZES)
    least = -math.inf if must.low is None else must.low
    most = math.inf if must.high is None else must.high
    if not least <= dimension.value <= most or (low >= least and high <= most):
        return Measured(dimension, low, high, must=False, source=SIZES)
    step = 10.0**-dimension.digits
    inside = (
        math.ceil(round(max(low, least) / step, 6)) * step,
        math.floor(round(min(high, most) / step, 6)) * step,
    )
    return Measured(dimension, *inside, must=True, source=f"{SIZES}; {must.source}")


def check_groups(
    order: Order, person: Person, surroundings: Surroundings | None
) -> tuple[CheckGroup, ...]:
    """Every check beside the dimensions, in the order in which they are made.

    Parameters
    ----------
    order : Order
    person : Person
    surroundings : Surroundings or None

    Returns
    -------
    tuple of CheckGroup
    """
    return (
        CheckGroup("Which chair this is", tuple(_identity(order))),
        CheckGroup(
            "Wheel locks and casters", tuple(_locks(order, surroundings)),
            ("A wheel lock parks the chair; it is no brake for a slope.",),
        ),
        CheckGroup("Anti-tip devices", tuple(_anti_tip(order))),
        CheckGroup("With the client in the chair", tuple(_seated(order, person))),
        CheckGroup(
            "Tip check in all directions, with a spotter", tuple(_tips(order)),
            ("The spotter stands within reach on the falling side before anybody tips the chair. "
             f"The angles are reckoned for sitting still, with {_centre(person)} centre of mass: "
             "they are no goal. Tip only until the far wheels are light.",
             "Repeat the whole check after every change of the set-up."),
        ),
        CheckGroup("Handed over with the chair", tuple(_given(order))),
    )  # fmt: skip


def _centre(person: Person) -> str:
    return "an estimated" if person.weighed is None else "a measured"


def _identity(order: Order) -> Iterator[Check]:
    yield Check("Serial number", "", COMMON, reading=True)
    yield Check("Device identifier (UDI) on the label", "", COMMON, reading=True)
    line = order.setup.line
    yield Check("Product line and version on the label", f"{line.title}, {line.version}", COMMON)
    if math.isfinite(order.load.rated_kg):
        load = order.load
        asked = f"{load.rated_kg:g} kg; the load is {load.load_kg:.1f} kg"
        yield Check("Highest load marked on the chair", asked, RATED)


def _locks(order: Order, surroundings: Surroundings | None) -> Iterator[Check]:
    figures = order.setup.figures
    yield Check("Both locks press into their tyres alike, tyres at full pressure", "", COMMON)
    yield Check("The client, or the carer, can reach and work both locks", "", COMMON)
    for ramp in _ramps(surroundings):
        what = f"Locks hold with the client in the chair, facing up and facing down: {ramp.name}"
        yield Check(what, f"slope of {ramp.slope_deg:.1f} degrees, spotter", COMMON)
    if not _ramps(surroundings):
        what = "Locks hold with the client in the chair on the client's own ramp, both ways"
        yield Check(what, "spotter", COMMON)
    stem = figures["caster_stem_angle_deg"]
    yield Check(
        "Caster stems upright",
        f"within 1.5 degrees; reckoned {_tenth(stem)}",
        COMMON,
        reading=True,
    )
    yield Check(
        "Casters swing clear of footplates, heels and tyres", "at least 5 mm (3/16 in)", COMMON
    )
    yield Check("All wheels touch the floor; casters do not flutter at a fast walk", "", COMMON)


def _tenth(value: float) -> str:
    text = f"{value:.1f}"
    return text.lstrip("-") if float(text) == 0.0 else text


def _ramps(surroundings: Surroundings | None) -> tuple[Ramp, ...]:
    places = () if surroundings is None else surroundings.places
    return tuple(place for place in places if isinstance(place, Ramp))


def _anti_tip(order: Order) -> Iterator[Check]:
    option = order.setup.options["anti_tip"]
    if option.code == NONE:
        yield Check("No anti-tip device is fitted: client and carer know it", "", COMMON)
        return
    pitch = order.setup.figures["pitch_to_anti_tip_deg"]
    yield Check("Both sides in the same hole, wheels down, catches in", option.code, COMMON)
    touch = "never" if math.isnan(pitch) else f"at {pitch:.1f} degrees; at most 12 degrees"
    what = "Tipped back with a spotter, both devices touch the floor together"
    yield Check(what, touch, f"{FINDINGS}; {COMMON}", reading=True)
    yield Check("They hold the chair, and do not slip or turn", "", COMMON)


def _seated(order: Order, person: Person) -> Iterator[Check]:
    client, measures = person.client, person.measures
    yield Check("Cushion the right way round, pelvis at the back", "", COMMON)
    thigh = base_measure("buttock_thigh_depth", "any", client, measures)
    if thigh is not None:
        gap = thigh.value - order.setup.figures["seat_depth_mm"]
        asked = f"30 to 50 mm (1 1/4 to 2 in); reckoned {gap:.0f} mm ({inches_text(gap)})"
        yield Check("Gap behind the knee", asked, f"{POPLITEAL}; {FINDINGS}", reading=True)
    if foot_support_sides(client, measures):
        asked = "at least 50 mm (2 in)"
        yield Check("Footplate to floor, client seated", asked, CLEARANCE, reading=True)
        yield Check("Under the front of each thigh", "two to three fingers go in", FINGERS)
    if client.feet_that_push:
        yield Check("The heel of each pushing foot comes flat to the floor", "", COMMON)
    if pushing_hand_sides(client, measures):
        value = order.setup.figures["elbow_angle_deg"]
        asked = "100 to 120 degrees"
        if not math.isnan(value):
            asked = f"{asked}; reckoned {value:.1f}"
        what = "Elbow angle, hand at the top of the rim"
        yield Check(what, asked, f"{ELBOW}; {FINDINGS}", reading=True)
    yield Check("No pressure or rubbing at hips, knees, arms and heels", "", COMMON)


_TIPS = (
    ("Back, wheels locked", "tip_rear_locked_deg"),
    ("Back, wheels free and held at the rims", "tip_rear_free_deg"),
    ("Forward, casters trailing", "tip_forward_deg"),
    ("To the left", "tip_left_deg"),
    ("To the right", "tip_right_deg"),
)


def _tips(order: Order) -> Iterator[Check]:
    figures, spreads = order.setup.figures, order.setup.spreads
    for what, name in _TIPS:
        value, digits = figures[name], FIGURES[name].digits
        if not math.isnan(value):
            words = f"reckoned {value:.{digits}f} ± {spreads.get(name, 0.0):.{digits}f} degrees"
            yield Check(what, words, f"{GUIDE}; {FINDINGS}")
    yield Check("Leaning and reaching to each side, with all that is carried on", "", GUIDE)


def _given(order: Order) -> Iterator[Check]:
    yield Check("The maker's instructions, and the page to take home", "", COMMON)
    yield Check("Tools and spare parts", "", COMMON, reading=True)
    belt = order.setup.options["belt"]
    if belt.code != NONE:
        yield Check("Told: the belt holds the posture; it is no restraint in a vehicle",
                    belt.name, COMMON)  # fmt: skip
    yield Check("Told: nothing on file says that the chair may be a seat in a vehicle", "", COMMON)
