"""The lessons: what is asked is answered by the engineering, as the literature has it."""

from __future__ import annotations

import re

import pytest
from django.urls import reverse

from chairwright_desk.bench.bridge import Units
from chairwright_desk.clients.models import Client
from chairwright_desk.teach.bridge import base, state_with, worked
from chairwright_desk.teach.lessons import LESSONS
from chairwright_desk.teach.lessons.lesson import Lesson, Step

from ..kit.world import World

STEPS = [
    pytest.param(lesson, number, step, id=f"{lesson.slug}-{number}")
    for lesson in LESSONS.values()
    for number, step in enumerate(lesson.steps, 1)
]
each_step = pytest.mark.parametrize(("lesson", "number", "step"), STEPS)


@each_step
@pytest.mark.parametrize("units", ["mm", "in"])
def test_one_answer_is_right_and_no_two_read_alike(
    lesson: Lesson, number: int, step: Step, units: Units
) -> None:
    found = worked(step, units)
    assert [each.right for each in found.answers].count(True) == 1
    words = [each.words for each in found.answers]
    assert 2 <= len(words) == len(set(words)) <= 4
    assert 3 <= len(lesson.steps) <= 6


@each_step
def test_every_chair_shown_is_one_that_the_line_allows(
    lesson: Lesson, number: int, step: Step
) -> None:
    for _, codes in step.shown:
        assert state_with(codes).against == ()
    first, *others = (set(codes.items()) for _, codes in step.shown)
    assert all(first != other for other in others)


@each_step
def test_set_ups_rise_along_the_number_of_which_the_reasons_speak(
    lesson: Lesson, number: int, step: Step
) -> None:
    """Reasons of the lesson sheets are written for a number that rises."""
    if not step.along:
        return
    states = [state_with(codes) for _, codes in step.shown]
    options = [each.bench.line.choices[step.choice].options for each in states]
    along = [
        each[state.index[step.choice]].numbers.get(step.along, 0.0)
        for each, state in zip(options, states, strict=True)
    ]
    assert along == sorted(along)


@each_step
def test_something_moves_and_every_figure_that_moves_has_its_reason(
    lesson: Lesson, number: int, step: Step
) -> None:
    found = worked(step, "mm")
    moving = {row.label for row in found.rows if any(c.change not in ("", "±0") for c in row.cells)}
    assert moving
    assert {each.label for each in found.whys} == moving
    assert all(each.text and each.sources for each in found.whys)
    assert found.cautions
    assert len(found.pictures) == (1 if len(step.shown) == 2 else len(step.shown))


@pytest.mark.parametrize(
    ("slug", "number", "right"),
    [
        # Thomas 2018; Ferguson-Pell 2006; Brubaker 1986 (abstracts; tables/experiments)
        ("axle", 1, "It gets smaller"),
        ("axle", 3, "It gets smaller"),
        # a hole pitch of 20 mm with the frame turning about the casters, by hand: a little more
        ("axle", 4, "About 22 mm less"),
        ("axle", 5, "hole A8"),
        # half the difference of 200 and 150 mm is 25 mm, less the tilt, by hand
        ("casters", 1, "It gets greater"),
        # McLaurin & Brubaker 1991: a long trail sweeps a larger arc near the feet
        ("casters", 3, "It gets greater"),
        ("casters", 4, "It gets greater"),
        ("seat-slope", 1, "It gets greater"),
        ("seat-slope", 3, "It gets greater"),
        # a public stability guideline: a cushion lowers all stability
        ("cushion", 1, "It gets smaller"),
        # PVA Consortium 2005, fig. 2: seat too high, larger elbow angle
        ("cushion", 2, "It gets greater: straighter"),
        ("cushion", 3, "It gets smaller"),
        # Trudel 1997 and 1995 (abstracts)
        ("camber", 2, "Tips to the left"),
        ("camber", 3, "It gets greater"),
        # by definition: the device does not touch before the chair has begun to tip
        ("anti-tip", 1, "It hardly changes"),
        ("anti-tip", 3, "lowest hole, TS-9"),
        ("anti-tip", 4, "It gets smaller"),
    ],
)
def test_the_answers_are_those_of_the_literature(slug: str, number: int, right: str) -> None:
    found = worked(LESSONS[slug].steps[number - 1], "mm")
    assert found.answers[found.right].words == right


def test_the_amount_is_the_difference_in_the_table() -> None:
    found = worked(LESSONS["camber"].steps[0], "mm")
    moved = found.rows[0].cells[1].change.removeprefix("+")
    assert found.answers[found.right].words == f"About {moved} mm more"


