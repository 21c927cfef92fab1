"""Addresses of the places."""

from __future__ import annotations

from django.urls import path

from chairwright_desk.surroundings import views

app_name = "surroundings"
urlpatterns = [
    path("", views.show, name="show"),
    path("helpers/", views.helpers, name="helpers"),
    path("file/", views.file, name="file"),
    path("bring/", views.bring, name="bring"),
    path("new/<str:kind>/", views.new, name="new"),
    path("live/<str:kind>/", views.live, name="live"),
    path("<str:spot_id>/", views.change, name="change"),
    path("<str:spot_id>/remove/", views.remove, name="remove"),
]
