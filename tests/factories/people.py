"""People, farms, and who may enter which."""

import datetime as dt

import factory
from factory.django import DjangoModelFactory

from farm import models as land
from farm.models import Farm, Invitation, Role, User
from tests.factories.days import ARRIVED


class UserFactory(DjangoModelFactory):
    class Meta:
        model = User

    email = factory.Sequence(lambda n: f"person{n}@example.org")
    name = factory.Sequence(lambda n: f"Person {n}")


class FarmFactory(DjangoModelFactory):
    class Meta:
        model = Farm

    name = factory.Sequence(lambda n: f"Farm {n}")
    slug = factory.Sequence(lambda n: f"farm-{n}")
    latitude, longitude = 42.73, -76.65


class MembershipFactory(DjangoModelFactory):
    class Meta:
        model = land.Membership

    farm = factory.SubFactory(FarmFactory)
    user = factory.SubFactory(UserFactory)
    role = Role.OWNER
    since = ARRIVED


class InvitationFactory(DjangoModelFactory):
    class Meta:
        model = Invitation

    farm = factory.SubFactory(FarmFactory)
    name = "Newcomer"
    role = Role.CREW
    made_by = factory.SubFactory(UserFactory)
    made_at = factory.LazyFunction(lambda: dt.datetime.now(dt.UTC))
    expires_at = factory.LazyAttribute(lambda one: one.made_at + dt.timedelta(days=7))
