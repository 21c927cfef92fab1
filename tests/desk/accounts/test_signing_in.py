"""Passwords, links, limits of a session, and guessing."""

from __future__ import annotations

import re
from datetime import timedelta
from unittest.mock import patch

import pytest
from django.test import Client as Visitor
from django.utils import timezone

from chairwright_desk.accounts.links import make_link
from chairwright_desk.accounts.models import SignInLink, User
from chairwright_desk.audit.models import Entry
from chairwright_desk.drafts.models import Draft

from ..kit.world import PASSWORD, World

SIGN_IN = "/sign-in/"
GOOD = {"name": "Clinician", "password": PASSWORD}


def signed_in(visitor: Visitor) -> bool:
    return visitor.get("/own/").status_code == 200


def test_the_right_password_opens_the_desk_whatever_the_capitals_of_the_name(world: World) -> None:
    visitor = Visitor()
    answer = visitor.post(SIGN_IN, GOOD | {"next": "/clients/"})
    assert answer.status_code == 302
    assert answer.headers["Location"] == "/clients/"
    cookie = answer.cookies["desk_session"]
    assert cookie["httponly"]
    assert cookie["samesite"] == "Strict"
    assert signed_in(visitor)


@pytest.mark.parametrize(
    "asked", ["https://elsewhere.example/", "//elsewhere.example", "javascript:0"]
)
def test_signing_in_never_leads_elsewhere(asked: str, world: World) -> None:
    answer = Visitor().post(SIGN_IN, GOOD | {"next": asked})
    assert answer.headers["Location"] == "/"


def test_passwords_are_hashed_as_django_does(world: World) -> None:
    from django.conf import global_settings
    from django.contrib.auth.hashers import get_hashers_by_algorithm

    from chairwright_desk import settings

    assert not hasattr(settings, "PASSWORD_HASHERS")
    assert "PBKDF2" in global_settings.PASSWORD_HASHERS[0]
    stored = world.people["clinician"].password
    assert stored.partition("$")[0] in get_hashers_by_algorithm()
    assert PASSWORD not in stored


def test_wrong_tries_are_slowed_down_and_time_ends_it(world: World) -> None:
    visitor = Visitor()
    for _ in range(5):
        assert visitor.post(SIGN_IN, GOOD | {"password": "wrong"}).status_code == 200
    assert visitor.post(SIGN_IN, GOOD).status_code == 429
    assert not signed_in(visitor)
    others = {"name": "reader", "password": PASSWORD}
    assert Visitor().post(SIGN_IN, others).status_code == 302
    later = timezone.now() + timedelta(minutes=16)
    with patch("django.utils.timezone.now", return_value=later):
        assert visitor.post(SIGN_IN, GOOD).status_code == 302


def test_somebody_who_may_no_longer_sign_in_is_out_at_once(world: World) -> None:
    visitor = world.visitor("clinician")
    assert signed_in(visitor)
    User.objects.filter(name="clinician").update(is_active=False)
    assert not signed_in(visitor)
    assert visitor.post(SIGN_IN, GOOD).status_code == 200


def test_a_link_opens_once_and_not_after_its_time(world: World) -> None:
    user = world.people["clinician"]
    address, other = make_link(user), make_link(user)
    assert Visitor().post(address).status_code == 302
    assert Visitor().post(address).status_code == 404
    with patch("django.utils.timezone.now", return_value=timezone.now() + timedelta(minutes=11)):
        assert Visitor().post(other).status_code == 404
    token = other.rstrip("/").rpartition("/")[2]
    assert not SignInLink.objects.filter(token_hash=token).exists(), "only its hash is stored"


@pytest.mark.parametrize(("minutes", "stays"), [(59, True), (61, False)])
def test_an_idle_session_ends(minutes: int, stays: bool, world: World) -> None:
    visitor = world.visitor("clinician")
    assert signed_in(visitor)
    with patch("time.time", return_value=timezone.now().timestamp() + minutes * 60):
        assert signed_in(visitor) is stays


def test_a_session_in_use_ends_after_its_longest_time(world: World) -> None:
    visitor, began = world.visitor("clinician"), timezone.now().timestamp()
    for minutes in range(0, 12 * 60, 45):
        with patch("time.time", return_value=began + minutes * 60):
            assert signed_in(visitor), minutes
    with patch("time.time", return_value=began + 12 * 3600 + 5):
        assert not signed_in(visitor)


def test_a_new_password_ends_the_other_sessions(world: World) -> None:
    here, there = world.visitor("clinician"), world.visitor("clinician")
    fields = dict.fromkeys(("new_password", "new_password_again"), "a caster and a fork")
    assert here.post("/own/password/", fields).status_code == 302
    assert signed_in(here)
    assert not signed_in(there)


@pytest.mark.parametrize("weak", ["short", "1234567890", "password123"])
def test_a_weak_password_is_refused(weak: str, world: World) -> None:
    fields = dict.fromkeys(("new_password", "new_password_again"), weak)
    assert world.visitor("clinician").post("/own/password/", fields).status_code == 200


def test_a_form_sent_after_the_session_ended_is_there_again_after_signing_in(world: World) -> None:
    visitor = Visitor()
    typed = {"reference": "HEM-004", "team": world.team.pk, "form_key": "clients.new"}
    headers = {"Origin": "http://testserver", "Referer": "http://testserver/clients/new/"}
    ended = visitor.post("/clients/new/", typed, headers=headers)
    text = ended.content.decode()
    assert ended.status_code == 401
    assert "your input is kept" in text
    fields = dict(re.findall(r'type="hidden" name="([\w-]+)" value="([^"]*)"', text))
    answer = visitor.post(SIGN_IN, fields | GOOD)
    assert answer.headers["Location"] == "/clients/new/"
    assert 'value="HEM-004"' in visitor.get("/clients/new/").content.decode()
    assert Draft.objects.get().user == world.people["clinician"]


def test_signing_in_and_out_and_failing_stand_in_the_trail(world: World) -> None:
    visitor = Visitor()
    visitor.post(SIGN_IN, GOOD | {"password": "wrong"})
    visitor.post(SIGN_IN, GOOD)
    visitor.post("/sign-out/")
    lines = Entry.objects.order_by("id").values_list("kind", "who_shown")
    assert list(lines) == [
        ("sign-in failed", ""),
        ("sign-in", "Clinician"),
        ("sign-out", "Clinician"),
    ]
