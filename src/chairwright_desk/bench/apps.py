"""The bench, as Django knows it."""

from __future__ import annotations

from typing import ClassVar

from chairwright_desk.base.app import DeskApp, Tab


class BenchApp(DeskApp):
    """Addresses under a client's, and the part of the client's file."""

    name = "chairwright_desk.bench"
    label = "bench"
    address = "clients/<str:client_id>/set-ups/"
    client_tabs: ClassVar[tuple[Tab, ...]] = (Tab(40, "Set-ups", "bench:list", "setup.see"),)
