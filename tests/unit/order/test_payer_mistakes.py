"""Mistakes that people make in scheme files: each is caught with file, line and remedy."""

from __future__ import annotations

from dataclasses import dataclass
from importlib.resources import files
from pathlib import Path

import pytest

from chairwright.errors import InputError
from chairwright.order.payer_load import SHIPPED, load_scheme

DEMO = (files("chairwright.order") / "schemes" / "demo.yaml").read_text("utf-8")


@dataclass(frozen=True)
class Seed:
    """One mistake: what the text was, what it becomes, where, and words of the message.

    ``place`` is text after the change that stands once, on the line that must be named.
    """

    name: str
    old: str
    new: str
    place: str
    words: tuple[str, ...]

    @property
    def text(self) -> str:
        assert DEMO.count(self.old) == 1, self.old
        return DEMO.replace(self.old, self.new)

    @property
    def line(self) -> int:
        assert self.text.count(self.place) == 1, self.place
        return self.text[: self.text.index(self.place)].count("\n") + 1


W1 = "when: {fact: chair_mass, below: 12}"
W2 = "when: {fact: chair_mass, at_least: 12, at_most: 17}"
X20 = "when: {fact: cushion, is: shaped}"
X30 = "when: {fact: extras, has: table}"
TRIAL = '{fact: trial, is: "yes"}'
HEAD = "format: chairwright payer scheme 1"

FORM = (
    Seed(
        "another kind of file",
        HEAD,
        "format: chairwright line 2",
        "chairwright line 2",
        ("format", "chairwright payer scheme 1"),
    ),
    Seed("a tab", "  load: {kind: mass", "\tload: {kind: mass", "\tload", ("spaces, no tabs",)),
    Seed("a bracket left open", X20, "when: {fact: cushion, is: shaped", "X20", ("Close every",)),
    Seed(
        "a key in other spelling",
        "  client_mass: {kind: mass, unit: kg",
        "  client_mass: {kind: mass, units: kg",
        "client_mass: {kind",
        ("units", "Did you mean unit?"),
    ),
    Seed(
        "a key forgotten",
        "title: shaped cushion, line",
        "line",
        "code: X20",
        ("title must be given", "Add title"),
    ),
    Seed(
        "a fact twice",
        "  pushes: {kind",
        "  load: {kind: number, label: a, ask: b}\n  pushes: {kind",
        "label: a, ask: b",
        ("a key must stand once",),
    ),
    Seed(
        "a date that is none",
        'edition: "1, invented"\ndated: "2026-01-01"',
        'edition: "1, invented"\ndated: "2026-13-01"',
        "2026-13-01",
        ("dated",),
    ),
    Seed(
        "a certainty that is not one",
        'ladders", certainty: invented',
        'ladders", certainty: sure',
        "certainty: sure",
        ("certainty", "Known here: read"),
    ),
    Seed(
        "a limit with its unit",
        W1,
        "when: {fact: chair_mass, below: 12 kg}",
        "below: 12 kg",
        ("12 kg", "decimal"),
    ),
)

NAMES = (
    Seed(
        "an unknown fact",
        W1,
        "when: {fact: chair_mas, below: 12}",
        "chair_mas,",
        ("a fact that facts lists", "Did you mean chair_mass?"),
    ),
    Seed(
        "an unknown source",
        "title: middling, source: rules",
        "title: middling, source: rule",
        "source: rule,",
        ("a source must be one of sources", "Did you mean rules?"),
    ),
    Seed(
        "an unknown paper",
        "documents: [trial_record]",
        "documents: [trial_note]",
        "[trial_note]",
        ("a paper must be one of documents", "trial_record"),
    ),
    Seed(
        "a fact that nothing asks for",
        "trial: {kind: yes or no",
        "tried: {kind: yes or no",
        "tried: {kind",
        ("each of facts must be used", "nothing names tried"),
    ),
    Seed(
        "a class twice",
        "{code: W3, title: heavy",
        "{code: W2, title: heavy",
        "title: heavy",
        ("W2 a second time", "Join the two"),
    ),
    Seed(
        "a code for a line that is not there",
        "line: seat_width, source",
        "line: seat_wdth, source",
        "line: seat_wdth",
        ("a line must be a choice", "Did you mean seat_width?"),
    ),
    Seed(
        "a choice that is not there",
        "hand_rim, seat_width, arm_support",
        "hand_rim, seat, arm_support",
        "hand_rim, seat,",
        ("included must name choices", "'seat'"),
    ),
    Seed(
        "a class that goes before nothing known",
        "goes_before: [A1]",
        "goes_before: [A9]",
        "[A9]",
        ("goes_before must name classes", "'A9'"),
    ),
    Seed(
        "classes in a circle",
        "source: rules, otherwise: true",
        "source: rules, goes_before: [A0], otherwise: true",
        "goes_before: [A0]",
        ("no class may go before itself", "circle"),
    ),
    Seed(
        "a class without a test",
        W2,
        "note: in the middle",
        "code: W2",
        ("W2 must have either when or otherwise", "neither"),
    ),
    Seed(
        "a group named as a fact",
        "- name: load_class",
        "- name: load",
        "- name: load\n",
        ("must not have the name of a fact", "Rename"),
    ),
    Seed(
        "a part that is no word of the fact",
        "Q75: shaped",
        "Q75: shapely",
        "Q75: shapely",
        ("must be one of the fact's words", "Did you mean shaped?"),
    ),
    Seed(
        "parts of a choice that no fact reads",
        "    cushion: {CF2: plain",
        "    belt: {CF2: plain",
        "belt: {CF2",
        ("a choice that a fact is read from", "'belt'"),
    ),
)

