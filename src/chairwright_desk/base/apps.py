"""What every page shares, as Django knows it."""

from __future__ import annotations

from chairwright_desk.base.app import DeskApp


class BaseApp(DeskApp):
    """Addresses and places."""

    name = "chairwright_desk.base"
    label = "base"
