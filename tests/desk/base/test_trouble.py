"""Pages of trouble: the right status, plain words, the input kept."""

from __future__ import annotations

from unittest.mock import patch

import pytest
from django.core.exceptions import TooManyFieldsSent
from django.db import OperationalError
from django.test import Client as Visitor

from chairwright_desk.clients.models import Client

from ..kit.world import World

ORIGIN = {"Origin": "http://testserver"}
FIELDS = {"reference": "HEM-004", "password": "secret words", "csrfmiddlewaretoken": "x"}
LARGE = 50_000_001


def visitor(world: World, *, checks: bool = False) -> Visitor:
    made = world.visitor("clinician", checks=checks)
    made.raise_request_exception = False
    return made


@pytest.mark.parametrize(
    ("fault", "status"),
    [
        (OperationalError("database is locked"), 503),
        (OperationalError("database or disk is full"), 503),
        (OperationalError("attempt to write a readonly database"), 503),
        (OSError(28, "No space left on device"), 503),
        (RuntimeError("anything"), 500),
    ],
)
def test_input_stands_in_the_page_when_it_could_not_be_saved(
    fault: Exception, status: int, world: World
) -> None:
    with patch.object(Client.objects, "create", side_effect=fault):
        fields = FIELDS | {"team": world.team.pk}
        answer = visitor(world).post("/clients/new/", fields, headers=ORIGIN)
    text = answer.content.decode()
    assert answer.status_code == status
    assert '<input type="hidden" name="reference" value="HEM-004">' in text
    assert "secret words" not in text
    assert str(fault) not in text


def test_a_damaged_form_is_400(world: World) -> None:
    with patch("chairwright_desk.clients.views.filled", side_effect=TooManyFieldsSent("x")):
        assert visitor(world).post("/clients/new/", FIELDS).status_code == 400


def test_a_page_that_is_not_there_is_404(world: World) -> None:
    answer = visitor(world).get("/no/such/page/")
    assert answer.status_code == 404
    assert "There is no such page" in answer.content.decode()


def test_programs_get_json(world: World) -> None:
    answer = visitor(world).get("/api/no/such/thing/")
    assert answer.status_code == 404
    assert set(answer.json()) == {"error", "what", "remedy", "problems"}


@pytest.mark.parametrize("declared", [LARGE, 10**15])
def test_an_upload_above_50_megabytes_is_told_on_a_page(declared: int, world: World) -> None:
    answer = visitor(world).generic(
        "POST", "/clients/new/", b"x", "multipart/form-data", CONTENT_LENGTH=str(declared)
    )
    assert answer.status_code == 413
    assert "up to 50 MB" in answer.content.decode()


def test_a_form_with_too_much_text_is_413(world: World) -> None:
    answer = visitor(world).post("/clients/new/", {"reference": "x" * 5_000_001})
    assert answer.status_code == 413


def test_a_form_of_an_old_page_can_be_sent_again_but_one_from_elsewhere_cannot(
    world: World,
) -> None:
    ours = visitor(world, checks=True).post("/clients/new/", FIELDS, headers=ORIGIN)
    assert ours.status_code == 403
    assert "Send it again" in ours.content.decode()
    assert "HEM-004" in ours.content.decode()
    elsewhere = visitor(world, checks=True).post(
        "/clients/new/", FIELDS, headers={"Origin": "https://elsewhere.example"}
    )
    assert elsewhere.status_code == 403
    assert "HEM-004" not in elsewhere.content.decode()


def test_what_was_typed_is_shown_as_text_never_as_a_page(world: World) -> None:
    with patch.object(Client.objects, "create", side_effect=OperationalError):
        fields = {"reference": '"><script>alert(1)</script>', "team": world.team.pk}
        text = visitor(world).post("/clients/new/", fields, headers=ORIGIN).content.decode()
    assert "<script>alert" not in text
    assert "&lt;script&gt;alert" in text
