"""Weeds in rows, mixes offered by component, and what goes onto seed."""

import django.core.validators
import django.db.models.deletion
import django.db.models.expressions
import re
import uuid
from django.conf import settings
from django.db import migrations, models

from farm.guards import GuardRecords


NONE_FOUND = re.compile(r"\s*(none|ninguna?|0)\s*", re.IGNORECASE)


def keep_as_note(apps, schema_editor):
    """What was typed in one line is not guessed at: it stays, as a note."""
    lots = apps.get_model("records", "SeedLot").objects
    for pk, typed, notes in lots.exclude(noxious="").values_list(
        "pk", "noxious", "notes"
    ):
        if NONE_FOUND.fullmatch(typed):
            lots.filter(pk=pk).update(no_noxious=True)
        else:
            line = f"Noxious weeds, as typed from the tag: {typed}"
            told = f"{notes}\n{line}".strip()
            lots.filter(pk=pk).update(notes=told)


class Migration(migrations.Migration):

    dependencies = [
        ('farm', '0005_money_of_the_farm'),
        ('records', '0007_rules_replies_and_prints'),
        migrations.swappable_dependency(settings.AUTH_USER_MODEL),
    ]

    operations = [
        migrations.AddField(
            model_name='seedlot',
            name='no_noxious',
            field=models.BooleanField(default=False, verbose_name='no noxious weeds, says the tag'),
        ),
        migrations.CreateModel(
            name='NoxiousWeed',
            fields=[
                ('id', models.BigAutoField(auto_created=True, primary_key=True, serialize=False, verbose_name='ID')),
                ('name', models.CharField(max_length=80, verbose_name='noxious weed')),
                ('count_per_kg', models.FloatField(verbose_name='number in a weight of seed')),
                ('lot', models.ForeignKey(on_delete=django.db.models.deletion.CASCADE, related_name='weeds', to='records.seedlot')),
            ],
            options={
                'verbose_name': 'noxious weed',
                'verbose_name_plural': 'noxious weeds',
                'constraints': [models.CheckConstraint(condition=models.Q(('count_per_kg__gt', 0)), name='noxious_weed_by_number', violation_error_message='A number is more than nothing.'), models.UniqueConstraint(models.F('lot'), models.F('name'), name='noxious_weed_once_a_lot')],
            },
        ),
        migrations.CreateModel(
            name='OfferComponent',
            fields=[
                ('id', models.BigAutoField(auto_created=True, primary_key=True, serialize=False, verbose_name='ID')),
                ('variety', models.CharField(blank=True, max_length=80, verbose_name='variety')),
                ('pure_share', models.FloatField(validators=[django.core.validators.MinValueValidator(0.0), django.core.validators.MaxValueValidator(1.0)], verbose_name='pure seed by weight')),
                ('germination_share', models.FloatField(blank=True, null=True, validators=[django.core.validators.MinValueValidator(0.0), django.core.validators.MaxValueValidator(1.0)], verbose_name='germination')),
                ('hard_share', models.FloatField(default=0.0, validators=[django.core.validators.MinValueValidator(0.0), django.core.validators.MaxValueValidator(1.0)], verbose_name='hard or dormant seed')),
                ('kind', models.ForeignKey(on_delete=django.db.models.deletion.PROTECT, related_name='offer_components', to='records.kind', verbose_name='kind')),
                ('offer', models.ForeignKey(on_delete=django.db.models.deletion.CASCADE, related_name='components', to='records.seedoffer')),
            ],
            options={
                'verbose_name': 'component of a mix offered',
                'verbose_name_plural': 'components of mixes offered',
                'constraints': [models.CheckConstraint(condition=models.Q(('pure_share__gt', 0), ('pure_share__lte', 1)), name='offer_component_is_a_share'), models.CheckConstraint(condition=models.Q(('germination_share', None), models.Q(('germination_share__gte', 0), ('germination_share__lte', django.db.models.expressions.CombinedExpression(models.Value(1), '-', models.F('hard_share')))), _connector='OR'), name='offer_component_viable_is_a_share'), models.UniqueConstraint(models.F('offer'), models.F('kind'), models.F('variety'), name='offer_component_once')],
            },
        ),
        migrations.CreateModel(
            name='SeedDressing',
            fields=[
                ('id', models.BigAutoField(auto_created=True, primary_key=True, serialize=False, verbose_name='ID')),
                ('client_key', models.UUIDField(default=uuid.uuid4, editable=False, unique=True)),
                ('notes', models.TextField(blank=True, max_length=4000, verbose_name='notes')),
                ('done_by', models.CharField(blank=True, max_length=120, verbose_name='done by')),
                ('written_at', models.DateTimeField(editable=False)),
                ('voided_at', models.DateTimeField(editable=False, null=True)),
                ('void_reason', models.CharField(blank=True, editable=False, max_length=500)),
                ('dose_share', models.FloatField(verbose_name='dose on the label, for a weight of seed')),
                ('product_lot', models.CharField(blank=True, max_length=60, verbose_name='lot of the product')),
                ('good_until', models.DateField(blank=True, null=True, verbose_name='good until the month')),
                ('farm', models.ForeignKey(on_delete=django.db.models.deletion.PROTECT, related_name='%(class)ss', to='farm.farm')),
                ('kind', models.ForeignKey(on_delete=django.db.models.deletion.PROTECT, related_name='dressings', to='records.kind', verbose_name='kind of seed')),
                ('product', models.ForeignKey(on_delete=django.db.models.deletion.PROTECT, related_name='dressings', to='records.inputproduct', verbose_name='inoculant or treatment')),
                ('voided_by', models.ForeignKey(editable=False, null=True, on_delete=django.db.models.deletion.PROTECT, related_name='+', to=settings.AUTH_USER_MODEL)),
                ('written_by', models.ForeignKey(editable=False, on_delete=django.db.models.deletion.PROTECT, related_name='+', to=settings.AUTH_USER_MODEL)),
            ],
            options={
                'verbose_name': 'inoculant or treatment for seed',
                'verbose_name_plural': 'inoculants and treatments for seed',
                'abstract': False,
                'constraints': [models.CheckConstraint(condition=models.Q(models.Q(('void_reason', ''), ('voided_at', None), ('voided_by', None)), models.Q(('voided_at__isnull', False), ('voided_by__isnull', False), models.Q(('void_reason', ''), _negated=True)), _connector='OR'), name='seeddressing_void_is_whole'), models.CheckConstraint(condition=models.Q(('dose_share__gt', 0), ('dose_share__lte', 1)), name='dressing_has_a_dose', violation_error_message='A dose is more than nothing and no more than the seed itself.'), models.UniqueConstraint(models.F('farm'), models.F('kind'), models.F('product'), condition=models.Q(('voided_at', None)), name='dressing_once_a_kind', violation_error_message='This is already written down.')],
            },
        ),
        migrations.RunPython(keep_as_note, migrations.RunPython.noop),
        migrations.RemoveField(
            model_name='seedlot',
            name='noxious',
        ),
        GuardRecords(["seeddressing", "seedlot"]),
    ]
