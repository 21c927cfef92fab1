"""A chair on the scales, from its right side: pads, what they read, plumb and centre of mass.

Only what was read is drawn: wheels of the height of their axles, the wheelbase, the block. Where a
set-up is named, the person and the chair's outline stand behind it on the level.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from chairwright.chair.shape import Contact, Shape
from chairwright.drawing import side_chair
from chairwright.drawing.balance import balance
from chairwright.drawing.compose import LegendEntry, View, compose, mass_mark
from chairwright.drawing.person import body_side, near_arm
from chairwright.drawing.scene import (
    Anchor,
    Circle,
    Dimension,
    Group,
    Line,
    Point,
    Polyline,
    Primitive,
    Text,
)
from chairwright.drawing.sheet import Page, Sheet
from chairwright.scales.centre import axle_load
from chairwright.scales.formulas import Raised, raised
from chairwright.scales.model import Session, readings
from chairwright.scales.propagate import Measured

PAD_MM = 18.0
PAD_HALF_MM = 75.0
HUB_MM = 22.0
LOAD_MM = 3.2
PLUMB_SHARE = 2.4
"""How far up the plumb goes where the height is not known, in heights of the rear axle."""

LEVEL = Raised(0.0, 1.0, 0.0)


@dataclass(frozen=True)
class _Stance:
    """One way in which the chair stands, floor axes with the rear axle at 0."""

    at: Raised
    block_mm: float
    rear: Point
    caster: Point
    caster_mm: float
    com: tuple[float, float | None]


def level_sheet(session: Session, found: Measured, shape: Shape | None, page: Page) -> Sheet:
    """Draw the chair on the level.

    Parameters
    ----------
    session : Session
    found : Measured
    shape : Shape or None
        Of the set-up that was weighed, when one is named.
    page : Page
        Largest sheet [mm].

    Returns
    -------
    Sheet
    """
    return compose(lambda scale: _level_view(session, found, shape, scale), page, "mm")


def raised_sheet(session: Session, found: Measured, page: Page) -> Sheet:
    """Draw the chair with its casters on the block.

    Parameters
    ----------
    session : Session
        With the loads of raised casters.
    found : Measured
    page : Page
        Largest sheet [mm].

    Returns
    -------
    Sheet
    """
    return compose(lambda scale: _raised_view(session, found, scale), page, "mm")


def _stance(session: Session, found: Measured, at: Raised, block_mm: float) -> _Stance:
    rear_height, caster_height = session.rear_height_mm, session.caster_height_mm
    x, z = found.values["com_x_mm"], found.values.get("com_z_mm")
    over = 0.0 if z is None else z - rear_height
    return _Stance(
        at,
        block_mm,
        (0.0, rear_height),
        (at.wheelbase_mm, caster_height + block_mm),
        caster_height,
        (
            x * at.cos - over * at.sin,
            None if z is None else rear_height + x * at.sin + over * at.cos,
        ),
    )


def _level_view(session: Session, found: Measured, shape: Shape | None, scale: float) -> View:
    stance = _stance(session, found, LEVEL._replace(wheelbase_mm=session.wheelbase_mm), 0.0)
    height = stance.com[1]
    groups: list[Group] = [Group("pads", tuple(_pads(stance)))]
    if shape is None:
        groups.append(Group("chair", tuple(_wheels(stance))))
    else:
        groups += _behind(shape)
    if height is None:
        groups.append(Group("balance", (_plumb(stance),)))
    else:
        measured = _as_weighed(session, found, shape)
        groups.append(balance(measured, scale) if measured else _mass(stance, scale))
    groups.append(Group("loads", tuple(_loads(stance, session, "occupied.level", scale))))
    return View(
        "On the level",
        _spoken(session, found, "occupied.level", "The chair on the level"),
        tuple(group for group in groups if group.items),
        tuple(_dimensions(stance, found)),
        _legend(height is not None, angles=shape is not None and height is not None),
    )


def _raised_view(session: Session, found: Measured, scale: float) -> View:
    block = session.occupied.block_mm
    heights = session.wheelbase_mm, session.rear_height_mm, session.caster_height_mm
    stance = _stance(session, found, raised(*heights, block), block)
    groups = (
        Group("pads", tuple(_pads(stance))),
        Group("chair", tuple(_wheels(stance))),
        _mass(stance, scale),
        Group("loads", tuple(_loads(stance, session, "occupied.raised", scale))),
    )
    ends = (stance.at.wheelbase_mm, 0.0), (stance.at.wheelbase_mm, block)
    lengths = (
        Dimension("wheelbase_raised_mm", (0.0, 0.0), ends[0], stance.at.wheelbase_mm,
                  "apart", "below"),
        Dimension("block_mm", *ends, block, "block", "right"),
    )  # fmt: skip
    words = f"The same chair with its casters raised by {block:.0f} mm"
    spoken = _spoken(session, found, "occupied.raised", words)
    return View("Casters raised", spoken, groups, lengths, ())


def _behind(shape: Shape) -> Iterator[Group]:
    """The chair of the set-up with its person, without what swings."""
    yield body_side(shape.figurine)
    yield side_chair.frame(shape)
    caster = side_chair.caster(shape)
    kept = tuple(i for i in caster.items if getattr(i, "pen", "") not in ("hidden", "centre"))
    yield Group(caster.name, kept)
    yield side_chair.seat_and_back(shape)
    yield side_chair.rear_wheel(shape)
    yield near_arm(shape.figurine)


def _as_weighed(session: Session, found: Measured, shape: Shape | None) -> Shape | None:
    """The set-up's shape on the contacts that were read, with the mass where the scales say."""
    if shape is None:
        return None
    x, y, z = (found.values.get(f"com_{axis}_mm", 0.0) for axis in "xyz")
    contacts = (Contact("rear", 0.0, 0.0), Contact("casters", session.wheelbase_mm, 0.0))
    return replace(shape, com=(x, y, z), contacts=contacts, wheelbase_mm=session.wheelbase_mm)


