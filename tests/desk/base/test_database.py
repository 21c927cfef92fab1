"""The steps of the database and its models agree, and every record has an id that says nothing."""

from __future__ import annotations

import re

from django.apps import apps
from django.core.management import call_command
from django.db.models import CharField

from chairwright_desk.base.ids import new_id
from chairwright_desk.base.places import all_places, all_tabs, desk_apps
from chairwright_desk.base.revised import Revised

from ..kit.standing import PAGES


def test_no_step_of_the_database_is_missing(db: None) -> None:
    call_command("makemigrations", check=True, dry_run=True, verbosity=0)


def test_ids_are_random_and_long() -> None:
    made = {new_id() for _ in range(1000)}
    assert len(made) == 1000
    assert all(re.fullmatch(r"[a-z2-9]{16}", each) for each in made)


def test_every_record_that_is_changed_has_an_opaque_id() -> None:
    for model in apps.get_models():
        if issubclass(model, Revised):
            assert isinstance(model._meta.pk, CharField), model
            assert model._meta.pk.default is new_id, model


def test_every_place_and_tab_asks_for_what_its_page_asks_for() -> None:
    asked = [(each.view, each.action) for each in all_places()]
    asked += [(each.view, each.action) for each in all_tabs()]
    for view, action in asked:
        assert PAGES[view].action == action, view


def test_the_desks_apps_are_found() -> None:
    names = {app.label for app in desk_apps()}
    assert {"base", "accounts", "audit", "clients", "drafts", "jobs"} <= names
