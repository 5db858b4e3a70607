"""Ground floor: who, where, and the measures everybody uses."""

from django.apps import AppConfig


class FarmConfig(AppConfig):
    name = "farm"
    label = "farm"
