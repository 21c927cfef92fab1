"""What a person has answered so far: in the session, and nowhere else."""

from __future__ import annotations

from typing import Any

from chairwright_desk.base.requests import Request
from chairwright_desk.teach.lessons import LESSONS, Lesson

KEY = "teach"


def answered(request: Request, lesson: Lesson) -> dict[int, int]:
    """Step number to the answer that was given.

    Parameters
    ----------
    request : Request
    lesson : Lesson
    """
    held: dict[str, Any] = request.session.get(KEY, {}).get(lesson.slug, {})
    return {int(number): int(answer) for number, answer in held.items()}


def note_answer(request: Request, lesson: Lesson, number: int, answer: int) -> None:
    """Keep an answer until the session ends.

    Parameters
    ----------
    request : Request
    lesson : Lesson
    number : int
        Of the step, from 1.
    answer : int
    """
    held: dict[str, Any] = request.session.get(KEY, {})
    of_lesson = {**held.get(lesson.slug, {}), str(number): answer}
    request.session[KEY] = {**held, lesson.slug: of_lesson}


def forget(request: Request, lesson: Lesson) -> None:
    """Begin a lesson anew.

    Parameters
    ----------
    request : Request
    lesson : Lesson
    """
    held: dict[str, Any] = request.session.get(KEY, {})
    request.session[KEY] = {slug: each for slug, each in held.items() if slug != lesson.slug}


def counts(request: Request) -> list[tuple[Lesson, int]]:
    """Every lesson, and how many of its steps are answered."""
    return [(lesson, len(answered(request, lesson))) for lesson in LESSONS.values()]
