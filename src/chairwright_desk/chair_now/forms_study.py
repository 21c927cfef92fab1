"""Forms that ask for a study: what the chair is, what is wanted, over which time."""

from __future__ import annotations

from typing import Any

from django import forms
from django.forms.boundfield import BoundField

from chairwright_desk.bench.bridge import open_line
from chairwright_desk.bench.models import Setup
from chairwright_desk.bench.texts import line_of, lines_known
from chairwright_desk.chair_now.bridge.refit import parts_to_keep
from chairwright_desk.chair_now.models import MeasuredChair

SEARCH = "search"
SETUP, MEASURED = "setup", "measured"
DEFAULT_LINE = "everyday"
KEPT = "kept_"
MOST_KEPT = ("cushion", "belt", "back_support", "rear_wheel", "hand_rim", "arm_support", "caster",
             "push_handle", "anti_tip", "foot_plate")  # fmt: skip
"""Choices whose part goes from one chair to another the soonest; the others are folded away."""


class RefitForm(forms.Form):
    """From which chair, and with what it is fitted again."""

    chair = forms.ChoiceField(label="The chair as it is")
    line = forms.ChoiceField(
        label="Product line of a new chair",
        help_text="Only for a measured chair: of which line a new one would be bought.",
    )
    places = forms.BooleanField(
        label="It must manage the client's places too", required=False, initial=True
    )

    def __init__(
        self,
        *args: Any,
        team: str,
        setups: list[Setup],
        chairs: list[MeasuredChair],
        **options: Any,
    ) -> None:
        super().__init__(*args, **options)
        named = [(f"{SETUP}:{e.pk}", _named(e)) for e in setups]
        named += [(f"{MEASURED}:{e.pk}", f"{e.name}, measured {e.measured_on:%Y-%m-%d}")
                  for e in chairs]  # fmt: skip
        self.fields["chair"].choices = named  # type: ignore[attr-defined]
        lines = lines_known(team)
        self.fields["line"].choices = lines  # type: ignore[attr-defined]
        known, line = dict(lines), self["line"].value()
        self.of_line = line if line in known else DEFAULT_LINE
        self.line_words = known[self.of_line]
        for parts in parts_to_keep(open_line(line_of(self.of_line))):
            self.fields[f"{KEPT}{parts.choice}"] = forms.ChoiceField(
                label=parts.label, required=False, choices=[("", "not kept"), *parts.options]
            )

    @property
    def parts(self) -> list[BoundField]:
        """One list for each kind of part of the line that is chosen, the likely ones."""
        names = (f"{KEPT}{each}" for each in MOST_KEPT)
        return [self[name] for name in names if name in self.fields]

    @property
    def other_parts(self) -> list[BoundField]:
        """The same for all other parts."""
        likely = {field.name for field in self.parts}
        return [self[n] for n in self.fields if n.startswith(KEPT) and n not in likely]

    @property
    def parts_in_use(self) -> bool:
        """Whether some part is kept, or was refused."""
        return self.others_in_use or _in_use(self.parts)

    @property
    def others_in_use(self) -> bool:
        """Whether some part that is folded away is kept, or was refused."""
        return _in_use(self.other_parts)

    def clean(self) -> dict[str, Any]:
        """Parts go on a new chair only."""
        data = super().clean() or {}
        kept = {name: code for name, code in data.items() if name.startswith(KEPT) and code}
        data["kept"] = {name.removeprefix(KEPT): code for name, code in kept.items()}
        if str(data.get("chair", "")).startswith(SETUP):
            for name in kept:
                message = "This goes with a measured chair: choose one, or keep nothing here."
                self.add_error(name, message)
        return data


class YearsForm(forms.Form):
    """Over which time, and for which chair."""

    chair = forms.ChoiceField(label="For which chair")
    years = forms.FloatField(
        label="Over how many years", required=False, min_value=0.5, max_value=15.0,
        help_text="Empty: what is written among the client's measures, or 5.",
    )  # fmt: skip
    lasts = forms.FloatField(
        label="It shall last so many years", required=False, min_value=0.5, max_value=15.0,
        help_text="Only when a set-up is looked for: the best fit now of those that last so long. "
        "Empty: what lasts longest.",
    )  # fmt: skip
    mass_change = forms.FloatField(
        label="Body mass may change by [%]", required=False, min_value=0.5, max_value=50.0,
        help_text="Either way, where nothing is written of it. 10 is common practice, no source.",
    )  # fmt: skip
    delivered = forms.DateField(
        label="Day of delivery", required=False, help_text="Gives the reviews their days.",
        widget=forms.DateInput(attrs={"type": "date"}, format="%Y-%m-%d"),
    )  # fmt: skip
    places = forms.BooleanField(
        label="It must manage the client's places too", required=False, initial=True
    )

    def __init__(self, *args: Any, team: str, setups: list[Setup], **options: Any) -> None:
        super().__init__(*args, **options)
        looked = [(f"{SEARCH}:{name}", f"Look for the one that lasts: {words}")
                  for name, words in lines_known(team)]  # fmt: skip
        named = [(f"{SETUP}:{each.pk}", _named(each)) for each in setups]
        self.fields["chair"].choices = [*named, *looked]  # type: ignore[attr-defined]

    def clean(self) -> dict[str, Any]:
        """A set-up that is there already is taken as it is."""
        data = super().clean() or {}
        if data.get("lasts") and str(data.get("chair", "")).startswith(SETUP):
            self.add_error("lasts", "This goes with looking for a set-up. Leave it empty.")
        return data


def _in_use(fields: list[BoundField]) -> bool:
    return any(field.value() or field.errors for field in fields)


def _named(setup: Setup) -> str:
    return f"{setup.name}, the chair as it is now" if setup.present else setup.name
