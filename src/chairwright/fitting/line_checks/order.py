"""Holes out of order, steps that are uneven, sizes that stand twice or deny their code."""

from __future__ import annotations

import math
import re
import statistics
from collections.abc import Iterator, Mapping, Sequence
from itertools import pairwise

from chairwright.fitting.line_checks.finding import Finding, mistake, remark
from chairwright.reading import YamlSource
from chairwright.validation import place
from chairwright.yaml_events import KeyPath

Sized = tuple[str, float, KeyPath]
"""What it is called, its size, where it stands."""

LISTS = {
    "seat_widths": "width_mm",
    "seat_depths": "depth_mm",
    "back_heights": "height_mm",
    "casters": "diameter_mm",
    "back_angles": "angle_deg",
    "cambers": "angle_deg",
}
"""Lists of sizes with their size."""
STEPPED = ("seat_widths", "seat_depths", "back_heights")
"""Lists whose sizes usually follow each other in equal steps."""
FEWEST_STEPS = 4
UNEVEN, EVEN = 1.6, 1.1
"""A step is uneven when it is that many times the usual one while all others are even."""
CODE_TOLERANCE = 0.05


def order_findings(source: YamlSource) -> Iterator[Finding]:
    """Judge tables of holes and lists of sizes.

    Parameters
    ----------
    source : YamlSource
        A line file that can be read.

    Yields
    ------
    Finding
        Mistakes for holes that run back and forth; remarks for the rest.
    """
    for at in _hole_tables(source.data):
        holes = _holes(source.data, at)
        turned = list(_run_back(source, at, holes))
        yield from turned or _uneven(source, f"{at[-1]}", holes)
    for name, key in LISTS.items():
        sizes = _sizes(source.data, name, key)
        yield from _twice(source, sizes)
        yield from _denied_codes(source, sizes)
        if name in STEPPED:
            yield from _uneven(source, name, sorted(sizes, key=lambda each: each[1]))
    yield from _uneven(source, "lengths_mm", sorted(_lengths(source.data), key=lambda s: s[1]))
    yield from _remainders(source)


def _hole_tables(data: Mapping[int | str, object]) -> Iterator[KeyPath]:
    for name, keys in (
        ("axle_plates", ("columns_mm", "rows_mm")),
        ("forks", ("holes_mm",)),
        ("anti_tips", ("holes_mm",)),
    ):
        items = data.get(name)
        for number in range(len(items) if isinstance(items, list) else 0):
            yield from ((name, number, key) for key in keys)
    yield ("caster_housings", "rows_mm")


def _holes(data: object, at: KeyPath) -> list[Sized]:
    """The holes of a table in the order of their numbers or letters."""
    for key in at:
        data = data[key]  # type: ignore[index]
    table: Mapping[int | str, float] = data  # type: ignore[assignment]
    keys = sorted(table, key=lambda key: (len(str(key)), str(key)))
    return [(str(key), float(table[key]), (*at, key)) for key in keys]


def _sizes(data: Mapping[int | str, object], name: str, key: str) -> list[Sized]:
    items = data.get(name)
    if not isinstance(items, list):
        return []
    return [(str(i["code"]), float(i[key]), (name, at, key)) for at, i in enumerate(items)]


def _lengths(data: Mapping[int | str, object]) -> list[Sized]:
    table = data.get("leg_lengths")
    lengths = table.get("lengths_mm") if isinstance(table, Mapping) else None
    if not isinstance(lengths, list):
        return []
    return [(f"{v:g}", float(v), ("leg_lengths", "lengths_mm", at)) for at, v in enumerate(lengths)]


