"""The parts of a line in one version: options, seat heights, the file with its messages."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Literal

from django.http import Http404, HttpResponse, QueryDict
from django.shortcuts import render

from chairwright_desk.base.access import page
from chairwright_desk.base.requests import Request
from chairwright_desk.lines.bridge import (
    HeightsAsked,
    InputError,
    Told,
    degrees,
    heights_pdf_of,
    holds_of,
    line_from,
    shown,
)
from chairwright_desk.lines.held import Held, held

DEGREES = "Seat angles are numbers of degrees, such as 0 or 4.5; got {typed}."


def units_of(request: Request) -> str:
    """The units that the person reads lengths in."""
    return "in" if request.user.units == "inch" else "mm"


def paper_of(request: Request) -> Literal["a4", "us-letter"]:
    """The paper that is usual where the person is."""
    return "us-letter" if request.user.language == "en-us" else "a4"


def _readable(request: Request, line_id: str, number: int) -> Held:
    """A version that set-ups can be made on."""
    line = held(request, line_id, number)
    if not line.good:
        raise Http404
    return line


@page("line.see")
def options(request: Request, line_id: str, number: int) -> HttpResponse:
    """Show every option of every choice, and the rules."""
    line = _readable(request, line_id, number)
    holds = holds_of(line_from(line.text), units_of(request))
    return render(request, "lines/options.html", {"line": line, "holds": holds})


def _asked(fields: QueryDict) -> tuple[HeightsAsked, str]:
    """What a chart is wanted for, and what is wrong with the angles."""
    codes = {name: code for name, code in fields.items() if name not in ("column", "low", "high")}
    told, ends = "", []
    for name in ("low", "high"):
        typed = fields.get(name, "")
        try:
            ends.append(degrees(typed))
        except ValueError:
            told = DEGREES.format(typed=repr(typed[:20]))
            ends.append(None)
    return HeightsAsked(_plain(codes), fields.get("column", ""), *ends), told


def _plain(codes: Mapping[str, object]) -> dict[str, str]:
    return {name: str(code) for name, code in codes.items() if code}


@page("line.see")
def heights(request: Request, line_id: str, number: int) -> HttpResponse:
    """Show the seat-height chart."""
    line = _readable(request, line_id, number)
    asked, wrong = _asked(request.GET)
    context = {
        "line": line,
        "chart": shown(line_from(line.text), asked, units_of(request)),
        "wrong": wrong,
        "low": request.GET.get("low", ""),
        "high": request.GET.get("high", ""),
        "query": request.GET.urlencode(),
    }
    return render(request, "lines/heights.html", context)


@page("line.see")
def heights_paper(request: Request, line_id: str, number: int) -> HttpResponse:
    """The seat-height chart to print."""
    line = _readable(request, line_id, number)
    asked, _ = _asked(request.GET)
    try:
        content = heights_pdf_of(line_from(line.text), asked, paper_of(request))
    except InputError:
        return heights(request, line_id, number)
    return _attached(content, "application/pdf", f"{line.name}-seat-heights.pdf")


def _attached(content: bytes, kind: str, name: str) -> HttpResponse:
    response = HttpResponse(content, content_type=kind)
    response.headers["Content-Disposition"] = f'attachment; filename="{name}"'
    return response


@page("line.see")
def download(request: Request, line_id: str, number: int) -> HttpResponse:
    """The file itself."""
    line = held(request, line_id, number)
    name = f"{line.name}-{line.number}.yaml" if line.own else f"{line.name}.yaml"
    return _attached(line.text.encode(), "text/plain; charset=utf-8", name)


@page("line.see")
def file(request: Request, line_id: str, number: int) -> HttpResponse:
    """Show the file with its messages at their lines."""
    line = held(request, line_id, number)
    told = line.told
    context = {
        "line": line,
        "mistakes": [each for each in told if each.severity == "mistake"],
        "remarks": [each for each in told if each.severity != "mistake"],
        "rows": _rows(line.text, told),
        "may_change": line.own and request.user.may("line.change", line.own.team_id),
    }
    return render(request, "lines/file.html", context)


def _rows(text: str, told: tuple[Told, ...]) -> list[tuple[int, str, list[Told]]]:
    """Number, text and messages of every line; line 1 holds what is about the whole as well."""
    at: dict[int, list[Told]] = {}
    lines = text.removesuffix("\n").split("\n")
    for each in told:
        at.setdefault(min(max(each.line, 1), len(lines)), []).append(each)
    return [(number, row, at.get(number, [])) for number, row in enumerate(lines, 1)]
