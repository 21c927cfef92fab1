"""Which options are laid beside each other: rows and columns of holes, settings and parts."""

from __future__ import annotations

import pytest

from chairwright.errors import InputError
from chairwright.fitting.runs import known_choice, named_run, runs_of
from chairwright.line.model import Choice, Option


def plate() -> Choice:
    """Two columns, three rows, one hole closed; listed from the top."""
    holes = {"A1": (0, -50), "B1": (25, -50), "A2": (0, -75), "B2": (25, -75), "A3": (0, -100)}
    options = tuple(
        Option(code, "", {"x_mm": float(x), "z_mm": float(z)}) for code, (x, z) in holes.items()
    )
    return Choice("axle_hole", "Axle hole", options)


def forks() -> Choice:
    """Two forks with two and three holes."""
    drops = {"FM-1": 90, "FM-2": 104, "FL-1": 116, "FL-2": 134, "FL-3": 152}
    options = tuple(
        Option(code, "", {"drop_mm": float(d)}, part=code[:2]) for code, d in drops.items()
    )
    return Choice("fork", "Fork", options)


def cushions() -> Choice:
    """Three cushions, not in the order of their thickness."""
    fronts = {"Q50": 32, "Q100": 70, "Q30": 16}
    options = tuple(Option(code, "", {"front_mm": float(f)}) for code, f in fronts.items())
    return Choice("cushion", "Cushion", options)


def codes(choice: Choice, present: str, wanted: str | None = None) -> dict[str, list[str]]:
    runs = runs_of(choice, choice.codes[present], wanted)
    return {run.name: [choice.options[at].code for at in run.places] for run in runs}


def test_holes_are_swept_along_their_row_and_their_column() -> None:
    assert codes(plate(), "A2") == {"fore-aft": ["A2", "B2"], "up-down": ["A3", "A2", "A1"]}
    assert codes(plate(), "B2") == {"fore-aft": ["A2", "B2"], "up-down": ["B2", "B1"]}


def test_one_direction_can_be_asked_for() -> None:
    assert codes(plate(), "A3", "fore-aft") == {"fore-aft": ["A3"]}
    assert codes(plate(), "A3", "up-down") == {"up-down": ["A3", "A2", "A1"]}


def test_every_hole_can_be_asked_for() -> None:
    (run,) = runs_of(plate(), 0, "every")
    assert len(run.places) == 5


def test_a_row_of_one_hole_is_left_out() -> None:
    assert codes(plate(), "A3") == {"up-down": ["A3", "A2", "A1"]}


def test_parts_with_settings_are_swept_within_the_part_and_across_the_parts() -> None:
    assert codes(forks(), "FL-1") == {
        "settings": ["FL-1", "FL-2", "FL-3"],
        "parts": ["FM-2", "FL-1"],  # 104 lies nearer to 116 than 90 does
    }
    assert codes(forks(), "FM-1")["parts"] == ["FM-1", "FL-1"]


def test_plain_options_are_laid_out_in_the_order_of_what_they_are_about() -> None:
    assert codes(cushions(), "Q50") == {"every": ["Q30", "Q50", "Q100"]}


def test_named_options_come_with_the_present_one() -> None:
    choice = forks()
    run = named_run(choice, choice.codes["FM-1"], ["FL"])
    assert [choice.options[at].code for at in run.places] == ["FM-1", "FL-1", "FL-2", "FL-3"]


@pytest.mark.parametrize(
    ("typed", "parts"),
    [(["FL-4"], ("'FL-4'", "Did you mean FL-3?")), ([], ("''", "Known here: FM-1, FM-2"))],
)
def test_an_unknown_option_is_told_with_a_near_one(
    typed: list[str], parts: tuple[str, str]
) -> None:
    with pytest.raises(InputError) as refused:
        named_run(forks(), 0, typed)
    assert [part for part in parts if part not in str(refused.value)] == []


def test_a_direction_of_options_that_have_none_is_refused() -> None:
    with pytest.raises(InputError, match="cushion can be swept as every; got fore-aft"):
        runs_of(cushions(), 0, "fore-aft")
    with pytest.raises(InputError, match="fork can be swept as settings, parts, every; got up-d"):
        runs_of(forks(), 0, "up-down")


@pytest.mark.parametrize("typed", ["axle_hole", "axle-hole", " Axle Hole "])
def test_a_choice_is_known_however_it_is_typed(typed: str) -> None:
    assert known_choice(typed) == "axle_hole"


def test_an_unknown_choice_is_told_with_a_near_one() -> None:
    with pytest.raises(InputError, match=r"got 'axel_hole'\. Did you mean axle_hole\?"):
        known_choice("axel_hole")
