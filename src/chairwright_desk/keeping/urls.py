"""Addresses of export, removal and dates."""

from __future__ import annotations

from django.urls import path

from chairwright_desk.keeping import views

app_name = "keeping"
urlpatterns = [
    path("past-their-date/", views.past, name="past"),
    path("clients/<str:client_id>/keeping/", views.show, name="show"),
    path("clients/<str:client_id>/keeping/export/", views.export, name="export"),
    path("clients/<str:client_id>/keeping/remove/", views.removal, name="remove"),
]
