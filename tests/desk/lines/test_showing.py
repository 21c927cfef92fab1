"""What a line's pages show, against the command line's own answers and against the file."""

from __future__ import annotations

import json
import math
from unittest.mock import patch

import pytest
from django.urls import reverse

from chairwright.cli.line_heights_data import chart_data
from chairwright.fitting.heights_chart import Ask, heights_chart
from chairwright.line.load import SHIPPED, load_line
from chairwright_desk.lines.bridge import (
    HeightsAsked,
    checked,
    checked_apart,
    holds_of,
    line_from,
    shipped_text,
    shown,
)

from ..kit.world import World
from ..standing.lines import made, own_text


@pytest.mark.parametrize("name", SHIPPED)
def test_a_line_of_the_desk_is_shown_to_every_role(world: World, name: str) -> None:
    for part in ("options", "heights", "file"):
        page = world.visitor("reader").get(reverse(f"lines:{part}", args=[name, 1]))
        assert page.status_code == 200
        assert (
            world.visitor("reader").get(reverse(f"lines:{part}", args=[name, 2])).status_code == 404
        )


@pytest.mark.parametrize("name", SHIPPED)
def test_counts_are_those_of_brute_multiplication_where_no_rule_speaks(name: str) -> None:
    """The product of all options bounds the exact count from above, and the labels add up."""
    line, holds = load_line(name), holds_of(line_from(shipped_text(name)))
    product = math.prod(len(each.options) for each in line.choices.values())
    every = int(dict(holds.totals)["With both"].replace(",", ""))
    assert 0 < every <= product
    for table in holds.choices:
        assert sum(table.counts) == len(table.options) == len(line.choices[table.name].options)


def test_an_options_line_is_the_one_on_which_its_code_stands() -> None:
    rows = shipped_text("everyday").split("\n")
    holds = holds_of(line_from(shipped_text("everyday")))
    casters = next(each for each in holds.choices if each.name == "caster")
    for option in casters.options:
        assert f"code: {option.code}," in rows[option.line - 1]


def test_lengths_are_told_in_the_persons_units() -> None:
    line = line_from(shipped_text("everyday"))
    inches = next(each for each in holds_of(line, "in").choices if each.name == "caster")
    told = dict(inches.options[1].numbers)
    assert told["diameter"] == "150 mm, 5 7/8 in", "5.906 in, to the eighth, by hand"
    assert told["mass"] == "1.2 kg"


def test_the_chart_is_that_of_the_command() -> None:
    line = load_line("everyday")
    told = json.loads(json.dumps(chart_data(heights_chart(line, Ask()))))
    chart = shown(line_from(shipped_text("everyday")), HeightsAsked())
    assert [wheel.page.code for wheel in chart.wheels] == [
        o.code for o in line.choices["rear_wheel"].options
    ]
    marks = sum(cloud.count for wheel in chart.wheels for cloud in wheel.panel.clouds)
    column = chart.facts[-1][1].removeprefix("column ")
    cells = [
        each for each in told["combinations"]
        if each["axle_hole"].startswith(column) and each.get("seat_angle_deg") is not None
    ]  # fmt: skip
    assert marks == len(cells) > 100


@pytest.mark.parametrize(
    ("query", "said"),
    [
        ("low=x", "Seat angles are numbers of degrees"),
        ("low=nan", "Seat angles are numbers of degrees"),
        ("low=9&high=2", "the least seat angle comes first"),
        ("column=QQ", "column"),
        ("side_frame=NONE-SUCH", "NONE-SUCH"),
        ("low=80&high=81", "something must stand"),
    ],
)
def test_what_cannot_be_charted_is_said_with_the_form_kept(
    world: World, query: str, said: str
) -> None:
    address = reverse("lines:heights", args=["everyday", 1])
    page = world.visitor("clinician").get(f"{address}?{query}").content.decode()
    assert said.lower() in page.lower()
    assert 'name="low"' in page


def test_the_chart_as_a_paper(world: World) -> None:
    address = reverse("lines:heights-paper", args=[made(world).pk, 1])
    answer = world.visitor("builder").get(f"{address}?low=0&high=4")
    assert answer.headers["Content-Type"] == "application/pdf"
    assert answer.content.startswith(b"%PDF")
    assert "our-line-seat-heights.pdf" in answer.headers["Content-Disposition"]


def test_a_version_with_mistakes_has_no_options_page(world: World) -> None:
    for part in ("options", "heights", "heights-paper"):
        address = reverse(f"lines:{part}", args=[made(world).pk, 2])
        assert world.visitor("clinician").get(address).status_code == 404


def test_what_a_file_says_is_never_markup(world: World) -> None:
    line = made(world)
    line.versions.filter(number=2).update(text="<script>alert(1)</script>\n")
    page = world.visitor("clinician").get(reverse("lines:file", args=[line.pk, 2])).content.decode()
    assert "<script>alert" not in page
    assert "&lt;script&gt;alert" in page


def test_the_file_comes_back_as_it_was(world: World) -> None:
    answer = world.visitor("reader").get(reverse("lines:download", args=[made(world).pk, 1]))
    assert answer.content.decode() == own_text()


def test_a_check_that_takes_too_long_is_stopped_and_said() -> None:
    with patch.object(checked, "MOST_SECONDS", 0.01):
        found = checked_apart(own_text())
    assert not found.good
    assert "0.01 seconds" in found.told[0].got