TESTS = (
    Seed(
        "limits upside down",
        W2,
        "when: {fact: chair_mass, at_least: 17, at_most: 12}",
        "at_least: 17",
        ("leave something between", "17 and 12"),
    ),
    Seed(
        "limits that leave nothing",
        W2,
        "when: {fact: chair_mass, above: 12, at_most: 12}",
        "above: 12",
        ("leave something between", "12 and 12"),
    ),
    Seed(
        "a limit both in and out",
        W2,
        "when: {fact: chair_mass, at_least: 12, above: 12}",
        "above: 12}",
        ("above or at_least, not both", "Keep the one"),
    ),
    Seed(
        "a test of nothing",
        W2,
        "when: {fact: chair_mass}",
        "code: W2",
        ("must say what is wanted", "Add above"),
    ),
    Seed(
        "a word asked of a number",
        W2,
        'when: {fact: chair_mass, is: "yes"}',
        "code: W2",
        ("must use above or at_least", "is"),
    ),
    Seed(
        "a limit asked of a word",
        X20,
        "when: {fact: cushion, above: 3}",
        "code: X20",
        ("must use is or one_of", "above"),
    ),
    Seed(
        "a word that the fact does not have",
        X20,
        "when: {fact: cushion, is: gel}",
        "is: gel",
        ("one of the fact's words", "'gel'"),
    ),
    Seed("true instead of yes", TRIAL, "{fact: trial, is: true}", "is: true", ("valid string",)),
    Seed(
        "two tests in one",
        X20,
        'when: {fact: cushion, is: shaped, all: [{fact: trial, is: "no"}]}',
        "code: X20",
        ("exactly one of all, any", "all and fact"),
    ),
    Seed(
        "no test at all",
        X20,
        "when: {because: no reason}",
        "code: X20",
        ("exactly one of all, any", "none of them"),
    ),
    Seed("an empty list of tests", X20, "when: {all: []}", "code: X20", ("at least 1 item",)),
    Seed(
        "one reading only",
        X20,
        "when: {readings: [{name: a, test: {fact: cushion, is: shaped}}]}",
        "name: a,",
        ("at least 2 items",),
    ),
    Seed(
        "more digits than the fact has",
        W1,
        "when: {fact: chair_mass, below: 12.05}",
        "12.05",
        ("as many digits as the fact (1)", "raise digits"),
    ),
    Seed(
        "a class that asks for a class",
        W1,
        "when: {class: [W2]}",
        "class: [W2]",
        ("must not ask for a class", "tests of the chair"),
    ),
    Seed(
        "an unknown class",
        X30,
        "when: {class: [W7]}",
        "class: [W7]",
        ("a class of this scheme", "Known here: W1"),
    ),
    Seed(
        "a test without a source",
        "covered:\n  source: rules\n  all:",
        "covered:\n  all:",
        "because: first",
        ("must have a source", "Add source"),
    ),
)

