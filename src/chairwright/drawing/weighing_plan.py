"""Four pads from above: what each read, and where between them the centre of mass lies."""

from __future__ import annotations

from collections.abc import Iterator

from chairwright.drawing.compose import View, compose, mass_mark
from chairwright.drawing.scene import Dimension, Group, Line, Polyline, Primitive, Text
from chairwright.drawing.sheet import Page, Sheet
from chairwright.drawing.weighing_view import load_words
from chairwright.scales.model import PADS, Session
from chairwright.scales.propagate import Measured

PAD_MM = 60.0
LOAD_MM = 3.2


def pads_sheet(session: Session, found: Measured, page: Page) -> Sheet:
    """Draw four pads from above, front to the right, left wheels at the top.

    Parameters
    ----------
    session : Session
        With four loads on the level.
    found : Measured
    page : Page
        Largest sheet [mm].

    Returns
    -------
    Sheet
    """
    return compose(lambda scale: _view(session, found, scale), page, "mm")


def _places(session: Session) -> dict[str, tuple[float, float]]:
    base = session.wheelbase_mm
    rear, caster = session.rear_track_mm / 2.0, session.caster_track_mm / 2.0
    return dict(zip(PADS, ((0.0, rear), (0.0, -rear), (base, caster), (base, -caster)),
                    strict=True))  # fmt: skip


def _view(session: Session, found: Measured, scale: float) -> View:
    places = _places(session)
    x, y = found.values["com_x_mm"], found.values["com_y_mm"]
    middle = Line((-PAD_MM, 0.0), (session.wheelbase_mm + PAD_MM, 0.0), "centre")
    ring = tuple(places[name] for name in ("rear_left", "caster_left", "caster_right",
                                           "rear_right"))  # fmt: skip
    groups = (
        Group("base", (Polyline(ring, "thin", closed=True), middle)),
        Group("pads", tuple(_pads(session, scale))),
        Group("balance", tuple(mass_mark((x, y), 2.0 * scale))),
    )
    rear, front = session.rear_track_mm, session.caster_track_mm
    lengths = (
        Dimension("rear_track_mm", places["rear_left"], places["rear_right"], rear,
                  "rear track", "left"),
        Dimension("caster_track_mm", places["caster_left"], places["caster_right"], front,
                  "caster track", "right"),
    )  # fmt: skip
    return View("From above", _spoken(session, x, y), groups, lengths, ())


def _pads(session: Session, scale: float) -> Iterator[Primitive]:
    loads = session.occupied.level
    for name, (x, y) in _places(session).items():
        left, right, low, high = x - PAD_MM, x + PAD_MM, y - PAD_MM / 2.0, y + PAD_MM / 2.0
        ring = ((left, low), (right, low), (right, high), (left, high))
        yield Polyline(ring, closed=True, fill="sheet")
        words = load_words(loads[name], session.resolution_kg)
        out = high + 1.4 * scale if y > 0.0 else low - 3.6 * scale
        yield Text((x, out), words, LOAD_MM, "middle", strong=len(words))


def _spoken(session: Session, x: float, y: float) -> str:
    loads, step = session.occupied.level, session.resolution_kg
    side = "left" if y >= 0.0 else "right"
    read = ", ".join(f"{name.replace('_', ' ')} {load_words(loads[name], step)}" for name in PADS)
    return (
        f"The four pads from above, front to the right: {read}. The centre of mass lies {x:.0f} mm "
        f"ahead of the rear axle and {abs(y):.0f} mm to the {side} of the middle."
    )
