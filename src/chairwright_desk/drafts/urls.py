"""Address under which a form keeps what is typed."""

from __future__ import annotations

from django.urls import path

from chairwright_desk.drafts import views

app_name = "drafts"
urlpatterns = [
    path("<str:form_key>/", views.keep_draft, name="keep"),
    path("<str:form_key>/left/<str:mark>/", views.left_draft, name="left"),
    path("<str:form_key>/forget/", views.forget_draft, name="forget"),
]
