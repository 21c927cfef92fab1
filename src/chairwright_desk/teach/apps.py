"""Teaching, as Django knows it."""

from __future__ import annotations

from typing import ClassVar

from chairwright_desk.base.app import DeskApp, Place


class TeachApp(DeskApp):
    """Addresses and places."""

    name = "chairwright_desk.teach"
    label = "teach"
    address = "teach/"
    places: ClassVar[tuple[Place, ...]] = (Place(40, "Teach", "teach:list", "teach.see"),)
