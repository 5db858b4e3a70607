"""The one address that is read without signing in: a calendar, by its token."""

from django.urls import path

from records.views import calendars

urlpatterns = [
    path("<str:token>.ics", calendars.calendar_feed, name="calendar-feed"),
]
