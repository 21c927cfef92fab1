"""Triggers that keep the trail as it was written, on both databases."""

from __future__ import annotations

from django.db.backends.base.base import BaseDatabaseWrapper

TABLE = "audit_entry"
SAYS = "the trail cannot be changed"
EVENTS = ("UPDATE", "DELETE")
FUNCTION = f"""
CREATE OR REPLACE FUNCTION {TABLE}_stays() RETURNS trigger LANGUAGE plpgsql AS
$$ BEGIN RAISE EXCEPTION '{SAYS}'; END $$
"""


def set_guard(connection: BaseDatabaseWrapper) -> None:
    """Let the database refuse every change and removal of a line."""
    with connection.cursor() as cursor:
        if connection.vendor == "postgresql":
            cursor.execute(FUNCTION)
        for event in EVENTS:
            cursor.execute(_trigger(connection.vendor, event))


def lift_guard(connection: BaseDatabaseWrapper) -> None:
    """Take the guard away: only tests do, to empty their database."""
    of_table = f" ON {TABLE}" if connection.vendor == "postgresql" else ""
    with connection.cursor() as cursor:
        for event in EVENTS:
            cursor.execute(f"DROP TRIGGER IF EXISTS {_name(event)}{of_table}")


def _name(event: str) -> str:
    return f"{TABLE}_no_{event.lower()}"


def _trigger(vendor: str, event: str) -> str:
    if vendor == "postgresql":
        return (
            f"CREATE OR REPLACE TRIGGER {_name(event)} BEFORE {event} ON {TABLE} "
            f"FOR EACH ROW EXECUTE FUNCTION {TABLE}_stays()"
        )
    return (
        f"CREATE TRIGGER IF NOT EXISTS {_name(event)} BEFORE {event} ON {TABLE} "
        f"BEGIN SELECT RAISE(ABORT, '{SAYS}'); END"
    )
