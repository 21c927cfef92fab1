"""Measures, as Django knows them."""

from __future__ import annotations

from typing import ClassVar

from chairwright_desk.base.app import DeskApp, Tab


class MeasuresApp(DeskApp):
    """Addresses and tabs."""

    name = "chairwright_desk.measures"
    label = "measures"
    address = "clients/<str:client_id>/measures/"
    client_tabs: ClassVar[tuple[Tab, ...]] = (Tab(20, "Measures", "measures:show", "measures.see"),)