def test_three_degrees_of_camber_widen_the_track_by_hand() -> None:
    """2 x (radius x sin 3 + hub extra): 2 x (295 sin 3 + 8) is 46.9 mm."""
    found = worked(LESSONS["camber"].steps[0], "mm")
    assert found.rows[1].label == "Rear track"
    assert found.rows[1].cells[1].change == "+47"


def test_an_answer_is_shown_and_kept_for_this_person_only(world: World) -> None:
    visitor, other = world.visitor("builder"), world.visitor("reader")
    before = visitor.get("/teach/lesson/axle/1/").content.decode()
    assert "come with your answer" in before
    assert "<table" not in before, "no figures before the answer"
    page = visitor.post("/teach/lesson/axle/1/", {"answer": "2"}, follow=True).content.decode()
    assert "Not so here." in page
    assert 'value="2" id="answer-2" checked' in page
    assert "−2.0" in page
    assert "<svg" in page
    assert "common practice" in page
    right = visitor.post("/teach/lesson/axle/1/", {"answer": "0"}, follow=True).content.decode()
    assert "The figures bear you out." in right
    assert "answered" in visitor.get("/teach/").content.decode()
    assert "answered" not in other.get("/teach/").content.decode()
    visitor.post("/teach/lesson/axle/again/")
    assert "answered" not in visitor.get("/teach/").content.decode()


@pytest.mark.parametrize("answer", ["", "9", "-1", "x", "٣"])
def test_no_answer_is_told(world: World, answer: str) -> None:
    page = world.visitor("reader").post("/teach/lesson/axle/1/", {"answer": answer})
    assert page.status_code == 200
    assert "Choose one of the answers first." in page.content.decode()


def test_questions_only_tell_no_answer(world: World) -> None:
    page = world.visitor("reader").get("/teach/lesson/axle/print/?only=questions").content.decode()
    assert "so say the figures" not in page
    assert "To remember" not in page
    assert page.count('class="boxes"') == len(LESSONS["axle"].steps)


@pytest.mark.parametrize("slug", LESSONS)
def test_each_lesson_has_its_sheet(world: World, slug: str) -> None:
    answer = world.visitor("reader").get(f"/teach/lesson/{slug}/sheet.pdf")
    assert answer.content.startswith(b"%PDF")


def test_the_bench_keeps_to_the_session(world: World) -> None:
    visitor, before = world.visitor("clinician"), Client.objects.count()
    thick = 'value="Q75" selected'
    assert thick not in visitor.get("/teach/bench/").content.decode()
    visitor.post("/teach/bench/step/", {"pick": "cushion=Q75"})
    assert thick in visitor.get("/teach/bench/").content.decode()
    assert thick not in world.visitor("clinician").get("/teach/bench/").content.decode()
    visitor.post("/teach/bench/step/", {"way": "back"})
    assert thick not in visitor.get("/teach/bench/").content.decode()
    visitor.post("/teach/bench/step/", {"way": "again"})
    assert thick in visitor.get("/teach/bench/").content.decode()
    visitor.post("/teach/bench/step/", {"way": "anew"})
    assert thick not in visitor.get("/teach/bench/").content.decode()
    assert Client.objects.count() == before


@pytest.mark.parametrize(
    ("pick", "said"),
    [
        ("caster=C4", "is not allowed"),
        ("cushion=NONE-SUCH", "The line has no such option"),
        ("axle_hole=D7 anti_tip=TS-9", "Not changed"),
    ],
)
def test_what_cannot_be_is_said_and_nothing_changes(world: World, pick: str, said: str) -> None:
    visitor = world.visitor("clinician")
    page = visitor.post("/teach/bench/step/", {"pick": pick}).content.decode()
    assert said in page
    assert visitor.session.get("teach-bench", {"codes": base().codes})["codes"] == base().codes


@pytest.mark.parametrize("lesson", LESSONS.values(), ids=LESSONS)
def test_every_drawing_names_its_set_ups_once(lesson: Lesson, world: World) -> None:
    address = reverse("teach:print", args=[lesson.slug])
    page = world.visitor("clinician").get(address).content.decode()
    drawings = page.split("<figure>")[1:]
    assert drawings
    for drawing in drawings:
        figure = drawing.split("</figure>")[0]
        in_drawing = re.search(r">1: [^<]+<", figure) is not None
        assert in_drawing != ("<figcaption>" in figure)
