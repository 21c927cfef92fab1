"""Lines, as Django knows them."""

from __future__ import annotations

from typing import ClassVar

from chairwright_desk.base.app import DeskApp, Place


class LinesApp(DeskApp):
    """Addresses and places."""

    name = "chairwright_desk.lines"
    label = "lines"
    address = "lines/"
    places: ClassVar[tuple[Place, ...]] = (Place(30, "Lines", "lines:list", "line.see"),)
