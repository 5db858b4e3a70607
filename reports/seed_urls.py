"""Addresses of the pages about seed, under a farm's reports."""

from django.urls import path

from reports import seed_views as views

urlpatterns = [
    path("", views.seed, name="seed"),
    path("balance/<season_year:year>/", views.seed_balance, name="seed-balance"),
    path("order/", views.seed_order, name="seed-order"),
    path("how-much/", views.how_much, name="how-much"),
    path("calibration/", views.calibration, name="calibration"),
    path("sowing-sheet/", views.sowing, name="sowing-sheet"),
    path("sowing-sheet.pdf", views.sowing_pdf, name="sowing-sheet-pdf"),
    path("labels.pdf", views.labels_pdf, name="labels-pdf"),
    path("orders/<int:pk>/", views.order, name="order"),
    path("orders/<int:pk>.pdf", views.order_pdf, name="order-pdf"),
    path("orders/<int:pk>.csv", views.order_csv, name="order-csv"),
]
