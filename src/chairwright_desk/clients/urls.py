"""Addresses of the clients."""

from __future__ import annotations

from django.urls import path

from chairwright_desk.clients import views, views_who

app_name = "clients"
urlpatterns = [
    path("", views.clients, name="list"),
    path("new/", views.new, name="new"),
    path("<str:client_id>/", views.show, name="show"),
    path("<str:client_id>/change/", views.change, name="change"),
    path("<str:client_id>/who/", views_who.who, name="who"),
    path("<str:client_id>/who/change/", views_who.change_who, name="change-who"),
]
