"""Export, removal and dates, as Django knows them."""

from __future__ import annotations

from typing import ClassVar

from chairwright_desk.base.app import DeskApp, Place, Tab


class KeepingApp(DeskApp):
    """Addresses and places."""

    name = "chairwright_desk.keeping"
    label = "keeping"
    address = ""
    places: ClassVar[tuple[Place, ...]] = (
        Place(85, "Due for removal", "keeping:past", "retention.see"),
    )
    client_tabs: ClassVar[tuple[Tab, ...]] = (
        Tab(95, "Export and removal", "keeping:show", "client.export"),
    )