def _pads(stance: _Stance) -> Iterator[Primitive]:
    low = -PAD_MM
    far = stance.at.wheelbase_mm
    yield Line((-stance.rear[1] - 40.0, low), (far + PAD_HALF_MM + 60.0, low))
    yield _box(0.0, low, 0.0)
    if stance.block_mm > 0.0:
        yield _box(far, low, stance.block_mm - PAD_MM)
        yield _box(far, stance.block_mm - PAD_MM, stance.block_mm)
    else:
        yield _box(far, low, 0.0)


def _box(middle: float, low: float, high: float) -> Polyline:
    left, right = middle - PAD_HALF_MM, middle + PAD_HALF_MM
    ring = ((left, low), (right, low), (right, high), (left, high))
    return Polyline(ring, closed=True, fill="sheet")


def _wheels(stance: _Stance) -> Iterator[Primitive]:
    yield Circle(stance.rear, stance.rear[1])
    yield Circle(stance.caster, stance.caster_mm)
    yield Line(stance.rear, stance.caster, "thin")
    yield Circle(stance.rear, HUB_MM, fill="sheet")
    yield Circle(stance.caster, HUB_MM / 2.0, fill="sheet")


def _plumb(stance: _Stance) -> Line:
    x, z = stance.com
    return Line((x, PLUMB_SHARE * stance.rear[1] if z is None else z), (x, 0.0), "plumb")


def _mass(stance: _Stance, scale: float) -> Group:
    x, z = stance.com
    marks = [] if z is None else mass_mark((x, z), 2.0 * scale)
    return Group("balance", (_plumb(stance), *marks))


def _loads(stance: _Stance, session: Session, key: str, scale: float) -> Iterator[Primitive]:
    """What the pads read, beside them where no extension line runs."""
    values, _ = readings(session)
    under = -PAD_MM - 4.6 * scale
    ends: tuple[tuple[str, float, Anchor], ...] = (
        ("rear", -1.2 * scale, "end"),
        ("casters", stance.at.wheelbase_mm + 1.2 * scale, "start"),
    )
    for axle, at, anchor in ends:
        load = axle_load(values, key, axle)
        if load is not None:
            words = load_words(load, session.resolution_kg)
            yield Text((at, under), words, LOAD_MM, anchor, strong=len(words))


def load_words(load_kg: float, step_kg: float) -> str:
    """A load to the digit that the scales show.

    Examples
    --------
    >>> load_words(15.05, 0.05), load_words(36.0, 0.1), load_words(80.0, 0.5)
    ('15.05 kg', '36.0 kg', '80.0 kg')
    """
    return f"{load_kg:.{max(1, len(f'{step_kg:g}'.partition('.')[2]))}f} kg"


def _dimensions(stance: _Stance, found: Measured) -> Iterator[Dimension]:
    x, z = stance.com
    base = stance.at.wheelbase_mm
    if round(abs(x)):
        where = "ahead of axle" if x > 0 else "behind axle"
        yield Dimension("com_x_mm", (0.0, 0.0), (x, 0.0), abs(x), where, "below")
    yield Dimension("wheelbase_mm", (0.0, 0.0), (base, 0.0), base, "wheelbase", "below")
    yield Dimension("rear_height_mm", (0.0, 0.0), stance.rear, stance.rear[1], "axle", "left")
    ends = (base, 0.0), stance.caster
    yield Dimension("caster_height_mm", *ends, stance.caster[1], "caster axle", "right")
    if z is not None:
        yield Dimension("com_z_mm", (x, 0.0), (x, z), z, "centre of mass", "right")


def _legend(mass: bool, *, angles: bool) -> tuple[LegendEntry, ...]:
    entries = [LegendEntry("plumb line", "plumb")]
    if mass:
        entries.insert(0, LegendEntry("centre of mass, as weighed", None))
    if angles:
        entries.append(LegendEntry("tipping line, rear", "tipping_rear"))
        entries.append(LegendEntry("tipping line, forward", "tipping_forward"))
    return tuple(entries)


def _spoken(session: Session, found: Measured, key: str, start: str) -> str:
    values, _ = readings(session)
    told = [f"{start}, from the right, front to the right, on pads."]
    for axle, name in (("rear", "rear wheels"), ("casters", "casters")):
        load = axle_load(values, key, axle)
        if load is not None:
            told.append(f"The {name} carry {load_words(load, session.resolution_kg)}.")
    told.append(f"Wheelbase {session.wheelbase_mm:.0f} mm.")
    x, z = found.values["com_x_mm"], found.values.get("com_z_mm")
    up = "" if z is None else f" and {z:.0f} mm above the floor"
    told.append(f"On the level the centre of mass lies {x:.0f} mm ahead of the rear axle{up}.")
    return " ".join(told)
