"""Notes and pictures, as Django knows them."""

from __future__ import annotations

from typing import ClassVar

from chairwright_desk.base.app import DeskApp, Tab


class NotesApp(DeskApp):
    """Addresses and tabs."""

    name = "chairwright_desk.notes"
    label = "notes"
    address = "clients/<str:client_id>/notes/"
    client_tabs: ClassVar[tuple[Tab, ...]] = (Tab(80, "Notes", "notes:show", "note.see"),)
