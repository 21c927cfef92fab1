"""Administrators and the people of the desk."""

from __future__ import annotations

from chairwright_desk.accounts.models import Membership, User
from chairwright_desk.accounts.roles import TABLE, Role

from ..kit.world import World


def test_a_builder_may_do_nothing_with_name_diagnosis_notes_or_pictures() -> None:
    forbidden = ("identity.", "note.", "picture.", "papers.clinical")
    may = {action for action, roles in TABLE.items() if Role.BUILDER in roles}
    assert [action for action in may if action.startswith(forbidden)] == []


def test_an_administrator_sees_no_client() -> None:
    may = {action for action, roles in TABLE.items() if Role.ADMINISTRATOR in roles}
    assert "client.see" not in may
    assert "identity.see" not in may


def test_a_role_counts_in_its_own_team_only(world: World) -> None:
    user = world.people["reader"]
    Membership.objects.create(user=user, team=world.other, role=Role.CLINICIAN)
    there = world.add_client("SOUTH-1", world.other)
    visitor = world.visitor("reader")
    assert visitor.get(f"/clients/{there.pk}/change/").status_code == 200
    assert visitor.get(f"/clients/{world.client.pk}/").status_code == 200
    assert visitor.get(f"/clients/{world.client.pk}/change/").status_code == 403


def test_a_person_is_added_with_a_role_in_a_new_team(world: World) -> None:
    fields = {"name": "Anna", "shown": "Anna K.", "new_team": "West clinic", "role": "builder"}
    answer = world.visitor("administrator").post("/people/", fields)
    user = User.objects.get(name="anna")
    assert answer.headers["Location"] == f"/people/{user.pk}/"
    assert [str(each) for each in user.memberships.all()] == ["Builder, West clinic"]
    assert not user.has_usable_password()


def test_the_last_administrator_stays(world: World) -> None:
    visitor, user = world.visitor("administrator"), world.people["administrator"]
    other = world.strangers["administrator"]
    role = other.memberships.get()
    assert visitor.post(f"/people/{other.pk}/roles/{role.pk}/").status_code == 302
    assert not other.memberships.exists()
    mine = user.memberships.get()
    visitor.post(f"/people/{user.pk}/roles/{mine.pk}/")
    assert user.memberships.filter(pk=mine.pk).exists()
    visitor.post(f"/people/{user.pk}/entry/", {"open": "no"})
    assert User.objects.get(pk=user.pk).is_active
