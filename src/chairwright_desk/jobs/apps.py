"""Work beside the pages, as Django knows it."""

from __future__ import annotations

from typing import ClassVar

from chairwright_desk.base.app import DeskApp, Place


class JobsApp(DeskApp):
    """Addresses and places."""

    name = "chairwright_desk.jobs"
    label = "jobs"
    address = "work/"
    places: ClassVar[tuple[Place, ...]] = (Place(70, "Work under way", "jobs:list", "job.own"),)
