"""Addresses of orders."""

from __future__ import annotations

from django.urls import path

from chairwright_desk.orders import (
    views,
    views_list,
    views_pack,
    views_papers,
    views_payer,
    views_prices,
)

app_name = "orders"
_ONE = "orders/<str:order_id>/"
_REVISION = f"{_ONE}revision/<int:number>/"
urlpatterns = [
    path("clients/<str:client_id>/orders/", views_list.of_client, name="of-client"),
    path("clients/<str:client_id>/orders/new/", views_list.new, name="new"),
    path("orders/", views_list.orders, name="list"),
    path("orders/prices/", views_prices.prices, name="prices"),
    path("orders/prices/<str:prices_id>/remove/", views_prices.drop_prices, name="drop-prices"),
    path(_ONE, views.show, name="show"),
    path(f"{_ONE}step/", views.step, name="step"),
    path(f"{_ONE}accept/", views.accepted, name="accept"),
    path(f"{_ONE}change/", views.change, name="change"),
    path(f"{_ONE}payer/", views_payer.payer, name="payer"),
    path(f"{_ONE}payer/scheme/", views_payer.scheme, name="scheme"),
    path(f"{_ONE}payer/facts/", views_payer.facts, name="facts"),
    path(f"{_ONE}adjust/", views_papers.adjust, name="adjust"),
    path(f"{_ONE}adjust/<str:setup_id>/", views_papers.adjust_sheet, name="adjust-sheet"),
    path(_REVISION, views.revision, name="revision"),
    path(f"{_REVISION}paper/<str:name>/", views_papers.one, name="paper"),
    path(f"{_REVISION}pack/", views_pack.pack, name="pack"),
    path(f"{_ONE}pack/<str:pack_id>/", views_pack.pack_file, name="pack-file"),
    path(f"{_REVISION}file/<str:kind>/", views_papers.export, name="export"),
]
