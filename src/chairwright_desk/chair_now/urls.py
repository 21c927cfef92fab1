"""Addresses of the chair as it stands, under a client's own."""

from __future__ import annotations

from django.urls import path

from chairwright_desk.chair_now import (
    views,
    views_ask,
    views_measured,
    views_papers,
    views_study,
    views_sure,
    views_weighing,
)

app_name = "chair_now"
urlpatterns = [
    path("", views.show, name="show"),
    path("weighings/new/", views_weighing.new, name="weigh"),
    path("weighings/<str:weighing_id>/", views_weighing.show, name="weighing"),
    path("weighings/<str:weighing_id>/sheet.pdf", views_papers.weighing, name="weighing-sheet"),
    path("weighings/<str:weighing_id>/change/", views_weighing.change, name="weighing-change"),
    path("weighings/<str:weighing_id>/use/", views_weighing.use, name="weighing-use"),
    path("weighings/<str:weighing_id>/remove/", views_weighing.remove, name="weighing-remove"),
    path("measured/new/", views_measured.new, name="measure"),
    path("measured/<str:chair_id>/", views_measured.show, name="measured"),
    path("measured/<str:chair_id>/sheet.pdf", views_papers.measured, name="measured-sheet"),
    path("measured/<str:chair_id>/change/", views_measured.change, name="measured-change"),
    path("measured/<str:chair_id>/remove/", views_measured.remove, name="measured-remove"),
    path("again/", views_ask.refit, name="refit"),
    path("years/", views_ask.years, name="years"),
    path("sure/<str:setup_id>/", views_sure.show, name="sure"),
    path("sure/<str:setup_id>/best/", views_ask.surest, name="surest"),
    path("sure/<str:setup_id>/figure/<str:name>/", views_sure.figure, name="figure"),
    path("studies/<str:study_id>/", views_study.show, name="study"),
    path("studies/<str:study_id>/again/", views_study.again, name="study-again"),
    path("studies/<str:study_id>/remove/", views_study.remove, name="study-remove"),
    path("studies/<str:study_id>/row/<int:number>/", views_study.row, name="row"),
    path("studies/<str:study_id>/row/<int:number>/keep/", views_study.keep, name="keep"),
    path("studies/<str:study_id>/row/<int:number>/sheet.pdf", views_study.sheet, name="sheet"),
]
