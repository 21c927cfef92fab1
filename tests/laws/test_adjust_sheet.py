"""A technician with nothing but the printed sheet turns the first set-up into the second.

Everything is drawn from the text of the PDF: moves, and what each step says of the chair. What it
says is looked at again here: the rules in plain Python, the floor with all the set-ups at once.
"""

from __future__ import annotations

import io
import re
from dataclasses import dataclass, field

import numpy as np
import pytest
from pypdf import PdfReader

from chairwright.chair.buildable import buildable
from chairwright.chair.occupant import Occupant
from chairwright.cli.opened import open_setup
from chairwright.figures.registry import FIGURES
from chairwright.fitting.described import Described
from chairwright.order.adjust import adjust
from chairwright.papers.pack.adjust_sheet import adjust_sheet_pdf
from chairwright.papers.typeset import Paper
from tests.laws.setups import Made, for_many, make
from tests.oracles.rules import rules_kept

from .example_sweeps import EXAMPLES, SETUPS
from .test_adjust import pairs

STEP = re.compile(r"^(\d+)\. ([A-Z][a-z -]+)(?:: .*)? Initials")
MOVE = re.compile(r"^(?:\W )?([A-Z][^:→]*): (\S+) → (\S+)(?: \(.*\))?$")
ON, OFF = "Then: chair on its wheels.", "Then: CHAIR OFF ITS WHEELS, on blocks, until step "
READING = re.compile(r"^(.+?) (?:−?[\d.]+ )?(−?[\d.]+) (mm|deg)(?: [\d.]+)?$")


@dataclass
class Printed:
    """One step as it stands on paper."""

    number: int
    moves: list[tuple[str, str, str]] = field(default_factory=list)
    stands: bool | None = None
    down_after: int = 0
    readings: dict[str, str] = field(default_factory=dict)


def printed_steps(content: bytes) -> list[Printed]:
    """The steps of a sheet, from the text of its pages."""
    steps: list[Printed] = []
    pages = PdfReader(io.BytesIO(content)).pages
    lines = "\n".join(page.extract_text() for page in pages).replace("\u200b", "").splitlines()
    for line in (line.strip() for line in lines):
        if step := STEP.match(line):
            steps.append(Printed(int(step[1])))
        elif not steps or steps[-1].stands is not None:
            continue
        elif move := MOVE.match(line):
            steps[-1].moves.append((move[1], move[2], move[3]))
        elif line == ON:
            steps[-1].stands, steps[-1].down_after = True, steps[-1].number
        elif line.startswith(OFF):
            until = int(line.removeprefix(OFF).split()[0])
            steps[-1].stands, steps[-1].down_after = False, until
        elif read := READING.match(line):
            steps[-1].readings[read[1]] = read[2].replace("−", "-")
    return steps


def followed(first: Described, steps: list[Printed]) -> list[dict[str, str]]:
    """Codes of the chair after each step, when each move is done as it is printed."""
    names = {choice.label: name for name, choice in first.line.choices.items()}
    codes, extras, after = dict(first.codes), {each.code for each in first.extras}, []
    for step in steps:
        codes = dict(codes)
        for label, before, last in step.moves:
            if label == "Extra":
                extras = (extras - {before}) | ({last} - {"none"})
                continue
            assert codes[names[label]] == before
            codes[names[label]] = last
        after.append({**codes, "extras": " ".join(sorted(extras))})
    return after


def independent(first: Described, occupant: Occupant, codes: list[dict[str, str]]) -> Made:
    """The chair after each step, worked out by itself."""
    choices = first.line.choices
    index = {
        name: np.array([choice.codes[each[name]] for each in codes])
        for name, choice in choices.items()
    }
    return make(first.line, occupant, index)


def follow(one: Described, two: Described, occupant: Occupant, paper: Paper) -> None:
    """Follow a printed sheet from one set-up and look at every state on the way."""
    content = adjust_sheet_pdf(adjust(one, two, occupant), "one", "two", paper)
    steps = printed_steps(content)
    assert [step.number for step in steps] == list(range(1, len(steps) + 1))
    if not steps:
        assert one.codes == two.codes
        return
    after = followed(one, steps)
    extras = " ".join(sorted(each.code for each in two.extras))
    assert after[-1] == {**two.codes, "extras": extras}
    made = independent(one, occupant, after)
    fine = rules_kept(one.line, made.rows.index) & buildable(made.rows)
    assert [step.stands for step in steps] == fine.tolist()
    for at, step in enumerate(steps):
        assert step.down_after == next(n for n in range(at, len(fine)) if fine[n]) + 1
    _check_readings(steps, made)


def _check_readings(steps: list[Printed], made: Made) -> None:
    """Each printed number that is a figure is the chair's own at that step."""
    labels = {figure.label: figure for figure in FIGURES.values()}
    for at, step in enumerate(steps):
        for label, value in step.readings.items():
            if label in labels:
                figure = labels[label]
                half = 0.5 * 10.0**-figure.digits + 1e-9
                assert float(value) == pytest.approx(made[figure.name][at], abs=half), label


@pytest.mark.parametrize("paper", ["a4", "us-letter"])
@pytest.mark.parametrize("last", [name for name in EXAMPLES if name != "avg-001"])
def test_two_demo_set_ups(last: str, paper: Paper) -> None:
    one, two = (open_setup(SETUPS / f"{name}.yaml") for name in ("avg-001", last))
    follow(one.setup, two.setup, two.person.occupant, paper)


def test_on_the_way_to_the_small_wheel_the_chair_is_off_its_wheels() -> None:
    """The wheel comes down before its lock and its anti-tip device follow: not a way all on wheels.

    Rule of the line: a 20 in wheel needs the long lever, which is fitted three steps later.
    """
    one, two = (open_setup(SETUPS / f"{name}.yaml") for name in ("avg-001", "amp-005"))
    found = adjust(one.setup, two.setup, two.person.occupant)
    steps = printed_steps(adjust_sheet_pdf(found, "one", "two"))
    off = [step.number for step in steps if not step.stands]
    assert [("Rear wheel", "W24", "W20") in step.moves for step in steps].index(True) + 1 == off[0]
    assert ("Wheel lock", "LP", "LL") in steps[off[-1] - 1].moves
    assert {"Seat to floor, back", "Seat angle", "Wheelbase"} <= set(steps[-1].readings)


@for_many(4)
def test_set_ups_drawn_at_random(seed: int) -> None:
    for _, one, two, occupant in pairs(seed)[:1]:
        follow(one, two, occupant, "a4")
