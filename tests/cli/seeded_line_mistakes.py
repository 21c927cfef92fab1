"""Mistakes that people make in line files, one at a time in a copy of the shipped line.

Each is what the text was, what it becomes, the place that a message must name, and the words
that must stand in it.
"""

from __future__ import annotations

from dataclasses import dataclass
from importlib.resources import files

EVERYDAY = (files("chairwright.line") / "lines" / "everyday.yaml").read_text("utf-8")


@dataclass(frozen=True)
class Seed:
    """One mistake.

    Parameters
    ----------
    name : str
    old, new : str
        The text, which stands once, and what somebody writes instead.
    place : str
        Text after the change on the line that the message must name; it stands once.
    words : tuple of str
        What the message must say, the remedy included.
    code : int
        Exit code: 2 for a mistake, 0 where it can only be remarked.
    """

    name: str
    old: str
    new: str
    place: str
    words: tuple[str, ...]
    code: int = 2

    @property
    def text(self) -> str:
        """The whole file with the mistake in it."""
        if EVERYDAY.count(self.old) != 1:
            raise ValueError(self.old)
        return EVERYDAY.replace(self.old, self.new)

    @property
    def line(self) -> int:
        """Line of the file that the message must name."""
        if self.text.count(self.place) != 1:
            raise ValueError(self.place)
        return self.text[: self.text.index(self.place)].count("\n") + 1


def _rule(when: str, need: str, because: str) -> str:
    return f"rules:\n  - when: {when}\n    need: {need}\n    because: {because}\n"


RULES = "rules:\n"
ROWS = "1: -56, 2: -76, 3: -96, 4: -116, 5: -136, 6: -156, 7: -176, 8: -196, 9: -216}"
COLUMNS = "columns_mm: {A: -45, B: -20, C: 5, D: 30, E: 55, F: 80}\n    rows_mm: {"
REAR_SET = f"columns_mm: {{U: -95, V: -70}}\n    rows_mm: {{{ROWS}"
EVERY_HOLE = ", ".join(f"{column}{row}" for column in "UV" for row in range(1, 10))
STEPS = "0, -2, -4, -6, -8, -10, 2"
CUSTOM_DEPTH = "from_mm: 300, to_mm: 520, step_mm: 10, mass_kg: [0.30"

FORM = (
    Seed("a list item without its dash", "  - {code: B8,", "    {code: B8,",
         "code: B8", ("valid YAML", "indentation")),
    Seed("a tab", "  - {code: K0,", "\t- {code: K0,", "code: K0,", ("spaces, no tabs",)),
    Seed("a key twice", "{code: B4, angle_deg: 4}", "{code: B4, angle_deg: 4, angle_deg: 8}",
         "code: B4", ("a key must stand once", "Keep one of the two")),
    Seed("a colon forgotten", "width_mm: 32, mass_kg: 1.0", "width_mm 32, mass_kg: 1.0",
         "code: C5", ("'width_mm 32'", "Did you mean width_mm?")),
    Seed("a key in other spelling", "tyre_width_mm: 28", "tire_width_mm: 28",
         "code: W20", ("tire_width_mm", "Did you mean tyre_width_mm?")),
    Seed("a key forgotten", "trail_mm: 38, ", "", "code: FS", ("trail_mm must be given", "Add")),
    Seed("a number with its unit", "{code: B12, angle_deg: 12}", "{code: B12, angle_deg: 12 deg}",
         "code: B12", ("12 deg", "must be a valid number")),
    Seed("a mass below nothing", "mass_kg: 3.7, price: 35", "mass_kg: -3.7, price: 35",
         "code: W24P", ("-3.7", "greater than or equal to 0")),
    Seed("a mass in grams", "mass_kg: 0.45", "mass_kg: 450",
         "code: FS", ("450", "less than or equal to 40")),
    Seed("steps of nothing", CUSTOM_DEPTH, CUSTOM_DEPTH.replace("10", "0"),
         "seat_depth: {", ("step_mm", "greater than or equal to 1")),
    Seed("a range upside down", CUSTOM_DEPTH,
         CUSTOM_DEPTH.replace("300, to_mm: 520", "520, to_mm: 300"),
         "seat_depth: {", ("from_mm must not exceed to_mm", "520 and 300", "Swap")),
    Seed("a code twice", "{code: Q75,", "{code: Q50,",
         "75 mm contoured", ("cushion code Q50 a second time", "another code")),
)  # fmt: skip