FACTS = (
    Seed(
        "a mass in inches",
        "client_mass: {kind: mass, unit: kg",
        "client_mass: {kind: mass, unit: in",
        "unit: in,",
        ("the unit of a mass must be one of kg, lb", "'in'"),
    ),
    Seed(
        "a number without a unit",
        "load: {kind: mass, unit: kg, digits: 0",
        "load: {kind: mass, digits: 0",
        "load: {kind: mass,",
        ("must have a unit", "Add unit"),
    ),
    Seed(
        "a word without words",
        "    words: {plain: plain foam, shaped: shaped foam, air: air cells}\n",
        "",
        "  cushion:\n    kind: word",
        ("must have words", "List each word"),
    ),
    Seed(
        "words for a number",
        "unit: h a day, digits: 1,",
        "unit: h a day, digits: 1, words: {few: few},",
        "words: {few",
        ("has no words", "Take it out"),
    ),
    Seed(
        "a figure that is not there",
        "seat_width: {kind: length, unit: mm, label: seat width, ask: "
        "How wide is the seat?, from: {size: seat_width}}",
        "seat_width: {kind: length, unit: mm, label: a, ask: b, from: {figure: seat_widht_mm}}",
        "seat_widht_mm",
        ("a figure that there is", "Did you mean seat_width_mm?"),
    ),
    Seed(
        "a figure in another unit",
        "from: {size: seat_width}",
        "from: {figure: seat_angle_deg}",
        "seat_angle_deg",
        ("a figure in mm", "seat_angle_deg in deg"),
    ),
    Seed(
        "a choice without a size",
        "from: {size: seat_width}",
        "from: {size: belt}",
        "size: belt",
        ("a choice that has a size", "'belt'"),
    ),
    Seed(
        "two origins",
        "from: {part: cushion}",
        "from: {part: cushion, positions: fork}",
        "part: cushion, pos",
        ("exactly one key", "part, positions"),
    ),
    Seed(
        "a length read from a mass",
        "from: {known: rated load}",
        "from: {known: folds}",
        "load: {kind: mass",
        ("must be of kind yes or no",),
    ),
    Seed(
        "extras under another name",
        "from: {known: extras}",
        "from: {part: belt}",
        "extras: {kind: words",
        ("must be of kind word",),
    ),
    Seed(
        "an answer that is taken and is none",
        'unless_told: "no"',
        'unless_told: "never"',
        "never",
        ("must be one of yes, no", "'never'"),
    ),
)

SEEDS = (*FORM, *NAMES, *TESTS, *FACTS)


@pytest.mark.parametrize("seed", SEEDS, ids=lambda seed: seed.name.replace(" ", "-"))
def test_a_mistake_is_named_by_file_line_and_remedy(seed: Seed, tmp_path: Path) -> None:
    path = tmp_path / "scheme.yaml"
    path.write_text(seed.text, encoding="utf-8")
    with pytest.raises(InputError) as caught:
        load_scheme(str(path))
    told = [str(problem) for problem in caught.value.problems]
    mine = [line for line in told if line.startswith(f"{path}:{seed.line}:")]
    assert any(all(words in line for words in seed.words) for line in mine), told
    assert all(problem.remedy for problem in caught.value.problems)


def test_there_are_more_than_twenty_of_them() -> None:
    assert len({seed.name for seed in SEEDS}) == len(SEEDS) > 20


def test_every_mistake_of_a_file_is_told_at_once(tmp_path: Path) -> None:
    path = tmp_path / "scheme.yaml"
    text = DEMO
    for seed in (NAMES[0], TESTS[1], FACTS[10]):
        text = text.replace(seed.old, seed.new)
    path.write_text(text, encoding="utf-8")
    with pytest.raises(InputError) as caught:
        load_scheme(str(path))
    told = str(caught.value)
    assert "chair_mass?" in told
    assert "12 and 12" in told
    assert "'never'" in told
    lines = [int(str(problem).split(":")[1]) for problem in caught.value.problems]
    assert lines == sorted(lines)


@pytest.mark.parametrize("name", SHIPPED)
def test_the_shipped_schemes_have_none(name: str, tmp_path: Path) -> None:
    text = (files("chairwright.order") / "schemes" / f"{name}.yaml").read_text("utf-8")
    path = tmp_path / "copy.yaml"
    path.write_text(text, encoding="utf-8")
    assert load_scheme(str(path)).name == load_scheme(name).name == name


@pytest.mark.parametrize(
    ("name", "words"), [("us-hcpc", "Did you mean us-hcpcs?"), ("medicare", "us-hcpcs, demo")]
)
def test_an_unknown_scheme_is_named(name: str, words: str) -> None:
    with pytest.raises(InputError, match="the scheme must be a shipped one") as caught:
        load_scheme(name)
    assert words in str(caught.value)


def test_a_scheme_file_that_is_not_there(tmp_path: Path) -> None:
    with pytest.raises(InputError, match="the file must exist"):
        load_scheme(str(tmp_path / "none.yaml"))
