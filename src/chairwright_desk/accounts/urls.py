"""Addresses of signing in, one's own account and the people of the desk."""

from __future__ import annotations

from django.urls import path

from chairwright_desk.accounts import own, people, views

app_name = "accounts"
urlpatterns = [
    path("sign-in/", views.sign_in, name="sign-in"),
    path("sign-in/<str:token>/", views.link, name="link"),
    path("sign-out/", views.sign_out, name="sign-out"),
    path("own/", own.own, name="own"),
    path("own/password/", own.password, name="password"),
    path("people/", people.people, name="people"),
    path("people/<str:user_id>/", people.person, name="person"),
    path("people/<str:user_id>/roles/", people.add_role, name="add-role"),
    path("people/<str:user_id>/roles/<int:membership_id>/", people.drop_role, name="drop-role"),
    path("people/<str:user_id>/entry/", people.entry, name="entry"),
    path("people/<str:user_id>/link/", people.new_link, name="new-link"),
]
