"""What every record is made with."""

from typing import Any

import factory
from factory.django import DjangoModelFactory

from tests.factories.days import WRITTEN_AT
from tests.factories.people import FarmFactory, UserFactory


class RecordFactory(DjangoModelFactory):
    class Meta:
        abstract = True

    farm = factory.SubFactory(FarmFactory)
    written_by = factory.SubFactory(UserFactory)
    written_at = WRITTEN_AT


def beside(maker: Any, **more: Any) -> factory.SubFactory:
    """Another record of the same farm, written by the same hand."""
    same = {name: factory.SelfAttribute(f"..{name}") for name in ("farm", "written_by")}
    return factory.SubFactory(maker, **same, **more)
