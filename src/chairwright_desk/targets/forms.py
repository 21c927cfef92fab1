"""Forms of the targets: one target, and which rules count."""

from __future__ import annotations

from typing import Any

from django import forms

from chairwright_desk.measures.typed import ALONE
from chairwright_desk.targets.bridge import RULE_SET_WORDS, figure_choices

LONGEST = 40
KINDS = (
    ("wish", "a wish: a chair outside is less good"),
    ("must", "a must: a chair outside is refused"),
)
REASON = "Why this client needs it, in a few words. It is printed on the sheet; no name."


def _end(label: str) -> forms.CharField:
    return forms.CharField(
        label=label,
        required=False,
        max_length=LONGEST,
        widget=forms.TextInput(attrs={"autocomplete": "off"}),
    )


class TargetForm(forms.Form):
    """The range of one target and why."""

    at_least = _end("At least")
    at_most = _end("At most")
    alone = forms.ChoiceField(label="A length or mass alone means", choices=ALONE)
    weight = forms.CharField(
        label="Weight of the wish",
        required=False,
        max_length=20,
        help_text="1 is usual; 3 counts three times as much; 0 is shown and does not count.",
    )
    reason = forms.CharField(label="Reason", max_length=400, help_text=REASON)
    revision = forms.IntegerField(widget=forms.HiddenInput, required=False)

    def __init__(self, *args: Any, kind: str = "", **options: Any) -> None:
        super().__init__(*args, **options)
        if kind == "must":
            del self.fields["weight"]


class NewForm(TargetForm):
    """A target of one's own on any figure."""

    figure = forms.ChoiceField(label="What it is about")
    kind = forms.ChoiceField(
        label="Must or wish",
        choices=KINDS,
    )

    field_order = ("figure", "kind", "at_least", "at_most", "alone", "weight", "reason")

    def __init__(self, *args: Any, **options: Any) -> None:
        super().__init__(*args, **options)
        self.fields["figure"].choices = figure_choices()  # type: ignore[attr-defined]


class RulesForm(forms.Form):
    """Which published rules turn measures into targets."""

    rule_set = forms.ChoiceField(label="Rules", choices=RULE_SET_WORDS)
    reason = forms.CharField(label="Reason", max_length=400)
    revision = forms.IntegerField(widget=forms.HiddenInput, required=False)
