"""Films and tarps on the ground, laid and taken off."""

import django.db.models.deletion
import uuid
from django.conf import settings
from django.db import migrations, models

from farm.guards import GuardRecords


class Migration(migrations.Migration):

    dependencies = [
        ('farm', '0010_family_of_the_owner'),
        ('records', '0016_licences_statements_and_subjects'),
        migrations.swappable_dependency(settings.AUTH_USER_MODEL),
    ]

    operations = [
        migrations.CreateModel(
            name='MulchSheet',
            fields=[
                ('id', models.BigAutoField(auto_created=True, primary_key=True, serialize=False, verbose_name='ID')),
                ('client_key', models.UUIDField(default=uuid.uuid4, editable=False, unique=True)),
                ('notes', models.TextField(blank=True, max_length=4000, verbose_name='notes')),
                ('done_by', models.CharField(blank=True, max_length=120, verbose_name='done by')),
                ('written_at', models.DateTimeField(editable=False)),
                ('voided_at', models.DateTimeField(editable=False, null=True)),
                ('void_reason', models.CharField(blank=True, editable=False, max_length=500)),
                ('area_m2', models.FloatField(verbose_name='area covered')),
                ('material', models.CharField(choices=[('polyethylene', 'polyethylene film'), ('fabric', 'woven landscape fabric'), ('tarp', 'tarp'), ('biodegradable', 'biodegradable film'), ('paper', 'paper'), ('pvc', 'PVC film or tarp'), ('other', 'other')], max_length=13, verbose_name='material')),
                ('material_words', models.CharField(blank=True, max_length=120, verbose_name='what it is')),
                ('approval', models.CharField(blank=True, max_length=120, verbose_name='approved by, reference')),
                ('laid_on', models.DateField(verbose_name='laid on')),
                ('taken_off_on', models.DateField(blank=True, null=True, verbose_name='taken off on')),
                ('went', models.CharField(blank=True, choices=[('kept', 'kept for use again'), ('collected', 'taken to a collection for recycling'), ('tipped', 'taken to a waste site'), ('worked_in', 'worked into the soil'), ('other', 'elsewhere, told in the notes')], max_length=9, verbose_name='where it went')),
                ('farm', models.ForeignKey(on_delete=django.db.models.deletion.PROTECT, related_name='%(class)ss', to='farm.farm')),
                ('field', models.ForeignKey(on_delete=django.db.models.deletion.PROTECT, related_name='mulch_sheets', to='farm.field', verbose_name='field')),
                ('planting', models.ForeignKey(blank=True, null=True, on_delete=django.db.models.deletion.PROTECT, related_name='mulch_sheets', to='records.planting', verbose_name='planting')),
                ('voided_by', models.ForeignKey(editable=False, null=True, on_delete=django.db.models.deletion.PROTECT, related_name='+', to=settings.AUTH_USER_MODEL)),
                ('written_by', models.ForeignKey(editable=False, on_delete=django.db.models.deletion.PROTECT, related_name='+', to=settings.AUTH_USER_MODEL)),
            ],
            options={
                'verbose_name': 'mulch film or tarp',
                'verbose_name_plural': 'mulch films and tarps',
                'abstract': False,
                'constraints': [models.CheckConstraint(condition=models.Q(models.Q(('void_reason', ''), ('voided_at', None), ('voided_by', None)), models.Q(('voided_at__isnull', False), ('voided_by__isnull', False), models.Q(('void_reason', ''), _negated=True)), _connector='OR'), name='mulchsheet_void_is_whole'), models.CheckConstraint(condition=models.Q(('area_m2__gt', 0)), name='mulch_sheet_has_an_area'), models.CheckConstraint(condition=models.Q(('taken_off_on', None), ('taken_off_on__gte', models.F('laid_on')), _connector='OR'), name='mulch_sheet_off_after_on', violation_error_message='It came off before it was laid.'), models.CheckConstraint(condition=models.Q(models.Q(('material', 'other'), _negated=True), models.Q(('material_words', ''), _negated=True), _connector='OR'), name='mulch_sheet_other_in_words', violation_error_message='Say in words what it is.'), models.CheckConstraint(condition=models.Q(('went', ''), ('taken_off_on__isnull', False), _connector='OR'), name='mulch_sheet_went_on_a_day', violation_error_message='Give the day it was taken off.')],
            },
        ),
        GuardRecords(["mulchsheet"]),
    ]
