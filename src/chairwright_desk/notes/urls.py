"""Addresses of notes and pictures."""

from __future__ import annotations

from django.urls import path

from chairwright_desk.notes import views

app_name = "notes"
urlpatterns = [
    path("", views.show, name="show"),
    path("new/", views.new, name="new"),
    path("pictures/new/", views.add_picture, name="add-picture"),
    path("pictures/<str:picture_id>/", views.picture, name="picture"),
    path("pictures/<str:picture_id>/remove/", views.remove_picture, name="remove-picture"),
    path("<str:note_id>/", views.change, name="change"),
    path("<str:note_id>/remove/", views.remove, name="remove"),
]
