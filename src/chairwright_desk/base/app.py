"""What an app of the desk says of itself: its addresses and its places in the head of the page."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any, ClassVar

from django.apps import AppConfig


@dataclass(frozen=True)
class Place:
    """One place in the head of the page.

    Parameters
    ----------
    order : int
        Places stand from small to large.
    words : str
        As shown.
    view : str
        Name of the address.
    action : str
        Shown to those who may do it.
    """

    order: int
    words: str
    view: str
    action: str


@dataclass(frozen=True)
class Tab:
    """One part of a client's file.

    Parameters
    ----------
    order : int
        Parts stand from small to large.
    words : str
        As shown.
    view : str
        Name of its address, which takes the client's id only.
    action : str
        Shown to those who may do it in the client's team.
    """

    order: int
    words: str
    view: str
    action: str


class DeskApp(AppConfig):
    """Base of every app's configuration; an app is found by its ``apps.py``."""

    default = False
    address: ClassVar[str | None] = None
    """Where the addresses of its ``urls.py`` begin (``"clients/"``); None without any."""
    places: ClassVar[tuple[Place, ...]] = ()
    client_tabs: ClassVar[tuple[Tab, ...]] = ()

    def __init_subclass__(cls, **options: Any) -> None:
        super().__init_subclass__(**options)
        cls.default = True
