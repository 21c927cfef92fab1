"""The chair as it stands, as Django knows it."""

from __future__ import annotations

from typing import ClassVar

from chairwright_desk.base.app import DeskApp, Tab


class ChairNowApp(DeskApp):
    """Addresses under a client's, and the part of the client's file."""

    name = "chairwright_desk.chair_now"
    label = "chair_now"
    address = "clients/<str:client_id>/chair/"
    client_tabs: ClassVar[tuple[Tab, ...]] = (
        Tab(45, "The chair now", "chair_now:show", "setup.see"),
    )
