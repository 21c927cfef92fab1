"""The API, as Django knows it."""

from __future__ import annotations

from chairwright_desk.base.app import DeskApp


class ApiApp(DeskApp):
    """Addresses."""

    name = "chairwright_desk.api"
    label = "api"
    address = ""
