"""The client's part: what is trained, and what stands on the page to take home."""

from __future__ import annotations

import math
from collections.abc import Iterator

from chairwright.fitting.person import Person
from chairwright.line.choices import NONE
from chairwright.order.handover import COMMON, GUIDE, HOSPITAL, WHO_STEPS, Advice, Taught
from chairwright.order.order import Order

PUSHED = {
    "hands": "Push, turn and stop with both rims, on the level",
    "feet": "Move, turn and stop with both feet, on the level, forward and backward",
    "hand_and_foot_left": "Move, turn and stop with the left hand and foot, on the level",
    "hand_and_foot_right": "Move, turn and stop with the right hand and foot, on the level",
    "carer": "The carer pushes, turns and stops the chair, on the level",
}
TRAINED = f"{WHO_STEPS}; {COMMON}"


def taught(order: Order, person: Person) -> tuple[Taught, ...]:
    """What the client, or the carer, is trained in.

    Parameters
    ----------
    order : Order
    person : Person

    Returns
    -------
    tuple of Taught
        Only what this chair and this client have.
    """
    return tuple(Taught(what, source) for what, source in _taught(order, person))


def _taught(order: Order, person: Person) -> Iterator[tuple[str, str]]:
    setup = order.setup
    yield "Work both wheel locks; both on before getting in or out", TRAINED
    yield "Get in and out, in the way that is used at home", TRAINED
    if setup.options["foot_supports"].code != NONE:
        yield "Move the footplates away and back; never stand on them", TRAINED
    yield PUSHED[person.client.propulsion], TRAINED
    yield "Slopes up, down and across, with a spotter", f"{TRAINED}; {GUIDE}"
    yield "Kerbs and thresholds, with a spotter", f"{TRAINED}; {GUIDE}"
    if setup.options["anti_tip"].code != NONE:
        yield "Use of the anti-tip devices; down again after every kerb", TRAINED
    yield "Lean, reach, pick up from the floor; what a bag on the back does", TRAINED
    yield "Shift weight, and look at the skin", TRAINED
    if not math.isnan(setup.figures["folded_width_mm"]):
        heaviest = f"{setup.figures['heaviest_part_kg']:.1f} kg"
        yield f"Fold, take apart and lift; the heaviest piece weighs {heaviest}", TRAINED
    if setup.options["belt"].code != NONE:
        yield "Fasten and open the belt", TRAINED
    yield "Pump tyres, look the chair over, know whom to ring", f"{TRAINED}; {HOSPITAL}"


def advice(order: Order, person: Person) -> tuple[Advice, ...]:
    """What the client reads at home.

    Parameters
    ----------
    order : Order
    person : Person

    Returns
    -------
    tuple of Advice
        Short sentences; common practice unless a source stands beside the upkeep.
    """
    return (
        Advice("Getting in and out", tuple(_in_and_out(order))),
        Advice("So that the chair does not tip", tuple(_tipping(order, person))),
        Advice("What the chair carries", tuple(_carried(order))),
        Advice("In a car or a bus", tuple(_vehicle(order))),
        Advice("Stop using the chair and ring us when", _STOP),
    )


def _in_and_out(order: Order) -> Iterator[str]:
    yield "Put both wheel locks on first. They park the chair. They are not for slowing down."
    if order.setup.options["foot_supports"].code != NONE:
        yield "Move the footplates out of the way. Never stand on them: the chair tips forward."


def _tipping(order: Order, person: Person) -> Iterator[str]:
    setup = order.setup
    pushed = person.client.propulsion == "carer"
    helper = "your helper keeps hold of the handles" if pushed else "have a helper behind you"
    yield "Leaning out, reaching down and a heavy bag on the back can tip the chair over."
    yield f"On slopes and kerbs {helper} until you have both been trained there."
    pitch = setup.figures["pitch_to_anti_tip_deg"]
    if setup.options["anti_tip"].code == NONE or math.isnan(pitch):
        yield "No anti-tip wheels catch this chair: it can go right over backwards."
        return
    yield f"Keep the anti-tip wheels down. They touch the ground at about {pitch:.0f} degrees."
    yield "If they were turned up or taken off, put them back before you go on."


def _carried(order: Order) -> Iterator[str]:
    load = order.load
    if math.isfinite(load.rated_kg):
        yield (
            f"You and all that you carry must not weigh more than {load.rated_kg:g} kg. "
            f"When the chair was ordered it was {load.load_kg:.0f} kg."
        )
    yield "Tell us when your weight changes, or when you carry something new."


def _vehicle(order: Order) -> Iterator[str]:
    yield "Nothing on file says that you may sit in this chair while you ride in a vehicle. Ask us."
    if order.setup.options["belt"].code != NONE:
        yield "The belt of the chair helps you to sit. It does not hold you in an accident."


_STOP = (
    "a wheel lock slips, a wheel wobbles, or a tyre does not hold air;",
    "something is bent, cracked, loose or lost;",
    "your skin stays red, something hurts, or you sit in another way than before;",
    "somebody has changed the chair. It needs a new tip check before you use it.",
)
