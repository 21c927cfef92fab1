"""Every address of the desk: who may open it, and what it answers to everybody else."""

from __future__ import annotations

import pytest
from django.test import Client as Visitor
from django.urls import reverse

from chairwright_desk.accounts.roles import Role

from .kit.standing import PAGES, VIEWS, Standing, entries
from .kit.world import UNKNOWN, WHO, World

ENTRIES = entries()
GUARDED = [each for each in ENTRIES if each.page.action]
OF_A_RECORD = [each for each in GUARDED if not each.shared]
POSTED = [each for each in ENTRIES if "POST" in each.page.methods]
ELSEWHERE = "https://elsewhere.example"

each_entry = pytest.mark.parametrize("entry", ENTRIES, ids=str)
each_guarded = pytest.mark.parametrize("entry", GUARDED, ids=str)


def test_every_address_has_an_entry_and_a_declared_page() -> None:
    assert set(VIEWS) == set(PAGES), "a view without @page or @open_page"
    names = [entry.view for entry in ENTRIES]
    assert sorted(names) == sorted(VIEWS), "one Standing for each address, in tests/desk/standing"


def roles_of(entry: Standing) -> list[str]:
    return [entry.role] if entry.personal else entry.allowed


@each_guarded
def test_it_works_for_each_role_of_the_table(entry: Standing, world: World) -> None:
    for role in roles_of(entry):
        address, visitor = entry.address(world), world.visitor(role)
        if entry.reads:
            assert visitor.get(address).status_code == entry.status, role
    if "POST" in entry.page.methods:
        role = entry.role if entry.role in entry.allowed else entry.allowed[0]
        answer = world.visitor(role).post(entry.address(world), entry.data(world))
        assert answer.status_code == entry.posted, answer.content.decode()[:2000]


@each_guarded
def test_other_roles_are_told_that_it_is_not_for_them(entry: Standing, world: World) -> None:
    address = entry.address(world)
    for role in set(Role.values) - set(entry.allowed):
        for method in entry.page.methods:
            answer = world.visitor(role).generic(method, address)
            assert answer.status_code == 403, (role, method)


@each_guarded
def test_a_stranger_is_asked_to_sign_in(entry: Standing, world: World) -> None:
    address = entry.address(world)
    if entry.reads:
        answer = Visitor().get(address)
        if address.startswith("/api/"):
            assert answer.status_code == 401
        else:
            assert answer.status_code == 302
            assert answer.headers["Location"].startswith("/sign-in/?next=")
    if "POST" in entry.page.methods:
        assert Visitor().post(address, entry.data(world)).status_code == 401


@pytest.mark.parametrize("entry", OF_A_RECORD, ids=str)
def test_another_team_finds_nothing(entry: Standing, world: World) -> None:
    address = entry.address(world)
    for role in entry.allowed:
        for method in entry.page.methods:
            answer = world.visitor(role, other=True).generic(method, address)
            assert answer.status_code == 404, (role, method)


@pytest.mark.parametrize("entry", [e for e in GUARDED if e.personal], ids=str)
def test_others_of_the_team_do_not_find_what_is_personal(entry: Standing, world: World) -> None:
    address = entry.address(world)
    for role in set(entry.allowed) - {entry.role}:
        for method in entry.page.methods:
            assert world.visitor(role).generic(method, address).status_code == 404, role


@each_entry
def test_a_wrong_method_is_refused(entry: Standing, world: World) -> None:
    address, visitor = entry.address(world), world.visitor(entry.role)
    for method in {"GET", "POST", "PUT", "PATCH", "DELETE"} - set(entry.page.methods):
        answer = visitor.generic(method, address)
        assert answer.status_code == 405, method
        assert set(answer.headers["Allow"].split(", ")) - {"HEAD"} == set(entry.page.methods)


@pytest.mark.parametrize("entry", [e for e in GUARDED if not e.view.startswith("drafts:")], ids=str)
def test_an_unknown_id_is_not_found(entry: Standing, world: World) -> None:
    arguments = entry.arguments(world)
    for place, value in enumerate(arguments):
        wrong = [*arguments]
        wrong[place] = UNKNOWN if isinstance(value, str) else 987_654
        address = reverse(entry.view, args=wrong)
        for method in entry.page.methods:
            assert world.visitor(entry.role).generic(method, address).status_code == 404


@pytest.mark.parametrize("entry", POSTED, ids=str)
def test_a_form_from_elsewhere_is_refused(entry: Standing, world: World) -> None:
    visitor = world.visitor(entry.role, checks=True)
    answer = visitor.post(entry.address(world), entry.data(world), headers={"Origin": ELSEWHERE})
    assert answer.status_code == 403


@pytest.mark.parametrize("entry", [e for e in GUARDED if e.reads], ids=str)
def test_a_builder_never_sees_who_a_client_is(entry: Standing, world: World) -> None:
    if Role.BUILDER.value in entry.allowed and not entry.personal:
        told = world.visitor("builder").get(entry.address(world)).content.decode(errors="replace")
        assert [words for words in WHO if words in told] == []


@each_entry
def test_every_answer_has_the_strict_headers(entry: Standing, world: World) -> None:
    method = "GET" if entry.reads else "POST"
    answer = world.visitor(entry.role).generic(method, entry.address(world))
    policy = answer.headers["Content-Security-Policy"]
    assert "default-src 'self'" in policy
    assert "unsafe" not in policy
    assert "frame-ancestors 'none'" in policy
    assert answer.headers["X-Content-Type-Options"] == "nosniff"
    assert answer.headers["Referrer-Policy"] == "same-origin"
    assert answer.headers["Cache-Control"] == "no-store"
