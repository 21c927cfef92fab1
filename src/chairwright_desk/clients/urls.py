"""Addresses of the clients."""

from __future__ import annotations

from django.urls import path

from chairwright_desk.clients import views

app_name = "clients"
urlpatterns = [
    path("", views.clients, name="list"),
    path("new/", views.new, name="new"),
    path("<str:client_id>/", views.show, name="show"),
    path("<str:client_id>/change/", views.change, name="change"),
]
