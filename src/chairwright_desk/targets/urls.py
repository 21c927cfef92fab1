"""Addresses of the targets."""

from __future__ import annotations

from django.urls import path

from chairwright_desk.targets import views

app_name = "targets"
urlpatterns = [
    path("", views.show, name="show"),
    path("new/", views.new, name="new"),
    path("rules/", views.rules, name="rules"),
    path("change/<str:figure>/<str:kind>/", views.change, name="change"),
    path("<str:target_id>/back/", views.back, name="back"),
]
