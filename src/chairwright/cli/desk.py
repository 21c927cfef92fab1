"""Open the desk: the whole job in a browser, on this machine alone."""

from __future__ import annotations

import argparse
from importlib import import_module
from importlib.util import find_spec
from typing import Any

from chairwright.errors import InputError, Problem

COMMAND = "chairwright_desk.start.command"
NEEDS = ("django", "django_htmx", "whitenoise", "waitress", "dj_database_url")


def _command() -> Any:
    missing = [name for name in (*NEEDS, "chairwright_desk") if find_spec(name) is None]
    if missing:
        raise InputError(
            Problem(
                where="desk",
                must="the desk's own packages must be installed",
                got=f"no {', '.join(missing)}",
                remedy="Install them with: pip install 'chairwright[desk]'",
            )
        )
    return import_module(COMMAND)


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the arguments of the desk."""
    _command().add_arguments(parser)


def run(args: argparse.Namespace) -> int:
    """Run the desk."""
    code: int = _command().run(args)
    return code
