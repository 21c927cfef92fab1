"""Addresses of the API, from its table, and of its pages for people."""

from __future__ import annotations

from django.urls import path

from chairwright_desk.api import pages
from chairwright_desk.api.dispatch import resource
from chairwright_desk.api.operations import by_address

app_name = "api"
urlpatterns = [
    path("own/tokens/", pages.tokens, name="tokens"),
    path("own/tokens/calls/", pages.calls, name="calls"),
    path("own/tokens/<str:token_id>/end/", pages.end, name="end-token"),
    path("api/openapi.json", pages.document, name="document"),
    *(
        path(
            "api/" + address.replace("{", "<str:").replace("}", ">"),
            resource(known),
            name=address,
        )
        for address, known in by_address().items()
    ),
]
