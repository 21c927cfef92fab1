"""Targets, as Django knows them."""

from __future__ import annotations

from chairwright_desk.base.app import DeskApp


class TargetsApp(DeskApp):
    """Addresses and tabs."""

    name = "chairwright_desk.targets"
    label = "targets"
    address = None
