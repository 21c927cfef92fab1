"""Targets, as Django knows them."""

from __future__ import annotations

from typing import ClassVar

from chairwright_desk.base.app import DeskApp, Tab


class TargetsApp(DeskApp):
    """Addresses and tabs."""

    name = "chairwright_desk.targets"
    label = "targets"
    address = "clients/<str:client_id>/targets/"
    client_tabs: ClassVar[tuple[Tab, ...]] = (Tab(24, "Targets", "targets:show", "targets.see"),)
