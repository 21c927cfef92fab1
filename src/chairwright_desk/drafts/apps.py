"""Drafts, as Django knows them."""

from __future__ import annotations

from chairwright_desk.base.app import DeskApp


class DraftsApp(DeskApp):
    """Addresses and places."""

    name = "chairwright_desk.drafts"
    label = "drafts"
    address = "drafts/"
