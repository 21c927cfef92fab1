"""Addresses of the work under way."""

from __future__ import annotations

from django.urls import path

from chairwright_desk.jobs import views

app_name = "jobs"
urlpatterns = [
    path("", views.jobs, name="list"),
    path("<str:job_id>/", views.show, name="show"),
    path("<str:job_id>/stop/", views.stop, name="stop"),
    path("<str:job_id>/again/", views.again, name="again"),
]
