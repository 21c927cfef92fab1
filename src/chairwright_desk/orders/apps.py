"""Orders, as Django knows them."""

from __future__ import annotations

from typing import ClassVar

from chairwright_desk.base.app import DeskApp, Place, Tab


class OrdersApp(DeskApp):
    """Addresses of their own and under a client's, a place, and the part of the client's file."""

    name = "chairwright_desk.orders"
    label = "orders"
    address = ""
    places: ClassVar[tuple[Place, ...]] = (Place(20, "Orders", "orders:list", "order.see"),)
    client_tabs: ClassVar[tuple[Tab, ...]] = (Tab(50, "Orders", "orders:of-client", "order.see"),)