PARTS = (
    Seed("a rule with a code that is not there", "when: {fork: [FM]}", "when: {fork: [FN]}",
         "[FN]", ("a rule must name codes of fork", "Known here: FS, FM, FL")),
    Seed("a rule about nothing known", "when: {rear_wheel: [W20]}", "when: {rear_whel: [W20]}",
         "rear_whel:", ("a rule must speak about a choice", "Did you mean rear_wheel?")),
    Seed("a rule's range that holds nothing", "{from: 521}", "{from: 21, to: 24}",
         "from: 21", ("must hold at least one option", "mm or degrees")),
    Seed("a fork too short for every caster", "holes_mm: {1: 64, 2: 78, 3: 92}",
         "holes_mm: {1: 34, 2: 48, 3: 52}",
         "code: FS", ("fork FS must be possible", "stay 10 mm clear of its crown")),
    Seed("a frame for depths that are not made", "depth_from_mm: 360, depth_to_mm: 440",
         "depth_from_mm: 361, depth_to_mm: 369",
         "code: SFS", ("side_frame SFS must be possible", "range of seat depths")),
    Seed("every hole closed", REAR_SET, f"{REAR_SET}\n    closed: [{EVERY_HOLE}]",
         "closed:", ("one hole of a plate must be open", "take the plate out")),
    Seed("a closed hole that is not there", REAR_SET, f"{REAR_SET}\n    closed: [U10]",
         "closed:", ("'U10'", "Did you mean U1?")),
    Seed("a rule that never fires", RULES,
         _rule("{caster: [C4], fork: [FL]}", "{camber: [K0]}", "it was so on the old line"),
         "when: {caster: [C4], fork: [FL]}", ("condition", "the long fork is made for", "line ")),
    Seed("rules that contradict", RULES,
         _rule("{rear_wheel: [W20], camber: [K3]}", "{side_frame: [SFR]}", "so it was"),
         "when: {rear_wheel: [W20], camber: [K3]}", ("contradiction", "camber block", "Correct")),
    Seed("a rule twice", RULES,
         _rule("{fork: [FM]}", "{caster: [C5, C6]}", "the fork is for these"),
         "- when: {fork: [FM]}\n    need: {caster: [C5, C6]}\n    because: the fork is",
         ("what holds anyway", "take it out"), 0),
    Seed("a rated load that nothing reaches", "price: 35, load_limit_kg: 230",
         "price: 35, load_limit_kg: 140",
         "code: SFR", ("rated for 220 kg", "W24P carries 140 kg", "Correct the limit")),
    Seed("a limit for one wheel of the pair", "price: 15, load_limit_kg: 150",
         "price: 15, load_limit_kg: 75",
         "code: C4", ("75 kg", "rated for 100 kg", "for the pair"), 0),
    Seed("nothing left to choose", "{code: FG, name: grey}\n  - {code: FB, name: blue}",
         "{code: FG, name: grey, on_request: true}",
         "code: FG", ("finish must have", "Take on_request out")),
)  # fmt: skip

SIZES = (
    Seed("inches instead of mm", "{code: S400, width_mm: 400", "{code: S400, width_mm: 16",
         "code: S400", ("200 and 900 mm", "got 16", "inches, write 406.4")),
    Seed("cm instead of mm", "{code: SFS, name: short side frame, caster_tube_x_mm: 365",
         "{code: SFS, name: short side frame, caster_tube_x_mm: 36.5",
         "code: SFS", ("36.5", "in cm, write 365")),
    Seed("a sign forgotten", "wheel_x_mm: -260", "wheel_x_mm: 260",
         "code: TL", ("260", "sign is wrong", "write -260")),
    Seed("rows swapped", COLUMNS + "1: -56, 2: -76, 3: -96, 4: -116",
         COLUMNS + "1: -56, 2: -76, 3: -116, 4: -96",
         "3: -116, 4: -96", ("rows_mm must fall", "-116 at 3, then -96 at 4", "Swap")),
    Seed("a row forgotten", COLUMNS + "1: -56, 2: -76, 3: -96, 4: -116, 5: -136",
         COLUMNS + "1: -56, 2: -76, 3: -96, 4: -116",
         "4: -116, 6: -156", ("steps of 20", "between -116 (4) and -156 (6)", "Add what was"), 0),
    Seed("digits swapped", "{code: S440, width_mm: 440", "{code: S440, width_mm: 404",
         "code: S440", ("the size that its code names", "404", "about 440"), 0),
    Seed("a size forgotten", "  - {code: D380, depth_mm: 380, mass_kg: 0.38}\n", "",
         "code: D400", ("nothing between 360", "and 400"), 0),
    Seed("a rim larger than its wheel", "hand_rim_diameter_mm: 490", "hand_rim_diameter_mm: 590",
         "code: W22", ("hand rim must be smaller", "590", "551")),
    Seed("a rim inside the tyre", "standoff_mm: 40", "standoff_mm: 14",
         "code: RN", ("stand out beyond the tyre", "W24P", "18.5 mm")),
    Seed("a wheel in the seat", "hub_outset_mm: 38", "hub_outset_mm: 12",
         "code: AW", ("stay clear of the seat's edge", "hub_outset_mm")),
    Seed("stems that never stand square", STEPS, "15, 20, 25",
         "stem_settings_deg", ("square to the floor", "off the vertical", "negative")),
    Seed("footplates that casters always strike", "angle_deg: 80, swings", "angle_deg: 110, swings",
         "code: H80", ("H80 and caster C8", "swing clear", "keep the two apart"), 0),
    Seed("no mass at all", "outer_outset_mm: 36, mass_kg: 1.4", "outer_outset_mm: 36, mass_kg: 0",
         "code: AX", ("between 0.05 and 8 kg",), 0),
    Seed("a letter for a digit", "{code: W22,", "{code: W2O,",
         "code: W20", ("W20 beside W2O", "mistaken", "letters O"), 0),
    Seed("a decimal point forgotten", "price: 45\n", "price: 4500\n",
         "price: 4500", ("XA", "less than the whole chair", "4500", "decimal point"), 0),
    Seed("a range that its steps do not meet", "from_mm: 200, to_mm: 275, step_mm: 25",
         "from_mm: 200, to_mm: 280, step_mm: 25",
         "code: AW", ("steps of 25 mm from 200", "280", "last size is 275"), 0),
    Seed("two holes in one place", "3: -230, 4: -260}", "3: -230, 4: -230}",
         "rows_mm: {1: -170", ("must fall", "-230 at 3, then -230 at 4")),
)  # fmt: skip

SEEDS = (*FORM, *PARTS, *SIZES)
