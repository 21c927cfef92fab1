"""Mistakes in the tests and the facts of scheme files."""

from __future__ import annotations

from .seeded_schemes import TRIAL, W1, W2, X20, X30, Seed

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
