"""The fixtures of the desk's tests."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

import pytest
from django.db import connection
from playwright.sync_api import Browser

from chairwright_desk.audit.guard import lift_guard, set_guard

from .browser import Desk, launched
from .process import RUNNING
from .world import World, make_world


@pytest.fixture(autouse=True)
def no_desk_left() -> Iterator[None]:
    """End the desks that a failed test has left."""
    yield
    while RUNNING:
        RUNNING.pop().kill()


@pytest.fixture
def world(db: None) -> World:
    """Two teams, a person for each role, a client; gone after the test."""
    return make_world()


@pytest.fixture
def emptied(transactional_db: None) -> Iterator[None]:
    """A database that is emptied after the test: the trail's guard is lifted only for that."""
    set_guard(connection)
    yield
    lift_guard(connection)


@pytest.fixture
def live_world(emptied: None) -> World:
    """The same as `world`, seen by the live server too."""
    return make_world()


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    """One browser for the run."""
    with launched() as browser:
        yield browser


@pytest.fixture
def desk(live_world: World, live_server: Any, browser: Browser) -> Iterator[Desk]:
    """A browser on the live desk; no request elsewhere, no script error, no policy broken."""
    made = Desk(browser, live_server.url)
    yield made
    made.close()
    assert made.complaints == []


@pytest.fixture
def desk_without_script(live_world: World, live_server: Any, browser: Browser) -> Iterator[Desk]:
    """The same without JavaScript."""
    made = Desk(browser, live_server.url, script=False)
    yield made
    made.close()
    assert made.complaints == []
