"""What a form of the bench asks for: the one choice that was changed in it.

Every choice has a list; some have a slider beside it, and holes have buttons. A control that
differs from the set-up was moved; where nothing says which was moved last, the first that differs
counts.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from django.http import QueryDict

SLIDE = "slide-"
ALONG = "along-"
PICK = "pick"
BY = "by"


@dataclass(frozen=True)
class Wish:
    """One or several choices as wished.

    Parameters
    ----------
    codes : dict of str to str
        Choice to code.
    by : str
        Name of the control.
    """

    codes: dict[str, str]
    by: str = ""

    @property
    def single(self) -> tuple[str, str] | None:
        """The choice and its code when there is only one."""
        return next(iter(self.codes.items())) if len(self.codes) == 1 else None


def wish_of(form: QueryDict, codes: Mapping[str, str]) -> Wish:
    """Read what is wished.

    Parameters
    ----------
    form : QueryDict
    codes : mapping of str to str
        The set-up as it stands.
    """
    picked = form.get(PICK, "")
    if picked:
        return Wish(_picked(picked, codes), PICK)
    by = form.get(BY, "")
    told = _of(form, by, codes)
    if told is not None:
        return Wish({told[0]: told[1]} if codes[told[0]] != told[1] else {}, by)
    every = (_of(form, control, codes) for name in codes for control in (name, SLIDE + name))
    found = {each[0]: each[1] for each in every if each is not None and codes[each[0]] != each[1]}
    return Wish(found)


def _picked(typed: str, codes: Mapping[str, str]) -> dict[str, str]:
    pairs = (part.partition("=") for part in typed.split())
    return {name: code for name, _, code in pairs if name in codes}


def _of(form: QueryDict, control: str, codes: Mapping[str, str]) -> tuple[str, str] | None:
    """Choice and code of one control; None when it says nothing."""
    name = control.removeprefix(SLIDE)
    if name not in codes or control not in form:
        return None
    at = str(form[control])
    if control == name:
        return name, at
    along = form.get(ALONG + name, "").split()
    if not at.isdigit() or int(at) >= len(along):
        return None
    return name, along[int(at)]
