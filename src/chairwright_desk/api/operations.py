"""The one table of what the API does: addresses, checks, document and list all read it."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from importlib import import_module
from pkgutil import iter_modules
from typing import Any

from django.http import HttpResponse
from pydantic import BaseModel

from chairwright_desk.accounts.roles import TABLE
from chairwright_desk.base.requests import Request

JSON = "application/json"


@dataclass(frozen=True)
class Call:
    """One call that was let in.

    Parameters
    ----------
    request : Request
    body : BaseModel or None
        As sent, read and checked.
    page : int
        Of a list.
    """

    request: Request
    body: Any
    page: int = 1

    @property
    def sent(self) -> dict[str, Any]:
        """The fields of the body that were named in it, without the revision."""
        sent: dict[str, Any] = self.body.model_dump(exclude_unset=True)
        return {name: value for name, value in sent.items() if name != "revision"}


Handler = Callable[..., BaseModel | HttpResponse]


@dataclass(frozen=True)
class Operation:
    """One thing that the API does.

    Parameters
    ----------
    name : str
        Its name in the document.
    method, address : str
        Such as GET ``clients/{client_id}``.
    action : str
        Row of `chairwright_desk.accounts.roles.TABLE`.
    words : str
        What it does, in a sentence.
    handler : callable
    takes : type or None
        Shape of the body.
    gives : type or None
        Shape of the answer; None for a file.
    media : str
        Of the answer.
    status : int
        Of a good answer.
    faults : tuple of int
        Further refusals beside the usual ones.
    changes : bool
        Whether a token that may only read is refused.
    paged : bool
        Whether it takes ``?page=``.
    """

    name: str
    method: str
    address: str
    action: str
    words: str
    handler: Handler
    takes: type[BaseModel] | None = None
    gives: type[BaseModel] | None = None
    media: str = JSON
    status: int = 200
    faults: tuple[int, ...] = ()
    changes: bool = False
    paged: bool = False

    @property
    def ids(self) -> tuple[str, ...]:
        """Names of the ids in its address."""
        return tuple(p[1:-1] for p in self.address.split("/") if p.startswith("{"))


_TABLE: list[Operation] = []


def operation(
    method: str, address: str, action: str, words: str, **more: Any
) -> Callable[[Handler], Handler]:
    """Put a function into the table.

    Parameters
    ----------
    method, address, action, words : str
        As in `Operation`.
    **more : object
        Its other fields. ``changes`` is true for every method but GET unless it is said.
    """
    if action not in TABLE:
        raise KeyError(action)

    def put(handler: Handler) -> Handler:
        options = {"changes": method != "GET", **more}
        _TABLE.append(
            Operation(handler.__name__, method, address, action, words, handler, **options)
        )
        return handler

    return put


def operations() -> tuple[Operation, ...]:
    """Every operation, in the order of their addresses."""
    package = import_module("chairwright_desk.api.calls")
    for module in iter_modules(package.__path__):
        import_module(f"{package.__name__}.{module.name}")
    return tuple(sorted(_TABLE, key=lambda each: (each.address, each.method)))


def by_address() -> Mapping[str, dict[str, Operation]]:
    """Address to method to operation."""
    found: dict[str, dict[str, Operation]] = {}
    for each in operations():
        found.setdefault(each.address, {})[each.method] = each
    return found
