"""Dates that are over are told; nothing goes by itself."""

from __future__ import annotations

from datetime import timedelta

from django.utils import timezone

from chairwright_desk.clients.models import Client

from ..kit.world import World


def _until(world: World, days: int) -> None:
    until = timezone.localdate() + timedelta(days=days)
    Client.objects.filter(pk=world.client.pk).update(keep_until=until)


def _told(world: World, role: str, path: str, *, other: bool = False) -> str:
    return str(world.visitor(role, other=other).get(path).content.decode())


def test_a_date_that_is_over_is_told_on_the_list_and_nothing_goes(world: World) -> None:
    _until(world, -1)
    assert "1 client due for removal" in _told(world, "clinician", "/clients/")
    assert "AVG-001" in _told(world, "clinician", "/past-their-date/")
    assert "AVG-001" in _told(world, "administrator", "/past-their-date/")
    assert Client.objects.filter(pk=world.client.pk).exists()


def test_the_last_day_itself_is_not_over(world: World) -> None:
    _until(world, 0)
    assert "due for removal" not in _told(world, "clinician", "/clients/")
    assert "AVG-001" not in _told(world, "clinician", "/past-their-date/")


def test_it_is_told_only_to_those_of_the_team_who_may_see_it(world: World) -> None:
    _until(world, -1)
    for role in ("specialist", "builder", "reader"):
        assert "due for removal" not in _told(world, role, "/clients/")
    assert "AVG-001" not in _told(world, "clinician", "/past-their-date/", other=True)
