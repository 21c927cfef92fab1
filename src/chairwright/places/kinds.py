"""The kinds of places, one dataclass each.

A length that is None was not measured: whatever asks for it is then not known.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import ClassVar, Literal

from chairwright.places.model import Place, Slope

Approach = Literal["straight", "corridor"]
Swing = Literal["push", "pull", "slide", "none"]
DoorSide = Literal["hinge", "latch"]
DoorUse = Literal["room", "bath_or_bedroom", "entrance"]
Rails = Literal["none", "one", "both"]
Surface = Literal["hard", "concrete", "carpet", "uneven"]
ReachFrom = Literal["front", "side"]
TransferWay = Literal["side", "front", "standing", "hoist"]
TransferSide = Literal["left", "right"]
LiftedBy = Literal["self", "carer"]


@dataclass(frozen=True, kw_only=True)
class Door(Place):
    """A doorway, seen on the way that is described.

    Parameters
    ----------
    clear_width_mm : float [mm]
        Free width with the door open at 90 degrees.
    approach : {"straight", "corridor"}
        Head-on, or along a corridor with a quarter turn into the doorway.
    corridor_width_mm : float or None [mm]
        Corridor outside the door; always there when one comes along it.
    approach_side : {"hinge", "latch"} or None
        Side of the door from which one comes along the corridor.
    swing : {"push", "pull", "slide", "none"}
        What one does to the door; none for an opening without a door.
    depth_mm : float or None [mm]
        Free floor in front of the door, square to it.
    latch_space_mm, hinge_space_mm : float or None [mm]
        Free wall beside the opening on the latch side and on the hinge side.
    closer, latch : bool or None
        Whether it closes by itself, and whether it latches.
    recess_mm : float or None [mm]
        Depth of a recess in which the door stands.
    opening_depth_mm : float or None [mm]
        Depth of the opening, as thick as the wall.
    use : {"room", "bath_or_bedroom", "entrance"}
    """

    kind: ClassVar[str] = "door"
    clear_width_mm: float
    approach: Approach = "straight"
    corridor_width_mm: float | None = None
    approach_side: DoorSide | None = None
    swing: Swing = "none"
    depth_mm: float | None = None
    latch_space_mm: float | None = None
    hinge_space_mm: float | None = None
    closer: bool | None = None
    latch: bool | None = None
    recess_mm: float | None = None
    opening_depth_mm: float | None = None
    use: DoorUse = "room"

    @property
    def floor_depth_mm(self) -> float | None:
        """Free floor square to the door: as measured, else the corridor that one comes along."""
        if self.depth_mm is None and self.approach == "corridor":
            return self.corridor_width_mm
        return self.depth_mm


@dataclass(frozen=True, kw_only=True)
class Corridor(Place):
    """A straight corridor or passage.

    Parameters
    ----------
    width_mm : float [mm]
        At its narrowest.
    turn_back : bool
        Whether the chair must turn round in it.
    narrow_length_mm : float or None [mm]
        Length of the narrowest part; None when the whole corridor is that narrow.
    surface : {"hard", "concrete", "carpet", "uneven"}
        As in ``tables/rolling/surfaces.csv``.
    """

    kind: ClassVar[str] = "corridor"
    width_mm: float
    turn_back: bool = False
    narrow_length_mm: float | None = None
    surface: Surface = "hard"


@dataclass(frozen=True, kw_only=True)
class Corner(Place):
    """A 90 degree corner between two corridors.

    Parameters
    ----------
    width_in_mm, width_out_mm : float [mm]
        Corridor by which one comes, and corridor by which one leaves.
    """

    kind: ClassVar[str] = "corner"
    width_in_mm: float
    width_out_mm: float


@dataclass(frozen=True, kw_only=True)
class Room(Place):
    """Free floor in which the chair must turn round.

    Parameters
    ----------
    width_mm, depth_mm : float [mm]
    """

    kind: ClassVar[str] = "room"
    width_mm: float
    depth_mm: float


@dataclass(frozen=True, kw_only=True)
class Ramp(Place):
    """One run of a ramp, between two landings.

    Parameters
    ----------
    rise_mm, run_mm : float [mm]
        Height, and horizontal length.
    cross_slope : Slope or None
        Fall to the side; None when it was not measured.
    surface : {"hard", "concrete", "carpet", "uneven"}
    width_mm : float or None [mm]
        Between the rails, else between the edges.
    landing_length_mm, landing_width_mm : float or None [mm]
        Of the smaller of the two landings.
    turns : bool
        Whether the way changes its direction on a landing.
    rails : {"none", "one", "both"} or None
    edge_protection : bool or None
        Kerb or rail that keeps a caster on the ramp.
    outside : bool or None
    helped : bool or None
        Whether a carer pushes here; None when the client's file decides.
    """

    kind: ClassVar[str] = "ramp"
    rise_mm: float
    run_mm: float
    cross_slope: Slope | None = None
    surface: Surface = "hard"
    width_mm: float | None = None
    landing_length_mm: float | None = None
    landing_width_mm: float | None = None
    turns: bool = False
    rails: Rails | None = None
    edge_protection: bool | None = None
    outside: bool | None = None
    helped: bool | None = None

    @property
    def slope(self) -> Slope:
        """Running slope."""
        return Slope(self.rise_mm / self.run_mm, self.typed.get("slope", ""))

    @property
    def slope_deg(self) -> float:
        """Running slope [deg]."""
        return self.slope.degrees


@dataclass(frozen=True, kw_only=True)
class CrossSlope(Place):
    """A way that falls to one side.

    Parameters
    ----------
    slope : Slope
    surface : {"hard", "concrete", "carpet", "uneven"}
    helped : bool or None
        As for `Ramp`.
    """

    kind: ClassVar[str] = "cross_slope"
    slope: Slope
    surface: Surface = "hard"
    helped: bool | None = None


@dataclass(frozen=True, kw_only=True)
class Threshold(Place):
    """A low step on the level, rolled over.

    Parameters
    ----------
    height_mm : float [mm]
    bevelled : bool or None
        Whether its edge slopes 1:2 or less.
    at_door : bool
        Whether it belongs to a doorway.
    helped : bool or None
        As for `Ramp`.
    """

    kind: ClassVar[str] = "threshold"
    height_mm: float
    bevelled: bool | None = None
    at_door: bool = True
    helped: bool | None = None


@dataclass(frozen=True, kw_only=True)
class Kerb(Place):
    """A step that is climbed by lifting the casters first.

    Parameters
    ----------
    height_mm : float [mm]
    helped : bool or None
        As for `Ramp`.
    """

    kind: ClassVar[str] = "kerb"
    height_mm: float
    helped: bool | None = None


@dataclass(frozen=True, kw_only=True)
class UnderTop(Place):
    """A top under which knees and feet must go.

    Parameters
    ----------
    clear_height_mm : float [mm]
        Floor to the lowest edge under the top, at the front.
    knee_depth_mm : float or None [mm]
        How deep it is free below that edge, from the front, at that height.
    foot_depth_mm : float or None [mm]
        The same 230 mm (9 in) above the floor.
    toe_depth_mm : float or None [mm]
        The same at the floor.
    width_mm : float or None [mm]
        Free width between legs or cupboards.
    top_height_mm : float or None [mm]
        Floor to the top's upper face.
    reach_height_mm, reach_over_mm : float or None [mm]
        Height of what must be reached beyond it, and depth of what is reached over.
    reach_from : {"front", "side"}
    """

    clear_height_mm: float
    knee_depth_mm: float | None = None
    foot_depth_mm: float | None = None
    toe_depth_mm: float | None = None
    width_mm: float | None = None
    top_height_mm: float | None = None
    reach_height_mm: float | None = None
    reach_over_mm: float | None = None
    reach_from: ReachFrom = "front"


@dataclass(frozen=True, kw_only=True)
class Table(UnderTop):
    """A table, desk or worktop; parameters as for `UnderTop`."""

    kind: ClassVar[str] = "table"


@dataclass(frozen=True, kw_only=True)
class Basin(UnderTop):
    """A wash basin or sink; parameters as for `UnderTop`."""

    kind: ClassVar[str] = "basin"


@dataclass(frozen=True, kw_only=True)
class TransferPlace(Place):
    """Something to move over to from the chair.

    Parameters
    ----------
    height_mm : float [mm]
        Floor to the top of it, pressed in as under the person.
    transfer : {"side", "front", "standing", "hoist"}
    side : {"left", "right"} or None
        Side of the chair on which it stands for a transfer to the side.
    """

    height_mm: float
    transfer: TransferWay
    side: TransferSide | None = None


@dataclass(frozen=True, kw_only=True)
class Bed(TransferPlace):
    """A bed; parameters as for `TransferPlace`."""

    kind: ClassVar[str] = "bed"


@dataclass(frozen=True, kw_only=True)
class Toilet(TransferPlace):
    """A toilet; parameters as for `TransferPlace`."""

    kind: ClassVar[str] = "toilet"


@dataclass(frozen=True, kw_only=True)
class Seat(TransferPlace):
    """An armchair, shower seat or bench; parameters as for `TransferPlace`."""

    kind: ClassVar[str] = "seat"


@dataclass(frozen=True, kw_only=True)
class CarSeat(TransferPlace):
    """The seat of a car; parameters as for `TransferPlace`."""

    kind: ClassVar[str] = "car_seat"


@dataclass(frozen=True, kw_only=True)
class Boot(Place):
    """The boot of a vehicle, into which the folded chair is lifted.

    Parameters
    ----------
    opening_width_mm, opening_height_mm, depth_mm : float [mm]
    lifted_by : {"self", "carer"}
    wheels_off : bool
        Whether quick-release wheels are taken off first.
    sill_height_mm : float or None [mm]
        Floor to the edge over which it is lifted.
    """

    kind: ClassVar[str] = "boot"
    opening_width_mm: float
    opening_height_mm: float
    depth_mm: float
    lifted_by: LiftedBy
    wheels_off: bool = True
    sill_height_mm: float | None = None


@dataclass(frozen=True, kw_only=True)
class Lift(Place):
    """A passenger lift.

    Parameters
    ----------
    door_width_mm, width_mm, depth_mm : float [mm]
        Free width of its door; inside width and depth.
    """

    kind: ClassVar[str] = "lift"
    door_width_mm: float
    width_mm: float
    depth_mm: float


KINDS: Mapping[str, type[Place]] = MappingProxyType(
    {
        each.kind: each
        for each in (
            Door, Corridor, Corner, Room, Ramp, CrossSlope, Threshold, Kerb,
            Table, Basin, Bed, Toilet, Seat, CarSeat, Boot, Lift,
        )
    }
)  # fmt: skip
"""Word in a places file to its class, in the order of the reference page."""
