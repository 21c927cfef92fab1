"""The database itself refuses to change or take away a line of the trail."""

from __future__ import annotations

from typing import Any, ClassVar

from django.db import migrations

from chairwright_desk.audit.guard import set_guard


def guard(apps: Any, editor: Any) -> None:
    """Set the guard."""
    set_guard(editor.connection)


class Migration(migrations.Migration):
    """Triggers on the table of lines."""

    dependencies: ClassVar = [("audit", "0001_initial")]
    operations: ClassVar = [migrations.RunPython(guard, migrations.RunPython.noop)]
