"""What the engineering makes of a client's text: estimates, remarks, and what it cannot read."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, replace
from typing import Literal, cast, get_args

from chairwright.errors import InputError, Problem
from chairwright.files.client import read_client
from chairwright.person.body import Body, build_body
from chairwright.person.client import Amputation, AmputationLevel, Client, Measure, Sex
from chairwright.person.estimates import MeasureSet, complete, lost_measures
from chairwright.person.measures import BODY_MASS, STATURE
from chairwright.person.plausibility import review
from chairwright.person.population import summary_row
from chairwright.reading import FileText
from chairwright.units import Quantity, inches_text
from chairwright_desk.measures.bridge.catalogue import LEVEL_WORDS, LIMBS, kinds

Units = Literal["mm", "in"]
FieldAt = Callable[[str], str]
"""Where a message points to, such as ``client:12: sex``, to the field of the form."""

_SURVEY = {STATURE: "stature", BODY_MASS: "weight_kg"}
_STAND_IN = {"female": 66.0, "male": 80.0}
"""Mass of the figure before anything is measured [kg]; no figure comes from it."""


@dataclass(frozen=True)
class Beside:
    """One thing that stands beside a measure.

    Parameters
    ----------
    kind : {"estimated", "caution", "wrong", "lost"}
    words : str
    """

    kind: Literal["estimated", "caution", "wrong", "lost"]
    words: str


@dataclass(frozen=True)
class Understood:
    """What is made of one set of measures.

    Parameters
    ----------
    beside : dict of str to list of Beside
        By measure; what is about none of them under ``""``.
    measures : MeasureSet or None
        Complete; None until mass and height are there.
    stand_in : MeasureSet
        For the drawing only: as ``measures``, or of a person of usual size.
    body : Body
    measured : frozenset of str
        What was measured and understood.
    bases : tuple of str
        Where the estimates come from, in words.
    """

    beside: dict[str, list[Beside]]
    measures: MeasureSet | None
    stand_in: MeasureSet
    body: Body
    measured: frozenset[str]
    bases: tuple[str, ...] = field(default=())

    @property
    def doubtful(self) -> tuple[str, ...]:
        """Labels of the measures that should be looked at again, or could not be taken."""
        known = kinds()
        return tuple(
            known[name].label
            for name, said in self.beside.items()
            if name in known and any(each.kind in ("caution", "wrong") for each in said)
        )


def troubles_of(text: str, field_at: FieldAt) -> dict[str, list[str]]:
    """What cannot be read of a client's text, by the field that it stands in.

    Parameters
    ----------
    text : str
    field_at : callable

    Returns
    -------
    dict of str to list of str
        Under ``""`` what is about no field; empty when everything can be read.
    """
    try:
        read_client(FileText("client", text))
    except InputError as error:
        found: dict[str, list[str]] = {}
        for problem in error.problems:
            found.setdefault(field_at(problem.where), []).append(sentence(problem))
        return found
    return {}


def sentence(problem: Problem) -> str:
    """A problem in words for the field beside which it stands."""
    got = "" if problem.got in ("nothing", "none", "") else f" It says {problem.got}."
    return f"{problem.must[:1].upper()}{problem.must[1:]}.{got} {problem.remedy}"


def lost_fields(body: Mapping[str, str]) -> frozenset[str]:
    """Fields of measures that cannot be taken because the part is lost.

    Parameters
    ----------
    body : mapping of str to str
        A set of measures as typed.
    """
    there = [limb for limb in LIMBS if body.get(limb) in LEVEL_WORDS]
    lost = lost_measures(tuple(_amputation(limb, body[limb]) for limb in there))
    return frozenset(f"{name}_{side}" for name, side in lost)


def _amputation(limb: str, level: str) -> Amputation:
    side = "left" if limb.startswith("left") else "right"
    return Amputation(side, cast(AmputationLevel, level))  # type: ignore[arg-type]


def understand(text: str, field_at: FieldAt, sex: str, units: Units) -> Understood:
    """Complete and check one set of measures; what cannot be read is left out and said.

    Parameters
    ----------
    text : str
        Of the client file, targets and wishes left out.
    field_at : callable
    sex : str
        Empty when it is not chosen yet.
    units : {"mm", "in"}
        For estimates.
    """
    beside: dict[str, list[Beside]] = {}
    sex = sex if sex in get_args(Sex) else ""
    client = _readable(text, field_at, beside)
    client = client or Client(reference="X-1", sex=cast(Sex, sex or "female"), measures=())
    names = frozenset(measure.name for measure in client.measures)
    drawn = _with_stand_ins(client)
    try:
        stand_in = complete(drawn)
        body = build_body(drawn, stand_in)
    except InputError as error:
        _say_all(beside, error)
        drawn = _with_stand_ins(replace(client, measures=()))
        stand_in = complete(drawn)
        body = build_body(drawn, stand_in)
    enough = bool(sex) and BODY_MASS in names and bool(names & {STATURE, "sitting_height"})
    if not enough:
        return Understood(beside, None, stand_in, body, names)
    for remark in review(client).remarks:
        beside.setdefault(remark.name, []).append(Beside("caution", remark.text))
    _say_estimates(beside, stand_in, units)
    bases = tuple(dict.fromkeys(m.basis for m in stand_in if m.estimated))
    return Understood(beside, stand_in, stand_in, body, names, bases)


def _readable(text: str, field_at: FieldAt, beside: dict[str, list[Beside]]) -> Client | None:
    """Read a text without the lines of the fields that cannot be read."""
    lines = text.split("\n")
    for _ in range(3):
        try:
            return read_client(FileText("client", "\n".join(lines)))
        except InputError as error:
            for problem in error.problems:
                name = field_at(problem.where)
                if _shown_at(name):
                    _say(beside, _shown_at(name), Beside("wrong", sentence(problem)))
                _blank(lines, name, problem)
    return None


def _blank(lines: list[str], name: str, problem: Problem) -> None:
    """Take the line of a problem out, and a measure that then has no value."""
    if not name:
        return
    at = int(problem.where.split(":")[1]) - 1
    depth = _depth(lines[at])
    lines[at] = "#"
    before = next((i for i in range(at - 1, -1, -1) if lines[i].strip() != "#"), 0)
    after = next((i for i in range(at + 1, len(lines)) if lines[i].strip() != "#"), at)
    inner_left = _depth(lines[after]) >= depth and lines[after].strip()
    alone = lines[before].rstrip().endswith(":") and _depth(lines[before]) < depth
    if alone and (not inner_left or lines[after].strip().startswith("tolerance:")):
        lines[before] = "#"
        if inner_left:
            lines[after] = "#"


def _depth(line: str) -> int:
    return len(line) - len(line.lstrip())


def _shown_at(name: str) -> str:
    for ending in ("_give", "_left", "_right"):
        if name.removesuffix(ending) in kinds():
            return name.removesuffix(ending)
    return name if name in (*kinds(), *LIMBS, "age", "leg_mass_factor") else ""


def _say(beside: dict[str, list[Beside]], name: str, said: Beside) -> None:
    there = beside.setdefault(name, [])
    if said not in there:
        there.append(said)


def _say_all(beside: dict[str, list[Beside]], error: InputError) -> None:
    for problem in error.problems:
        name = problem.where if problem.where in kinds() else ""
        _say(beside, name, Beside("caution", sentence(problem)))


def _with_stand_ins(client: Client) -> Client:
    """The client with a usual height and mass where none is measured, for the drawing."""
    names, more = {measure.name for measure in client.measures}, []
    if not names & {STATURE, "sitting_height"}:
        mean = summary_row(client.sex, _SURVEY[STATURE])[0]
        more.append(Measure(STATURE, "middle", Quantity(mean, "", "length"), 10.0))
    if BODY_MASS not in names:
        mass = Quantity(_STAND_IN[client.sex], "", "mass")
        more.append(Measure(BODY_MASS, "middle", mass, 1.0))
    return replace(client, measures=(*client.measures, *more))


def _say_estimates(beside: dict[str, list[Beside]], found: MeasureSet, units: Units) -> None:
    by_name: dict[str, list[Measure]] = {}
    for measure in found:
        if measure.estimated:
            by_name.setdefault(measure.name, []).append(measure)
    for name, group in by_name.items():
        alike = len({(m.value, m.basis) for m in group}) == 1
        for measure in group[:1] if alike else group:
            side = measure.side if measure.side != "middle" and not (alike and group[1:]) else ""
            words = f"{side} estimated {amount(measure, units)}".strip()
            if "taken as" in measure.basis:
                words = f"{words}, {measure.basis.partition(',')[0].partition(' (')[0]}"
            _say(beside, name, Beside("estimated", words))


def amount(measure: Measure, units: Units) -> str:
    """A measure with its spread: ``573 ± 13 mm``.

    Parameters
    ----------
    measure : Measure
    units : {"mm", "in"}
    """
    if measure.quantity.dimension == "mass":
        return f"{measure.value:.1f} ± {measure.tolerance:.1f} kg"
    if units == "in":
        spread = inches_text(measure.tolerance).removesuffix(" in")
        return f"{inches_text(measure.value).removesuffix(' in')} ± {spread} in"
    return f"{measure.value:.0f} ± {measure.tolerance:.0f} mm"