def _run_back(source: YamlSource, at: KeyPath, holes: Sequence[Sized]) -> Iterator[Finding]:
    steps = [after[1] - before[1] for before, after in _pairs(holes)]
    rising = sum(step > 0 for step in steps) * 2 > len(steps)
    for (before, after), step in zip(_pairs(holes), steps, strict=True):
        if (step > 0) != rising or step == 0:
            yield mistake(
                place(source, after[2]),
                f"{at[-1]} must {'rise' if rising else 'fall'} from each hole to the next",
                f"{before[1]:g} at {before[0]}, then {after[1]:g} at {after[0]}",
                "Swap the two when they are in each other's place, or correct the number.",
            )


def _pairs(sized: Sequence[Sized]) -> list[tuple[Sized, Sized]]:
    return list(pairwise(sized))


def _uneven(source: YamlSource, what: str, sized: Sequence[Sized]) -> Iterator[Finding]:
    steps = [abs(after[1] - before[1]) for before, after in _pairs(sized)]
    if len(steps) < FEWEST_STEPS:
        return
    usual = statistics.median(steps)
    long = [at for at, step in enumerate(steps) if step > UNEVEN * usual]
    even = all(step <= EVEN * usual for at, step in enumerate(steps) if at not in long)
    if len(long) != 1 or not even or not usual:
        return
    before, after = _pairs(sized)[long[0]]
    yield remark(
        place(source, after[2]),
        f"{what} usually follow each other in steps of {usual:g}",
        f"nothing between {before[1]:g} ({before[0]}) and {after[1]:g} ({after[0]})",
        "Add what was forgotten, or correct the number.",
    )


def _twice(source: YamlSource, sizes: Sequence[Sized]) -> Iterator[Finding]:
    first: dict[float, Sized] = {}
    for each in sizes:
        before = first.setdefault(each[1], each)
        if before is not each:
            line = source.line_of(before[2]).rpartition(":")[2]
            yield remark(
                place(source, each[2]),
                "a size should stand once in its list",
                f"{each[1]:g} for {each[0]} and for {before[0]} (line {line})",
                "Correct one of the two, unless they differ in something else.",
            )


def _denied_codes(source: YamlSource, sizes: Sequence[Sized]) -> Iterator[Finding]:
    """Where codes hold their size, in mm, cm or inches, one that holds another is a slip."""
    numbers = [_number_in(code) for code, _, _ in sizes]
    ratios = [size / number for number, (_, size, _) in zip(numbers, sizes, strict=True) if number]
    if len(ratios) < FEWEST_STEPS or None in numbers:
        return
    usual = statistics.median(ratios)
    off = [
        each
        for number, each in zip(numbers, sizes, strict=True)
        if abs(each[1] - usual * (number or 0.0)) > CODE_TOLERANCE * abs(each[1])
    ]
    if len(off) == 1:
        code, size, at = off[0]
        yield remark(
            place(source, at),
            f"{code} should be the size that its code names, as all others here are",
            f"{size:g} (about {usual * (_number_in(code) or 0.0):g} by its code)",
            "Correct the size or the code.",
        )


def _number_in(code: str) -> float | None:
    found = re.search(r"\d+", code)
    return float(found[0]) if found else None


def _remainders(source: YamlSource) -> Iterator[Finding]:
    """Ranges whose last size is not reached by whole steps."""
    for at in sorted(source.lines, key=source.lines.__getitem__):
        if at[-1] == "step_mm":
            table = at[:-1]
            low, high, step = (_number(source.data, (*table, key)) for key in ENDS)
            steps = (high - low) / step
            if abs(steps - round(steps)) > ROUNDING:
                yield remark(
                    place(source, (*table, "to_mm")),
                    f"steps of {step:g} mm from {low:g} should end at the range's end",
                    f"{high:g}; the last size is {low + math.floor(steps) * step:g} mm",
                    "Correct the end or the step, or leave it when that is meant.",
                )


ENDS = ("from_mm", "to_mm", "step_mm")
ROUNDING = 1e-6


def _number(data: object, at: KeyPath) -> float:
    for key in at:
        data = data[key]  # type: ignore[index]
    return float(data)  # type: ignore[arg-type]
