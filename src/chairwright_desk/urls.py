"""Every address of the desk: the first page, and each app's own (`DeskApp.address`)."""

from __future__ import annotations

from django.urls import include, path

from chairwright_desk.base import errors, views
from chairwright_desk.base.places import desk_apps

urlpatterns = [
    path("", views.home, name="home"),
    *(
        path(app.address, include(f"{app.name}.urls"))
        for app in desk_apps()
        if app.address is not None
    ),
]

handler400 = errors.not_understood
handler403 = errors.not_allowed
handler404 = errors.not_found
handler500 = errors.went_wrong
