"""Equipment, people's days, duties and papers."""

import datetime as dt

import factory
from factory.django import DjangoModelFactory

from records import models as kept
from tests.factories.days import WRITTEN_AT
from tests.factories.kinds import KindFactory
from tests.factories.land import FieldFactory
from tests.factories.record import RecordFactory, beside


class EquipmentFactory(RecordFactory):
    class Meta:
        model = kept.Equipment

    name = factory.Sequence(lambda n: f"Drill {n}")
    part = "drill"


class CalibrationFactory(RecordFactory):
    class Meta:
        model = kept.Calibration

    equipment = beside(EquipmentFactory)
    kind = factory.SubFactory(KindFactory)
    calibrated_on, setting, caught_kg = dt.date(2026, 5, 20), "34", 0.5
    distance_m, row_width_m, rows = 50.0, 0.19, 8


class CleanOutFactory(RecordFactory):
    class Meta:
        model = kept.CleanOut

    equipment = beside(EquipmentFactory)
    cleaned_on, held_before, method = dt.date(2026, 5, 30), "Rye", "Vacuumed"


class IncidentFactory(RecordFactory):
    class Meta:
        model = kept.Incident

    noticed_on, what, account = dt.date(2026, 6, 9), "flood", "The creek came over."


class TrainingFactory(RecordFactory):
    class Meta:
        model = kept.Training

    trained_on, person, topic = dt.date(2026, 3, 1), "A. Hand", "Tractor safety"


class ApplicatorLicenceFactory(RecordFactory):
    class Meta:
        model = kept.ApplicatorLicence

    holder, state = "A. Hand", "Nebraska"
    number = factory.Sequence(lambda n: f"NE-{n}")
    since, until = dt.date(2025, 1, 1), dt.date(2027, 12, 31)


class DutyFactory(RecordFactory):
    class Meta:
        model = kept.Duty

    what = "end"
    field = beside(FieldFactory)
    earliest_on, latest_on = dt.date(2026, 7, 8), dt.date(2026, 7, 11)


class CalendarAddressFactory(DjangoModelFactory):
    class Meta:
        model = kept.CalendarAddress

    made_at = WRITTEN_AT


class AttachmentFactory(RecordFactory):
    class Meta:
        model = kept.Attachment

    noun = "field"
    object_id = factory.LazyAttribute(lambda made: made.farm.fields.first().pk)
    shows = "The tag"
    type = "application/pdf"
    bytes = 9
    sha256 = "0" * 64
    file = factory.django.FileField(data=b"%PDF-1.7\n%%EOF", filename="tag.pdf")
