"""Clients, as Django knows them."""

from __future__ import annotations

from typing import ClassVar

from chairwright_desk.base.app import DeskApp, Place, Tab


class ClientsApp(DeskApp):
    """Addresses and places."""

    name = "chairwright_desk.clients"
    label = "clients"
    address = "clients/"
    places: ClassVar[tuple[Place, ...]] = (Place(10, "Clients", "clients:list", "client.see"),)
    client_tabs: ClassVar[tuple[Tab, ...]] = (
        Tab(10, "File", "clients:show", "client.see"),
        Tab(12, "Who this is", "clients:who", "identity.see"),
    )
