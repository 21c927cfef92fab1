"""Published sizing rules: from a body measure to the range of a chair dimension.

The rules stand in ``tables/sizing/sizing_rules.csv``, as printed; they disagree, so a
dimension gets the range of each and nobody's average.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from typing import Literal, cast

from chairwright.person.client import Client, Measure
from chairwright.person.estimates import MeasureSet
from chairwright.tables.load import load_table
from chairwright.targets.audience import audience, base_measure
from chairwright.units import MM_PER_INCH

Use = Literal["range", "bound", "example", "too_wide", "alarm", "words"]
ENVELOPE = "envelope"
_FACTOR = {"mm": 1.0, "cm": 10.0, "in": MM_PER_INCH, "deg": 1.0}


@dataclass(frozen=True)
class RuleSet:
    """Rules of one origin that a clinician can choose to prefer.

    Parameters
    ----------
    key : str
        As written in a client file.
    label : str
        What a therapist reads.
    source : str
        Short citation.
    """

    key: str
    label: str
    source: str


_SETS = (
    RuleSet(ENVELOPE, "All published rules; WHO preferred where it speaks", "all rules"),
    RuleSet("who", "World Health Organization training package", "WHO WSTP"),
    RuleSet("nsw", "New South Wales spinal seating", "NSW"),
    RuleSet("werner", "Village chairs", "Werner, ch. 64"),
    RuleSet("exam_japan", "Japanese licence examination", "Exam"),
    RuleSet("prosthetics_school", "Japanese prosthetics and orthotics school", "P&O"),
    RuleSet("pmr", "Physical medicine pocket reference", "PM&R"),
    RuleSet("us_lists", "United States clinical lists", "US lists"),
    RuleSet("sci_page", "Spinal cord injury measurement guide", "SCI information page"),
    RuleSet("training_guide", "Wheelchair training guide", "Training guide 1998"),
    RuleSet("propulsion", "Propulsion studies", "Heinrichs 2021; PVA Consortium 2005"),
)
RULE_SETS: dict[str, RuleSet] = {rule_set.key: rule_set for rule_set in _SETS}


@dataclass(frozen=True)
class Rule:
    """One published rule: dimension = factor x base measure + add.

    Parameters
    ----------
    key : str
    dimension : str
        A figure's name, or another dimension of the support surfaces.
    rule_set : str
        Key of `RULE_SETS`, or ``other``.
    base : str
        Catalogue name of a body measure, ``none``, or ``chair_seat_width``.
    factor : float
    add_low, add_high : float or None [mm or deg]
        None leaves that end open.
    applies_to : str
    use : str
        ``range``, ``bound``, ``example``, ``too_wide``, ``alarm`` or ``words``.
    source, place, tag, certainty, note : str
    """

    key: str
    dimension: str
    rule_set: str
    base: str
    factor: float
    add_low: float | None
    add_high: float | None
    applies_to: str
    use: Use
    source: str
    place: str
    tag: str
    certainty: str
    note: str

    @property
    def citation(self) -> str:
        """Source with its certainty in words."""
        if self.source == self.certainty:
            return self.source
        return f"{self.source} ({self.certainty})"


@dataclass(frozen=True)
class RuleResult:
    """One rule on one client's measures.

    Parameters
    ----------
    rule : Rule
    low, high : float or None [mm or deg]
    measure : Measure or None
        What the rule started from; None for a rule without a base.
    refused : str
        Why the rule does not count; empty when it does.
    """

    rule: Rule
    low: float | None
    high: float | None
    measure: Measure | None
    refused: str

    @property
    def source(self) -> str:
        """Source with its certainty in words."""
        return self.rule.citation

    @property
    def tag(self) -> str:
        """Certainty tag of the reference."""
        return self.rule.tag

    @property
    def tolerance(self) -> float:
        """Spread that the ends inherit from the tape, in the dimension's unit."""
        return 0.0 if self.measure is None else abs(self.rule.factor) * self.measure.tolerance

    @property
    def counts(self) -> bool:
        """Whether the rule is one of those that span the envelope."""
        return self.rule.use == "range" and not self.refused


@cache
def all_rules() -> Mapping[str, Rule]:
    """Return every rule by its key, in the order of the table."""
    rows = load_table("sizing", "sizing_rules")
    return {row["rule"]: _rule(row) for row in rows}


def apply_rule(rule: Rule, base_value: float = 0.0) -> tuple[float | None, float | None]:
    """Range of a dimension for one value of the base measure.

    Parameters
    ----------
    rule : Rule
    base_value : float [mm]
        Ignored when the rule has no base.

    Returns
    -------
    tuple of float or None [mm or deg]
        Low and high end; None where the rule leaves the end open.

    Examples
    --------
    >>> apply_rule(all_rules()["who_depth"], 470.0)
    (420.0, 440.0)
    """
    start = 0.0 if rule.base == "none" else rule.factor * base_value
    ends = (None if add is None else round(start + add, 6) for add in (rule.add_low, rule.add_high))
    low, high = ends
    return low, high


def rules_for(dimension: str, client: Client, measures: MeasureSet) -> list[RuleResult]:
    """Every rule for one dimension that speaks to this client, evaluated.

    Parameters
    ----------
    dimension : str
        For example ``seat_width_mm``.
    client : Client
    measures : MeasureSet

    Returns
    -------
    list of RuleResult
        In the table's order. Rules for children and rules that their own source calls
        too wide are in it, with the reason why they do not count. Rules without a number,
        or whose body part is lost, are not.
    """
    who = audience(client, measures) | {"child"}
    rules = [rule for rule in all_rules().values() if rule.dimension == dimension]
    spoken = [rule for rule in rules if rule.applies_to in who and rule.use != "words"]
    results = (_result(rule, client, measures) for rule in spoken)
    return [result for result in results if result is not None]


def _result(rule: Rule, client: Client, measures: MeasureSet) -> RuleResult | None:
    if rule.base == "none":
        return RuleResult(rule, *apply_rule(rule), None, _refusal(rule))
    if rule.base == "chair_seat_width":
        return None
    measure = base_measure(rule.base, rule.applies_to, client, measures)
    if measure is None:
        return None
    return RuleResult(rule, *apply_rule(rule, measure.value), measure, _refusal(rule))


def _refusal(rule: Rule) -> str:
    if rule.applies_to == "child":
        return "a rule for children"
    return "too wide by its own source" if rule.use == "too_wide" else ""


def _rule(row: Mapping[str, str]) -> Rule:
    scale = _FACTOR[row["unit"]]
    return Rule(
        key=row["rule"],
        dimension=row["dimension"],
        rule_set=row["rule_set"],
        base=row["base"],
        factor=float(row["factor"]),
        add_low=_number(row["add_low"], scale),
        add_high=_number(row["add_high"], scale),
        applies_to=row["applies_to"],
        use=cast("Use", row["use"]),
        source=row["source"],
        place=row["place"],
        tag=row["tag"],
        certainty=row["certainty"],
        note=row["note"],
    )


def _number(text: str, scale: float) -> float | None:
    return round(float(text) * scale, 6) if text else None
