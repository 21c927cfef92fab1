"""Load limits that do not go together: what a frame is rated for and what its parts carry."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from chairwright.fitting.line_checks.finding import Finding, mistake, remark
from chairwright.line.choices import CHOICES
from chairwright.line.model import Line, Option
from chairwright.line.reachable import Deduction

LIMIT = "load_limit_kg"
FRAME = "side_frame"


def load_findings(line: Line) -> Iterator[Finding]:
    """Compare each frame's rated load with what the parts that go with it carry.

    Parameters
    ----------
    line : Line

    Yields
    ------
    Finding
        A mistake for a frame whose rated load no build reaches; a remark for a part that
        carries less than every frame that it goes with is rated for.
    """
    deduction = Deduction(line)
    for frame in line.choices[FRAME].options:
        yield from _unreached(line, deduction, frame)
        yield from _fixed(line, frame)
    for name in line.choices:
        if name != FRAME:
            yield from _undercutting(line, deduction, name)


def limit_of(option: Option) -> float:
    """Greatest load that an option carries [kg]; infinite when it sets none."""
    return option.numbers.get(LIMIT, float("inf"))


def _unreached(line: Line, deduction: Deduction, frame: Option) -> Iterator[Finding]:
    rated = limit_of(frame)
    settled = {FRAME: frozenset({frame.code})}
    levels = sorted({limit_of(o) for each in line.choices.values() for o in each.options})
    reached = [level for level in levels if level <= rated]
    while reached and not _carries(line, deduction, settled, reached[-1], line.choices):
        reached.pop()
    if reached and reached[-1] >= rated:
        return
    most = reached[-1] if reached else 0.0
    above = min(level for level in levels if level > most)
    binding = _binding(line, deduction, settled, above)
    told = ", ".join(_greatest(line, deduction, settled, name) for name in binding)
    yield mistake(
        frame.where,
        f"side frame {frame.code} is rated for {rated:g} kg; a build with it must reach that",
        f"{most:g} kg at most: {told}",
        "Correct the limit that is wrong, lower the frame's, or offer a part that carries more.",
    )


def _fixed(line: Line, frame: Option) -> Iterator[Finding]:
    """Parts of every chair that carry less than a frame."""
    for part in line.fixed_parts:
        if part.load_limit_kg < limit_of(frame):
            yield mistake(
                frame.where,
                f"side frame {frame.code} is rated for {limit_of(frame):g} kg; what every chair "
                "has must carry that",
                f"{part.load_limit_kg:g} kg for the fixed part {part.code}",
                "Correct the limit that is wrong, or lower the frame's.",
            )


def _carries(
    line: Line,
    deduction: Deduction,
    settled: Mapping[str, frozenset[str]],
    load_kg: float,
    choices: Mapping[str, object],
) -> bool:
    """Whether some build has every part of the named choices carry a load."""
    strong = {
        name: frozenset(o.code for o in line.choices[name].options if limit_of(o) >= load_kg)
        for name in choices
        if name not in settled
    }
    return deduction.example({**strong, **settled}) is not None


def _binding(
    line: Line, deduction: Deduction, settled: Mapping[str, frozenset[str]], load_kg: float
) -> list[str]:
    """A smallest group of choices that together keep a load out of reach."""
    names = [name for name in line.choices if name not in settled]
    for name in list(names):
        fewer = dict.fromkeys(each for each in names if each != name)
        if not _carries(line, deduction, settled, load_kg, fewer):
            names.remove(name)
    return names


def _greatest(
    line: Line, deduction: Deduction, settled: Mapping[str, frozenset[str]], name: str
) -> str:
    """The strongest option of a choice that goes with what is settled, in words."""
    possible = [
        option
        for option in line.choices[name].options
        if deduction.example({**settled, name: frozenset({option.code})}) is not None
    ]
    best = max(possible, key=limit_of)
    line_number = best.where.rpartition(":")[2]
    label = CHOICES[name].label.lower()
    return f"{label} {best.part or best.code} carries {limit_of(best):g} kg (line {line_number})"


def _undercutting(line: Line, deduction: Deduction, name: str) -> Iterator[Finding]:
    told: set[str] = set()
    for option in line.choices[name].options:
        limit, settled = limit_of(option), {name: frozenset({option.code})}
        part = option.part or option.code
        if limit == float("inf") or part in told:
            continue
        told.add(part)
        ratings = [
            limit_of(frame)
            for frame in line.choices[FRAME].options
            if deduction.example({**settled, FRAME: frozenset({frame.code})}) is not None
        ]
        if ratings and limit < min(ratings):
            yield remark(
                option.where,
                f"{CHOICES[name].label.lower()} {part} should carry what at least one of "
                "its frames is rated for",
                f"{limit:g} kg, where its frames are rated for {min(ratings):g} kg and more",
                "Check the number: kg, the occupant with everything carried, for the pair.",
            )
