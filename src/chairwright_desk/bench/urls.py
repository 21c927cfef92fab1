"""Addresses of the bench, under a client's own."""

from __future__ import annotations

from django.urls import path

from chairwright_desk.bench import views, views_list, views_look

app_name = "bench"
urlpatterns = [
    path("", views_list.setups, name="list"),
    path("new/", views_list.new, name="new"),
    path("file/", views_list.file, name="file"),
    path("beside/", views_look.compare, name="compare"),
    path("<str:setup_id>/", views.show, name="show"),
    path("<str:setup_id>/step/", views.step, name="step"),
    path("<str:setup_id>/undo/", views.undo, name="undo"),
    path("<str:setup_id>/sure/", views.sure, name="sure"),
    path("<str:setup_id>/name/", views_list.name, name="name"),
    path("<str:setup_id>/copy/", views_list.copy, name="copy"),
    path("<str:setup_id>/remove/", views_list.remove, name="remove"),
    path("<str:setup_id>/best/", views_look.best, name="best"),
    path("<str:setup_id>/trade/", views_look.trade, name="trade"),
    path("<str:setup_id>/why/", views_look.why, name="why"),
    path("<str:setup_id>/try/<str:choice>/", views_look.tried, name="try"),
]
