"""Seat heights of the shipped lines, cell by cell, worked by hand from what their files say.

With the caster axle D = (dx, dz) ahead of and above the rear axle in frame axes, the frame comes
to rest where dx sin p + dz cos p = caster radius - R cos(camber): sin p is found by putting
cos p = 1 first and the better value once or twice again. With the axle hole at (x, z) the seat
rail's back end is R cos(camber) - x sin p - z cos p above the floor, its front end the seat depth
times sin p higher. Places of holes, stems and tubes are typed from the line files.
The caster axle lies trail behind the stem and drop below the crown, turned with the stem.
"""

from __future__ import annotations

from typing import NamedTuple

import pytest

from chairwright.fitting.heights_chart import ANGLE, FRONT, REAR, STANDS, STEM, Ask, heights_chart
from chairwright.line.load import load_line


class Cell(NamedTuple):
    """One cell: what is fixed, the gear, and what was worked out by hand [mm, deg]."""

    line: str
    fixed: dict[str, str]
    gear: tuple[str, str, str, str]
    setting: str
    rear: float
    front: float
    angle: float
    stem: float


def fixed(frame: str, housing: str, depth: str, **more: str) -> dict[str, str]:
    """Codes that stay the same, the usual ones left out."""
    return {"side_frame": frame, "caster_housing": housing, "seat_depth": depth, **more}


