"""Addresses of the measures."""

from __future__ import annotations

from django.urls import path

from chairwright_desk.measures import views, views_more

app_name = "measures"
urlpatterns = [
    path("", views.show, name="show"),
    path("new/", views.new, name="new"),
    path("live/", views.live, name="live"),
    path("moving/", views_more.abilities, name="abilities"),
    path("file/", views_more.file, name="file"),
    path("bring/", views_more.bring, name="bring"),
    path("<str:measuring_id>/", views.change, name="change"),
    path("<str:measuring_id>/remove/", views.remove, name="remove"),
]
