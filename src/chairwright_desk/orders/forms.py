"""Forms of an order."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date
from typing import Any

from django import forms
from django.core.validators import MaxValueValidator, MinValueValidator
from django.utils import timezone

from chairwright_desk.bench.models import Setup
from chairwright_desk.clients.models import Client
from chairwright_desk.orders.bridge import (
    LONGEST_REASON,
    FactAsked,
    InputError,
    Missed,
    read_prices,
    scheme_names,
)
from chairwright_desk.orders.models import Order, PriceText

WHY = "Why it is accepted all the same; no diagnosis here."
NOT_PRINTABLE = "A number is one line of letters and figures."
NUMBER_TAKEN = "Another order of your team has this number."
LONGEST_TEXT = 200_000


FIRST_DAY, LAST_DAY = date(2000, 1, 1), date(2999, 12, 31)
"""Days of an order lie between these: others are slips of the keyboard."""
NO_SUCH_DAY = "A day of an order lies between the years 2000 and 2999. Look at the year."


def day_field(label: str, *, required: bool = True, help_text: str = "") -> forms.DateField:
    """A day of the calendar.

    Parameters
    ----------
    label : str
    required : bool
    help_text : str
    """
    widget = forms.DateInput(attrs={"type": "date"}, format="%Y-%m-%d")
    within = [MinValueValidator(FIRST_DAY, NO_SUCH_DAY), MaxValueValidator(LAST_DAY, NO_SUCH_DAY)]
    return forms.DateField(
        label=label,
        required=required,
        help_text=help_text,
        widget=widget,
        localize=False,
        validators=within,
    )


class OrderForm(forms.Form):
    """What an order is made of."""

    setup = forms.ModelChoiceField(
        Setup.objects.none(),
        label="Set-up",
        empty_label=None,
        help_text="As it stands on the bench now; a later change there does not change the order.",
    )
    number = forms.CharField(
        label="Order number",
        max_length=40,
        help_text="The workshop finds the order by it: nothing that says who the client is.",
    )
    dated = day_field("Day of the order")
    prices = forms.ModelChoiceField(
        PriceText.objects.none(),
        label="Price list",
        required=False,
        empty_label="The line's own prices, without discount or tax",
    )

    def __init__(self, *args: Any, client: Client, order: Order | None = None, **more: Any) -> None:
        super().__init__(*args, **more)
        self.client, self.order = client, order
        setups: Any = self.fields["setup"]
        setups.queryset = Setup.objects.filter(client=client).order_by("-changed_at", "id")
        prices: Any = self.fields["prices"]
        prices.queryset = PriceText.objects.filter(team=client.team)

    def clean_number(self) -> str:
        """Refuse a number that another order of the team has."""
        number = str(self.cleaned_data["number"])
        if not number.isprintable():
            raise forms.ValidationError(NOT_PRINTABLE)
        others = Order.objects.filter(team=self.client.team, number=number)
        if self.order is not None:
            others = others.exclude(pk=self.order.pk)
        if others.exists():
            raise forms.ValidationError(NUMBER_TAKEN)
        return number


class ChangeForm(OrderForm):
    """The same, from a revision that was shown."""

    revision = forms.IntegerField(widget=forms.HiddenInput)


class AcceptForm(forms.Form):
    """Who accepts what fails, and why each."""

    by = forms.CharField(
        label="Accepted by",
        max_length=80,
        help_text="Name and profession of who answers for it. It is printed with each reason.",
    )
    revision = forms.IntegerField(widget=forms.HiddenInput)

    def __init__(self, *args: Any, missed: Sequence[Missed], **more: Any) -> None:
        super().__init__(*args, **more)
        self.figures = list(dict.fromkeys(each.figure for each in missed))
        for name in self.figures:
            rows = [each for each in missed if each.figure == name]
            places = ", ".join(each.place for each in rows if each.place)
            asked = f", asked by: {places}" if places else ""
            label = f"{rows[0].words.removesuffix('.')}{asked}"
            self.fields[f"reason:{name}"] = forms.CharField(
                label=label, max_length=LONGEST_REASON, required=False, help_text=WHY
            )

    def reasons(self) -> dict[str, str]:
        """Figure to reason, of those that were given."""
        given = {name: self.cleaned_data.get(f"reason:{name}", "") for name in self.figures}
        return {name: text for name, text in given.items() if text}

    @property
    def reason_fields(self) -> list[Any]:
        """One field for each figure."""
        return [self[f"reason:{name}"] for name in self.figures]


class StepForm(forms.Form):
    """A step, with the day that belongs to it."""

    to = forms.CharField(widget=forms.HiddenInput)
    revision = forms.IntegerField(widget=forms.HiddenInput)
    serial = forms.CharField(label="Serial number", max_length=40, required=False)

    def __init__(self, *args: Any, asks: str, **more: Any) -> None:
        super().__init__(*args, **more)
        self.asks = asks
        if asks == "promised":
            self.fields["day"] = day_field("Promised for")
        elif asks == "delivered":
            self.fields["day"] = day_field("Day of delivery")
        elif asks == "review":
            self.fields["day"] = day_field("Next review", required=False)
        if asks != "delivered":
            del self.fields["serial"]

    def clean(self) -> dict[str, Any]:
        """Refuse a delivery that has not been yet."""
        data = super().clean() or {}
        day = data.get("day")
        if self.asks == "delivered" and day is not None and day > timezone.localdate():
            self.add_error("day", "This day is still to come.")
        return data


class PriceForm(forms.Form):
    """A price list, as text or file."""

    name = forms.CharField(
        label="Name", max_length=80, help_text="Such as: winter 2026. Shown where prices are."
    )
    text = forms.CharField(
        label="Or its text",
        max_length=LONGEST_TEXT,
        required=False,
        widget=forms.Textarea(attrs={"rows": 10, "spellcheck": "false"}),
        help_text="Pasted from the file; it begins with “format: chairwright price list 1”.",
    )
    file = forms.FileField(
        label="File of the price list", required=False, help_text="A file that ends with .yaml."
    )

    def clean(self) -> dict[str, Any]:
        """Refuse what cannot be read, with every mistake at its line."""
        data = super().clean() or {}
        if data.get("file") is not None:
            try:
                data["text"] = data["file"].read(LONGEST_TEXT + 1).decode("utf-8")
            except UnicodeDecodeError:
                self.add_error("file", "This is no text file: a price list is a .yaml file.")
                return data
        if len(data.get("text", "")) > LONGEST_TEXT:
            self.add_error("file", "A price list has at most 200,000 letters.")
        elif not self.errors:
            self._read(str(data.get("name", "")), str(data.get("text", "")))
        return data

    def _read(self, name: str, text: str) -> None:
        if not text.strip():
            self.add_error("text", "Paste the list here, or choose its file.")
            return
        try:
            read_prices(name, text)
        except InputError as error:
            self.add_error("text", [str(each) for each in error.problems])


class SchemeForm(forms.Form):
    """Which payer's scheme is asked."""

    scheme = forms.ChoiceField(label="Payer's scheme", required=False)

    def __init__(self, *args: Any, **more: Any) -> None:
        super().__init__(*args, **more)
        field: Any = self.fields["scheme"]
        field.choices = [("", "None"), *scheme_names()]


