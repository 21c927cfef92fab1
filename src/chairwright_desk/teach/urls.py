"""Addresses of teaching."""

from __future__ import annotations

from django.urls import path

from chairwright_desk.teach import views, views_bench

app_name = "teach"
urlpatterns = [
    path("", views.lessons, name="list"),
    path("bench/", views_bench.bench, name="bench"),
    path("bench/step/", views_bench.bench_step, name="bench-step"),
    path("lesson/<str:slug>/<int:number>/", views.step, name="step"),
    path("lesson/<str:slug>/again/", views.again, name="again"),
    path("lesson/<str:slug>/print/", views.whole, name="print"),
    path("lesson/<str:slug>/sheet.pdf", views.paper, name="paper"),
]
