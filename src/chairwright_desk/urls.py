"""Every address of the desk: one line an app."""

from __future__ import annotations

from django.urls import include, path

from chairwright_desk.base import errors, views

urlpatterns = [
    path("", views.home, name="home"),
    path("", include("chairwright_desk.accounts.urls")),
    path("trail/", include("chairwright_desk.audit.urls")),
    path("drafts/", include("chairwright_desk.drafts.urls")),
    path("clients/", include("chairwright_desk.clients.urls")),
    path("work/", include("chairwright_desk.jobs.urls")),
]

handler400 = errors.not_understood
handler403 = errors.not_allowed
handler404 = errors.not_found
handler500 = errors.went_wrong
