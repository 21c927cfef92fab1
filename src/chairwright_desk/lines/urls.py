"""Addresses of the lines."""

from __future__ import annotations

from django.urls import path

from chairwright_desk.lines import views, views_parts

app_name = "lines"
urlpatterns = [
    path("", views.lines, name="list"),
    path("new/", views.new, name="new"),
    path("<str:line_id>/", views.show, name="show"),
    path("<str:line_id>/change/", views.change, name="change"),
    path("<str:line_id>/offered/", views.offered, name="offered"),
    path("<str:line_id>/<int:number>/options/", views_parts.options, name="options"),
    path("<str:line_id>/<int:number>/heights/", views_parts.heights, name="heights"),
    path("<str:line_id>/<int:number>/heights.pdf", views_parts.heights_paper, name="heights-paper"),
    path("<str:line_id>/<int:number>/file/", views_parts.file, name="file"),
    path("<str:line_id>/<int:number>/line.yaml", views_parts.download, name="download"),
]
