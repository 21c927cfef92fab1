"""Product lines: what there is, and checking the text of a line file."""

from __future__ import annotations

from pydantic import BaseModel

from chairwright_desk.api.bridge import InputError, line_told, open_text
from chairwright_desk.api.operations import Call, operation
from chairwright_desk.api.shapes.base import WrongGiven
from chairwright_desk.api.shapes.lines import LineChecked, LineGiven, LineRead, LinesGiven, LineText
from chairwright_desk.bench.texts import lines_known

FILE = "line"


@operation("GET", "lines", "line.see", "Lists the product lines.", gives=LinesGiven)
def lines(call: Call) -> BaseModel:
    """List."""
    teams = call.request.user.teams_for(call.request.action)
    every = dict(pair for team in teams for pair in lines_known(team))
    return LinesGiven(lines=[LineGiven(name=name, words=words) for name, words in every.items()])


@operation(
    "POST", "lines/check", "line.see", "Checks the text of a line file; keeps nothing.",
    takes=LineText, gives=LineChecked, changes=False,
)  # fmt: skip
def check_line(call: Call) -> BaseModel:
    """Check; what is wrong with the text is the answer, not a refusal."""
    try:
        line = open_text(FILE, call.body.text)
    except InputError as error:
        problems = [
            WrongGiven(where=p.where, must=p.must, got=p.got, remedy=p.remedy)
            for p in error.problems
        ]
        return LineChecked(good=False, problems=problems, line=None)
    return LineChecked(good=True, problems=[], line=LineRead(**line_told(line)))
