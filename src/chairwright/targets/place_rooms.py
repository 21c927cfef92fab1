"""What doors, corridors, corners, rooms, lifts and boots ask of a chair."""

from __future__ import annotations

from collections.abc import Iterator

from chairwright.figures.carer import lifting_limit_kg
from chairwright.figures.families import named_at
from chairwright.places.kinds import Boot, Corner, Corridor, Door, Lift, Room
from chairwright.targets.place_asks import PHYSICS, WALL_MM, Asking
from chairwright.targets.target import Target

WIDTH = "overall_width_mm"


def _narrow(asking: Asking, width: float, words: str) -> Target:
    return asking.ask(
        WIDTH,
        f"{words} {width:g} mm wide, {WALL_MM:g} mm free on each side",
        high=width - 2 * WALL_MM,
    )


def _turned_in(asking: Asking, width: float, words: str) -> Iterator[Target]:
    """A half turn between walls: possible at all, and on the spot as a wish."""
    inside = width - 2 * WALL_MM
    yield asking.ask(
        "half_turn_free_mm", f"a half turn within {words}, moving to and fro", high=inside,
        source=PHYSICS,
    )  # fmt: skip
    on_spot = "turning_diameter_mm" if isinstance(asking.place, Room) else "half_turn_width_mm"
    yield asking.ask(
        on_spot, f"a half turn on the spot within {words}", high=inside, source=PHYSICS, wish=True
    )


def door_targets(door: Door, asking: Asking) -> Iterator[Target]:
    """Through it straight, and into it in one turn from a corridor as a wish.

    Parameters
    ----------
    door : Door
    asking : Asking

    Yields
    ------
    Target
    """
    yield _narrow(asking, door.clear_width_mm, "clear opening")
    if door.approach == "corridor" and door.corridor_width_mm is not None:
        inside = door.clear_width_mm - 2 * WALL_MM
        yield asking.ask(
            named_at("door_turn_mm", inside),
            f"one turn into it from the corridor of {door.corridor_width_mm:g} mm",
            high=door.corridor_width_mm - 2 * WALL_MM,
            source=PHYSICS,
            wish=True,
        )


def corridor_targets(corridor: Corridor, asking: Asking) -> Iterator[Target]:
    """Along it, and turned round in it where that is asked.

    Parameters
    ----------
    corridor : Corridor
    asking : Asking

    Yields
    ------
    Target
    """
    yield _narrow(asking, corridor.width_mm, "passage")
    if corridor.turn_back:
        yield from _turned_in(asking, corridor.width_mm, f"{corridor.width_mm:g} mm")


def corner_targets(corner: Corner, asking: Asking) -> Iterator[Target]:
    """Round it at all, and in one turn as a wish.

    Parameters
    ----------
    corner : Corner
    asking : Asking

    Yields
    ------
    Target
    """
    width_in, width_out = corner.width_in_mm - 2 * WALL_MM, corner.width_out_mm - 2 * WALL_MM
    words = f"from {corner.width_in_mm:g} mm round into {corner.width_out_mm:g} mm"
    yield asking.ask(
        named_at("corner_free_mm", width_in), f"{words}, moving to and fro", high=width_out,
        source=PHYSICS,
    )  # fmt: skip
    yield asking.ask(
        named_at("corner_arc_mm", width_in), f"{words}, in one turn", high=width_out,
        source=PHYSICS, wish=True,
    )  # fmt: skip


def room_targets(room: Room, asking: Asking) -> Iterator[Target]:
    """Turned round in it.

    Parameters
    ----------
    room : Room
    asking : Asking

    Yields
    ------
    Target
    """
    yield from _turned_in(asking, min(room.width_mm, room.depth_mm), "the free floor")


def lift_targets(lift: Lift, asking: Asking) -> Iterator[Target]:
    """Through its door and into its car.

    Parameters
    ----------
    lift : Lift
    asking : Asking

    Yields
    ------
    Target
    """
    yield _narrow(asking, lift.door_width_mm, "lift door")
    yield asking.ask(
        "overall_length_mm",
        f"a car {lift.depth_mm:g} mm deep, {WALL_MM:g} mm free at each end",
        high=lift.depth_mm - 2 * WALL_MM,
    )


def boot_targets(boot: Boot, asking: Asking) -> Iterator[Target]:
    """Into it, folded, and lifted by whoever lifts.

    Parameters
    ----------
    boot : Boot
    asking : Asking

    Yields
    ------
    Target
    """
    sizes = boot.opening_width_mm, boot.opening_height_mm, boot.depth_mm
    typed = "x".join(f"{round(each, 3):.7g}" for each in sizes)
    yield asking.ask(
        f"boot_missing_mm@{typed}_{'off' if boot.wheels_off else 'on'}",
        "the folded chair goes in, rear wheels " + ("off" if boot.wheels_off else "on"),
        high=0.0,
        source=PHYSICS,
    )
    limit, source = _lift_limit(boot, asking)
    if limit is not None:
        who = "the client" if boot.lifted_by == "self" else "a carer"
        yield asking.ask(
            "heaviest_part_kg", f"{who} lifts at most {limit:g} kg", high=limit, source=source
        )


def _lift_limit(boot: Boot, asking: Asking) -> tuple[float | None, str]:
    if boot.lifted_by == "self":
        return asking.own.lift_kg, "the client's own limit (places file)"
    carer = asking.carer
    if carer is not None and carer.lift_kg is not None:
        return carer.lift_kg, "the carer's own limit (places file)"
    who = "women" if carer is None else carer.limits
    limit = lifting_limit_kg(who, "elbow to knuckle", arms_out=True)
    return limit, f"HSE lifting filter, {who}, arms out (from memory, unverified)"
