"""The app as Django knows it."""

from __future__ import annotations

from django.apps import AppConfig


class AuditConfig(AppConfig):
    """Name and label."""

    name = "chairwright_desk.audit"
    label = "audit"
