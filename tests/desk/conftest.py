"""The desk's fixtures, where Django is installed; elsewhere nothing here is collected."""

from __future__ import annotations

from importlib.util import find_spec

NEEDED = ("django", "pytest_django", "playwright", "axe_playwright_python")
HERE = all(find_spec(name) is not None for name in NEEDED)
collect_ignore_glob = [] if HERE else ["*"]

if HERE:
    import django

    django.setup()
    from .kit.fixtures import (
        browser,
        desk,
        desk_without_script,
        emptied,
        live_world,
        no_desk_left,
        world,
    )

    __all__ = [
        "browser",
        "desk",
        "desk_without_script",
        "emptied",
        "live_world",
        "no_desk_left",
        "world",
    ]