CELLS = (
    # R = 270 + 25 = 295. Stem 300 + 42 = 342, as drawn: axle 342 - 45 = 297, -230 - 118 = -348.
    # D = 297 - 5, -348 + 116 = 292, -232; rise 62.5 - 295 = -232.5.
    # 292 sin p - 232 cos p = -232.5: sin p = -0.5 / 292 = -0.00171.
    # Back 295 + 5 x 0.00171 + 116 = 411.01; front 411.01 - 300 x 0.00171 = 410.49.
    Cell("everyday", fixed("SFK", "L3", "D300"), ("W24", "C4", "C5", "FM-3"),
         "N0", 411.0, 410.5, -0.10, -0.10),
    # R = 225.5 + 28 = 253.5. Stem 342 turned 2 forward (sin -0.03490, cos 0.99939):
    # x = 342 - 38 x 0.99939 - 92 x 0.03490 = 300.81;
    # z = -200 + 38 x 0.03490 - 92 x 0.99939 = -290.62.
    # D = 300.81 + 20, -290.62 + 76 = 320.81, -214.62; rise 50 - 253.5 = -203.5.
    # sin p = (214.62 x 0.99941 - 203.5) / 320.81 = 0.03426; p = 1.96.
    # Back 253.5 + 20 x 0.03426 + 76 x 0.99941 = 330.14; front + 300 x 0.03426 = 340.42.
    Cell("everyday", fixed("SFK", "L2", "D300"), ("W20", "B2", "C4", "FS-3"),
         "NF2", 330.1, 340.4, 1.96, -0.04),
    # R = 270 + 37 = 307; a 12 mm spacer: drop 134 + 12 = 146. Stem 425 + 42 = 467 turned 4 forward
    # (sin -0.06976, cos 0.99756): x = 467 - 55 x 0.99756 - 146 x 0.06976 = 401.95;
    # z = -260 + 55 x 0.06976 - 146 x 0.99756 = -401.81. D = 346.95, -225.81; rise -207.
    # sin p = (225.81 x 0.99858 - 207) / 346.95 = 0.05328; p = 3.05; stem -4 + 3.05 = -0.95.
    # (Turned 2 forward it would be +1.36.)
    # Back 307 - 55 x 0.05328 + 176 x 0.99858 = 479.82; front + 420 x 0.05328 = 502.20.
    Cell("everyday", fixed("SFL", "L4", "D420", stem_spacer="Z12"), ("W24P", "E7", "C8", "FL-2"),
         "NF4", 479.8, 502.2, 3.05, -0.95),
    # R = 250.5 + 25 = 275.5; camber 3: R cos 3 = 275.12. Trailing stem 365 - 42 = 323 turned 2
    # forward: x = 323 - 45 x 0.99939 - 132 x 0.03490 = 273.42;
    # z = -230 + 45 x 0.03490 - 132 x 0.99939 = -360.35. D = 243.42, -204.35; rise -200.12.
    # sin p = (204.35 x 0.99985 - 200.12) / 243.42 = 0.01724; p = 0.99; stem -1.01.
    # Back 275.12 - 30 x 0.01724 + 156 x 0.99985 = 430.58; front + 360 x 0.01724 = 436.79.
    Cell("everyday", fixed("SFS", "T3", "D360", camber="K3"), ("W22", "D6", "C6", "FM-4"),
         "NF2", 430.6, 436.8, 0.99, -1.01),
    # R = 270 + 37 = 307. Stem 400 + 48 = 448 as drawn: axle 448 - 48 = 400, -228.6 - 92 = -320.6.
    # D = 395, -231.7; rise 75 - 307 = -232: sin p = -0.3 / 395 = -0.00076.
    # Back 307 + 88.9 + 0.00 = 395.90; front - 406.4 x 0.00076 = 395.60.
    Cell("heavy-duty", fixed("J220", "L3", "E16"), ("M24", "B1", "V6", "Y6-1"),
         "N0", 395.9, 395.6, -0.04, -0.04),
    # Plate turned round about 50: column A, -25, comes to 125. A 25.4 mm spacer: drop 160.4.
    # Stem 460 + 48 = 508 turned 6 forward (sin -0.10453, cos 0.99452):
    # x = 508 - 58 x 0.99452 - 160.4 x 0.10453 = 433.55;
    # z = -279.4 + 58 x 0.10453 - 160.4 x 0.99452 = -432.86. D = 308.55, -242.36; rise -207.
    # sin p = (242.36 x 0.99395 - 207) / 308.55 = 0.10984; p = 6.31.
    # Back 307 - 125 x 0.10984 + 190.5 x 0.99395 = 482.62; front + 482.6 x 0.10984 = 535.63.
    Cell("heavy-duty", fixed("J220L", "L5", "E19", stem_spacer="SP2"),
         ("M24X", "A5R", "V8", "Y8-2"), "NF6", 482.6, 535.6, 6.31, 0.31),
    # R = 250.5 + 37 = 287.5. Trailing stem 400 - 48 = 352 as drawn: axle 304, -254 - 111 = -365.
    # D = 304 + 25, -365 + 139.7 = 329, -225.3; rise 62.5 - 287.5 = -225.
    # sin p = 0.3 / 329 = 0.00091. Back 287.5 + 0.02 + 139.7 = 427.22; front + 0.37 = 427.59.
    Cell("heavy-duty", fixed("J160", "T4", "E16"), ("M22X", "A3", "V5", "Y6-2"),
         "N0", 427.2, 427.6, 0.05, 0.05),
    # Column C, 35, turned round about 50: 65. Stem 450 + 48 = 498 turned 2 forward:
    # x = 498 - 58 x 0.99939 - 116 x 0.03490 = 435.99;
    # z = -254 + 58 x 0.03490 - 116 x 0.99939 = -367.91. D = 370.99, -202.81; rise -187.5.
    # sin p = (202.81 x 0.99917 - 187.5) / 370.99 = 0.04080; p = 2.34.
    # Back 287.5 - 65 x 0.04080 + 165.1 x 0.99917 = 449.81; front + 457.2 x 0.04080 = 468.46.
    Cell("heavy-duty", fixed("J270", "L4", "E18"), ("M22X", "C4R", "V8", "Y8-1"),
         "NF2", 449.8, 468.5, 2.34, 0.34),
    # R = 295. Stem 415 + 20 = 435 as drawn: axle 435 - 30 = 405, -275 - 76 = -351.
    # D = 365, -243; rise 50 - 295 = -245: sin p = -2 / 365 = -0.00549 (cos p 0.99998).
    # Back 295 + 40 x 0.00549 + 108 = 403.22; front - 380 x 0.00549 = 401.13.
    Cell("light-rigid", fixed("R2", "L3", "E380"), ("N24", "C2", "D4", "Y1-2"),
         "N0", 403.2, 401.1, -0.31, -0.31),
    # R = 279.5 + 25 = 304.5; camber 4: R cos 4 = 303.76. Stem 435 turned 4 forward:
    # x = 435 - 38 x 0.99756 - 122 x 0.06976 = 388.58;
    # z = -305 + 38 x 0.06976 - 122 x 0.99756 = -424.05. D = 328.58, -262.05; rise -241.26.
    # sin p = (262.05 x 0.99809 - 241.26) / 328.58 = 0.06176; p = 3.54.
    # Back 303.76 - 60 x 0.06176 + 162 x 0.99809 = 461.74; front + 380 x 0.06176 = 485.21.
    Cell("light-rigid", fixed("R2", "L4", "E380", camber="Q4"), ("N25", "D5", "D5", "Y2-3"),
         "NF4", 461.7, 485.2, 3.54, -0.46),
    # R = 225.5 + 25 = 250.5. Stem 360 + 20 = 380 as drawn: axle 350, -245 - 90 = -335.
    # D = 330, -209; rise 40 - 250.5 = -210.5: sin p = -1.5 / 330 = -0.00455.
    # Back 250.5 + 20 x 0.00455 + 126 = 376.59; front - 320 x 0.00455 = 375.13.
    Cell("light-rigid", fixed("R1", "L2", "E320"), ("N20", "B3", "D3", "Y1-3"),
         "N0", 376.6, 375.1, -0.26, -0.26),
    # R = 270 + 24 = 294; camber 6: R cos 6 = 292.39. Caster axle as two cells above.
    # D = 388.58 - 100, -424.05 + 162 = 288.58, -262.05; rise 50 - 292.39 = -242.39.
    # sin p = (262.05 x 0.99781 - 242.39) / 288.58 = 0.06615; p = 3.79.
    # Back 292.39 - 100 x 0.06615 + 162 x 0.99781 = 447.42; front + 440 x 0.06615 = 476.52.
    Cell("light-rigid", fixed("R2", "L4", "E440", camber="Q6"), ("N24L", "F5", "D4", "Y2-3"),
         "NF4", 447.4, 476.5, 3.79, -0.21),
)  # fmt: skip


@pytest.mark.parametrize("cell", CELLS, ids=lambda cell: "-".join((cell.line, *cell.gear)))
def test_a_cell_of_the_seat_height_chart(cell: Cell) -> None:
    line = load_line(cell.line)
    wheel, hole, caster, fork = cell.gear
    only = {"rear_wheel": (wheel,), "caster": (caster,), "fork": (fork,)}
    chart = heights_chart(line, Ask(fixed=cell.fixed, only=only))
    place = (0, line.choices["axle_hole"].codes[hole], 0, 0)
    assert chart.why[place] == STANDS
    assert line.choices["stem_setting"].options[chart.setting[place]].code == cell.setting
    found = {name: float(chart.figures[name][place]) for name in (REAR, FRONT, ANGLE, STEM)}
    assert found[REAR] == pytest.approx(cell.rear, abs=0.05)
    assert found[FRONT] == pytest.approx(cell.front, abs=0.05)
    assert found[ANGLE] == pytest.approx(cell.angle, abs=0.005)
    assert found[STEM] == pytest.approx(cell.stem, abs=0.005)
