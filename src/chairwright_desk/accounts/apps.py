"""People and roles, as Django knows them."""

from __future__ import annotations

from typing import ClassVar

from chairwright_desk.base.app import DeskApp, Place


class AccountsApp(DeskApp):
    """Addresses and places."""

    name = "chairwright_desk.accounts"
    label = "accounts"
    address = ""
    places: ClassVar[tuple[Place, ...]] = (Place(80, "People", "accounts:people", "people.change"),)
