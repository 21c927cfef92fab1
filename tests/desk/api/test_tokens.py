"""Tokens: shown once, kept as a hash, ended by time, by hand and with their person."""

from __future__ import annotations

import re
from datetime import timedelta
from typing import Any

import pytest
from django.core.cache import cache
from django.core.serializers import serialize
from django.test import Client as Visitor
from django.utils import timezone

from chairwright_desk.accounts.models import Membership, User
from chairwright_desk.api.models import Token
from chairwright_desk.api.tokens import MOST, make_token
from chairwright_desk.audit.models import Entry

from ..kit.world import World

PAGE = "/own/tokens/"
FORM = {"words": "weekly list", "days": "30", "may": "read"}


def _asks(text: str, path: str = "/api/me") -> Any:
    return Visitor().get(path, headers={"Authorization": f"Bearer {text}"})


def _made(world: World) -> str:
    page = world.visitor("clinician").post(PAGE, FORM).content.decode()
    found = re.search(r'value="(desk_[\w-]+)"', page)
    assert found
    return found[1]


def test_a_token_is_shown_once_and_stored_as_a_hash(world: World) -> None:
    text = _made(world)
    assert len(text) > 40
    assert text not in world.visitor("clinician").get(PAGE).content.decode()
    assert text not in serialize("json", Token.objects.all())
    assert _asks(text).json()["id"] == world.people["clinician"].pk
    assert Entry.objects.filter(record_kind="api.token", kind="change").count() == 1


def test_a_token_that_is_over_ended_or_of_a_person_who_left_is_refused(world: World) -> None:
    text = _made(world)
    Token.objects.update(expires=timezone.now() - timedelta(seconds=1))
    assert _asks(text).status_code == 401
    Token.objects.update(expires=timezone.now() + timedelta(days=1))
    assert _asks(text).status_code == 200
    User.objects.filter(pk=world.people["clinician"].pk).update(is_active=False)
    assert _asks(text).status_code == 401
    User.objects.filter(pk=world.people["clinician"].pk).update(is_active=True)
    visitor = world.visitor("clinician")
    assert visitor.post(f"{PAGE}{Token.objects.get().pk}/end/").status_code == 302
    assert _asks(text).status_code == 401
    assert "ended" in visitor.get(PAGE).content.decode()


def test_a_role_that_is_taken_away_is_taken_from_the_token_at_once(world: World) -> None:
    text = _made(world)
    assert _asks(text, f"/api/clients/{world.client.pk}").status_code == 200
    Membership.objects.filter(user=world.people["clinician"]).delete()
    assert _asks(text, f"/api/clients/{world.client.pk}").status_code == 403


def test_a_wrong_token_is_refused_though_a_session_is_there(world: World) -> None:
    visitor = world.visitor("clinician")
    assert visitor.get("/api/me", headers={"Authorization": "Bearer x"}).status_code == 401
    assert visitor.get("/api/me", headers={"Authorization": "Basic eDp5"}).status_code == 401


def test_a_token_opens_no_page(world: World) -> None:
    assert _asks(_made(world), "/clients/").status_code == 302


def test_too_many_tokens_are_refused(world: World) -> None:
    for _ in range(MOST):
        make_token(world.people["clinician"], "more", 7, reads_only=True)
    page = world.visitor("clinician").post(PAGE, FORM).content.decode()
    assert f"You have {MOST} tokens" in page
    assert Token.objects.count() == MOST


@pytest.fixture
def few_calls(settings: Any) -> Any:
    cache.clear()
    settings.API_CALLS_A_MINUTE = settings.API_WRONG_A_MINUTE = 3
    yield
    cache.clear()


@pytest.mark.usefixtures("few_calls")
def test_more_calls_than_a_minute_takes_are_told_when_to_go_on(world: World) -> None:
    text = _made(world)
    answers = [_asks(text) for _ in range(6)]
    statuses = [answer.status_code for answer in answers]
    assert statuses[:3] == [200, 200, 200]
    assert 429 in statuses
    last = next(answer for answer in answers if answer.status_code == 429)
    assert 1 <= int(last.headers["Retry-After"]) <= 60
    assert "Wait" in last.json()["remedy"]


@pytest.mark.usefixtures("few_calls")
def test_guessing_tokens_is_slowed_down_and_a_good_one_still_opens(world: World) -> None:
    text = _made(world)
    statuses = [_asks("desk_guess").status_code for _ in range(6)]
    assert statuses[:3] == [401, 401, 401]
    assert 429 in statuses
    assert _asks(text).status_code == 200
