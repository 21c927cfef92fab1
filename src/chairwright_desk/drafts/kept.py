"""Keeping what is typed, and filling a form from it again."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from typing import Any, TypeVar

from django.forms import BaseForm
from django.http import QueryDict

from chairwright_desk.accounts.models import User
from chairwright_desk.base.requests import Request
from chairwright_desk.drafts.models import Draft

FORM_KEY = "form_key"
KEY = re.compile(r"[a-z0-9._:-]{1,80}")
LEFT_MARK = "left_mark"
LEFT_OUT = {"csrfmiddlewaretoken", FORM_KEY, LEFT_MARK, "next"}
AnyForm = TypeVar("AnyForm", bound=BaseForm)
Fields = dict[str, list[str]]


def typed(form: QueryDict | Iterable[tuple[str, str]]) -> Fields:
    """Return the fields of a form as they were typed, without passwords and marks."""
    pairs = form if not isinstance(form, QueryDict) else _pairs(form)
    fields: Fields = {}
    for name, value in pairs:
        if name not in LEFT_OUT and "password" not in name:
            fields.setdefault(name, []).append(str(value))
    return fields


def _pairs(form: QueryDict) -> list[tuple[str, str]]:
    return [(name, str(value)) for name, values in form.lists() for value in values]


def keep(user: User, form_key: str, fields: Fields, left_mark: str = "") -> Draft:
    """Keep the fields of a form; the last one wins.

    Parameters
    ----------
    user : User
        Who typed.
    form_key : str
        Which form.
    fields : dict
        From `typed`.
    left_mark : str
        Mark of a page that is being left; up to 40 characters are kept.
    """
    values = {"fields": fields, LEFT_MARK: left_mark[:40]}
    draft, _ = Draft.objects.update_or_create(user=user, form_key=form_key, defaults=values)
    return draft


def keep_held(user: User, held: list[tuple[str, str]]) -> None:
    """Keep a form that was held while the person signed in again."""
    key = dict(held).get(FORM_KEY, "")
    if KEY.fullmatch(key):
        keep(user, key, typed(held))


def kept(request: Request, form_key: str) -> Draft | None:
    """Return the person's draft of a form; None when there is none."""
    return Draft.objects.filter(user=request.user, form_key=form_key).first()


def has_arrived(request: Request, form_key: str, left_mark: str) -> bool:
    """Return whether the person's draft of a form is the one sent with this mark."""
    drafts = Draft.objects.filter(user=request.user, form_key=form_key)
    return drafts.filter(left_mark=left_mark).exists()


def drop(request: Request, form_key: str) -> None:
    """Forget the draft of a form, after it was saved."""
    Draft.objects.filter(user=request.user, form_key=form_key).delete()


def forget_record(record: str) -> None:
    """Forget everybody's drafts about a record (its id stands after the colon of their keys)."""
    Draft.objects.filter(form_key__endswith=f":{record}").delete()


def filled(request: Request, form_key: str, form: type[AnyForm], **options: Any) -> AnyForm:
    """Make a form: from what was sent, else from the draft, else from `initial`.

    Parameters
    ----------
    request : Request
        Of the page that shows the form.
    form_key : str
        The same as in the template's ``{% keep form_key %}``.
    form : type
        The form's class.
    **options : object
        Passed on (``initial``, ``instance``, ``prefix``).
    """
    if request.method == "POST":
        return form(request.POST, request.FILES, **options)
    draft = kept(request, form_key)
    if draft is not None:
        request.kept_drafts = {**getattr(request, "kept_drafts", {}), form_key: draft}
    initial: Mapping[str, Any] = options.pop("initial", None) or {}
    return form(initial={**initial, **_initial(form, draft, options)}, **options)


def _initial(form: type[Any], draft: Draft | None, options: Mapping[str, Any]) -> Fields:
    if draft is None:
        return {}
    several = {n for n, f in form.base_fields.items() if isinstance(f.to_python(None), list)}
    start = f"{options['prefix']}-" if options.get("prefix") else ""
    plain = {n.removeprefix(start): v for n, v in draft.fields.items() if n.startswith(start)}
    return {n: v if n in several else v[-1] for n, v in plain.items()}
