"""The lessons: list, one step with its question, the whole to print, the lesson sheet."""

from __future__ import annotations

from typing import Literal

from django.http import Http404, HttpResponse
from django.shortcuts import redirect, render

from chairwright_desk.base.access import page
from chairwright_desk.base.requests import Request
from chairwright_desk.teach.bridge import Units, lesson_paper, worked
from chairwright_desk.teach.lessons import LESSONS, Lesson
from chairwright_desk.teach.progress import answered, counts, forget, note_answer


def units_of(request: Request) -> Units:
    """The units that the person reads lengths in."""
    return "in" if request.user.units == "inch" else "mm"


def paper_of(request: Request) -> Literal["a4", "us-letter"]:
    """The paper that is usual where the person is."""
    return "us-letter" if request.user.language == "en-us" else "a4"


def _lesson(slug: str) -> Lesson:
    if slug not in LESSONS:
        raise Http404
    return LESSONS[slug]


@page("teach.see")
def lessons(request: Request) -> HttpResponse:
    """List the lessons."""
    return render(request, "teach/list.html", {"lessons": counts(request)})


@page("teach.see", "GET", "POST")
def step(request: Request, slug: str, number: int) -> HttpResponse:
    """Show one step; an answer shows what the figures say."""
    lesson = _lesson(slug)
    if not 1 <= number <= len(lesson.steps):
        raise Http404
    shown = lesson.steps[number - 1]
    found = worked(shown, units_of(request))
    wrong = ""
    if request.method == "POST":
        typed = request.POST.get("answer", "")
        if typed.isdigit() and int(typed) < len(found.answers):
            note_answer(request, lesson, number, int(typed))
            return redirect("teach:step", slug, number)
        wrong = "Choose one of the answers first."
    given = answered(request, lesson)
    context = {
        "lesson": lesson,
        "step": shown,
        "number": number,
        "found": found,
        "given": given.get(number),
        "done": given,
        "wrong": wrong,
    }
    return render(request, "teach/step.html", context)


@page("teach.see", "POST")
def again(request: Request, slug: str) -> HttpResponse:
    """Begin a lesson anew."""
    forget(request, _lesson(slug))
    return redirect("teach:step", slug, 1)


@page("teach.see")
def whole(request: Request, slug: str) -> HttpResponse:
    """A whole lesson on one page, to print: a step a sheet, with or without what follows."""
    lesson, units = _lesson(slug), units_of(request)
    steps = [
        (number, each, worked(each, units, f"s{number}-"))
        for number, each in enumerate(lesson.steps, 1)
    ]
    only = request.GET.get("only") == "questions"
    return render(request, "teach/print.html", {"lesson": lesson, "steps": steps, "only": only})


@page("teach.see")
def paper(request: Request, slug: str) -> HttpResponse:
    """The lesson sheet: one choice in all its options, figures and reasons."""
    lesson = _lesson(slug)
    content = lesson_paper(*lesson.sheet, units_of(request), paper_of(request))
    response = HttpResponse(content, content_type="application/pdf")
    response.headers["Content-Disposition"] = f'attachment; filename="lesson-{slug}.pdf"'
    return response
