"""Addresses of what an inspector asks for."""

from django.urls import path

from reports.inspection import views

urlpatterns = [
    path("findings/", views.findings_now, name="findings-now"),
    path("findings/<season_year:year>/", views.findings, name="findings"),
    path("rules/", views.rules, name="rules"),
]
