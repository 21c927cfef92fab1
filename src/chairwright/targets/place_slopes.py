"""What ramps, cross slopes, thresholds and kerbs ask of a chair."""

from __future__ import annotations

from collections.abc import Iterator

from chairwright.figures.families import named, named_at
from chairwright.places.kinds import CrossSlope, Kerb, Ramp, Threshold
from chairwright.targets.place_asks import (
    BRAKE_MPS2,
    MEMORY,
    PHYSICS,
    PUSH_OFF_MPS2,
    RIM_FORCE_N,
    SIDE_SPARE_DEG,
    TOLD,
    WISH_WEIGHT,
    Asking,
    push_limit,
)
from chairwright.targets.target import Target


def slope_words(degrees: float, one_in: float) -> str:
    """A slope as people say it: ``1:12 (4.8 deg)``, or ``level``."""
    return f"1:{one_in:.3g} ({degrees:.1f} deg)" if degrees > 0 else "level"


def ramp_targets(ramp: Ramp, asking: Asking) -> Iterator[Target]:
    """Steady up and down, pushed up, not grounded at its foot.

    Parameters
    ----------
    ramp : Ramp
    asking : Asking

    Yields
    ------
    Target
    """
    slope = slope_words(ramp.slope_deg, ramp.slope.one_in)
    up, down = 0.0 if asking.helped else PUSH_OFF_MPS2, BRAKE_MPS2
    held = "with a carer behind" if asking.helped else f"at a push-off of {up:g} m/s2"
    yield asking.ask(
        named("start_lift_mps2", "up", ramp.slope_deg),
        f"up {slope}, the casters must stay down {held}",
        low=up,
    )
    yield asking.ask(
        named("braking_lift_mps2", "down", ramp.slope_deg),
        f"down {slope}, the rear wheels must stay down when braking by {down:g} m/s2",
        low=down,
    )
    yield from _device(ramp, asking, f"slope_{round(ramp.slope_deg, 3):.7g}", f"foot of {slope}")
    yield from _push_up(ramp, asking, slope)
    if ramp.cross_slope is not None and ramp.cross_slope.ratio > 0:
        yield from _aside(asking, ramp.cross_slope.degrees)


def _device(place: Ramp | Threshold, asking: Asking, typed: str, words: str) -> Iterator[Target]:
    yield asking.ask(
        f"device_spare_deg@{typed}",
        f"at the {words} the anti-tip device must not ground before the wheels pass, unless a "
        "carer turns it up",
        low=0.0,
        source=PHYSICS,
        wish=asking.helped,
        weight=TOLD if asking.helped else WISH_WEIGHT,
    )


def _push_up(ramp: Ramp, asking: Asking, slope: str) -> Iterator[Target]:
    if asking.helped:
        for family, kind in (("push_start_n", "start"), ("push_force_n", "keep")):
            limit, source = push_limit(asking.carer, "start" if kind == "start" else "keep")
            doing = "to set moving" if kind == "start" else "to keep moving"
            yield asking.ask(
                named(family, "up", ramp.slope_deg, ramp.surface),
                f"a carer pushes at most {limit:g} N {doing} up {slope}",
                high=limit,
                source=source,
            )
    elif asking.by_hand:
        yield from _by_hand(
            asking, named("rim_force_n", "up", ramp.slope_deg, ramp.surface), f"up {slope}"
        )


def _by_hand(asking: Asking, figure: str, words: str) -> Iterator[Target]:
    own = asking.own.push_n
    limit = RIM_FORCE_N if own is None else own
    yield asking.ask(
        figure,
        f"each hand pushes at most {limit:g} N, mean of a stroke, {words}",
        high=limit,
        source=MEMORY if own is None else "the client's own limit (places file)",
        wish=own is None,
    )


def _aside(asking: Asking, degrees: float) -> Iterator[Target]:
    least = degrees + SIDE_SPARE_DEG
    for figure in ("tip_left_deg", "tip_right_deg"):
        yield asking.ask(
            figure,
            f"falls {degrees:.1f} deg to the side; {SIDE_SPARE_DEG:g} deg more for leaning",
            low=least,
        )


def cross_slope_targets(way: CrossSlope, asking: Asking) -> Iterator[Target]:
    """Steady across, and held against turning downhill.

    Parameters
    ----------
    way : CrossSlope
    asking : Asking

    Yields
    ------
    Target
    """
    yield from _aside(asking, way.slope.degrees)
    words = f"across {slope_words(way.slope.degrees, way.slope.one_in)}, downhill hand"
    if asking.by_hand:
        figure = named("rim_force_n", "cross", way.slope.degrees, way.surface)
        yield from _by_hand(asking, figure, words)
    elif asking.helped:
        limit, source = push_limit(asking.carer, "keep")
        figure = named("push_force_n", "level", 0.0, way.surface)
        yield asking.ask(
            figure, f"a carer pushes at most {limit:g} N along it", high=limit, source=source
        )


def threshold_targets(step: Threshold, asking: Asking) -> Iterator[Target]:
    """Rolled over by push alone where a carer pushes; not grounded.

    Parameters
    ----------
    step : Threshold
    asking : Asking

    Yields
    ------
    Target
    """
    words = f"threshold of {step.height_mm:g} mm"
    yield from _device(step, asking, f"step_{round(step.height_mm, 3):.7g}", words)
    if asking.helped:
        yield from _pushed_over(asking, step.height_mm, casters=True)


def _pushed_over(asking: Asking, height: float, *, casters: bool) -> Iterator[Target]:
    limit, source = push_limit(asking.carer, "start")
    families = ("step_force_n", "rear_step_force_n") if casters else ("rear_step_force_n",)
    for family in families:
        wheels = "casters" if family == "step_force_n" else "rear wheels"
        yield asking.ask(
            named_at(family, height),
            f"a carer pushes the {wheels} over {height:g} mm with at most {limit:g} N",
            high=limit,
            source=source,
            wish=True,
            weight=TOLD,
        )


def kerb_targets(kerb: Kerb, asking: Asking) -> Iterator[Target]:
    """Tipped by the lever and rolled up by a carer.

    Parameters
    ----------
    kerb : Kerb
    asking : Asking

    Yields
    ------
    Target
        Nothing where nobody helps: whether the client climbs it alone is a skill, not a figure.
    """
    if asking.helped:
        limit, source = push_limit(asking.carer, "start")
        yield asking.ask(
            "tip_lever_n",
            f"a carer's foot raises the casters with at most {limit:g} N",
            high=limit,
            source=source,
            wish=True,
            weight=TOLD,
        )
        yield from _pushed_over(asking, kerb.height_mm, casters=False)
