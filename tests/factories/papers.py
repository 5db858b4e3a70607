"""Rules followed, replies, what was told, prints."""

import datetime as dt

import factory
from factory.django import DjangoModelFactory

from records import models as kept
from tests.factories.people import FarmFactory, UserFactory
from tests.factories.record import RecordFactory


class RulesFollowedFactory(RecordFactory):
    class Meta:
        model = kept.RulesFollowed

    which, since = "workers", dt.date(2024, 1, 1)


class CertifierNumberFactory(RecordFactory):
    class Meta:
        model = kept.CertifierNumber

    key = factory.Sequence(lambda n: f"organic_us.seed-search.sources_{n}")
    value, low, high = 4, 1, 10
    note, document = "Told at the inspection of 2025", "Letter of 3 June 2025"


class FindingReplyFactory(RecordFactory):
    class Meta:
        model = kept.FindingReply

    key = factory.Sequence(lambda n: f"tag-age.tag_old.seed-lots.{n}")
    finding, reply = "An old tag", "Tested again at home"
    replied_on = dt.date(2026, 9, 20)


class ChangeToldFactory(RecordFactory):
    class Meta:
        model = kept.ChangeTold

    key = factory.Sequence(lambda n: f"2026.inputs.came.Feather meal {n}")
    change, how = "New: Feather meal", "By letter"
    told_on = dt.date(2026, 9, 20)


class PrintJobFactory(DjangoModelFactory):
    class Meta:
        model = kept.PrintJob

    farm = factory.SubFactory(FarmFactory)
    paper, year, today = "packet", 2026, dt.date(2027, 1, 15)
    asked_by = factory.SubFactory(UserFactory)
    asked_at = dt.datetime(2027, 1, 15, 9, tzinfo=dt.UTC)
