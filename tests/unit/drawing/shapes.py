"""Realistic shapes for the drawing tests, built from a few chosen lengths."""

from __future__ import annotations

from dataclasses import replace

from chairwright.chair.shape import Contact, Figurine, FootSupport, Hole, Point, Shape

SIDES = ("left", "right")


def _both(point: Point | None) -> dict[str, Point | None]:
    return dict.fromkeys(SIDES, point)


def average_adult() -> Shape:
    """A person of average stature in a common folding chair, feet on footplates, anti-tip on."""
    return Shape(
        seat_corner=(-45.0, 470.0),
        seat_front=(383.0, 500.0),
        cushion_rear=(-38.0, 520.0),
        cushion_front=(375.0, 559.0),
        back_bottom=(-45.0, 470.0),
        back_top=(-90.0, 880.0),
        push_handle=(-200.0, 868.0),
        rear_axle=(0.0, 303.0),
        rear_radius_mm=303.0,
        rear_tyre_width_mm=32.0,
        hand_rim_radius_mm=265.0,
        camber_deg=2.0,
        axle_holes=_plate((0.0, 303.0), columns=3, rows=4, chosen=(1, 2)),
        caster_tube_top=(375.0, 340.0),
        caster_tube_bottom=(375.0, 215.0),
        stem_top=(375.0, 300.0),
        fork_crown=(375.0, 172.0),
        caster_axle=(330.0, 76.0),
        caster_radius_mm=76.0,
        caster_width_mm=32.0,
        caster_swing_radius_mm=122.0,
        foot_supports=_hangers((385.0, 470.0), (500.0, 75.0), (650.0, 105.0)),
        arm_pad=((-40.0, 745.0), (215.0, 752.0)),
        anti_tip_wheel=(-330.0, 75.0),
        anti_tip_radius_mm=25.0,
        anti_tip_mount=(-70.0, 190.0),
        figurine=Figurine(
            hip=(62.0, 612.0),
            shoulder=(5.0, 1075.0),
            head_centre=(38.0, 1290.0),
            head_radius_mm=105.0,
            elbow=_both((-75.0, 795.0)),
            hand=_both((75.0, 580.0)),
            knee=_both((455.0, 615.0)),
            ankle=_both((540.0, 178.0)),
            heel=_both((485.0, 82.0)),
            toe=_both((740.0, 132.0)),
            half_shoulder_mm=205.0,
            half_hip_mm=185.0,
        ),
        com=(135.0, 0.0, 585.0),
        total_mass_kg=96.0,
        contacts=_contacts(330.0, 560.0, 470.0),
        wheelbase_mm=330.0,
        seat_width_mm=430.0,
        seat_depth_mm=410.0,
        hub_half_mm=270.0,
        rear_track_mm=560.0,
        caster_track_mm=470.0,
        overall_width_mm=640.0,
    )


def _contacts(wheelbase: float, rear_track: float, caster_track: float) -> tuple[Contact, ...]:
    return (
        Contact("rear left", 0.0, rear_track / 2),
        Contact("rear right", 0.0, -rear_track / 2),
        Contact("caster right", wheelbase, -caster_track / 2),
        Contact("caster left", wheelbase, caster_track / 2),
    )


def _hangers(pivot: Point, rear: Point, front: Point) -> tuple[FootSupport, ...]:
    return tuple(
        FootSupport(side, pivot, rear, front, inner, outer)
        for side, inner, outer in (("left", 20.0, 185.0), ("right", -20.0, -185.0))
    )


def _plate(chosen_at: Point, columns: int, rows: int, chosen: tuple[int, int]) -> tuple[Hole, ...]:
    return tuple(
        Hole(
            f"{'ABCDEFG'[column]}{row + 1}",
            (
                chosen_at[0] + 40.0 * (column - chosen[0]),
                chosen_at[1] + 25.0 * (chosen[1] - row),
            ),
            (column, row) == chosen,
        )
        for column in range(columns)
        for row in range(rows)
    )


