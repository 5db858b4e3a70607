"""The address of the crew's page."""

from django.urls import path

from reports import crew_views as views

app_name = "crew"
urlpatterns = [path("", views.today, name="today")]
