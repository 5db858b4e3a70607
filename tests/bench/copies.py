"""Copies of one record, as many as asked for, each leaning on other copies."""

import uuid
from datetime import timedelta

from django.db import IntegrityError, models, transaction

from farm.models import Change, Record
from tests.bench.farms import create

YEARS_BACK = 10
UNTOUCHED = {"written_at", "voided_at"}


class Copier:
    """Copies of a household's records; those made first are leant on later."""

    def __init__(self, chance):
        self.chance = chance
        self.made = {}

    def copy(self, row, count):
        """Copies of a record with its parts; none where a farm has but one such."""
        model = type(row)
        parts = [list(getattr(row, name).all()) for name in model.PARTS]
        rows = [self._one(row, n) for n in range(count)]
        try:
            with transaction.atomic():
                create(rows)
        except IntegrityError:
            rows = []
        self.made[model] = [row, *rows]
        for kept in filter(None, parts):
            create([self._part(part, model, one) for part in kept for one in rows])
        return self.made[model]

    def _one(self, row, n):
        told = {"client_key": uuid.uuid4()}
        back = timedelta(days=self.chance.randrange(365 * YEARS_BACK))
        marked = _names_that_must_differ(type(row))
        for field in row._meta.concrete_fields:
            value = getattr(row, field.attname)
            if field.primary_key or field.name in told or value is None:
                continue
            told[field.attname] = value
            if isinstance(field, models.DateTimeField):
                continue
            if isinstance(field, models.DateField):
                told[field.attname] = value - back
            elif field.name in marked:
                told[field.attname] = f"{value[: field.max_length - 8]} {n:06}"
            elif field.related_model in self.made:
                told[field.attname] = self.chance.choice(
                    self.made[field.related_model]
                ).pk
        return type(row)(**told)

    def _part(self, part, model, whole):
        told = {
            field.attname: getattr(part, field.attname)
            for field in part._meta.concrete_fields
            if not field.primary_key
        }
        (link,) = [
            field.attname
            for field in part._meta.concrete_fields
            if field.related_model is model
        ]
        return type(part)(**told | {link: whole.pk})


def _names_that_must_differ(model):
    """Texts by which a farm tells its records of a noun apart."""
    named = {
        name
        for one in model._meta.constraints
        if isinstance(one, models.UniqueConstraint)
        for name in [*one.fields, *(part.name for part in one.expressions)]
    }
    return {
        name
        for name in named
        if isinstance(field := model._meta.get_field(name), models.CharField)
        and not field.choices
    }


def note(farm, by, rows, first):
    """A change for every record, unsealed: only a list of them is to be shown."""
    create(
        Change(
            farm=farm,
            number=number,
            at=row.written_at,
            by=by,
            verb=Change.Verb.WROTE.value,
            noun=row._meta.model_name,
            object_id=row.pk,
            label=f"{row._meta.model_name} {row.pk}",
            prev=f"{farm.pk}-{number - 1}",
            digest=f"{farm.pk}-{number}",
        )
        for number, row in enumerate(rows, start=first)
        if isinstance(row, Record)
    )
