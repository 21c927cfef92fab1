"""Forms that ask for a study: what the chair is, what is wanted, over which time."""

from __future__ import annotations

from typing import Any

from django import forms

from chairwright_desk.bench.models import Setup
from chairwright_desk.bench.texts import lines_known
from chairwright_desk.chair_now.bridge.refit import kept_parts
from chairwright_desk.chair_now.models import MeasuredChair

SEARCH = "search"
SETUP, MEASURED = "setup", "measured"


class RefitForm(forms.Form):
    """From which chair, and with what it is fitted again."""

    chair = forms.ChoiceField(label="The chair as it is")
    line = forms.ChoiceField(
        label="Product line of a new chair",
        help_text="Only for a measured chair: of which line a new one would be bought.",
    )
    kept = forms.CharField(
        label="Parts that go on the new chair", required=False, max_length=200,
        help_text="Only for a measured chair. Part and code of that line, such as cushion=Q75.",
    )  # fmt: skip
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
        self.fields["line"].choices = lines_known(team)  # type: ignore[attr-defined]

    def clean_kept(self) -> dict[str, str]:
        """Parts by choice and code."""
        try:
            return kept_parts(self.cleaned_data["kept"])
        except ValueError:
            message = "Each must be a part and its code, such as cushion=Q75."
            raise forms.ValidationError(message) from None

    def clean(self) -> dict[str, Any]:
        """Parts go on a new chair only."""
        data = super().clean() or {}
        if data.get("kept") and str(data.get("chair", "")).startswith(SETUP):
            self.add_error(
                "kept", "This goes with a measured chair. Leave it empty, or choose one."
            )
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


def _named(setup: Setup) -> str:
    return f"{setup.name}, the chair as it is now" if setup.present else setup.name