def low_seat() -> Shape:
    """A short person who pushes with the right foot: low seat, no right hanger, no anti-tip."""
    feet = average_adult().figurine
    return replace(
        average_adult(),
        seat_corner=(-20.0, 385.0),
        seat_front=(362.0, 395.0),
        cushion_rear=(-18.0, 425.0),
        cushion_front=(358.0, 437.0),
        back_bottom=(-20.0, 385.0),
        back_top=(-62.0, 790.0),
        push_handle=(-168.0, 780.0),
        rear_axle=(0.0, 286.0),
        rear_radius_mm=286.0,
        hand_rim_radius_mm=248.0,
        camber_deg=0.0,
        axle_holes=_plate((0.0, 286.0), columns=3, rows=4, chosen=(1, 3)),
        caster_tube_top=(352.0, 300.0),
        caster_tube_bottom=(352.0, 195.0),
        stem_top=(352.0, 270.0),
        fork_crown=(352.0, 152.0),
        caster_axle=(312.0, 63.0),
        caster_radius_mm=63.0,
        caster_swing_radius_mm=105.0,
        foot_supports=_hangers((370.0, 365.0), (440.0, 60.0), (590.0, 90.0))[:1],
        arm_pad=((-5.0, 640.0), (240.0, 643.0)),
        anti_tip_wheel=None,
        anti_tip_mount=None,
        figurine=replace(
            feet,
            hip=(85.0, 510.0),
            shoulder=(40.0, 925.0),
            head_centre=(70.0, 1120.0),
            head_radius_mm=100.0,
            elbow=_both((-25.0, 670.0)),
            hand=_both((95.0, 500.0)),
            knee={"left": (440.0, 505.0), "right": (445.0, 480.0)},
            ankle={"left": (480.0, 155.0), "right": (430.0, 85.0)},
            heel={"left": (430.0, 66.0), "right": (385.0, 0.0)},
            toe={"left": (665.0, 113.0), "right": (630.0, 0.0)},
        ),
        com=(150.0, -6.0, 495.0),
        contacts=_contacts(312.0, 530.0, 450.0),
        wheelbase_mm=312.0,
        seat_width_mm=400.0,
        seat_depth_mm=370.0,
        hub_half_mm=265.0,
        rear_track_mm=530.0,
        caster_track_mm=450.0,
        overall_width_mm=600.0,
    )


def tall_adult() -> Shape:
    """A tall person: high seat, long hangers, no arm support, axle behind the back post."""
    return replace(
        average_adult(),
        seat_corner=(25.0, 510.0),
        seat_front=(500.0, 545.0),
        cushion_rear=(31.0, 585.0),
        cushion_front=(494.0, 622.0),
        back_bottom=(25.0, 510.0),
        back_top=(-35.0, 980.0),
        push_handle=(-140.0, 968.0),
        axle_holes=_plate((0.0, 303.0), columns=4, rows=4, chosen=(0, 1)),
        caster_tube_top=(492.0, 350.0),
        caster_tube_bottom=(492.0, 240.0),
        stem_top=(492.0, 320.0),
        fork_crown=(492.0, 215.0),
        caster_axle=(440.0, 100.0),
        caster_radius_mm=100.0,
        caster_swing_radius_mm=155.0,
        foot_supports=_hangers((515.0, 515.0), (690.0, 65.0), (850.0, 110.0)),
        arm_pad=None,
        anti_tip_wheel=(-300.0, 60.0),
        anti_tip_mount=(0.0, 180.0),
        figurine=Figurine(
            hip=(150.0, 685.0),
            shoulder=(80.0, 1205.0),
            head_centre=(112.0, 1440.0),
            head_radius_mm=110.0,
            elbow=_both((0.0, 890.0)),
            hand=_both((110.0, 620.0)),
            knee=_both((610.0, 690.0)),
            ankle=_both((740.0, 185.0)),
            heel=_both((680.0, 72.0)),
            toe=_both((965.0, 150.0)),
            half_shoulder_mm=225.0,
            half_hip_mm=200.0,
        ),
        com=(215.0, 8.0, 655.0),
        total_mass_kg=128.0,
        contacts=_contacts(440.0, 620.0, 520.0),
        wheelbase_mm=440.0,
        seat_width_mm=480.0,
        seat_depth_mm=455.0,
        hub_half_mm=295.0,
        rear_track_mm=620.0,
        caster_track_mm=520.0,
        overall_width_mm=700.0,
    )


ALL = (average_adult, low_seat, tall_adult)
