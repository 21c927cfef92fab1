"""Address of the trail."""

from __future__ import annotations

from django.urls import path

from chairwright_desk.audit import views

app_name = "audit"
urlpatterns = [path("", views.trail, name="list")]
