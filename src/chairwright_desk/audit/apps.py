"""The trail, as Django knows it."""

from __future__ import annotations

from typing import ClassVar

from chairwright_desk.base.app import DeskApp, Place


class AuditApp(DeskApp):
    """Addresses and places."""

    name = "chairwright_desk.audit"
    label = "audit"
    address = "trail/"
    places: ClassVar[tuple[Place, ...]] = (Place(90, "Trail", "audit:list", "trail.see"),)
