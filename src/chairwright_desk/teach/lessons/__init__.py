"""The prepared lessons, in the order in which they build on each other."""

from __future__ import annotations

from chairwright_desk.teach.lessons.anti_tip import ANTI_TIP
from chairwright_desk.teach.lessons.axle import AXLE
from chairwright_desk.teach.lessons.camber import CAMBER
from chairwright_desk.teach.lessons.casters import CASTERS
from chairwright_desk.teach.lessons.cushion import CUSHION
from chairwright_desk.teach.lessons.lesson import Lesson, Step
from chairwright_desk.teach.lessons.seat_slope import SEAT_SLOPE

LESSONS: dict[str, Lesson] = {
    each.slug: each for each in (AXLE, CASTERS, SEAT_SLOPE, CUSHION, CAMBER, ANTI_TIP)
}

__all__ = ["LESSONS", "Lesson", "Step"]
