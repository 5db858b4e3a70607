"""Middle floor: what was intended and what happened."""

from django.apps import AppConfig


class RecordsConfig(AppConfig):
    name = "records"
    label = "records"
