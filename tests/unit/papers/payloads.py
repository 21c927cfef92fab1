"""Invented payloads for the tests of the papers."""

from __future__ import annotations

from chairwright.papers.cautions import PLACES, REACH, SEAT, STEADY, WEIGHT, figure_group
from chairwright.papers.order import in_order
from chairwright.papers.payload import (
    Choice,
    Drawing,
    Drawings,
    FigureRow,
    MeasureRow,
    MustRow,
    SheetPayload,
    Source,
)

PLAIN_SVG = (
    '<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="40mm" viewBox="0 0 60 40">'
    '<circle cx="20" cy="20" r="15" fill="none" stroke="#000"/></svg>'
)

CHOICES = {
    "side_frame": Choice("Side frame", "SF-M", "Medium, for seat depths 400 to 450 mm"),
    "rear_wheel": Choice("Rear wheel", "RW-24", "559 mm bead seat, 35 mm tyre, aluminium hand rim"),
    "camber": Choice("Camber", "2", "2 degrees, tops leaning in"),
    "axle_hole": Choice(
        "Axle hole",
        "B3",
        "Column B, second from the back; hole 3, counted from the top",
        "Both sides alike",
    ),
    "caster": Choice("Caster", "C-6", "150 mm, 32 mm wide"),
    "fork": Choice("Fork and hole", "FM-2", "Medium fork, middle of three holes"),
    "caster_housing": Choice("Caster housing", "T3", "Trailing; hole 3, counted from the bottom"),
    "stem_setting": Choice("Stem setting", "+2", "Two steps forward, stem upright to 0.5 degrees"),
    "seat_depth": Choice("Seat depth", "410", "Rail hole 2, counted from the front"),
    "cushion": Choice("Cushion", "CU-60", "60 mm foam, 50 mm loaded"),
    "back_angle": Choice("Back angle", "8", "8 degrees behind upright"),
    "back_support": Choice("Back support", "TA", "Tension-adjustable; 20 mm behind the post"),
    "seat_width": Choice("Seat width", "430", "Cross brace 430"),
    "arm_support": Choice("Arm support", "AN-230", "Narrow, pad 230 mm above the seat rail"),
    "hanger": Choice("Hanger", "H70", "70 degrees, swing-away"),
    "leg_length": Choice("Hanger length", "L5", "Hole 5, counted from the top"),
    "foot_supports": Choice("Foot supports", "both", "Left and right"),
    "back_height": Choice("Back height", "410", "Hole 3, counted from the bottom"),
    "wheel_lock": Choice("Wheel lock", "WL-P", "Push to lock; 5 mm into the tyre"),
    "anti_tip": Choice("Anti-tip device", "AT-2", "Hole 2, counted from the floor"),
}

FIGURES = (
    figure_group(
        SEAT,
        (
            FigureRow("Seat to floor, rear", "470", "mm", "± 3", "460 to 480", "holds", "own"),
            FigureRow("Seat to floor, front", "500", "mm", "± 3", "490 to 510", "holds", "own"),
            FigureRow("Cushion to floor, front", "559", "mm", "± 8", "", None, ""),
            FigureRow("Seat angle", "4.0", "deg", "± 0.4", "2 to 6", "holds", "practice"),
            FigureRow("Seat depth", "410", "mm", "± 3", "400 to 425", "holds", "practice"),
            FigureRow("Seat width", "430", "mm", "± 3", "425 to 450", "holds", "practice"),
        ),
    ),
    figure_group(
        REACH,
        (
            FigureRow(
                "Elbow angle, hand at the top of the rim",
                "108",
                "deg",
                "± 7",
                "100 to 120",
                "holds on nominal values",
                "Guideline 2005",
            ),
            FigureRow("Shoulder ahead of axle", "5", "mm", "± 25", "", None, ""),
        ),
    ),
    figure_group(
        STEADY,
        (
            FigureRow(
                "Tips to the rear, wheels locked",
                "13.0",
                "deg",
                "± 2.4",
                "at least 12",
                "holds on nominal values",
                "own",
            ),
            FigureRow("Tips forward", "18.4", "deg", "± 2.6", "at least 15", "holds", "own"),
            FigureRow("Tips to the left", "24.1", "deg", "± 1.2", "at least 15", "holds", "own"),
            FigureRow(
                "Tips over the anti-tip device", "–", "deg", "", "at least 20", "not known", "own"
            ),
            FigureRow(
                "Caster share of the load", "41", "%", "± 8", "30 to 40", "fails", "practice"
            ),
        ),
    ),
    figure_group(
        PLACES,
        (
            FigureRow("Overall width", "640", "mm", "± 5", "at most 700", "holds", "own"),
            FigureRow("Overall length", "1095", "mm", "± 20", "at most 1200", "holds", "own"),
            FigureRow("Turning diameter", "1501", "mm", "± 30", "at most 1500", "fails", "own"),
        ),
    ),
    figure_group(
        WEIGHT,
        (
            FigureRow("Chair", "16.8", "kg", "± 0.5", "", None, ""),
            FigureRow("Rated load left", "34", "kg", "± 1", "at least 0", "holds", "maker"),
        ),
    ),
)

MEASURES = (
    MeasureRow("Hip width", "395 mm", "395 mm", "measured", "± 5 mm"),
    MeasureRow("Lower leg with shoe, left", "17 3/8 in", "441 mm", "measured", "± 6 mm"),
    MeasureRow("Thigh length, left", "48.5 cm", "485 mm", "measured", "± 8 mm"),
    MeasureRow("Body mass", "172 lb", "78.0 kg", "measured", "± 1 kg"),
    MeasureRow("Upper arm", "", "330 mm", "estimated", "± 18 mm"),
)

SOURCES = (
    Source("own", "Set by the clinician for this client."),
    Source("practice", "Common practice of the trade, no source."),
    Source(
        "Guideline 2005", "An invented guideline on upper limbs, restated by a secondary source."
    ),
    Source("maker", "Rated load in the product line file, version 3."),
)


def drawing(alt: str = "A circle.") -> Drawing:
    return Drawing(PLAIN_SVG, alt, 60.0)


def full_payload() -> SheetPayload:
    """A usual sheet with every part filled."""
    return SheetPayload(
        client_reference="C-2041",
        setup_id="S-07",
        revision="3",
        line_title="Harbour folding chair",
        line_version="3",
        propulsion="Both hands on the rims",
        date="14 March 2031",
        choices=in_order(CHOICES),
        figures=FIGURES,
        drawings=Drawings(drawing("Side."), drawing("Plan."), drawing("Polar.")),
        measures=MEASURES,
        musts=(
            MustRow("Caster share at most 40 %", "accepted", "Client wants the longer wheelbase."),
            MustRow("Turning diameter at most 1500 mm", "not met", "1 mm over; bathroom measured."),
        ),
        sources=SOURCES,
    )
