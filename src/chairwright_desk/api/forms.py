"""The form of a new token."""

from __future__ import annotations

from django import forms

DAYS = [("7", "7 days"), ("30", "30 days"), ("90", "90 days"), ("365", "a year")]
MAY = [("read", "read only"), ("change", "read and change")]


class TokenForm(forms.Form):
    """What it is for, how long it lasts, what it may."""

    words = forms.CharField(
        label="What it is for", max_length=60, help_text="Such as: weekly list of orders."
    )
    days = forms.ChoiceField(label="Lasts", choices=DAYS, initial="30")
    may = forms.ChoiceField(label="It may", choices=MAY, initial="read")