class FactsForm(forms.Form):
    """Facts that a scheme asks for; what is not known stays empty."""

    revision = forms.IntegerField(widget=forms.HiddenInput)

    def __init__(self, *args: Any, asked: Sequence[FactAsked], **more: Any) -> None:
        super().__init__(*args, **more)
        self.asked = {each.name: each for each in asked}
        for each in asked:
            self.fields[f"fact:{each.name}"] = _fact_field(each)

    def told(self) -> dict[str, str]:
        """Fact to answer, of those that were answered."""
        given = {name: self.cleaned_data.get(f"fact:{name}") or "" for name in self.asked}
        texts = {
            name: ", ".join(each) if isinstance(each, list) else str(each).strip()
            for name, each in given.items()
        }
        return {name: text for name, text in texts.items() if text}

    @staticmethod
    def shown(name: str, text: str, asked: Sequence[FactAsked]) -> str | list[str]:
        """A fact that was told, as its field begins with it.

        Parameters
        ----------
        name, text : str
        asked : sequence of FactAsked
        """
        several = any(each.name == name and each.several for each in asked)
        return [each.strip() for each in text.split(",")] if several else text

    @property
    def fact_fields(self) -> list[Any]:
        """One field for each fact."""
        return [self[f"fact:{name}"] for name in self.asked]


def _fact_field(each: FactAsked) -> forms.Field:
    decides = f"For {', '.join(each.decides[:4])}" if each.decides else ""
    if len(each.decides) > 4:
        decides += f" and {len(each.decides) - 4} more"
    if each.options and not each.several:
        choices = [("", "not known"), *each.options]
        return forms.ChoiceField(label=each.ask, choices=choices, required=False, help_text=decides)
    if each.several:
        return forms.MultipleChoiceField(
            label=each.ask,
            choices=each.options,
            required=False,
            help_text=f"Tick each that goes for it; none means not known. {decides}".strip(),
            widget=forms.CheckboxSelectMultiple,
        )
    kind = f"A number in {each.unit}. " if each.unit else ""
    return forms.CharField(
        label=each.ask, max_length=200, required=False, help_text=f"{kind}{decides}"
    )
