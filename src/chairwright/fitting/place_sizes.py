"""Which sizes of a place can be made otherwise, in which steps they are told, and their words."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, replace
from types import MappingProxyType
from typing import Any

from chairwright.places.kinds import (
    Boot,
    Corner,
    Corridor,
    CrossSlope,
    Door,
    Kerb,
    Lift,
    Ramp,
    Room,
    Threshold,
    TransferPlace,
    UnderTop,
)
from chairwright.places.model import Place, Slope


@dataclass(frozen=True)
class Size:
    """One size of a place that can be made otherwise.

    Parameters
    ----------
    now : callable
        From a place to the size; None where it was not measured.
    put : callable
        From a place and the new size to the changed place.
    far : float
        As far as it is sought.
    step : float
        It is told in multiples of this; below zero where a smaller size helps.
    last_resort : bool
        Whether it is sought only where no other size helps.
    """

    now: Callable[[Any], float | None]
    put: Callable[[Any, float], Place]
    far: float
    step: float = 1.0
    last_resort: bool = False

    def steps(self, place: Place) -> range:
        """Multiples of the step beyond the present size, the nearest first."""
        now = self.now(place)
        if now is None:
            return range(0)
        unit = abs(self.step)
        far = round(self.far / unit)
        if self.step > 0:
            return range(math.floor(now / unit + 1e-9) + 1, far + 1)
        return range(math.ceil(now / unit - 1e-9) - 1, far - 1, -1)

    def at(self, place: Place, steps: int) -> Place:
        """The place with the size at a multiple of the step."""
        return self.put(place, round(steps * abs(self.step), 6))

    def by(self, place: Place, steps: int) -> float:
        """How far a multiple of the step lies from the present size."""
        return abs(steps * abs(self.step) - (self.now(place) or 0.0))


def sizes_of(place: Place) -> tuple[Size, ...]:
    """The sizes of a place, in the order in which they are sought."""
    return next((_SIZES[kind] for kind in type(place).__mro__ if kind in _SIZES), ())


def change_words(before: Place, after: Place) -> str:
    """Say what is otherwise in a place: ``a clear opening of at least 640 mm (now 610 mm)``.

    Parameters
    ----------
    before, after : Place
        Of the same kind and name.
    """
    return " and ".join(_changed_words(before, after))


def _changed_words(before: Place, after: Place) -> Iterator[str]:
    if isinstance(before, Ramp) and isinstance(after, Ramp):
        yield from _ramp_words(before, after)
    if isinstance(before, CrossSlope) and isinstance(after, CrossSlope):
        yield _fall_words(before.slope, after.slope)
    for name, words in _LENGTH_WORDS.items():
        old, new = getattr(before, name, None), getattr(after, name, None)
        if old is not None and new is not None and old != new:
            yield f"{words(after)} {_mm(new)} (now {_mm(old)})"


def _ramp_words(before: Ramp, after: Ramp) -> Iterator[str]:
    if before.run_mm != after.run_mm:
        run_m = math.ceil(after.run_mm / 10.0 - 1e-6) / 100.0
        yield (
            f"a ramp of 1:{after.slope.one_in:.1f} for the same rise, a run of {run_m:.2f} m "
            f"(now 1:{before.slope.one_in:.3g}, {before.run_mm / 1000.0:.2f} m)"
        )
    if before.cross_slope and after.cross_slope and before.cross_slope != after.cross_slope:
        yield _fall_words(before.cross_slope, after.cross_slope)


def _fall_words(before: Slope, after: Slope) -> str:
    return f"a fall to the side of at most {after.ratio:.1%} (now {before.ratio:.1%})".replace(
        "%", " %"
    )


def _mm(length: float) -> str:
    return f"{round(length, 1):g} mm"


def _plain(name: str, words: str) -> tuple[str, Callable[[Any], str]]:
    return name, lambda _: words


_LENGTH_WORDS: Mapping[str, Callable[[Any], str]] = MappingProxyType(
    dict(
        (
            _plain("clear_width_mm", "a clear opening of at least"),
            _plain("corridor_width_mm", "a corridor outside it of at least"),
            ("width_mm", lambda place: (
                "a width of at least" if isinstance(place, Corridor) else "free floor at least as "
                "wide as"
            )),
            ("depth_mm", lambda place: (
                "free floor at least as deep as" if isinstance(place, Room) else "a depth of at "
                "least"
            )),
            _plain("width_in_mm", "a way in of at least"),
            _plain("width_out_mm", "a way out of at least"),
            _plain("door_width_mm", "a lift door of at least"),
            _plain("opening_width_mm", "an opening at least as wide as"),
            _plain("opening_height_mm", "an opening at least as high as"),
            _plain("clear_height_mm", "raised until its lowest edge is at"),
            ("height_mm", lambda place: (
                "a height of" if isinstance(place, TransferPlace) else "a step of at most"
            )),
        )
    )
)  # fmt: skip
"""What each length is called, by its attribute."""


def _length(name: str, far: float, step: float = 1.0, *, last_resort: bool = False) -> Size:
    return Size(
        now=lambda place: getattr(place, name),
        put=lambda place, size: replace(place, **{name: size}),
        far=far,
        step=step,
        last_resort=last_resort,
    )


def _least_of(first: str, second: str, far: float, *, last_resort: bool = False) -> Size:
    """Two lengths of which neither may be less."""

    def put(place: Any, size: float) -> Place:
        wide = {name: max(getattr(place, name), size) for name in (first, second)}
        changed: Place = replace(place, **wide)
        return changed

    return Size(
        now=lambda place: min(getattr(place, first), getattr(place, second)),
        put=put,
        far=far,
        last_resort=last_resort,
    )


def _fall(name: str) -> Size:
    """A slope to the side, in percent."""

    def now(place: Any) -> float | None:
        slope = getattr(place, name)
        return None if slope is None else slope.ratio * 100.0

    return Size(
        now=now,
        put=lambda place, percent: replace(place, **{name: Slope(percent / 100.0)}),
        far=0.1,
        step=-0.1,
    )


def _one_in() -> Size:
    return Size(
        now=lambda ramp: ramp.run_mm / ramp.rise_mm,
        put=lambda ramp, one_in: replace(ramp, run_mm=one_in * ramp.rise_mm),
        far=FLATTEST,
        step=0.1,
    )


FLATTEST = 60.0
"""No ramp flatter than one in this is proposed (working value)."""
WIDEST_DOOR_MM = 1500.0
WIDEST_MM = 5000.0

_SIZES: Mapping[type[Place], tuple[Size, ...]] = MappingProxyType(
    {
        Door: (
            _length("clear_width_mm", WIDEST_DOOR_MM),
            _length("corridor_width_mm", WIDEST_MM, last_resort=True),
        ),
        Corridor: (_length("width_mm", WIDEST_MM),),
        Corner: (
            _length("width_out_mm", WIDEST_MM),
            _length("width_in_mm", WIDEST_MM),
            _least_of("width_in_mm", "width_out_mm", WIDEST_MM, last_resort=True),
        ),
        Room: (_least_of("width_mm", "depth_mm", WIDEST_MM),),
        Ramp: (_one_in(), _fall("cross_slope")),
        CrossSlope: (_fall("slope"),),
        Threshold: (_length("height_mm", 1.0, -1.0),),
        Kerb: (_length("height_mm", 1.0, -1.0),),
        UnderTop: (_length("clear_height_mm", 1500.0),),
        TransferPlace: (_length("height_mm", 1000.0), _length("height_mm", 100.0, -1.0)),
        Lift: (_length("door_width_mm", WIDEST_DOOR_MM), _length("depth_mm", WIDEST_MM)),
    }
)
"""Sizes by kind of place; those of a boot follow from the folded chair."""

BOOT_SIZES = ("opening_width_mm", "opening_height_mm", "depth_mm")


def larger_boot(boot: Boot, edges: tuple[float, float, float]) -> Boot:
    """Make a boot just large enough for a box, turned as it fits best.

    Parameters
    ----------
    boot : Boot
    edges : tuple of float [mm]
        Of the box, in any order.
    """
    names = sorted(BOOT_SIZES, key=lambda name: float(getattr(boot, name)))
    needed = {
        name: max(float(getattr(boot, name)), math.ceil(edge - 1e-6))
        for name, edge in zip(names, sorted(edges), strict=True)
    }
    return replace(boot, **needed)  # type: ignore[arg-type]
