"""Places, as Django knows them."""

from __future__ import annotations

from typing import ClassVar

from chairwright_desk.base.app import DeskApp, Tab


class SurroundingsApp(DeskApp):
    """Addresses and tabs."""

    name = "chairwright_desk.surroundings"
    label = "surroundings"
    address = "clients/<str:client_id>/places/"
    client_tabs: ClassVar[tuple[Tab, ...]] = (
        Tab(22, "Places", "surroundings:show", "surroundings.see"),
    )
