"""The form that a removal asks for."""

from __future__ import annotations

from typing import Any

from django import forms

from chairwright_desk.clients.models import Client


class RemoveForm(forms.Form):
    """The reference, typed."""

    reference = forms.CharField(
        label="Reference number of the client to be removed",
        max_length=40,
        widget=forms.TextInput(attrs={"autocomplete": "off", "spellcheck": "false"}),
    )

    def __init__(self, *args: Any, client: Client, **options: Any) -> None:
        super().__init__(*args, **options)
        self.client = client

    def clean_reference(self) -> str:
        """Refuse any other reference."""
        typed = str(self.cleaned_data["reference"])
        if typed != self.client.reference:
            msg = f"This must be {self.client.reference}, letter for letter. Nothing is removed."
            raise forms.ValidationError(msg)
        return typed
